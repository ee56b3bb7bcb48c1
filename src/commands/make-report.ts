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
import { seed } from '../settings.ts';
import { wordingFor } from './wording-for.ts';

/** The report of a walk in a format; width and extent are for text, limits for what fits into a budget. */
export function makeReport(
  checklist: Checklist,
  record: Pick<WalkRecord, 'sheet' | 'language' | 'audience' | 'units' | 'notes' | 'done'> & {
    readonly id: string | null;
  },
  date: Date,
  format: ReportFormat,
  size: { readonly width?: number; readonly extent?: Extent; readonly limits?: Limits } = {},
): string {
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
    planning: planFor(checklist, sheet, assessment, unknown, { seed, limits: size.limits ?? {} }),
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
  return renderReport(report, wording, format, size);
}
