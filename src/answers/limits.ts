import { readBound } from '../flow/bound.ts';
import type { Flow } from '../flow/flow.ts';
import type { Limit, Rulebook } from '../flow/schema/rulebook.ts';

/** A limit in force at a place. */
export interface LimitInForce {
  readonly id: string;
  /** Metres for a length, percent for a slope, a plain number, or yes/no. */
  readonly value: number | boolean;
  readonly dimension: 'length' | 'slope' | 'number' | 'flag';
  readonly limit: Limit;
  /** The rulebook that sets it. */
  readonly rulebook: string;
}

export type Limits = ReadonlyMap<string, LimitInForce>;

function inForce(id: string, limit: Limit, rulebook: string): LimitInForce {
  const { value } = limit;
  const base = { id, limit, rulebook };
  if (typeof value === 'boolean') return { ...base, value, dimension: 'flag' };
  if (typeof value === 'number') return { ...base, value, dimension: 'number' };
  const metres = readBound(value, 'length');
  if (typeof metres === 'number') return { ...base, value: metres, dimension: 'length' };
  const percent = readBound(value, 'slope');
  return { ...base, value: typeof percent === 'number' ? percent : Number.NaN, dimension: 'slope' };
}

function layers(flow: Flow, id: string): Rulebook[] {
  const own = flow.rulebooks.find((one) => one.id === id);
  if (!own || own.id === flow.walk.generalRulebook) return [];
  return [...layers(flow, own.over ?? flow.walk.generalRulebook), own];
}

/** The limits in force under a rulebook: the general ones, overlaid by those of the place. */
export function limitsOf(flow: Flow, rulebookId: string): Limits {
  const general = flow.rulebooks.find((one) => one.id === flow.walk.generalRulebook);
  const books = [...(general ? [general] : []), ...layers(flow, rulebookId)];
  return new Map(
    books.flatMap((book) =>
      Object.entries(book.limits).map(([id, limit]) => [id, inForce(id, limit, book.id)]),
    ),
  );
}
