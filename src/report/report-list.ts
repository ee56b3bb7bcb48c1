import type { Material } from './material.ts';
import type { Report } from './report.ts';
import { numberJobs, reportJobs } from './report-jobs.ts';
import { reportRulebook } from './report-rules.ts';

/** The list alone, with whose rules hold: what a short message tells of a report, without what takes long to work out. */
export function reportList(material: Material): Pick<Report, 'jobs' | 'rulebook'> {
  const { jobs } = reportJobs(material, numberJobs(material.assessment.groups));
  return { jobs, rulebook: reportRulebook(material) };
}
