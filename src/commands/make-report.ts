import { assess } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from '../conversation/record.ts';
import { toFindOut } from '../planning/to-find-out.ts';
import { upkeepFor } from '../planning/upkeep.ts';
import { buildReport } from '../report/build-report.ts';
import { type ReportFormat, renderReport } from '../report/formats.ts';
import { seed } from '../settings.ts';
import { wordingFor } from './wording-for.ts';

/** The report of a walk in a format; `size` is for text. */
export function makeReport(
  checklist: Checklist,
  record: Pick<WalkRecord, 'sheet' | 'language' | 'audience' | 'units' | 'notes'> & {
    readonly id: string | null;
  },
  date: Date,
  format: ReportFormat,
  size: { readonly width?: number; readonly extent?: 'whole' | 'screen' } = {},
): string {
  const { sheet } = record;
  const assessment = assess(checklist, sheet);
  const wording = wordingFor(checklist, record);
  const report = buildReport({
    checklist,
    assessment,
    toFindOut: toFindOut(checklist, sheet, assessment),
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
