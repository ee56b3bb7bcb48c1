import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMPUTED_IDS } from '../../src/computations/house/computed-ids.ts';
import { readCheckedPractice } from '../../src/files/read-practice.ts';
import { sayProblem } from '../../src/flow/problem.ts';
import { readFlow } from '../support/programme.ts';

const flow = readFlow();
const texts = new Map(
  readdirSync(resolve('flows/practice')).map((name) => [
    name,
    readFileSync(join(resolve('flows/practice'), name), 'utf8'),
  ]),
);

function problemsOf(files: ReadonlyMap<string, string>): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'practice-'));
  for (const [name, text] of files) writeFileSync(join(folder, name), text);
  const read = readCheckedPractice(folder, folder, flow, COMPUTED_IDS);
  return read.content ? [] : read.problems.map(sayProblem);
}

/** Line and column of a mark in a text, both from 1. */
function placeOf(text: string, mark: string): string {
  const before = text.slice(0, text.indexOf(mark)).split('\n');
  return `${before.length}:${(before.at(-1)?.length ?? 0) + 1}`;
}

/** A word of a file, what stands there instead, the word at which the fault is shown, and what is said. */
const faults: [name: string, sound: string, broken: string, mark: string, said: string][] = [
  [
    'house',
    'near: 0,',
    'neer: 0,',
    'neer: 0,',
    'house.levels.easy: "neer" is not known here. Did you mean "near"?',
  ],
  ['house', 'near: 0,', 'near: 2,', 'near: 2,', 'house.levels.easy.near: must be at most 1.'],
  [
    'house',
    'tempers: [plain], alarm',
    'tempers: [plane], alarm',
    'plane], alarm',
    'house.levels.easy.tempers.0: "plane" is not one of "plain", "exaggerates", "unsure", "pushes-back". Did you mean "plain"?',
  ],
  [
    'house',
    'atLeast: 6, atMost: 12',
    'atLeast: 6, atMost: 2',
    'atMost: 2 }',
    'house.levels.easy.findings.atMost: is less than "atLeast", 6.',
  ],
  [
    'house',
    'about.danger: "no"',
    'about.dangr: "no"',
    'about.dangr',
    'house.fixed.about.dangr: there is no question "about.dangr". Did you mean "about.danger"?',
  ],
  [
    'house',
    'about.units: imperial',
    'about.units: imperal',
    'about.units: imperal',
    'house.fixed.about.units: "about.units" has no answer "imperal". Did you mean "imperial"?',
  ],
  [
    'house',
    'trees.count: [0.2',
    'trees.side: [0.2',
    'trees.side: [0.2',
    'house.counts.trees.side: "trees.side" is a sides, and counts nothing.',
  ],
  [
    'house',
    'never: [two, three',
    'never: [twoo, three',
    'twoo',
    'house.consistent.0.never.0: "about.storeys" has no answer "twoo". Did you mean "two"?',
  ],
  [
    'house',
    'if: { question: about.building, is: manufactured } }\n    - { question: about.attached',
    'if: { question: about.building, is: manufacturd } }\n    - { question: about.attached',
    'is: manufacturd',
    'house.consistent.0.if.is: "about.building" has no option "manufacturd". Did you mean "manufactured"?',
  ],
  [
    'house',
    'question: about.deck-sides, value: "yes"',
    'question: about.deck-side, value: "yes"',
    'question: about.deck-side,',
    'house.sides.2.question: there is no question "about.deck-side". Did you mean "about.deck-sides"?',
  ],
  [
    'house',
    'value: "yes", atLeast: 1, atMost: 1 }',
    'value: "yes", atLeast: 1, atMost: 1, atmost: 1 }',
    'atmost: 1',
    'house.sides.8: "atmost" is not known here. Did you mean "atMost"?',
  ],
  [
    'house',
    'than: trees.height',
    'than: trees.heights',
    'than: trees.heights',
    'house.lessThan.0.than: there is no question "trees.heights". Did you mean "trees.height"?',
  ],
  [
    'house',
    'trees.to-roof: [4 ft,',
    'trees.to-roof: [4 feat,',
    '4 feat',
    'house.near.trees.to-roof.0: "4 feat" is not a length with a unit, such as "4 ft" or "1/8 in".',
  ],
  [
    'house',
    'trees.to-roof: [8 ft,',
    'trees.to-roof: [800 ft,',
    '800 ft',
    'house.clear.trees.to-roof.0: "trees.to-roof" takes from 0 ft to 200 ft, and not 800 ft.',
  ],
  [
    'house',
    'id: moss, stop: roof, looksLike: roof.worn',
    'id: moss, stop: roof, looksLike: roof.wurn',
    'looksLike: roof.wurn',
    'house.distractors.4.looksLike: there is no finding "roof.wurn". Did you mean "roof.worn"?',
  ],
  [
    'house',
    'id: moss, stop: roof,',
    'id: mosss, stop: roof,',
    'id: mosss',
    'house.distractors.4.id: there is no phrase "practice.distractor/mosss". Is "practice.distractor/moss" meant to be it?',
  ],
  [
    'house',
    'alarmStops: [eaves',
    'alarmStops: [eavs',
    'eavs',
    'house.alarmStops.0: there is no stop "eavs". Did you mean "eaves"?',
  ],
  [
    'words',
    '    roof.litter: [leaves on',
    '    roof.liter: [leaves on',
    'roof.liter:',
    'words.findings.roof.liter: there is no finding "roof.liter". Did you mean "roof.litter"?',
  ],
  [
    'words',
    '    mesh-vents: [',
    '    mesh-vent: [',
    'mesh-vent:',
    'words.actions.mesh-vent: there is no action "mesh-vent". Did you mean "mesh-vents"?',
  ],
  [
    'words',
    '    meshMax: atMost',
    '    meshMax: atmost',
    'meshMax: atmost',
    'words.limits.meshMax: "atmost" is not one of "atLeast", "atMost". Did you mean "atMost"?',
  ],
  [
    'words',
    'the neighbor land], source: consent-to-clear',
    'the neighbor land], source: consent-to-cleer',
    'source: consent-to-cleer',
    'words.wrongAdvice.16.source: there is no source "consent-to-cleer". Did you mean "consent-to-clear"?',
  ],
  [
    'cards',
    'right: area',
    'right: aera',
    'right: aera',
    'cards.1.right: "aera" is none of its options. Did you mean "area"?',
  ],
  [
    'cards',
    'limit: meshMax',
    'limit: meshMx',
    'limit: meshMx',
    'cards.0.limit: there is no limit "meshMx". Did you mean "meshMax"?',
  ],
  [
    'cards',
    'limit: meshMax',
    'limit: ventAttic',
    'limit: ventAttic',
    'cards.0.limit: "ventAttic" is no length, and a card asks for a length.',
  ],
  [
    'cards',
    'faults: [quarter-mesh, plastic-mesh]',
    'faults: [quater-mesh, plastic-mesh]',
    'quater-mesh',
    'cards.0.for.faults.0: there is no fault "quater-mesh". Did you mean "quarter-mesh"?',
  ],
  [
    'debrief',
    'practice.risk/siding:',
    'practice.risk/sidng:',
    'phrases:',
    'phrases: there is no phrase "practice.risk/siding". Is "practice.risk/sidng" meant to be it?',
  ],
  [
    'sights',
    'roof.covering/shingle:',
    'roof.covering/shingel:',
    'practice.sight/roof.covering/shingel',
    'phrases.practice.sight/roof.covering/shingel: "roof.covering" has no option "shingel". Did you mean "shingle"?',
  ],
];

describe('a practice file with one fault', () => {
  it('stands beside the same files without it, which are sound', () => {
    expect(problemsOf(texts)).toEqual([]);
  });

  it.each(faults)(
    '%s: "%s" made "%s" is told where it is and what was meant',
    (file, from, to, mark, said) => {
      const name = `${file}.yaml`;
      const sound = texts.get(name) ?? '';
      expect(sound.split(from).length, 'the word stands once in the file').toBe(2);
      const text = sound.replace(from, to);
      expect(problemsOf(new Map([...texts, [name, text]]))).toEqual([
        `${name}:${placeOf(text, mark)} ${said}`,
      ]);
    },
  );

  it('is told of a part, a card or a phrase that is there twice', () => {
    const extra = [
      'cards:',
      '  - { id: mesh, limit: meshMax, ask: How wide?, because: Embers., source: pnnl, for: {} }',
      'phrases:',
      '  practice.risk/roof: again',
      'words:',
      ...(texts.get('words.yaml') ?? '').split('\n').slice(3),
    ].join('\n');
    expect(problemsOf(new Map([...texts, ['z-extra.yaml', extra]]))).toEqual([
      expect.stringMatching(
        /^z-extra\.yaml:5:1 words: there is more than one "words": see words\.yaml:\d+\.$/,
      ),
      expect.stringMatching(
        /^z-extra\.yaml:2:\d+ cards\.0\.id: the card "mesh" is already at cards\.yaml:\d+\.$/,
      ),
      expect.stringMatching(
        /^z-extra\.yaml:4:\d+ .*the phrase "practice\.risk\/roof" is already at debrief\.yaml:\d+\.$/,
      ),
    ]);
  });

  it('is told when it is no YAML, or when a part is missing', () => {
    expect(problemsOf(new Map([...texts, ['house.yaml', 'house: [']]))[0]).toMatch(/^house\.yaml:\d+:\d+ /);
    const without = new Map(texts);
    without.delete('words.yaml');
    expect(problemsOf(without)[0]).toContain('no file of this folder has the part "words".');
  });
});
