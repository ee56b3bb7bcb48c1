import { drawCurve } from '../planning/draw-curve.ts';
import type { Value } from '../wording/say.ts';
import { type Block, plainWords } from './document.ts';
import { inline } from './inline.ts';
import { type Extent, heading, list, money, type Page, paragraph } from './page.ts';
import type { Report } from './report.ts';

type Planning = NonNullable<Report['planning']>;
type Budget = NonNullable<Planning['budget']>;
type Range = Budget['money'];

const half = (hours: number) => Math.round(hours * 2) / 2;
const percent = (part: number) => Math.round(part * 100);

function moneyOf(page: Page, currency: string | null, amount: number): Value {
  const whole = Math.round(amount);
  return currency === null ? String(whole) : money(page, whole, currency);
}

function rangeText(page: Page, currency: string | null, { low, high }: Range): string {
  const { wording, words } = page;
  const [least, most] = [low, high].map((end) => wording.value(moneyOf(page, currency, end)));
  return least === most ? `${most}` : words('range', { low: `${least}`, high: `${most}` });
}

function hoursText({ words }: Page, { low, high }: Range): string {
  return half(low) === half(high) ? String(half(high)) : words('range', { low: half(low), high: half(high) });
}

function intro(page: Page, { limits, currency }: Budget): Block {
  const limit = limits.money === null ? 'hours' : limits.hours === null ? 'money' : 'both';
  return paragraph(
    page.say('budget.intro', {
      limit,
      money: moneyOf(page, currency, limits.money ?? 0),
      hours: limits.hours ?? 0,
    }),
  );
}

function stepText(page: Page, budget: Budget, what: 'money' | 'hours'): Block[] {
  const step = what === 'money' ? budget.moreMoney : budget.moreHours;
  if (!step || budget.possible === 0) return [];
  const { words, say, report } = page;
  const nameOf = (id: string) =>
    [...budget.actions, ...budget.leftOut, ...report.actions].find((one) => one.id === id)?.do ?? id;
  const jobs = step.newActions.map(nameOf).join(' ');
  const told =
    step.dropped.length > 0
      ? words('budget.instead-of', { jobs, dropped: step.dropped.map(nameOf).join(' ') })
      : jobs;
  const extra = what === 'money' ? moneyOf(page, budget.currency, step.extra) : step.extra;
  return [
    paragraph(say(`budget.more-${what}`, { adds: percent(step.adds / budget.possible), extra, jobs: told })),
  ];
}

/** So many jobs that are left out are told. */
const toldLeftOut = 8;

function leftOut(page: Page, { leftOut: all, currency }: Budget): Block[] {
  const { say } = page;
  const lines = all
    .filter((one) => one.why === 'noPrice' || (one.why === 'limit' && one.adds > 0))
    .slice(0, toldLeftOut);
  if (lines.length === 0) return [];
  return [
    heading(3, say('budget.left-out')),
    ...list(
      lines.map((one) =>
        one.why === 'noPrice'
          ? say('budget.left-out.no-price', { do: one.do })
          : say('budget.left-out.line', {
              do: one.do,
              cost: rangeText(page, currency, one.money),
              hours: hoursText(page, one.hours),
            }),
      ),
    ),
  ];
}

/** The set of jobs that fits, what it costs and takes off, and what a little more would add. */
export function composeBudget(page: Page, budget: Budget, extent: Extent): Block[] {
  const { say, wording } = page;
  if (budget.actions.length === 0) {
    return [
      heading(2, say('budget')),
      intro(page, budget),
      paragraph(say('budget.none')),
      ...leftOut(page, budget),
    ];
  }
  const rows = budget.actions.map((one) => [
    inline(one.do),
    inline(rangeText(page, budget.currency, one.money)),
    inline(hoursText(page, one.hours)),
  ]);
  const low = wording.value(moneyOf(page, budget.currency, budget.money.low));
  const high = wording.value(moneyOf(page, budget.currency, budget.money.high));
  const part = budget.possible > 0 ? percent(budget.takenOff / budget.possible) : 0;
  return [
    heading(2, say('budget')),
    intro(page, budget),
    { kind: 'grid', head: [say('budget.job'), say('budget.cost'), say('budget.hours')], rows },
    paragraph(say('budget.sum', { low, high, hours: hoursText(page, budget.hours), part })),
    paragraph(
      budget.exact
        ? say('budget.exact')
        : say('budget.gap', { gap: Math.max(1, Math.ceil(budget.gap * 100)) }),
    ),
    ...stepText(page, budget, 'money'),
    ...stepText(page, budget, 'hours'),
    ...(extent === 'whole' ? leftOut(page, budget) : []),
  ];
}

const drawingSize = { width: 60, height: 8 };

/** The curve against money and against hours, where it moves along them. */
function drawings({ say }: Page, curve: Planning['curve']): Block[] {
  const last = curve.points.at(-1);
  return (['money', 'hours'] as const).flatMap((against): Block[] => {
    if (!last || last[against].high === 0) return [];
    const name = say(`curve.against.${against}`, { currency: curve.currency ?? '' });
    return [{ kind: 'drawing', lines: [plainWords(name), ...drawCurve(curve, against, drawingSize)] }];
  });
}

/** What is left of the ways in after each job, against money and hours. */
export function composeCurve(page: Page, curve: Planning['curve']): Block[] {
  const { points, floor, currency } = curve;
  const { say, words, wording } = page;
  if (points.length < 2) return [];
  const rows = points.map((point) => [
    inline(point.do ?? words('curve.start')),
    inline(wording.value(moneyOf(page, currency, point.money.high))),
    inline(String(half(point.hours.high))),
    inline(String(percent(point.left))),
  ]);
  const head = ['job', 'cost', 'hours', 'left'].map((id) => say(`curve.${id}`));
  return [
    heading(2, say('curve')),
    paragraph(say('curve.intro', { floor: percent(floor) })),
    ...drawings(page, curve),
    { kind: 'grid', head, rows },
  ];
}
