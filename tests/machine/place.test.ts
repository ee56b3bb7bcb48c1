import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { initialTransition, transition } from 'xstate';
import type { Answer } from '../../src/answers/answer.ts';
import { isOpen, pathOf, type Step } from '../../src/answers/path.ts';
import type { WalkContext, WalkEvent } from '../../src/machine/events.ts';
import { firstOpen, type Position, placeOnMachine, positionOf, stepWalk } from '../../src/machine/place.ts';
import { realProgramme } from '../support/programme.ts';
import { oneOf, type Random, randomAnswer, randomSheet, seededRandom } from '../support/random-answers.ts';

const { machine, checklist } = realProgramme();
const { index } = checklist;

type Snapshot = ReturnType<typeof placeOnMachine>;

/** The machine from its own start, events folded through it one by one: the other way to where a walk stands. */
function start(): Snapshot {
  const input: WalkContext = { index, sheet: {}, member: undefined, again: undefined, stoppedAt: undefined };
  const [snapshot] = initialTransition(machine, input as never);
  return snapshot as unknown as Snapshot;
}

function fold(snapshot: Snapshot, event: WalkEvent): Snapshot {
  const [next] = transition(machine, snapshot as never, event as never);
  return next as unknown as Snapshot;
}

const asked = ({ key, sheet }: Position) =>
  key === undefined ? undefined : pathOf(index, sheet).byKey.get(key);

function answerTo(step: Step, position: Position, random: Random): WalkEvent {
  const answer: Answer = randomAnswer(index, position.sheet, step, random);
  return { type: 'ANSWER', key: step.key, answer };
}

/** Mostly answers to what is asked; also late answers, going back or elsewhere, stopping and going on. */
function someEvent(position: Position, random: Random): WalkEvent {
  const { steps } = pathOf(index, position.sheet);
  if (position.phase === 'paused' || position.phase === 'emergency') return { type: 'RESUME' };
  const step = asked(position);
  const chance = random();
  if (position.phase === 'readBack' && chance < 0.2) return { type: 'CONFIRM' };
  if (!step || chance < 0.08) return { type: 'GO', key: oneOf(steps, random).key };
  if (chance < 0.11) return answerTo(oneOf(steps, random), position, random);
  if (chance < 0.13) return { type: 'PAUSE', at: position.key };
  if (chance < 0.15) return { type: 'EMERGENCY', at: position.key };
  if (chance < 0.16) return { type: 'FINISH' };
  if (chance < 0.163) return { type: 'START_OVER' };
  return answerTo(step, position, random);
}

describe('placing answers on the machine', () => {
  it('puts a walk where folding every answer through the machine puts it', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seededRandom(seed);
        let folded = start();
        for (let count = 0; count < 400; count++) {
          const position = positionOf(folded);
          const placed = positionOf(
            placeOnMachine(machine, index, { phase: 'asking', key: undefined, sheet: position.sheet }),
          );
          expect(placed).toEqual(position);
          const step = asked(position);
          if (position.phase !== 'asking' || !step) break;
          folded = fold(folded, answerTo(step, position, random));
        }
        expect(positionOf(folded).phase).toBe('readBack');
      }),
      { numRuns: 25 },
    );
  });

  it('gives the same as the folded machine through going back, jumps, changes, late answers and stops', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seededRandom(seed);
        let folded = start();
        let stepped = positionOf(folded);
        for (let count = 0; count < 150; count++) {
          const event = someEvent(stepped, random);
          folded = fold(folded, event);
          stepped = stepWalk(machine, index, stepped, event);
          expect(stepped, JSON.stringify(event)).toEqual(positionOf(folded));
        }
      }),
      { numRuns: 30 },
    );
  });

  it('asks the first question that waits, for any sheet', () => {
    fc.assert(
      fc.property(fc.integer(), fc.double({ min: 0, max: 1, noNaN: true }), (seed, part) => {
        const random = seededRandom(seed);
        const whole = randomSheet(index, random);
        const sheet = Object.fromEntries(Object.entries(whole).filter(() => random() < part));
        const placed = positionOf(placeOnMachine(machine, index, { phase: 'asking', key: undefined, sheet }));
        expect(placed.key).toBe(firstOpen(index, sheet)?.key);
        expect(placed.phase).toBe(placed.key === undefined ? 'readBack' : 'asking');
      }),
      { numRuns: 40 },
    );
  });

  it('gives way to the first that waits where the stored question is no longer on the path', () => {
    const gone = { phase: 'asking', key: 'roof.treated', sheet: {} } as const;
    const placed = positionOf(placeOnMachine(machine, index, gone));
    expect(placed.key).toBe(index.flow.questions[0]?.id);
  });

  it('passes over a question with an answer, and asks it again when it is gone to', () => {
    const sheet = randomSheet(index, seededRandom(1), { unsure: 0, partial: 0 });
    const done: Position = { phase: 'readBack', key: undefined, sheet };
    const again = stepWalk(machine, index, done, { type: 'GO', key: 'roof.covering' });
    expect(again).toMatchObject({ phase: 'asking', key: 'roof.covering' });
    const answer = sheet['roof.covering'] ?? { status: 'notSure' };
    const after = stepWalk(machine, index, again, { type: 'ANSWER', key: 'roof.covering', answer });
    expect(after).toMatchObject({ phase: 'readBack' });
    expect(pathOf(index, after.sheet).steps.some((step) => isOpen(step, after.sheet))).toBe(false);
  });
});
