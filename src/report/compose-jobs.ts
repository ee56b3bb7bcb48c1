import { composePriceNotes, costText, shortCost } from './cost-text.ts';
import type { Block, Field, Spans } from './document.ts';
import { inline } from './inline.ts';
import { capital, type Extent, fields, heading, list, numbers, type Page, paragraph } from './page.ts';
import type { ReportJob } from './report.ts';

/** Minutes by fives, as people say them. */
const minutesOf = (hours: number): number => Math.max(5, Math.round(hours * 12) * 5);

/** Hours as people say them: "15 minutes to 1 hour", "2 to 6 hours". */
function hoursText(page: Page, { low, high }: ReportJob['hours']): Spans {
  const one = (hours: number) =>
    hours < 1
      ? page.words('minutes', { count: minutesOf(hours) })
      : page.words('hours', { count: Math.round(hours * 2) / 2 });
  if (low === high || one(low) === one(high)) return inline(one(high));
  if (low >= 1)
    return page.say('hours.range', { low: Math.round(low * 2) / 2, high: Math.round(high * 2) / 2 });
  return page.say(high < 1 ? 'minutes.range' : 'range', {
    low: low === 0 ? '0' : high < 1 ? String(minutesOf(low)) : one(low),
    high: high < 1 ? String(minutesOf(high)) : one(high),
  });
}

function waysText({ report, say }: Page, job: ReportJob): Spans {
  return say('ways', { closes: job.closes, lessens: job.lessens, all: report.waysIn.length });
}

function field(page: Page, name: string, value: Spans | undefined): Field | undefined {
  return value && { name: page.say(`field.${name}`), value };
}

function rows(page: Page, job: ReportJob): (Field | undefined)[] {
  const { say, words, report } = page;
  const because =
    job.laneBecause === null ? '' : ` ${words('because', { because: sentence(job.laneBecause) })}`;
  const shorts = job.cautions.flatMap((id) => report.cautions.find((one) => one.id === id)?.short ?? []);
  const ranked = job.rank > 0;
  const some = (list: readonly unknown[], text: () => Spans) => (list.length > 0 ? text() : undefined);
  return [
    field(page, 'where', inline(capital(job.where))),
    field(page, 'demanded', job.demandedBy === null ? undefined : inline(job.demandedBy)),
    field(page, 'share', ranked ? shareOf(job) : undefined),
    field(page, 'ways', ranked ? waysText(page, job) : undefined),
    field(page, 'who', inline(words(`lane.${job.lane}`) + because)),
    field(page, 'cost', inline(costText(page, job))),
    field(page, 'hours', hoursText(page, job.hours)),
    field(page, 'before', before(page, job)),
    field(
      page,
      'instead',
      some(job.insteadOf, () => say('instead', these(job.insteadOf))),
    ),
    field(
      page,
      'either',
      some(job.eitherOf, () => say('either', these(job.eitherOf))),
    ),
    field(
      page,
      'tied',
      some(job.tiedWith, () => say('tied', these(job.tiedWith))),
    ),
    field(
      page,
      'rule',
      some(job.rules, () => inline(job.rules.map((rule) => ruleText(page, rule)).join(' '))),
    ),
    field(
      page,
      'mind',
      some(shorts, () => inline(sentence(shorts.join('; ')))),
    ),
    field(page, 'comes-back', job.comesBack ? say('comes-back') : undefined),
  ];
}

const these = (list: readonly number[]) => ({ count: list.length, numbers: numbers(list) });

const shareOf = ({ shareText, aloneText }: ReportJob): Spans =>
  inline([sentence(shareText), ...(aloneText === null ? [] : [aloneText])].join(' '));

/** What must be done before a job: jobs of the list by number, and calls in words. */
function before({ words }: Page, job: ReportJob): Spans | undefined {
  const ranked = job.before.length > 0 ? [words('before', these(job.before))] : [];
  const texts = [...job.beforeText, ...ranked];
  return texts.length > 0 ? inline(texts.join(' ')) : undefined;
}

/** A flow's phrase as a sentence: a capital first, a full stop last. */
function sentence(text: string): string {
  return /[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`;
}

function ruleText({ words }: Page, rule: ReportJob['rules'][number]): string {
  return words('rule', {
    what: capital(rule.what),
    value: rule.own === null ? rule.value : words('rule.about', { value: rule.value, own: rule.own }),
    rulebook: rule.rulebook,
    status: words(`status.${rule.status}`),
  });
}

function contractor({ say }: Page, job: ReportJob): Block[] {
  if (!job.contractor) return [];
  return [
    paragraph(say('contractor.ask')),
    ...list(job.contractor.ask.map(inline)),
    ...fields([{ name: say('field.permit'), value: inline(job.contractor.permit) }]),
  ];
}

function workedOut({ say }: Page, job: ReportJob): Block[] {
  return job.workedOut.length > 0 ? [paragraph(say('worked-out')), ...list(job.workedOut.map(inline))] : [];
}

function card(page: Page, job: ReportJob, whole: boolean): Block {
  return {
    kind: 'job',
    number: job.rank > 0 ? job.rank : undefined,
    title: inline(job.do),
    blocks: [
      paragraph(inline(job.why)),
      ...fields(rows(page, job)),
      ...(whole ? workedOut(page, job) : []),
      ...(whole && job.how.length > 0 ? [paragraph(page.say('how'))] : []),
      ...(whole ? [...list(job.how.map(inline), true), ...contractor(page, job)] : []),
    ],
  };
}

/** Below this many jobs a short list says nothing that the list itself does not. */
const fewJobs = 4;

function shortList(page: Page): Block[] {
  const { report, say, words } = page;
  if (report.jobs.length < fewJobs) return [];
  const items = report.jobs.map((job) =>
    say('short.item', {
      do: job.do.replace(/\.$/, ''),
      lane: words(`short.lane.${job.lane}`),
      cost: shortCost(page, job),
    }),
  );
  return [
    heading(2, say('short')),
    paragraph(say('short.intro')),
    ...list(items, true),
    ...composePriceNotes(page),
  ];
}

/** On a screen the first jobs are told in full, with how to do them; the others without. */
const fullOnScreen = 3;

/** The ranked list, and apart from it the jobs that close no way in. */
export function composeJobs(page: Page, extent: Extent): Block[] {
  const { report, say } = page;
  const whole = (job: ReportJob) => extent === 'whole' || (job.rank > 0 && job.rank <= fullOnScreen);
  const also = report.alsoWorth.map((job) => card(page, job, whole(job)));
  const none = report.jobs.length === 0;
  const known = report.walk.open === 0 && report.toFindOut.length === 0;
  const top = [
    heading(2, say('list')),
    paragraph(
      say(none ? (known ? 'list.empty' : 'list.empty-yet') : 'list.intro', {
        ways: report.waysIn.length,
      }),
    ),
  ];
  return [
    ...shortList(page),
    ...(none && report.inOrder ? [] : top),
    ...report.jobs.map((job) => card(page, job, whole(job))),
    ...(also.length > 0 ? [heading(2, say('also')), paragraph(say('also.intro')), ...also] : []),
  ];
}
