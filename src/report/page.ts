import type { Value, Values } from '../wording/say.ts';
import type { Wording } from '../wording/wording.ts';
import type { Block, Field, Spans } from './document.ts';
import { inline } from './inline.ts';
import type { Report } from './report.ts';

/** The whole report; the part that fits the end of a walk on a screen (the list and what to mind); or the budget alone. */
export type Extent = 'whole' | 'screen' | 'budget';

/** What every section of the document is written with. */
export interface Page {
  readonly report: Report;
  readonly wording: Wording;
  /** A sentence of the flow. */
  readonly say: (id: string, values?: Values) => Spans;
  readonly words: (id: string, values?: Values) => string;
}

/** Makes the page of a report. Its phrases are `report.*` of the flow. */
export function openPage(report: Report, wording: Wording): Page {
  const words = (id: string, values?: Values) => wording.text(`report.${id}`, values);
  return { report, wording, words, say: (id, values) => inline(words(id, values)) };
}

/** Prices of the United States for a reader who lives elsewhere, as far as the place or the units tell. */
export const pricesFromAbroad = ({ walk, rulebook }: Report, currency: string): boolean =>
  currency === 'USD' && (rulebook.currency !== currency || walk.units === 'metric');

/** An amount of money as it is said to the reader of a report. */
export const money = ({ report }: Page, amount: number, currency: string): Value => ({
  money: amount,
  currency,
  abroad: pricesFromAbroad(report, currency),
});

/** With a capital first. */
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What a person typed: shown as it is. */
export const typed = (text: string): Spans => [{ kind: 'typed', text }];

export const heading = (level: 1 | 2 | 3, spans: Spans): Block => ({ kind: 'heading', level, spans });

export const paragraph = (spans: Spans, tone: 'plain' | 'first' | 'quiet' = 'plain'): Block => ({
  kind: 'paragraph',
  tone,
  spans,
});

/** A list, or nothing when it has no items. */
export function list(items: readonly Spans[], ordered = false): Block[] {
  return items.length > 0 ? [{ kind: 'list', ordered, items }] : [];
}

/** Named values, or nothing when there are none. */
export function fields(rows: readonly (Field | undefined)[]): Block[] {
  const there = rows.flatMap((row) => row ?? []);
  return there.length > 0 ? [{ kind: 'fields', rows: there }] : [];
}

/** Numbers of jobs as people say them: "3 and 5". */
export const numbers = (list: readonly number[], join: 'and' | 'or' = 'and'): Value => ({
  list: [...list].sort((a, b) => a - b),
  join,
});
