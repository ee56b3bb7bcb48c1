import { didYouMean } from '../flow/did-you-mean.ts';
import type { FlowDocument } from '../flow/document.ts';
import type { Flow } from '../flow/flow.ts';
import type { FlowProblem } from '../flow/problem.ts';
import type { PriceList } from '../planning/prices.ts';
import { readYaml } from './read-yaml.ts';

/** A price list as read, or all that makes it unusable. */
export type ReadPrices =
  | { readonly prices: PriceList; readonly problems?: undefined }
  | { readonly prices?: undefined; readonly problems: readonly FlowProblem[] };

type Path = readonly (string | number)[];
type Price = { readonly low: number; readonly high: number };

interface Reading {
  readonly flow: Flow;
  readonly document: FlowDocument;
  readonly problems: FlowProblem[];
}

const keys = ['currency', 'year', 'rate', 'prices'] as const;

const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isAmount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value) && value >= 0;

function fault({ document, problems }: Reading, path: Path, problem: string, suggestion?: string): undefined {
  const place = { path: document.path, ...document.positionOf(path), at: path.join('.') };
  problems.push({ ...place, problem, ...(suggestion === undefined ? {} : { suggestion }) });
  return undefined;
}

function readPrice(reading: Reading, id: string, value: unknown): Price | undefined {
  const path = ['prices', id];
  if (isAmount(value)) return { low: value, high: value };
  if (!isMapping(value)) return fault(reading, path, 'a price is a number, or { low: …, high: … }.');
  for (const key of Object.keys(value)) {
    if (key !== 'low' && key !== 'high')
      fault(reading, [...path, key], `"${key}" is not known here.`, didYouMean(key, ['low', 'high']));
  }
  const { low, high } = value;
  if (!isAmount(low) || !isAmount(high))
    return fault(reading, path, 'low and high are both needed, as numbers from 0 up.');
  return low > high ? fault(reading, path, `low (${low}) is above high (${high}).`) : { low, high };
}

function readLines(reading: Reading, value: unknown): Map<string, Price> {
  const lines = new Map<string, Price>();
  if (!isMapping(value)) {
    fault(reading, ['prices'], '"prices" maps price lines to prices, such as "gravel: 1.20".');
    return lines;
  }
  const known = new Set(reading.flow.costs.map((cost) => cost.id));
  for (const [id, written] of Object.entries(value)) {
    if (!known.has(id))
      fault(reading, ['prices', id], `there is no price line "${id}".`, didYouMean(id, known));
    const price = readPrice(reading, id, written);
    if (price) lines.set(id, price);
  }
  return lines;
}

function readCurrency(reading: Reading, root: Record<string, unknown>): { currency: string; rate: number } {
  const usual = reading.flow.costs[0]?.currency ?? 'USD';
  const { currency = usual, rate } = root;
  if (typeof currency !== 'string' || !/^[A-Z]{3}$/.test(currency)) {
    fault(reading, ['currency'], 'a currency has three capital letters, such as USD.');
    return { currency: usual, rate: 1 };
  }
  if (rate !== undefined && !(isAmount(rate) && rate > 0))
    fault(reading, ['rate'], 'a rate is a number above 0.');
  if (currency !== usual && rate === undefined)
    fault(
      reading,
      ['currency'],
      `lines that you do not name are in ${usual}: say under "rate" what 1 ${usual} costs in ${currency}.`,
    );
  if (currency === usual && rate !== undefined && rate !== 1)
    fault(reading, ['rate'], `a rate goes with another currency than ${usual}.`);
  return { currency, rate: isAmount(rate) && rate > 0 ? rate : 1 };
}

/**
 * Reads a price list (YAML or JSON): `prices` maps price lines to a number or `{ low, high }` for one unit of the line;
 * `currency`, `year` and, for another currency than that of the flow, `rate` are optional.
 */
export function readPrices(flow: Flow, path: string, text: string): ReadPrices {
  const { document, problems } = readYaml(path, text);
  const reading: Reading = { flow, document, problems: [...problems] };
  if (problems.length > 0) return { problems };
  const root = document.value;
  if (!isMapping(root)) {
    fault(reading, [], 'a price list starts with "prices:", and below it lines such as "gravel: 1.20".');
    return { problems: reading.problems };
  }
  for (const key of Object.keys(root)) {
    if (!keys.some((known) => known === key))
      fault(reading, [key], `"${key}" is not known here.`, didYouMean(key, keys));
  }
  const lines = readLines(reading, root['prices']);
  const { currency, rate } = readCurrency(reading, root);
  const year = root['year'];
  if (year !== undefined && !Number.isInteger(year)) fault(reading, ['year'], 'a year is a whole number.');
  if (reading.problems.length > 0) return { problems: reading.problems };
  return { prices: { currency, rate, year: typeof year === 'number' ? year : undefined, lines } };
}
