import type { Block, Field, Spans } from './document.ts';
import { inline } from './inline.ts';
import { type Extent, fields, heading, list, type Page, paragraph, typed } from './page.ts';
import { composeBudget, composeCurve } from './plan-compose-budget.ts';
import type { Report } from './report.ts';

type Planning = NonNullable<Report['planning']>;

const times = (part: number) => Math.round(part * 100);

/** So many lines at the top are told one by one: below, the order matters to nobody. */
const toldLines = 8;
const toldValues = 8;

function doubtTable({ report, say, words }: Page, doubt: Planning['doubt']): Block[] {
  const rows = doubt.lines.slice(0, toldLines).map(({ rank, topThree, from, to }) => {
    const job = report.jobs.find((one) => one.rank === rank);
    const places = from === to ? words('doubt.same', { from }) : words('doubt.range', { from, to });
    return [
      inline(`${rank}. ${job?.do ?? ''}`),
      say('doubt.of-100', { times: times(topThree) }),
      inline(places),
    ];
  });
  if (rows.length === 0) return [];
  return [{ kind: 'grid', head: [say('doubt.job'), say('doubt.top-three'), say('doubt.places')], rows }];
}

/** Two decimals, or three where two would show no difference. */
const digits = (value: number, other: number) => value.toFixed(value.toFixed(2) === other.toFixed(2) ? 3 : 2);

function sensitiveTable({ say, words, wording }: Page, { sensitive }: Planning['doubt']): Block[] {
  if (sensitive.length === 0) return [];
  const rows = sensitive
    .slice(0, toldValues)
    .map(({ element, what, readiness, changesAt, firstThree }) => [
      say(element.endsWith(':flame') ? 'doubt.flame' : 'doubt.embers', { what }),
      inline(digits(readiness, changesAt)),
      inline(digits(changesAt, readiness)),
      inline(
        wording.value({ list: firstThree.map((rank) => (rank > 0 ? rank : words('doubt.sensitive.off'))) }),
      ),
    ]);
  const head = ['what', 'now', 'at', 'then'].map((id) => say(`doubt.sensitive.${id}`));
  return [
    heading(3, say('doubt.sensitive')),
    paragraph(say('doubt.sensitive.intro')),
    { kind: 'grid', head, rows },
  ];
}

function doubtBlocks(page: Page, planning: Planning, extent: Extent): Block[] {
  const { doubt } = planning;
  if (doubt.lines.length < 2) return [];
  const { say } = page;
  return [
    heading(2, say('doubt')),
    paragraph(say('doubt.intro', { draws: doubt.draws })),
    paragraph(say('doubt.firm', { firm: doubt.firm, same: times(doubt.sameThree) })),
    ...list(
      doubt.tossUps.map(({ ranks }) => say('doubt.toss-up', { first: ranks[0] ?? 0, second: ranks[1] ?? 0 })),
    ),
    ...(extent === 'whole' ? [...doubtTable(page, doubt), ...sensitiveTable(page, doubt)] : []),
  ];
}

type BriefStop = Planning['visitBrief']['stops'][number];

function checkRow({ words }: Page, one: BriefStop['toCheck'][number]): Field {
  const why = words(`brief.because.${one.because}`);
  const name =
    one.where === null
      ? words('brief.check', { question: one.question, why })
      : words('brief.check.where', { question: one.question, where: one.where, why });
  const value =
    one.reported === null || one.typed
      ? one.how
      : words('brief.reported', { how: one.how, answer: one.reported });
  return { name: inline(name), value: inline(value) };
}

function knownRow({ words }: Page, one: BriefStop['reported'][number]): Field {
  const name = words(`brief.known.${one.how === 'seen' ? 'seen' : 'notSaid'}`, { question: one.question });
  return { name: inline(name), value: one.typed ? typed(one.answer) : inline(one.answer) };
}

/** The page for the assessor: stop by stop what to check and what was reported. */
export function composeBrief(page: Page, brief: Planning['visitBrief']): Block[] {
  const { report, say, wording } = page;
  const checks = brief.stops.flatMap((one) => one.toCheck);
  if (checks.length === 0) return [];
  const firsts = brief.first.flatMap((key) => checks.find((one) => one.key === key)?.question ?? []);
  const titleOf = (id: string): Spans => inline(report.stops.find((one) => one.id === id)?.title ?? id);
  return [
    heading(2, say('brief')),
    paragraph(say('brief.intro')),
    ...(firsts.length > 0
      ? [paragraph(say('brief.first', { questions: wording.value({ list: firsts }) }))]
      : []),
    ...brief.stops.flatMap(({ stop, toCheck, reported }) => [
      heading(3, titleOf(stop)),
      ...fields(toCheck.map((one) => checkRow(page, one))),
      ...(toCheck.length > 0 && reported.length > 0 ? [paragraph(say('brief.known'))] : []),
      ...fields(reported.map((one) => knownRow(page, one))),
    ]),
    ...(brief.leftOut > 0 ? [paragraph(say('brief.left-out', { count: brief.leftOut }))] : []),
  ];
}

/** What goes beyond the order of the list: the budget, how firm the order is, the curve, the brief. */
export function composePlan(page: Page, extent: Extent): Block[] {
  const { planning } = page.report;
  if (!planning) return [];
  return [
    ...(planning.budget ? composeBudget(page, planning.budget, extent) : []),
    ...doubtBlocks(page, planning, extent),
    ...(extent === 'whole'
      ? [...composeCurve(page, planning.curve), ...composeBrief(page, planning.visitBrief)]
      : []),
  ];
}
