import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { findPhrase } from '../reading/promise.ts';
import { advise } from './advise.ts';
import { ask } from './ask.ts';
import { caution } from './caution.ts';
import { find, takeBack } from './find.ts';
import { readJob, startFirstPage } from './first-page.ts';
import { go, goAlong } from './go.ts';
import { hint, listAdvice, listFindings, where } from './hint.ts';
import { look } from './look.ts';
import type { Said } from './said.ts';
import type { PracticeEvent, PracticeState } from './state.ts';
import { type PracticeTurned, withEvents, withPending } from './turned.ts';
import { unled, wonder } from './unled.ts';

/** A promise that must not be made, in words said to the resident. */
function promised(practice: Practice, said: Said): PracticeEvent[] {
  const spoken = said.verb === undefined || ['tell', 'advise', 'caution'].includes(said.verb);
  const { says, denies } = practice.content.words.promises;
  if (!spoken || findPhrase(said.tokens, says, denies) === undefined) return [];
  return [{ kind: 'promised', said: said.text }];
}

/** An act by which a trainee or resident gets hurt, when it is to be done now and not warned of. */
function unsafeAct(practice: Practice, said: Said): string | undefined {
  if (said.verb !== undefined && !['go', 'look', 'tell'].includes(said.verb)) return undefined;
  const { unsafe, promises } = practice.content.words;
  return unsafe.find((one) => findPhrase(said.tokens, one.words, promises.denies) !== undefined)?.id;
}

function doIt(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  switch (said.verb) {
    case undefined:
    case 'everything':
      return unled(practice, state, said);
    case 'go':
      return go(practice, state, said.rest);
    case 'next':
      return goAlong(practice, state, 1);
    case 'back':
      return goAlong(practice, state, -1);
    case 'wonder':
      return wonder(practice, state, said);
    case 'look':
      return look(practice, state, said.rest);
    case 'ask':
      return ask(practice, state, said.rest);
    case 'find':
      return find(practice, state, said);
    case 'takeBack':
      return takeBack(practice, state, said);
    case 'advise':
      return advise(practice, state, said);
    case 'caution':
      return caution(practice, state, said);
    case 'tell':
      return { state, parts: [say('practice.tell.heard')] };
    case 'hint':
      return hint(practice, state);
    case 'findings':
      return listFindings(practice, state);
    case 'advised':
      return listAdvice(state);
    case 'where':
      return where(practice, state);
    case 'firstPage':
      return startFirstPage(state);
    case 'help':
      return { state, parts: [say('practice.help')] };
    case 'pause':
      return { state: { ...state, phase: 'paused', before: 'walking' }, parts: [say('practice.paused')] };
    case 'done':
      return { state: withPending(state, { kind: 'done' }), parts: [say('practice.done.sure')] };
  }
}

/** On the page only jobs are read, and the few words that lead out of it. */
function onFirstPage(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  if (said.verb === 'pause')
    return { state: { ...state, phase: 'paused', before: 'firstPage' }, parts: [say('practice.paused')] };
  if (said.verb === 'done' || said.verb === 'go')
    return { state: { ...state, phase: 'walking' }, parts: [say('practice.page.left')] };
  return said.verb === 'help'
    ? { state, parts: [say('practice.page.help')] }
    : readJob(practice, state, said);
}

/** Does what a trainee says; promises and unsafe acts are remembered whatever else is meant. */
export function dispatch(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const unsafe = unsafeAct(practice, said);
  if (unsafe !== undefined) {
    const part = say('practice.unsafe', { about: { text: `practice.unsafe/${unsafe}` } }, 'warning');
    return { state: withEvents(state, [{ kind: 'unsafe', id: unsafe }]), parts: [part] };
  }
  const promises = promised(practice, said);
  const known = withEvents(state, promises);
  if (known.phase === 'firstPage') return onFirstPage(practice, known, said);
  const turned = doIt(practice, known, said);
  const spokenOnly = said.verb === undefined && promises.length > 0;
  return spokenOnly ? { state: known, parts: [say('practice.tell.heard')] } : turned;
}
