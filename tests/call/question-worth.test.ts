import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { firstLines } from '../../src/planning/short-call/first-lines.ts';
import { realProgramme } from '../support/programme.ts';
import { demoHouses, madeUpHouses } from './houses.ts';
import { questionWorth } from './question-worth.ts';
import { firstThree } from './short-walk.ts';

const { checklist } = realProgramme();
const houses = 600;

function asFile(worth: ReadonlyMap<string, number>): string {
  const lines = checklist.flow.questions
    .filter((question) => worth.has(question.id))
    .map((question) => `    ${question.id}: ${Math.round((worth.get(question.id) ?? 0) * 1000) / 1000}`);
  return [
    '# Which questions a short call asks. Written by the tests of calls: UPDATE_SHORT_CALL=1 npx vitest run',
    '# --config .config/vitest.config.ts tests/call/question-worth.test.ts (a few minutes).',
    'shortCall:',
    '  first: [about.danger, about.place]',
    `  basis: judgement; how often the first three jobs of ${houses} made-up houses (seeds 1 to ${houses}) are others when the answer is not known`,
    '  worth:',
    ...lines,
    '',
  ].join('\n');
}

describe('the worth of a question', () => {
  it('rests on the same first three jobs as the list that is shown', () => {
    const sheets = [...demoHouses(checklist).map((one) => one.sheet), ...madeUpHouses(checklist, 20_001, 20)];
    for (const sheet of sheets) {
      expect(assess(checklist, sheet).groups.length).toBeGreaterThanOrEqual(0);
      expect(firstLines(checklist, sheet).same).toBe(firstThree(checklist, sheet));
    }
  });

  it('is stored for every question that made-up houses are asked', () => {
    const stored = checklist.flow.shortCall?.worth ?? {};
    const asked = questionWorth(checklist, madeUpHouses(checklist, 1, 10));
    expect([...asked.keys()].filter((id) => stored[id] === undefined)).toEqual([]);
  });

  it.runIf(process.env['UPDATE_SHORT_CALL'])(
    'is worked out afresh',
    () => {
      const worth = questionWorth(checklist, madeUpHouses(checklist, 1, houses));
      writeFileSync('flows/home/short-call.yaml', asFile(worth));
    },
    1_800_000,
  );
});
