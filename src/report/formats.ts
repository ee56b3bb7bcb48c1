import type { Wording } from '../wording/wording.ts';
import { compose } from './compose.ts';
import type { Extent } from './page.ts';
import { renderHtml } from './render-html.ts';
import { renderJson } from './render-json.ts';
import { renderMarkdown } from './render-markdown.ts';
import { renderText } from './render-text.ts';
import type { Report } from './report.ts';

export const reportFormats = ['text', 'markdown', 'html', 'json'] as const;
export type ReportFormat = (typeof reportFormats)[number];

/** A report in one of its formats, ending with a newline. `width` (cells, 40 to 100) is for text only. */
export function renderReport(
  report: Report,
  wording: Wording,
  format: ReportFormat,
  { width = 80, extent = 'whole' }: { readonly width?: number; readonly extent?: Extent } = {},
): string {
  if (format === 'json') return renderJson(report);
  const document = compose(report, wording, extent);
  switch (format) {
    case 'text':
      return renderText(document, width);
    case 'markdown':
      return renderMarkdown(document);
    case 'html':
      return renderHtml(document);
    default:
      return format satisfies never;
  }
}
