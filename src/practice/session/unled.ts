import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { matchIdeas } from '../reading/match.ts';
import { advise } from './advise.ts';
import { ask } from './ask.ts';
import { find } from './find.ts';
import { goTo, namedStop, titledStop } from './go.ts';
import { look } from './look.ts';
import { meantSteps } from './meant-steps.ts';
import type { Said } from './said.ts';
import type { PracticeState } from './state.ts';
import type { PracticeTurned } from './turned.ts';

/** Said without "I find", a finding must fit this well before it is written down. */
const surely = 0.75;
const likely = 0.5;

/** A question without "ask": what is here and can be seen is looked at, all else the resident is asked. */
export function wonder(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const { steps, everything } = meantSteps(practice, state, said.rest, undefined);
  const toResident = said.tokens.some(({ text }) => text === 'you' || text === 'your');
  const visibleHere = steps.some(
    (step) => step.question.stop === state.at && !practice.askOnly.has(step.question.id),
  );
  const named = titledStop(practice, said.rest) !== undefined;
  if (everything && !named) return { state, parts: [say('practice.not-understood')] };
  return !toResident && (named || visibleHere)
    ? look(practice, state, said.rest)
    : ask(practice, state, said.rest);
}

/** What is said with no word for what is done with it: a part to go to, a finding, or a thing to look at. */
export function unled(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const { yes, no } = practice.words;
  if ([...yes, ...no].includes(said.text.toLowerCase().replace(/[.!]+$/, '')))
    return { state, parts: [say('practice.go-ahead')] };
  const stop = namedStop(practice, said.tokens);
  if (stop !== undefined)
    return stop === state.at ? look(practice, state, said.tokens) : goTo(practice, state, stop);
  const { lexicon } = practice;
  const { stems } = contentOfTokens(lexicon.reader, said.tokens);
  const [finding, job, thing] = [lexicon.findings, lexicon.actions, lexicon.questions].map(
    (ideas) => matchIdeas(ideas, stems)[0],
  );
  const most = Math.max(finding?.score ?? 0, job?.score ?? 0, thing?.score ?? 0);
  if (lexicon.doing.has(stems[0] ?? ''))
    return (job?.score ?? 0) >= likely
      ? advise(practice, state, { ...said, rest: said.tokens })
      : { state, parts: [say('practice.unled')] };
  const here = practice.programme.checklist.index.questions.get(thing?.id ?? '')?.stop === state.at;
  if (here && thing?.score === most && most >= surely) return look(practice, state, said.tokens);
  if (finding?.score === most && most >= surely && stems.length > 1) return find(practice, state, said);
  return { state, parts: [say(most >= likely ? 'practice.unled' : 'practice.not-understood')] };
}
