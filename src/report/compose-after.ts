import type { Block, Spans } from './document.ts';
import { inline } from './inline.ts';
import { type Extent, fields, heading, list, type Page, paragraph } from './page.ts';
import type { Report } from './report.ts';

function cannotChange({ report, say }: Page): Block[] {
  const lines = report.findingLines.flatMap((one) =>
    one.noAction === null ? [] : [inline(`${one.text} ${one.noAction}`)],
  );
  if (lines.length === 0) return [];
  return [heading(2, say('no-job')), paragraph(say('no-job.intro')), ...list(lines)];
}

const seasons = ['spring', 'summer', 'autumn', 'winter'] as const;

/** The seasons from the one of the report's date on. */
function seasonsFrom(date: string, hemisphere: Report['rulebook']['hemisphere']): (typeof seasons)[number][] {
  const month = Number(date.slice(5, 7));
  const north = Math.floor(((month + 9) % 12) / 3);
  const now = hemisphere === 'north' ? north : (north + 2) % 4;
  return [...seasons.slice(now), ...seasons.slice(0, now)];
}

/** Work of the year with its cautions in a few words; leaving stands above all of it. */
function upkeepItem({ report, words }: Page, one: Report['upkeep'][number]): Spans {
  const shorts = report.cautions.flatMap(({ id, short }) =>
    one.cautions.includes(id) && id !== 'leave-first' ? [short] : [],
  );
  return inline(
    shorts.length > 0 ? words('upkeep.item', { do: one.do, cautions: shorts.join('; ') }) : one.do,
  );
}

function upkeep(page: Page): Block[] {
  const { report, say } = page;
  if (report.upkeep.length === 0) return [];
  const { hemisphere } = report.rulebook;
  return [
    heading(2, say('upkeep')),
    paragraph(say('upkeep.intro')),
    ...seasonsFrom(report.walk.date, hemisphere).flatMap((season) => {
      const jobs = report.upkeep.filter((one) => one.seasons.includes(season));
      if (jobs.length === 0) return [];
      return [
        heading(3, say(`season.${season}.${hemisphere}`)),
        ...list(jobs.map((one) => upkeepItem(page, one))),
      ];
    }),
  ];
}

type Unknown = Report['toFindOut'][number];

function nameOf({ words }: Page, one: Unknown): Spans {
  const why = words(`unknown.${one.why}`);
  return inline(
    one.where === null
      ? words('unknown', { question: one.question, why })
      : words('unknown.where', { question: one.question, where: one.where, why }),
  );
}

/** Below this part of the largest stake an unknown answer would hardly change the list. */
const hardly = 0.01;

/** So few unknown answers are all told in full: some decide on a caution. */
const fewUnknown = 8;

function toFindOut(page: Page): Block[] {
  const { report, say, words } = page;
  const known = report.toFindOut.filter((one) => one.why !== 'notAsked');
  const most = Math.max(0, ...known.map((one) => one.stake));
  const weighty = known.filter((one) => known.length <= fewUnknown || one.opens || one.stake > hardly * most);
  const rest = known.filter((one) => !weighty.includes(one));
  const names = rest
    .map((one) =>
      one.where === null
        ? one.question
        : words('unknown.short', { question: one.question, where: one.where }),
    )
    .join('; ');
  return [
    ...(weighty.length > 0
      ? [
          heading(2, say('find-out')),
          paragraph(say('find-out.intro')),
          ...fields(weighty.map((one) => ({ name: nameOf(page, one), value: inline(one.how) }))),
        ]
      : []),
    ...(rest.length > 0 ? [heading(2, say('skipped')), paragraph(say('skipped.names', { names }))] : []),
  ];
}

/** The questions that a walk stopped halfway did not come to, by stop. */
function notAsked({ report, say, wording }: Page): Block[] {
  const open = report.toFindOut.filter((one) => one.why === 'notAsked');
  if (open.length === 0) return [];
  const rows = report.stops.flatMap((stop) => {
    const names = [...new Set(open.filter((one) => one.stop === stop.id).map((one) => one.question))];
    return names.length > 0
      ? [{ name: inline(stop.title), value: inline(wording.value({ list: names })) }]
      : [];
  });
  return [heading(2, say('not-asked')), paragraph(say('not-asked.intro')), ...fields(rows)];
}

function theDay({ report, say }: Page): Block[] {
  const { emergencyNumber } = report.rulebook;
  return [
    heading(2, say('day')),
    paragraph(say('day.leave', { number: emergencyNumber }), 'first'),
    paragraph(say('day.if-time')),
    ...list([1, 2, 3, 4].map((step) => say(`day.step-${step}`))),
    paragraph(say('day.only')),
  ];
}

/** What follows the list: what no job changes, the year round, what to find out, the day itself. */
export function composeAfter(page: Page, extent: Extent): Block[] {
  const { inOrder } = page.report;
  return [
    ...cannotChange(page),
    ...toFindOut(page),
    ...notAsked(page),
    ...(extent === 'whole' || inOrder ? upkeep(page) : []),
    ...theDay(page),
  ];
}
