import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from '../conversation/record.ts';
import type { Limits } from '../planning/budget-plan.ts';
import { assessDone } from '../planning/done.ts';
import { planFor } from '../planning/planning.ts';
import { toFindOut } from '../planning/to-find-out.ts';
import { upkeepFor } from '../planning/upkeep.ts';
import { buildReport } from '../report/build-report.ts';
import { type ReportFormat, renderReport } from '../report/formats.ts';
import type { Extent } from '../report/page.ts';
import type { Report } from '../report/report.ts';
import { seed } from '../settings.ts';
import type { Wording } from '../wording/wording.ts';
import { wordingFor } from './wording-for.ts';

type Walked = Pick<WalkRecord, 'sheet' | 'language' | 'audience' | 'units' | 'notes' | 'done'> & {
  readonly id: string | null;
};

/** The report of a walk as plain data, with the wording of its reader. */
export function reportOf(
  checklist: Checklist,
  record: Walked,
  date: Date,
  limits: Limits = {},
): { readonly report: Report; readonly wording: Wording } {
  const { sheet, done = [] } = record;
  const assessment = assessDone(
    checklist,
    sheet,
    done.map((one) => one.action),
  );
  const unknown = toFindOut(checklist, sheet, assessment);
  const wording = wordingFor(checklist, record);
  const report = buildReport({
    checklist,
    assessment,
    toFindOut: unknown,
    planning: planFor(checklist, sheet, assessment, unknown, { seed, limits }),
    upkeep: upkeepFor(checklist, assessment),
    wording,
    sheet,
    walk: {
      id: record.id,
      date: date.toISOString().slice(0, 10),
      seed,
      notes: record.notes.map((note) => note.text),
    },
  });
  return { report, wording };
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
