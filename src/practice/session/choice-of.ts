import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import type { Match } from '../reading/match.ts';
import { findNamedMember } from '../reading/places.ts';
import type { Said } from './said.ts';
import type { PendingChoice } from './state.ts';

/** What a message means by one of some things, with the places that it names. */
export function choiceOf(
  practice: Practice,
  said: Said,
  verb: PendingChoice['verb'],
  matches: readonly Match[],
): PendingChoice {
  const { sides } = contentOfTokens(practice.lexicon.reader, said.rest);
  const member = findNamedMember(practice.programme.checklist.flow.groups, said.rest);
  return {
    verb,
    ids: matches.map((match) => match.id),
    sides,
    ...(member ? { member } : {}),
    text: said.text,
  };
}
