import { cleanText } from '../../answers/reading/clean-text.ts';
import { tokenise } from '../../answers/reading/tokens.ts';
import type { Message, Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import { makeDebrief } from '../debrief/make-debrief.ts';
import { debriefParts } from '../debrief/say-debrief.ts';
import type { Practice } from '../practice.ts';
import { partMessage } from '../reading/verb.ts';
import { alarmAnswered, alarmIgnored, answersAlarm, isAlarmOpen } from './alarm.ts';
import { heardDanger } from './danger.ts';
import { dispatch } from './dispatch.ts';
import { askSafe, goOn, stopForEmergency } from './emergency.ts';
import { opening } from './opening.ts';
import { givenUp, takeChoice, takePlace } from './pending.ts';
import type { Said } from './said.ts';
import type { PracticeState } from './state.ts';
import { type PracticeTurned, withoutPending, withPending } from './turned.ts';

/** What is said back, and the choices offered; ids and values, never finished sentences. */
export interface PracticeReply {
  readonly parts: readonly Part[];
  readonly choices: NonNullable<PracticeTurned['choices']>;
  readonly phase: PracticeState['phase'];
  readonly stop: string | undefined;
  readonly revision: number;
}

function saidBy(practice: Practice, raw: string): Said {
  const text = cleanText(raw);
  const tokens = tokenise(text.toLowerCase());
  return { text, tokens, ...partMessage(practice.verbs, tokens) };
}

function readYesNo(practice: Practice, text: string): 'yes' | 'no' | undefined {
  const said = text.toLowerCase().replace(/[.!]+$/, '');
  if (practice.words.yes.includes(said)) return 'yes';
  return practice.words.no.includes(said) ? 'no' : undefined;
}

/** The session ends: the debrief takes the place of the walk. */
export function finish(practice: Practice, state: PracticeState): PracticeTurned {
  const ended: PracticeState = { ...withoutPending(state), phase: 'debriefed' };
  return { state: ended, parts: debriefParts(practice, ended, makeDebrief(practice, ended)) };
}

function takePending(practice: Practice, state: PracticeState, said: Said): PracticeTurned | undefined {
  const { pending } = state;
  if (!pending) return undefined;
  switch (pending.kind) {
    case 'emergency':
      // Not a clear no is taken as yes: a false order to leave costs a minute.
      if (readYesNo(practice, said.text) !== 'no') return stopForEmergency(practice, state);
      return { state: withoutPending(state), parts: [say('emergency.not-one')] };
    case 'done':
      if (readYesNo(practice, said.text) === 'yes' || said.verb === 'done') return finish(practice, state);
      return readYesNo(practice, said.text) === 'no'
        ? { state: withoutPending(state), parts: [say('practice.done.not-yet')] }
        : undefined;
    case 'choice':
      return takeChoice(practice, state, said.text);
    case 'place':
      return takePlace(practice, state, said.text);
  }
}

/** The trainee's own emergency before anything else; a played alarm is answered only by words to the resident. */
function takeText(practice: Practice, state: PracticeState, raw: string): PracticeTurned {
  const said = saidBy(practice, raw);
  const danger = heardDanger(practice, said);
  if (answersAlarm(practice, state, said, danger?.sure === true)) return alarmAnswered(withoutPending(state));
  if (danger?.sure) return stopForEmergency(practice, state);
  if (state.phase === 'emergency') {
    const safe = readYesNo(practice, said.text);
    if (safe === 'yes') return goOn(state, 'emergency.go-on');
    return safe === 'no' ? stopForEmergency(practice, state) : askSafe(state);
  }
  if (state.phase === 'paused') return goOn(state, 'practice.resumed');
  const settled = takePending(practice, state, said);
  if (settled) return settled;
  if (danger)
    return {
      state: withPending(state, { kind: 'emergency', matched: danger.matched }),
      parts: [say('emergency.is-it', { said: danger.matched }, 'warning')],
    };
  if (state.phase === 'debriefed') return { state, parts: [say('practice.debriefed')] };
  const first = isAlarmOpen(state) ? alarmIgnored(state) : { state, parts: [] };
  const dropped = first.state.pending ? givenUp(first.state) : { state: first.state, parts: [] };
  const turned = dispatch(practice, dropped.state, said);
  return { ...turned, parts: [...first.parts, ...dropped.parts, ...turned.parts] };
}

function take(practice: Practice, state: PracticeState, message: Message): PracticeTurned {
  switch (message.kind) {
    case 'hello':
      return opening(practice, state);
    case 'emergency':
      return stopForEmergency(practice, state);
    case 'carrier':
      return { state, parts: [say('practice.help')] };
    case 'text':
      return takeText(practice, state, message.text);
    case 'choose':
      return takeText(practice, state, message.option);
  }
}

/** One turn of a practice session: pure and synchronous. */
export function practiceTurn(
  practice: Practice,
  state: PracticeState,
  message: Message,
): { readonly state: PracticeState; readonly reply: PracticeReply } {
  const turned = take(practice, state, message);
  const next = { ...turned.state, revision: state.revision + 1 };
  const { phase, at, revision } = next;
  return {
    state: next,
    reply: { parts: turned.parts, choices: turned.choices ?? [], phase, stop: at, revision },
  };
}
