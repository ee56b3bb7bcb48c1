import { type ReportFormat, reportFormats } from '../report/formats.ts';

/** The media type of each format of a report. */
export const mediaTypes: Readonly<Record<ReportFormat, string>> = {
  html: 'text/html',
  markdown: 'text/markdown',
  text: 'text/plain',
  json: 'application/json',
};

const isFormat = (text: string): text is ReportFormat => (reportFormats as readonly string[]).includes(text);

function weightOf(range: string): { type: string; weight: number } {
  const [type = '', ...parameters] = range.split(';').map((part) => part.trim().toLowerCase());
  const weight = parameters
    .map((one) => /^q=([01](?:\.\d{0,3})?)$/u.exec(one)?.[1])
    .find((one) => one !== undefined);
  return { type, weight: weight === undefined ? 1 : Number(weight) };
}

const fits = (range: string, type: string) =>
  range === '*/*' || range === type || (range.endsWith('/*') && type.startsWith(range.slice(0, -1)));

/**
 * The format of a report that a request wants: `?format=` first, then `Accept` with its weights (RFC 9110 12.5.1),
 * else `otherwise`; nothing when none that is wanted is made.
 */
export function wantedFormat(
  asked: string | undefined,
  accept: string | undefined,
  otherwise: ReportFormat,
): ReportFormat | undefined {
  if (asked !== undefined) return isFormat(asked) ? asked : undefined;
  if (accept === undefined || accept.trim() === '') return otherwise;
  const ranges = accept.split(',').slice(0, 20).map(weightOf);
  const order = [otherwise, ...reportFormats.filter((one) => one !== otherwise)];
  const weighed = order.map((format) => {
    const matching = ranges.filter(({ type }) => fits(type, mediaTypes[format]));
    // The most exact range counts: "text/html;q=0" refuses HTML although "text/*" would take it.
    const exact = matching.sort(
      (a, b) => b.type.replaceAll('*', '').length - a.type.replaceAll('*', '').length,
    )[0];
    return { format, weight: exact?.weight ?? 0 };
  });
  const best = weighed.reduce((a, b) => (b.weight > a.weight ? b : a));
  return best.weight > 0 ? best.format : undefined;
}
