// The assessment of a full house, without the draws. Run it with: npm run bench assess
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { assess } from '../../src/assess/assess.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { realProgramme } from '../../tests/support/programme.ts';
import { randomSheet, seededRandom } from '../../tests/support/random-answers.ts';
import { inTurns, sayRatio, timed } from './measure.ts';

const { checklist } = realProgramme();
const folder = 'tests/houses';
const houses = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => [name, readAnswers(checklist.index, name, readFileSync(join(folder, name), 'utf8')).sheet] as const);
const random = Array.from({ length: 20 }, (_, seed) => [`random ${seed}`, randomSheet(checklist.index, seededRandom(seed))] as const);

const all = [...houses, ...random];
const milliseconds = await inTurns(
  Object.fromEntries(all.map(([name, sheet]) => [name, () => timed(() => assess(checklist, sheet))])),
  { warm: 60, rounds: 101 },
);
for (const [name, sheet] of houses) {
  const { waysIn, ranked } = assess(checklist, sheet);
  console.log(`${name}: ${milliseconds[name]?.toFixed(2)} ms (${waysIn.length} ways in, ${ranked.length} jobs)`);
}
const slowest = Math.max(...houses.map(([name]) => milliseconds[name] ?? 0));
sayRatio('milliseconds of the slowest demonstration house', slowest, 'at most 2', slowest <= 2);
const middle = random.map(([name]) => milliseconds[name] ?? 0).sort((a, b) => a - b)[10] ?? 0;
console.log(`The middle of 20 houses with random answers to every question: ${middle.toFixed(2)} ms`);
