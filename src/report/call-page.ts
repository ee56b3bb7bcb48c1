import type { Wording } from '../wording/wording.ts';
import { callText } from './call-text.ts';
import { openPage } from './page.ts';
import { composeBrief } from './plan-compose.ts';
import { renderText } from './render-text.ts';
import type { Report } from './report.ts';

/** What a volunteer takes from a call besides what is read out: the page for the visit, and the text to send. */
export function callPage(report: Report, wording: Wording, width: number): string {
  const brief = report.planning ? composeBrief(openPage(report, wording), report.planning.visitBrief) : [];
  const language = wording.reader.language;
  const page = brief.length > 0 ? `${renderText({ title: [], language, blocks: brief }, width)}\n` : '';
  const { text, parts } = callText(report, wording);
  return `${page}${wording.text('call.closing.sms', { parts })}\n\n${text}\n`;
}
