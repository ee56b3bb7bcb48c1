import { describe, expect, it } from 'vitest';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';
import type { Report } from '../../src/report/report.ts';
import { demoHouses } from '../call/houses.ts';
import { walk } from '../storage/walks.ts';
import { realProgramme } from '../support/programme.ts';
import { testSite } from './test-site.ts';

const { checklist } = realProgramme();
const { site } = testSite();

const houses = demoHouses(checklist).map(({ name, sheet }): [string, WalkRecord] => [
  name,
  walk(name, { id: name as WalkId, sheet, cursor: { phase: 'finished' } }),
]);

describe('the first jobs in a chat', () => {
  it.each(houses)('of %s are those of the report', (_, record) => {
    const { jobs } = JSON.parse(site.makeReport(record, 'json')) as Report;
    const first = jobs.slice(0, 3).map((job) => job.do.replaceAll('**', ''));
    expect(site.firstJobs(record, 3)).toEqual(first);
    const { text } = site.callText(record);
    expect(text).toContain(first.length > 0 ? '1. ' : 'Keep leaves off the roof');
  });
});
