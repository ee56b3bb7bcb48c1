import type { Answer } from '../answers/answer.ts';
import type { Side } from '../flow/schema/base.ts';

/**
 * The id of a text of the flow: a phrase (`walk.not-understood`), or a part of it:
 * `question/roof.covering/ask`, `option/roof.covering/tile`, `stop/roof/title`, `finding/…/say`, `action/…/do`,
 * `action/…/how.0`, `caution/…`, `element/…`, `way/…`, `limit/…`.
 */
export type TextId = string;

export type Audience = 'resident' | 'volunteer' | 'trainee';
export type UnitSystem = 'imperial' | 'metric';

/** A value inside a text, said only when the text is: its unit and language are the reader's. */
export type Value =
  | string
  | number
  | { readonly text: TextId; readonly values?: Values }
  | { readonly metres: number }
  | { readonly percent: number }
  /** With `abroad` the currency is named in full, since the reader has another one of the same sign: US$5. */
  | { readonly money: number; readonly currency: string; readonly abroad?: boolean }
  | { readonly sides: readonly Side[] }
  | { readonly member: { readonly group: string; readonly key: string; readonly number: number } }
  | { readonly answer: Answer; readonly question: string }
  /** Joined as a list: "a, b and c", or "a, b or c". */
  | { readonly list: readonly Value[]; readonly join?: 'and' | 'or' };
export type Values = Readonly<Record<string, Value>>;

/** A text to be said, with what goes into it. */
export interface Say {
  readonly text: TextId;
  readonly values?: Values;
}
