import type { Values } from '../wording/say.ts';
import type { Block } from './document.ts';
import { money, type Page, paragraph, pricesFromAbroad } from './page.ts';
import type { ReportJob } from './report.ts';

type Range = ReportJob['hours'];

/** A range of money by the phrases `short.cost` or `cost`: one amount, up to an amount, or from one to another. */
function rangeText(
  page: Page,
  id: string,
  { low, high }: Range,
  currency: string,
  values: Values = {},
): string {
  const [least, most] = [roundMoney(low), roundMoney(high)];
  const kind = high - low < 1 ? '.one' : least === 0 ? '.up-to' : '';
  return page.words(`${id}${kind}`, {
    low: money(page, least, currency),
    high: money(page, most, currency),
    ...values,
  });
}

/** Goods and hired hands together; nothing where no price is known, or nothing is to be paid. */
function priceOf({ cost, onTop: { hired } }: ReportJob): Range | undefined {
  if (!cost && !hired) return undefined;
  return { low: (cost?.low ?? 0) + (hired?.low ?? 0), high: (cost?.high ?? 0) + (hired?.high ?? 0) };
}

/** What a job costs in a line of the short list. */
export function shortCost(page: Page, job: ReportJob): string {
  const price = priceOf(job);
  if (!price) return page.words(`short.cost.${job.lane === 'hand' ? 'none' : 'unknown'}`);
  return rangeText(page, 'short.cost', price, job.onTop.currency);
}

/** What a job costs in full, with year and status, and what a budget adds for the visit of a trade. */
export function costText(page: Page, job: ReportJob): string {
  const { words } = page;
  const { cost, lane, onTop } = job;
  const price = priceOf(job);
  if (!price) return words(`cost.${lane === 'hand' ? 'none' : 'unknown'}`);
  const known = {
    hired: onTop.hired ? 'yes' : 'no',
    year: cost ? String(cost.year) : 'none',
    status: words(`cost.known.${cost?.status ?? 'memory'}`),
  };
  return [
    rangeText(page, 'cost', price, onTop.currency, known),
    ...(onTop.visit ? [rangeText(page, 'cost.visit', onTop.visit, onTop.currency)] : []),
  ].join(' ');
}

/** Two figures are all an estimate carries. */
function roundMoney(amount: number): number {
  if (amount < 20) return Math.round(amount);
  const step = 10 ** Math.floor(Math.log10(amount) - 1);
  return Math.round(amount / step) * step;
}

/** What the prices of the list leave out, and where they come from. */
export function composePriceNotes(page: Page): Block[] {
  const { report, say } = page;
  const priced = [...report.jobs, ...report.alsoWorth].filter((job) => priceOf(job));
  const visit = priced.some((job) => job.onTop.visit);
  const abroad = priced.some((job) => pricesFromAbroad(report, job.onTop.currency));
  return [
    ...(abroad ? [paragraph(say('prices.abroad'))] : []),
    ...(visit ? [paragraph(say('prices.visit'))] : []),
  ];
}
