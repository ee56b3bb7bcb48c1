import type { Report } from './report.ts';

/** Characters that could steer a screen or turn a line round, which JSON would let through. */
const STEERING =
  /[\u007f-\u009f\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|\udb40[\udc00-\udfff]/g;

const escaped = (unit: string) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** A report as JSON, two spaces deep; whatever could steer a terminal is written as an escape. */
export function renderJson(report: Report): string {
  const json = JSON.stringify(report, null, 2);
  return `${json.replace(STEERING, (found) => found.split('').map(escaped).join(''))}\n`;
}
