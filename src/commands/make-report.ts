import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from '../conversation/record.ts';
import type { Limits } from '../planning/budget-plan.ts';
import { assessDone } from '../planning/done.ts';
import { planFor } from '../planning/planning.ts';
import { toFindOut } from '../planning/to-find-out.ts';
import { upkeepFor } from '../planning/upkeep.ts';
import { buildReport } from '../report/build-report.ts';
import { type ReportFormat, renderReport } from '../report/formats.ts';
import type { Material } from '../report/material.ts';
import type { Extent } from '../report/page.ts';
import type { Report } from '../report/report.ts';
import { reportList } from '../report/report-list.ts';
import { seed } from '../settings.ts';
import type { Wording } from '../wording/wording.ts';
import { wordingFor } from './wording-for.ts';

type Walked = Pick<WalkRecord, 'sheet' | 'language' | 'audience' | 'units' | 'notes' | 'done'> & {
  readonly id: string | null;
};

/** What a report is made from, before what takes long to work out. */
function quickMaterial(checklist: Checklist, record: Walked, date: Date): Material {
  const done = (record.done ?? []).map((one) => one.action);
  const assessment = assessDone(checklist, record.sheet, done);
  const notes = record.notes.map((note) => note.text);
  return {
    checklist,
    assessment,
    toFindOut: [],
    upkeep: upkeepFor(checklist, assessment),
    wording: wordingFor(checklist, record),
    sheet: record.sheet,
    walk: { id: record.id, date: date.toISOString().slice(0, 10), seed, notes },
  };
}

/** The list of a walk without the rest of its report, in a few milliseconds. */
export function listOf(checklist: Checklist, record: Walked, date: Date): Pick<Report, 'jobs' | 'rulebook'> {
  return reportList(quickMaterial(checklist, record, date));
}

/** The report of a walk as plain data, with the wording of its reader. */
export function reportOf(
  checklist: Checklist,
  record: Walked,
  date: Date,
  limits: Limits = {},
): { readonly report: Report; readonly wording: Wording } {
  const material = quickMaterial(checklist, record, date);
  const { assessment, sheet, wording } = material;
  const unknown = toFindOut(checklist, sheet, assessment);
  const planning = planFor(checklist, sheet, assessment, unknown, { seed, limits });
  return { report: buildReport({ ...material, toFindOut: unknown, planning }), wording };
}

/** The report of a walk in a format; width and extent are for text, limits for what fits into a budget. */
export function makeReport(
  checklist: Checklist,
  record: Walked,
  date: Date,
  format: ReportFormat,
  size: { readonly width?: number; readonly extent?: Extent; readonly limits?: Limits } = {},
): string {
  const { report, wording } = reportOf(checklist, record, date, size.limits);
  return renderReport(report, wording, format, size);
}
