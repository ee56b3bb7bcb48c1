import type { Wording } from '../wording/wording.ts';
import { composeAfter } from './compose-after.ts';
import { composeJobs } from './compose-jobs.ts';
import { composeOpening } from './compose-opening.ts';
import { composeRecord } from './compose-record.ts';
import type { ReportDocument } from './document.ts';
import { type Extent, openPage, typed } from './page.ts';
import { composePlan } from './plan-compose.ts';
import { composeBudget } from './plan-compose-budget.ts';
import type { Report } from './report.ts';

/** Lays a report out as a document: the list first, what it rests on last. */
export function compose(report: Report, wording: Wording, extent: Extent = 'whole'): ReportDocument {
  const page = openPage(report, wording);
  const title = page.say('title');
  const { label, language } = report.walk;
  const budget = report.planning?.budget;
  if (extent === 'budget')
    return { title, language, blocks: budget ? composeBudget(page, budget, 'screen') : [] };
  return {
    title: label === null ? title : [...title, { kind: 'text', text: ' - ' }, ...typed(label)],
    language,
    blocks: [
      ...composeOpening(page),
      ...composeJobs(page, extent),
      ...composePlan(page, extent),
      ...composeAfter(page, extent),
      ...composeRecord(page, extent),
    ],
  };
}
