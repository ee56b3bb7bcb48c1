// What the plan, the computations and a short call take. Run it with: npm run bench plan
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { layOutPath } from '../../src/answers/path.ts';
import { assess } from '../../src/assess/assess.ts';
import { houseOf } from '../../src/computations/house/house.ts';
import { allOutcomes } from '../../src/computations/house/outcome.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { planWithin } from '../../src/planning/budget.ts';
import { doubtOf } from '../../src/planning/doubt.ts';
import { nextQuestion } from '../../src/planning/next-question.ts';
import { toFindOut } from '../../src/planning/to-find-out.ts';
import { thirdOfQuestions, walkShort } from '../../tests/call/short-walk.ts';
import { realProgramme } from '../../tests/support/programme.ts';
import { sayRatio } from './measure.ts';

const { checklist } = realProgramme();
const folder = 'tests/houses';
const houses = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readAnswers(checklist.index, name, readFileSync(join(folder, name), 'utf8')).sheet);

/** The processor time of a run in milliseconds, the least of several: other work on the machine does not count. */
function quickest(run: () => void, times: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let time = 0; time < times; time++) {
    const start = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(start);
    best = Math.min(best, (user + system) / 1000);
  }
  return best;
}

const slowest = (run: (sheet: (typeof houses)[number]) => () => void, times: number) =>
  Math.max(...houses.map((sheet) => quickest(run(sheet), times)));

const budget = slowest((sheet) => {
  const assessment = assess(checklist, sheet);
  return () => void planWithin(assessment, checklist.flow, { money: 600, hours: 12 });
}, 6);
sayRatio('milliseconds to choose within a budget, slowest house', budget, 'at most 100', budget <= 100);

const doubt = slowest((sheet) => {
  const assessment = assess(checklist, sheet);
  return () => void doubtOf(checklist, assessment, 1);
}, 8);
sayRatio('milliseconds for 1,000 draws, slowest house', doubt, 'at most 30', doubt <= 30);

const findOut = slowest((sheet) => {
  const assessment = assess(checklist, sheet);
  return () => void toFindOut(checklist, sheet, assessment);
}, 3);
console.log(`What to find out, slowest house: ${findOut.toFixed(0)} ms`);

const computed = slowest((sheet) => {
  const path = layOutPath(checklist.index, sheet);
  return () => void allOutcomes(houseOf(checklist.index, path));
}, 300);
sayRatio('milliseconds for all computations, slowest house', computed, 'at most 1', computed <= 1);

const times = houses.flatMap((full) => {
  const taken: number[] = [];
  walkShort(checklist, full, thirdOfQuestions(checklist, full), (...given) => {
    const started = performance.now();
    const step = nextQuestion(...given);
    taken.push(performance.now() - started);
    return step;
  });
  return taken;
});
times.sort((a, b) => a - b);
const late = times[Math.floor(times.length * 0.95)] ?? 0;
sayRatio('milliseconds to choose the next question of a short call, 95th percentile', late, 'at most 50', late <= 50);
