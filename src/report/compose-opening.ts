import type { Block } from './document.ts';
import { inline } from './inline.ts';
import { fields, heading, list, numbers, type Page, paragraph, typed } from './page.ts';
import type { Report } from './report.ts';

/** How many answers are not known, or not for every side. */
const unsureOf = (report: Report) => report.toFindOut.filter((one) => one.why !== 'notAsked').length;

/** What the report is about: house, day, rules. */
function about({ report, say }: Page): Block[] {
  const { label, date, asked, open } = report.walk;
  const unsure = unsureOf(report);
  return fields([
    label === null ? undefined : { name: say('field.house'), value: typed(label) },
    { name: say('field.date'), value: [{ kind: 'text', text: date }] },
    { name: say('field.rulebook'), value: inline(report.rulebook.title) },
    { name: say('field.answers'), value: say('answered', { answered: asked - open, asked, unsure }) },
  ]);
}

/** How far the list can be trusted: a walk that stopped halfway, or many answers that are not known. */
function howWhole({ report, say }: Page): Block[] {
  const { open, asked } = report.walk;
  return [
    ...(open > 0 ? [paragraph(say('partial', { open, asked }))] : []),
    ...(unsureOf(report) > 0 ? [paragraph(say('unsure'))] : []),
  ];
}

function inOrder({ report, say }: Page): Block[] {
  if (!report.inOrder) return [];
  return [paragraph(say('in-order', { jobs: report.jobs.length }))];
}

function biggest({ report, say }: Page): Block[] {
  const job = report.jobs.find((one) => one.rank === report.biggestChange);
  if (!job) return [];
  const also = job.rank === 1 ? [] : [paragraph(say('biggest.not-first', { number: job.rank }))];
  return [
    heading(2, say('biggest')),
    paragraph(inline(job.do)),
    paragraph(say('biggest.alone', { number: job.rank, share: job.aloneShareText })),
    ...also,
  ];
}

function firstHour({ report, say }: Page): Block[] {
  if (report.jobs.length === 0) return [];
  const items = report.firstHour.map((one) => inline(one.do));
  if (items.length > 0)
    return [heading(2, say('first-hour')), paragraph(say('first-hour.intro')), ...list(items)];
  const byHand = report.jobs.filter((job) => job.lane === 'hand').map((job) => job.rank);
  if (byHand.length === 0) return [];
  return [
    heading(2, say('first-hour')),
    paragraph(say('first-hour.none', { numbers: numbers(byHand.slice(0, 2), 'or') })),
  ];
}

/** The title, and what a reader must know before the list. */
export function composeOpening(page: Page): Block[] {
  return [
    heading(1, page.say('title')),
    paragraph(page.say('leave-first', { number: page.report.rulebook.emergencyNumber }), 'first'),
    ...about(page),
    ...howWhole(page),
    ...inOrder(page),
    ...biggest(page),
    ...firstHour(page),
  ];
}
