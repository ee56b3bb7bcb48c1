import type { Token } from '../../answers/reading/tokens.ts';
import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { matchIdeas, meant } from '../reading/match.ts';
import { askWhich } from './choose.ts';
import { isEverything } from './meant-steps.ts';
import type { Said } from './said.ts';
import type { PendingChoice, PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

/** Gives the cautions named. */
export function giveCautions(state: PracticeState, ids: readonly string[]): PracticeTurned {
  const given = ids.map((caution) => ({ kind: 'cautioned', caution }) as const);
  const list = ids.map((id) => ({ text: `practice.caution/${id}` }));
  return { state: withEvents(state, given), parts: [say('practice.caution.noted', { cautions: { list } })] };
}

function splitList(tokens: readonly Token[]): Token[][] {
  const parts: Token[][] = [[]];
  for (const token of tokens) {
    if (token.text === 'and' || token.text === ',' || token.text === ';') parts.push([]);
    else parts.at(-1)?.push(token);
  }
  return parts.filter((part) => part.length > 0);
}

/** Reads one caution or several: a whole sentence of the flow, or a list of short names. */
export function caution(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const read = (tokens: readonly Token[]) =>
    meant(matchIdeas(practice.lexicon.cautions, contentOfTokens(practice.lexicon.reader, tokens).stems));
  if (isEverything(practice, said.rest)) return { state, parts: [say('practice.caution.what')] };
  const whole = read(said.rest);
  const [first] = whole;
  if (first && whole.length === 1 && first.score > 1) return giveCautions(state, [first.id]);
  const each = splitList(said.rest).map(read);
  if (each.length > 1 && each.every((matches) => matches.length === 1))
    return giveCautions(state, [...new Set(each.flatMap((matches) => matches.map((one) => one.id)))]);
  if (whole.length === 0) return { state, parts: [say('practice.caution.what')] };
  if (first && whole.length === 1) return giveCautions(state, [first.id]);
  const choice: PendingChoice = {
    verb: 'caution',
    ids: whole.map((one) => one.id),
    sides: [],
    text: said.text,
  };
  return askWhich(state, choice);
}
