import { describe, expect, it } from 'vitest';
import { pathOf } from '../../src/answers/path.ts';
import type { WalkEvent } from '../../src/machine/events.ts';
import { type Position, stepWalk, takesEvent } from '../../src/machine/place.ts';
import { realProgramme } from '../support/programme.ts';
import { randomSheet, seededRandom } from '../support/random-answers.ts';

const { machine, checklist } = realProgramme();
const { index } = checklist;
const sheets = Array.from({ length: 80 }, (_, seed) =>
  randomSheet(index, seededRandom(seed), { unsure: 0, partial: 0 }),
);

/** A walk at every question, with the rest of its answers on the sheet; and at the read-back and after it. */
const positions: Position[] = [
  ...index.flow.questions.map((question): Position => {
    for (const sheet of sheets) {
      const step = pathOf(index, sheet).steps.find((one) => one.question.id === question.id);
      if (step) return { phase: 'asking', key: step.key, sheet };
    }
    throw new Error(`No random walk reaches ${question.id}.`);
  }),
  { phase: 'readBack', key: undefined, sheet: sheets[0] ?? {} },
  { phase: 'finished', key: undefined, sheet: sheets[0] ?? {} },
];
const titled = positions.map((position) => [position.key ?? position.phase, position] as const);

const step = (position: Position, ...events: WalkEvent[]) =>
  events.reduce((now, event) => stepWalk(machine, index, now, event), position);

describe('stopping a walk', () => {
  it.each(titled)('can be done by an emergency and taken up again at %s', (_, position) => {
    const stopped = step(position, { type: 'EMERGENCY', at: position.key });
    expect(stopped).toEqual({ phase: 'emergency', key: position.key, sheet: position.sheet });
    const resumed = step(stopped, { type: 'RESUME' });
    expect(resumed.sheet).toEqual(position.sheet);
    expect(resumed).toMatchObject(position.phase === 'asking' ? position : { phase: 'readBack' });
  });

  it.each(titled)('can be done by a pause and taken up again at %s', (_, position) => {
    const stopped = step(position, { type: 'PAUSE', at: position.key });
    expect(stopped).toEqual({ phase: 'paused', key: position.key, sheet: position.sheet });
    const resumed = step(stopped, { type: 'RESUME' });
    expect(resumed).toMatchObject(position.phase === 'asking' ? position : { phase: 'readBack' });
  });

  it('lets nothing but going on lead out of an emergency', () => {
    const stopped: Position = { phase: 'emergency', key: 'roof.covering', sheet: {} };
    const others: WalkEvent[] = [
      { type: 'GO', key: 'about.place' },
      { type: 'FINISH' },
      { type: 'PAUSE', at: undefined },
    ];
    for (const event of others) expect(step(stopped, event).phase, event.type).toBe('emergency');
    expect(step(stopped, { type: 'RESUME' }).phase).toBe('asking');
  });

  it('can turn from a pause into an emergency', () => {
    const paused: Position = { phase: 'paused', key: 'roof.covering', sheet: {} };
    expect(step(paused, { type: 'EMERGENCY', at: 'roof.covering' }).phase).toBe('emergency');
  });

  it('takes up at the first question that waits when the one it stopped at is gone', () => {
    const paused: Position = { phase: 'paused', key: 'roof.treated', sheet: {} };
    expect(step(paused, { type: 'RESUME' })).toMatchObject({ phase: 'asking', key: 'about.danger' });
  });

  it('says beforehand which events a walk takes', () => {
    const asking: Position = { phase: 'asking', key: 'about.danger', sheet: {} };
    expect(takesEvent(machine, index, asking, { type: 'GO', key: 'roof.covering' })).toBe(true);
    expect(takesEvent(machine, index, asking, { type: 'GO', key: 'roof.treated' })).toBe(false);
    expect(takesEvent(machine, index, asking, { type: 'CONFIRM' })).toBe(false);
    expect(
      takesEvent(machine, index, { ...asking, phase: 'readBack', key: undefined }, { type: 'CONFIRM' }),
    ).toBe(true);
    expect(takesEvent(machine, index, asking, { type: 'TYPO' } as never)).toBe(false);
  });

  it('forgets every answer when started over', () => {
    const sheet = sheets[0] ?? {};
    const over = step({ phase: 'readBack', key: undefined, sheet }, { type: 'START_OVER' });
    expect(over).toEqual({ phase: 'asking', key: 'about.danger', sheet: {} });
  });
});
