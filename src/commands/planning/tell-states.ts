import type { AnswerSheet } from '../../answers/answer.ts';
import type { Checklist } from '../../assess/checklist.ts';
import type { WalkRecord } from '../../conversation/record.ts';
import { compareAssessments } from '../../planning/compare.ts';
import { type AssessedDone, assessDone } from '../../planning/done.ts';
import { buildReport } from '../../report/build-report.ts';
import { composeComparison } from '../../report/compare-compose.ts';
import { type State, tellComparison } from '../../report/compare-data.ts';
import type { ReportFormat } from '../../report/formats.ts';
import { renderHtml } from '../../report/render-html.ts';
import { renderMarkdown } from '../../report/render-markdown.ts';
import { renderText } from '../../report/render-text.ts';
import { seed } from '../../settings.ts';
import { wordingFor } from '../wording-for.ts';

type Reader = Pick<WalkRecord, 'language' | 'audience' | 'units'>;

/** A house with its answers and the jobs done on it. */
export interface Standing {
  readonly sheet: AnswerSheet;
  readonly done: readonly string[];
}

function stateOf(
  checklist: Checklist,
  sheet: AnswerSheet,
  assessment: AssessedDone,
  reader: Reader,
  date: Date,
): State {
  const material = {
    checklist,
    assessment,
    toFindOut: [],
    upkeep: [],
    wording: wordingFor(checklist, { ...reader, sheet }),
    sheet,
    walk: { id: null, date: date.toISOString().slice(0, 10), seed, notes: [] },
  };
  return { material, report: buildReport(material) };
}

/** Two states of a house compared, as text in a format. */
export function tellStates(
  checklist: Checklist,
  [first, second]: readonly [Standing, Standing],
  told: {
    readonly title: 'compare.title' | 'compare.what-if.title';
    readonly done: readonly { readonly action: string; readonly date: string }[];
  },
  { reader, date, format, width }: { reader: Reader; date: Date; format: ReportFormat; width: number },
): string {
  const [was, is] = [first, second].map(({ sheet, done }) => assessDone(checklist, sheet, done)) as [
    AssessedDone,
    AssessedDone,
  ];
  const states = [
    stateOf(checklist, first.sheet, was, reader, date),
    stateOf(checklist, second.sheet, is, reader, date),
  ] as const;
  const comparison = tellComparison(states[0], states[1], compareAssessments(was, is));
  if (format === 'json') return `${JSON.stringify(comparison, null, 2)}\n`;
  // A job that was done is no job of the list any more: its words are those of a house in which it is still to do.
  const whole = stateOf(checklist, second.sheet, assessDone(checklist, second.sheet, []), reader, date);
  const doText = new Map([...whole.report.actions, ...whole.report.leftOut].map((one) => [one.id, one.do]));
  const done = told.done.map(({ action, date: day }) => ({ do: doText.get(action) ?? action, date: day }));
  const { wording } = states[1].material;
  const document = composeComparison({ title: told.title, comparison, done }, wording);
  if (format === 'markdown') return renderMarkdown(document);
  return format === 'html' ? renderHtml(document) : renderText(document, width);
}
