import type { WordedAsk } from '../wording/worded.ts';

/** A choice with what picks it: its number, or its letter where a bare number is a measure. */
export function choiceLine({ number, letter, label }: WordedAsk['choices'][number]): string {
  return `${number === 0 ? letter : number} ${label}`;
}
