import { findDanger } from '../../answers/reading/read-emergency.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { type Ideas, matchIdeas, meant } from '../reading/match.ts';
import { findPhrase } from '../reading/promise.ts';
import type { Said } from './said.ts';

/** Words of danger in a message, and whether the message explains them: a caution about burning is no alarm. */
export interface HeardDanger {
  readonly sure: boolean;
  readonly matched: string;
}

const self = new Set(['i', 'me', 'my', 'mine', 'we', 'us', 'our', 'here']);

/** "Is there any smoke?" asks the played resident; "is that smoke?" and "is there smoke near me?" do not. */
function asksWhether(said: Said): boolean {
  return said.tokens.some(({ text }) => ['any', 'there', 'you'].includes(text)) && !isAboutSelf(said);
}

/** What comes after the leading words: the "I" of "I advise" is no trainee in danger. */
const isAboutSelf = ({ rest }: Said): boolean => rest.some(({ text }) => self.has(text));

/** An order to leave, given to the played resident, also when no alarm is played or it is over. */
function sendsAway(practice: Practice, said: Said): boolean {
  const { leave, promises } = practice.content.words;
  const isTold = said.verb === 'tell' || said.verb === 'advise';
  const isOrder = isTold && findPhrase(said.rest, leave, promises.denies) !== undefined;
  return isOrder && !isAboutSelf(said);
}

/** What the played resident is spoken to about explains even a sure cry: "have you been told to leave?" */
function speaksToResident(said: Said): boolean {
  const { verb, tokens } = said;
  if (isAboutSelf(said)) return false;
  if (verb === 'wonder') return tokens.some(({ text }) => text === 'you');
  return verb === 'ask' || verb === 'caution' || verb === 'advise';
}

/** "Is there any smoke or an order to leave?", "I ask the resident whether they see flames": the trainee asks, and tells nothing. */
const asksAboutDanger = (said: Said): boolean =>
  (said.verb === 'wonder' && asksWhether(said)) || (said.verb === 'ask' && !isAboutSelf(said));

function ideasFor(practice: Practice, said: Said): Ideas | undefined {
  switch (said.verb) {
    case 'wonder':
      return asksWhether(said) ? practice.lexicon.questions : undefined;
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
  if (!danger || sendsAway(practice, said) || asksAboutDanger(said)) return undefined;
  const ideas = ideasFor(practice, said);
  const heard = { sure: danger.sure, matched: danger.matched };
  if (!ideas || (danger.sure && !speaksToResident(said)))
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
