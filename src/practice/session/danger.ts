import { findDanger } from '../../answers/reading/read-emergency.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { type Ideas, matchIdeas, meant } from '../reading/match.ts';
import type { Said } from './said.ts';

/** Words of danger in a message, and whether the message explains them: a caution about burning is no alarm. */
export interface HeardDanger {
  readonly sure: boolean;
  readonly matched: string;
}

function ideasFor(practice: Practice, said: Said): Ideas | undefined {
  switch (said.verb) {
    case 'ask':
      return practice.lexicon.questions;
    case 'caution':
      return practice.lexicon.cautions;
    case 'advise':
      return practice.lexicon.actions;
    case 'find':
    case 'takeBack':
      return practice.lexicon.findings;
    default:
      return undefined;
  }
}

/**
 * A word of danger is explained where the message is a command and the thing it names has that word among its own.
 * A sure cry is explained only in a question, a caution or advice: "I find flames on the roof" is an emergency.
 */
export function heardDanger(practice: Practice, said: Said): HeardDanger | undefined {
  const { flow } = practice.programme.checklist;
  const danger = findDanger(said.tokens, practice.words, flow.questions);
  if (!danger) return undefined;
  const ideas = ideasFor(practice, said);
  const heard = { sure: danger.sure, matched: danger.matched };
  if (!ideas || (danger.sure && said.verb !== 'ask' && said.verb !== 'caution' && said.verb !== 'advise'))
    return said.verb === 'look' && !danger.sure ? undefined : heard;
  const { reader } = practice.lexicon;
  const matches = meant(matchIdeas(ideas, contentOfTokens(reader, said.rest).stems));
  const loud = contentOfTokens(reader, danger.tokens).stems;
  const explained = matches.some(({ id, score }) => {
    const idea = ideas.list.find((one) => one.id === id);
    return score >= 0.5 && idea !== undefined && loud.every((stem) => idea.weights.has(stem));
  });
  return explained ? undefined : heard;
}
