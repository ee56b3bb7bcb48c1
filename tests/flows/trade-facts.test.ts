import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { wordingFor } from '../../src/commands/wording-for.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { readBound } from '../../src/flow/bound.ts';
import { realProgramme } from '../support/programme.ts';

const { checklist } = realProgramme();
const { flow, index } = checklist;
const general = index.limits.get('general') ?? new Map();

/** What is found at a house with these answers; everything else is not sure. */
function foundAt(answers: string) {
  const read = readAnswers(index, 'house.yaml', `about.danger: no\n${answers}`);
  expect([...read.problems, ...read.warnings]).toEqual([]);
  const { found, ranked } = assess(checklist, read.sheet);
  return {
    findings: new Set(found.map((one) => one.finding.id)),
    jobs: new Set(ranked.map((one) => one.proposal.action.id)),
  };
}

const tree = (answers: string) => `roof.above: [chimney]\ntrees: [{ side: left, ${answers} }]`;
const shed = (distance: string) =>
  `outbuildings: [{ side: back, distance: ${distance}, movable: no, walls: wood }]`;

/** Each fact of the trade with a house at its edge: `bad` brings the finding, `good` does not. */
const facts: [
  fact: string,
  limit: [string, string] | undefined,
  finding: string,
  bad: string,
  good: string,
][] = [
  // Each fact: common practice, no source.
  [
    'a gap at the eave is filled when it is over 1/8 in',
    ['eaveGapMax', '1/8 in'],
    'eaves.gap',
    'eaves.gap: 3/16 in',
    'eaves.gap: 1/8 in',
  ],
  [
    'a gap in a wall is filled when it is over 1/8 in',
    ['wallGapMax', '1/8 in'],
    'siding.gaps',
    'siding.condition: gaps',
    'siding.condition: sound',
  ],
  [
    'mesh of 1/4 in is too coarse, 1/8 in is wanted',
    ['meshMax', '1/8 in'],
    'vents.coarse-high',
    'vents.kinds: [gable]\nvents.high: { left: [gable] }\nvents.high-mesh: { left: quarter }',
    'vents.kinds: [gable]\nvents.high: { left: [gable] }\nvents.high-mesh: { left: eighth }',
  ],
  [
    'mesh of 1/4 in is too coarse, 1/16 in is wanted',
    ['meshMin', '1/16 in'],
    'vents.coarse-low',
    'vents.kinds: [under-floor]\nvents.low: [left]\nvents.low-mesh: { left: quarter }',
    'vents.kinds: [under-floor]\nvents.low: [left]\nvents.low-mesh: { left: sixteenth }',
  ],
  [
    'burnable siding starts at least 6 in above the ground',
    ['sidingBase', '6 in'],
    'siding.low',
    'siding.kind: wood\nsiding.base: 5.9 in',
    'siding.kind: wood\nsiding.base: 6 in',
  ],
  [
    'branches stay 5 ft from the roof',
    ['treeToRoof', '5 ft'],
    'tree.near-roof',
    tree('to-roof: 4.9 ft'),
    tree('to-roof: 5 ft'),
  ],
  [
    'branches stay 10 ft from a chimney',
    ['treeToChimney', '10 ft'],
    'tree.near-chimney',
    tree('to-chimney: 9.9 ft'),
    tree('to-chimney: 10 ft'),
  ],
  [
    'the lowest branch of a tall tree is 6 ft up',
    ['lowestBranch', '6 ft'],
    'tree.ladder',
    tree('height: 18 ft, lowest-branch: 5.9 ft, under: [none]'),
    tree('height: 18 ft, lowest-branch: 6 ft, under: [none]'),
  ],
  [
    'the first 5 ft of a fence do not burn',
    ['fenceFirst', '5 ft'],
    'fence.joint',
    'fences.meets: { left: wood }',
    'fences.meets: { left: metal }',
  ],
  [
    'a shed within 5 ft is treated like the house',
    ['outbuildingNear', '5 ft'],
    'outbuildings.touching',
    shed('5 ft'),
    shed('6 ft'),
  ],
  [
    'light round a shut garage door means a worn strip',
    ['garageGapMax', '1/8 in'],
    'openings.garage-gap',
    'openings.garage: attached\nopenings.garage-light: light\nopenings.garage-sides: [left]',
    'openings.garage: attached\nopenings.garage-light: none',
  ],
  [
    'bark beside the house goes',
    ['zone0', '5 ft'],
    'zone0.bark',
    'zone0.ground: { left: [bark] }',
    'zone0.ground: { left: [gravel] }',
  ],
  [
    'one pane is worse than two',
    undefined,
    'openings.single-glass',
    'openings.glass: single',
    'openings.glass: dual',
  ],
];

describe('the facts of the trade', () => {
  it.each(facts)('hold: %s', (_, limit, finding, bad, good) => {
    if (limit) {
      const [id, value] = limit;
      expect(general.get(id)?.value).toBeCloseTo(readBound(value, 'length') as number, 9);
    }
    expect(flow.findings.some((one) => one.id === finding)).toBe(true);
    expect(foundAt(bad).findings).toContain(finding);
    expect(foundAt(good).findings).not.toContain(finding);
  });

  it('hold upwards too: the 5 ft between roof and tree are asked for in every direction', () => {
    // Common practice, no source.
    expect(JSON.stringify(index.questions.get('trees.to-roof')?.ask)).toMatch(/up as well as out/i);
    expect(JSON.stringify(general.get('treeToRoof')?.limit.what)).toMatch(/upwards/);
  });

  it('name the zones with their distances: 0-5, 5-30, 30-100 ft', () => {
    // Common practice, no source for the first two; the third as reported of the NFPA zones.
    expect(['zone0', 'zone1', 'zone2'].map((id) => general.get(id)?.value)).toEqual([1.524, 9.144, 30.48]);
    const wording = wordingFor(realProgramme().checklist, {
      sheet: {},
      language: 'en',
      audience: 'resident',
    });
    const titles = flow.stops.map((stop) => wording.text(`stop/${stop.id}/title`));
    expect(titles.filter((title) => /\bft\b/.test(title))).toEqual([
      expect.stringContaining('0 to 5 ft'),
      expect.stringContaining('5 ft to 30 ft'),
    ]);
  });

  it('bring the strip for the garage door, and the fence job, where they are found', () => {
    // Common practice, no source.
    const garage = foundAt(
      'openings.garage: attached\nopenings.garage-light: light\nopenings.garage-sides: [left]\nopenings.garage-stored: yes',
    );
    expect([...garage.jobs].some((id) => id.startsWith('garage-strip'))).toBe(true);
    const [fence] = flow.actions.filter((one) => one.for.includes('fence.joint'));
    expect(fence?.rules).toContain('fenceFirst');
  });

  it('treat a shed at the house like the house: it is moved or removed, and what must stay is hardened', () => {
    // Common practice, no source.
    const jobsFor = (answers: string) =>
      foundAt(
        `siding.kind: wood\nopenings.glass: single\noutbuildings: [{ side: back, distance: 4 ft, walls: wood, ${answers} }]`,
      ).jobs;
    const movable = jobsFor('what: shed, condition: [holes], movable: yes');
    expect(movable).toContain('move-shed');
    expect(movable).not.toContain('harden-outbuilding');
    expect(jobsFor('what: shed, condition: [holes], movable: no')).toContain('rebuild-shed');
    // What is hardened in its place is worth a trade's work only where it still weighs something: the job is there.
    const hardened = flow.actions.find((one) => one.id === 'harden-outbuilding');
    expect(hardened?.for).toContain('outbuildings.touching');
  });

  it('take a shade structure on the house as part of it, and count the 0-5 ft from its edge', () => {
    // Common practice, no source.
    const cover = flow.elements.find((one) => one.id === 'cover.attached');
    const chains = flow.waysIn.filter((way) => JSON.stringify(way.chain).includes('cover.attached'));
    expect(cover?.ember).toBeDefined();
    expect(chains.length).toBeGreaterThan(0);
    expect(JSON.stringify(index.questions.get('zone0.ground')?.look)).toMatch(
      /edge of a deck, steps or patio cover/,
    );
    expect(
      foundAt('about.attached: [patio-cover]\nabout.cover-sides: [back]\noutbuildings.cover-litter: yes')
        .findings,
    ).toContain('outbuildings.cover-litter');
  });

  it('rank two panes better than one, and tempered glass better still, under flame', () => {
    // Common practice, no source.
    const readiness = (id: string) => {
      const level = flow.elements.find((one) => one.id === id)?.flame;
      return level?.value ?? flow.walk.levels[level?.level ?? 'rarely'].value;
    };
    expect(readiness('win.single')).toBeGreaterThan(readiness('win.dual'));
    expect(readiness('win.dual')).toBeGreaterThan(readiness('win.tempered'));
  });
});

describe('spacing on slopes', () => {
  // University of California (ANR) spacing tables, as read: crowns 10 / 20 / 30 ft edge to edge, shrubs 2 / 4 / 6 times their
  // height, at slopes of 0-20, 20-40 and over 40 %; exactly 20 % and 40 % are taken as the steeper class.
  const classes = [
    ['0 %', 10, 2],
    ['19 %', 10, 2],
    ['20 %', 20, 4],
    ['39 %', 20, 4],
    ['40 %', 30, 6],
    ['60 %', 30, 6],
  ] as const;
  const yard = (slope: string, answers: string) =>
    `about.slope: ${slope}\nzone1.plants: { back: dense }\n${answers}`;

  it.each(classes)('asks for the crown gap of the table at %s: %i ft', (slope, feet) => {
    const at = (gap: number) => foundAt(yard(slope, `zone1.crown-gap: ${gap} ft`)).findings;
    expect(at(feet - 1)).toContain('zone1.near-crowns');
    expect(at(feet)).not.toContain('zone1.near-crowns');
  });

  it.each(classes.filter(([slope]) => slope !== '0 %' && slope !== '19 %'))(
    'asks for the shrub gap of the table at %s, in heights of the shrub',
    (slope, _, heights) => {
      const at = (gap: number) =>
        foundAt(
          `about.slope: ${slope}\nzone1.plants: { back: islands }\nzone1.shrub-height: 3 ft\nzone1.shrub-gap: ${gap} ft`,
        ).findings;
      expect(at(heights * 3 - 0.5)).toContain('zone1.near-shrubs');
      expect(at(heights * 3)).not.toContain('zone1.near-shrubs');
    },
  );

  it('says the numbers of the table as limits, so that a place can set its own', () => {
    const metres = (feet: number) => feet * 0.3048;
    expect(
      ['crownGapGentle', 'crownGapSteep', 'crownGapVerySteep'].map((id) => general.get(id)?.value),
    ).toEqual([10, 20, 30].map(metres));
    expect(
      ['shrubGapGentle', 'shrubGapSteep', 'shrubGapVerySteep'].map((id) => general.get(id)?.value),
    ).toEqual([2, 4, 6]);
    expect(['slopeSteep', 'slopeVerySteep'].map((id) => general.get(id)?.value)).toEqual([20, 40]);
    // UC, as read: from the top of a shrub to the lowest branch above it 3 times its height; tall trees from 18 ft; 6 ft of trunk.
    expect(general.get('shrubUnderTree')?.value).toBe(3);
    expect(general.get('tallTree')?.value).toBeCloseTo(metres(18), 9);
    expect(general.get('lowestBranch')?.value).toBeCloseTo(metres(6), 9);
  });
});
