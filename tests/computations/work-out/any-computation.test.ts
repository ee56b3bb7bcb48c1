import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rectangle } from '../../../src/computations/formulas/outline-shapes.ts';
import {
  COMPUTATIONS,
  type Computation,
  findComputation,
  type InputDef,
  type Inputs,
  type InputValue,
  parseInput,
  SOURCE_STATUS,
} from '../../../src/computations/work-out/index.ts';
import { metres } from '../../../src/quantities/index.ts';

/** Any value on the stated range of an input, its ends included. */
function anyValue(input: InputDef): fc.Arbitrary<InputValue> {
  switch (input.kind) {
    case 'choice':
      return fc.constantFrom(...input.options.map(({ id }) => id));
    case 'outline':
      return fc
        .tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }))
        .map(([width, depth]) => [rectangle(metres(width), metres(depth))]);
    case 'quantity': {
      const { min, max, whole } = input;
      if (whole) return fc.integer({ min, max: Math.min(max, 1e6) });
      return fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max));
    }
  }
}

const anyInputs = (computation: Computation): fc.Arbitrary<Inputs> =>
  fc.record(Object.fromEntries(computation.inputs.map((input) => [input.id, anyValue(input)])), {
    requiredKeys: computation.inputs.filter(({ required }) => required).map(({ id }) => id),
  });

/** Sound inputs for a computation: the middle of each range, or the first option. */
function soundInputs(computation: Computation): Inputs {
  const entries = computation.inputs
    .filter(({ required }) => required)
    .map((input): [string, InputValue] => {
      if (input.kind === 'choice') return [input.id, input.options[0]?.id ?? ''];
      if (input.kind === 'outline') return [input.id, [rectangle(metres(12), metres(9))]];
      return [input.id, input.whole ? input.min + 1 : Math.min(input.max, Math.max(input.min, 1) * 1.5)];
    });
  return Object.fromEntries(entries);
}

const everyQuantity = COMPUTATIONS.flatMap((computation) =>
  computation.inputs
    .filter((input) => input.kind === 'quantity')
    .map((input): [string, Computation, InputDef] => [`${computation.id} ${input.id}`, computation, input]),
);

describe('every computation', () => {
  it('has an id of its own and can be found by it', () => {
    expect(new Set(COMPUTATIONS.map(({ id }) => id)).size).toBe(COMPUTATIONS.length);
    for (const computation of COMPUTATIONS) expect(findComputation(computation.id)).toBe(computation);
    expect(findComputation('no-such')).toBeUndefined();
  });

  it.each(COMPUTATIONS.map((computation): [string, Computation] => [computation.id, computation]))(
    '%s gives finite numbers or says what it does not cover, on its whole stated range',
    (_, computation) => {
      let results = 0;
      fc.assert(
        fc.property(anyInputs(computation), (inputs) => {
          const outcome = computation.run(inputs);
          if (outcome.kind === 'badInput') throw new Error(`${outcome.field}: ${outcome.problem}`);
          if (outcome.kind === 'outside') {
            expect(outcome.allowed).not.toBe('');
            return;
          }
          results += 1;
          for (const value of [...outcome.values, ...outcome.assumptions]) {
            expect(Number.isFinite(value.value), value.id).toBe(true);
            expect(value.value, value.id).toBeGreaterThanOrEqual(0);
          }
          for (const line of outcome.shopping) expect(Number.isInteger(line.count)).toBe(true);
          for (const source of outcome.sources) expect(SOURCE_STATUS).toHaveProperty(source);
        }),
        { numRuns: computation.group === 'zones' ? 60 : 200, endOnFailure: true },
      );
      if (results === 0) expect(computation.run(soundInputs(computation)).kind).toBe('result');
    },
  );

  it.each(everyQuantity)(
    '%s: a bad value is refused by name with what is allowed',
    (_, computation, input) => {
      const sound = soundInputs(computation);
      for (const bad of [-1, Number.NaN, Number.POSITIVE_INFINITY, 1e300, 'ten']) {
        const outcome = computation.run({ ...sound, [input.id]: bad });
        expect(outcome).toMatchObject({ kind: 'badInput', field: input.id });
        expect(outcome.kind === 'badInput' && outcome.allowed).toMatch(/\d.* to .*\d/);
      }
    },
  );

  it.each(everyQuantity)('%s: a unit of another dimension is refused by name', (_, _computation, input) => {
    if (input.kind !== 'quantity') return;
    const other = input.dimension === 'mass' ? '5 ft' : '5 kg';
    expect(parseInput(input, other)).toMatchObject({ kind: 'badInput', field: input.id });
    expect(parseInput(input, other)).toHaveProperty('allowed', expect.stringMatching(/\d/));
  });

  it.each(COMPUTATIONS.map((computation): [string, Computation] => [computation.id, computation]))(
    '%s: a missing input, an unknown one and a wrong choice are refused by name',
    (_, computation) => {
      const sound = soundInputs(computation);
      for (const { id } of computation.inputs.filter(({ required }) => required)) {
        const outcome = computation.run({ ...sound, [id]: undefined });
        expect(outcome).toMatchObject({ kind: 'badInput', field: id, problem: 'is missing' });
      }
      expect(computation.run({ ...sound, colour: 1 })).toMatchObject({ kind: 'badInput', field: 'colour' });
      for (const { id, kind } of computation.inputs) {
        if (kind === 'quantity') continue;
        expect(computation.run({ ...sound, [id]: 'nonsense' })).toMatchObject({
          kind: 'badInput',
          field: id,
        });
      }
    },
  );
});
