import type { Answer } from '../../answers/answer.ts';
import type { Step } from '../../answers/path.ts';
import type { Token } from '../../answers/reading/tokens.ts';
import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import { optionIds } from '../../flow/checks/check-condition.ts';
import type { Value, Values } from '../../wording/say.ts';
import { createRandom, drawOne } from '../house/random.ts';
import type { Practice } from '../practice.ts';
import { knownHouse } from './known.ts';
import { meantSteps } from './meant-steps.ts';
import { memberValue } from './say-place.ts';
import type { PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

interface Told {
  readonly part: Part;
  readonly truth: boolean;
}

const hash = (text: string): number =>
  [...text].reduce((value, letter) => (Math.imul(value, 31) + (letter.codePointAt(0) ?? 0)) >>> 0, 7);

/** An answer that is not so, the same each time it is asked. */
function exaggerated(state: PracticeState, step: Step, answer: Answer): Value | undefined {
  const { question } = step;
  if (question.kind !== 'choice' && question.kind !== 'yesNo') return undefined;
  const flat = answer.status === 'bySide' ? Object.values(answer.sides) : [answer];
  const so = new Set(flat.map((one) => (one.status === 'given' ? String(one.value) : '')));
  const others = optionIds(question).filter((id) => !so.has(id));
  const random = createRandom(state.house.seed ^ hash(step.key));
  const id = drawOne(
    random,
    others.map((one) => [one, 1] as const),
  );
  return id === undefined ? undefined : { answer: { status: 'given', value: id }, question: question.id };
}

function valuesOf(practice: Practice, state: PracticeState, step: Step): Values {
  const thing = { text: `question/${step.question.id}/short` };
  if (step.group === undefined || step.member === undefined) return { thing };
  return { thing, member: memberValue(knownHouse(practice, state).assessment, step.group, step.member) };
}

function timesAsked(state: PracticeState, step: Step): number {
  return state.events.filter((event) => event.kind === 'asked' && event.key === step.key).length;
}

/** What the resident says: only they know some things, and those come out at the second time of asking at the latest. */
function tell(practice: Practice, state: PracticeState, step: Step): Told {
  const { temper, sheet } = state.house;
  const answer = sheet[step.key];
  const onlyThey = practice.askOnly.has(step.question.id);
  const again = timesAsked(state, step) > 0;
  const values = valuesOf(practice, state, step);
  const isMember = 'member' in values;
  const known = answer !== undefined && answer.status !== 'notSure' && answer.status !== 'skipped';
  if (!known) return { part: say('practice.says.does-not-know', values), truth: true };
  const truth = { ...values, answer: { answer, question: step.question.id } };
  const plainly: Told = { part: say(`practice.says.${isMember ? 'member' : 'plain'}`, truth), truth: true };
  if (step.question.role === 'danger') return { part: say('practice.says.no-danger'), truth: true };
  switch (temper) {
    case 'plain':
      return plainly;
    case 'exaggerates': {
      const claim = onlyThey ? undefined : exaggerated(state, step, answer);
      if (claim === undefined) return plainly;
      return { part: say('practice.says.exaggerates', { ...values, answer: claim }), truth: false };
    }
    case 'unsure':
      if (onlyThey && again) return plainly;
      return {
        part: say(onlyThey ? 'practice.says.will-check' : 'practice.says.never-looked', values),
        truth: false,
      };
    case 'pushes-back':
      return again ? plainly : { part: say('practice.says.pushes-back', values), truth: false };
  }
}

/** More things than this at once get no answer, but are named to choose from. */
const mostAtOnce = 6;

/** Answers that say nothing about the thing are given once for all things alike. */
function sayTogether(told: readonly Told[]): Part[] {
  const parts: Part[] = [];
  const empty = new Map<string, Value[]>();
  for (const { part } of told) {
    if (
      part.kind !== 'say' ||
      part.values?.['answer'] !== undefined ||
      part.values?.['thing'] === undefined
    ) {
      parts.push(part);
      continue;
    }
    empty.set(part.text, [...(empty.get(part.text) ?? []), part.values['thing']]);
  }
  const once = (things: Value[]) =>
    things.filter(
      (one, at) => things.findIndex((other) => JSON.stringify(other) === JSON.stringify(one)) === at,
    );
  return [...parts, ...[...empty].map(([text, things]) => say(text, { thing: { list: once(things) } }))];
}

/** Asks the resident about what a message names. */
export function ask(practice: Practice, state: PracticeState, rest: readonly Token[]): PracticeTurned {
  const { steps, everything, elsewhere } = meantSteps(practice, state, rest, undefined);
  if (everything) return { state, parts: [say('practice.ask.what')] };
  // What is asked of other houses, and not of this one, is not there.
  if (steps.length === 0)
    return { state, parts: [say(elsewhere ? 'practice.says.none-here' : 'practice.says.no-such-thing')] };
  const members = new Set(steps.map((step) => step.member));
  if (steps.length > mostAtOnce && members.size > 1) {
    const ids = [...new Set(steps.map((step) => step.question.id))];
    const things = { list: ids.map((id) => ({ text: `question/${id}/short` })) };
    return { state, parts: [say('practice.ask.which', { things })] };
  }
  const told = steps.map((step) => ({ step, ...tell(practice, state, step) }));
  const events = told.map(({ step, truth }) => ({ kind: 'asked', key: step.key, told: truth }) as const);
  return { state: withEvents(state, events), parts: sayTogether(told) };
}
