import { describe, expect, it } from 'vitest';
import {
  type Chains,
  doJob,
  gainOf,
  type Job,
  nothingDone,
  waysByElement,
} from '../../src/ranking/exposure.ts';

// Source: "Two trains" fault tree of the public test suite of the SCRAM reliability code (input TwoTrain): minimal cut
// sets {V1 V2}, {V1 P2}, {P1 V2}, {P1 P2}; basic events V1 0.04, V2 0.05, P1 0.06, P2 0.07; rare-event approximation.
const events = ['V1', 'V2', 'P1', 'P2'] as const;
const chains: Chains = {
  readiness: [0.04, 0.05, 0.06, 0.07],
  ways: [
    [0, 1],
    [0, 3],
    [2, 1],
    [2, 3],
  ],
};
const removing = (element: number): Job => ({
  id: events[element] ?? '',
  lane: 0,
  treats: new Map([[element, 0]]),
  insteadOf: undefined,
});

describe('the sum over ways in, against a published fault tree', () => {
  const by = waysByElement(chains);

  it('adds up to 0.012, the published rare-event sum', () => {
    expect(nothingDone(chains).exposure).toBeCloseTo(0.012, 12);
  });

  it('is an upper bound of the exact union, 0.0113704', () => {
    // Exact by inclusion and exclusion over the independent events: (1-(1-V1)(1-P1)) x (1-(1-V2)(1-P2)).
    const [v1 = 0, v2 = 0, p1 = 0, p2 = 0] = chains.readiness;
    const union = (1 - (1 - v1) * (1 - p1)) * (1 - (1 - v2) * (1 - p2));
    expect(union).toBeCloseTo(0.0113704, 7);
    expect(nothingDone(chains).exposure).toBeGreaterThanOrEqual(union);
  });

  it.each([
    ['P1', 2, 0.6, 2.5],
    ['P2', 3, 0.5833, 2.4],
    ['V1', 0, 0.4, 1.667],
    ['V2', 1, 0.4167, 1.714],
  ] as const)(
    'gives %s its published importance and risk-reduction worth',
    (_, element, importance, worth) => {
      const progress = nothingDone(chains);
      const share = gainOf(chains, by, progress, removing(element)) / progress.exposure;
      expect(share).toBeCloseTo(importance, 4);
      const after = nothingDone(chains);
      const before = after.exposure;
      doJob(chains, by, after, removing(element));
      expect(before / after.exposure).toBeCloseTo(worth, 3);
    },
  );
});
