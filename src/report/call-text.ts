import { toPlainCharacters } from '../wording/gsm7.ts';
import { splitSms } from '../wording/sms-parts.ts';
import type { Wording } from '../wording/wording.ts';
import type { Report } from './report.ts';

/** How many parts the text after a call may take. */
export const mostParts = 3;

const firstJobs = 3;

/** A text to send, and how many messages a carrier makes of it (3GPP TS 23.038, TS 23.040). */
export interface CallText {
  readonly text: string;
  readonly parts: number;
}

function measured(lines: readonly string[]): CallText {
  const text = toPlainCharacters(lines.join('\n'));
  return { text, parts: splitSms(text).length };
}

/** The longest beginning of a text at whole words, closed by dots, for which `fits` holds. */
function shortened(text: string, fits: (text: string) => boolean): string {
  if (fits(text)) return text;
  const words = text.split(' ');
  for (let count = words.length - 1; count > 0; count--) {
    const shorter = `${words
      .slice(0, count)
      .join(' ')
      .replace(/[\s,;:.]+$/u, '')}...`;
    if (fits(shorter)) return shorter;
  }
  return '';
}

/**
 * The text that a volunteer sends after a call: the first jobs, the promise that nobody makes, and whom to ask, in at
 * most three parts. What does not fit is left out from the end: the address, then the words of the last jobs.
 */
export function callText(report: Pick<Report, 'jobs' | 'rulebook'>, wording: Wording): CallText {
  const say = (id: string, values?: Parameters<Wording['text']>[1]) =>
    wording.text(`call.sms.${id}`, values).replaceAll('**', '');
  const jobs = report.jobs
    .slice(0, firstJobs)
    .map((job) => job.do.replaceAll('**', '').replace(/[.;]$/u, ''));
  const lines = jobs.map((job, at) => say('job', { number: at + 1, job }));
  const all = [say('first'), ...(lines.length > 0 ? lines : [say('nothing')]), say('promise')];
  const whole = measured([...all, say('ask', { authority: report.rulebook.authority })]);
  if (whole.parts <= mostParts) return whole;
  let kept = all;
  // Each job gets shorter in turn, the last first, until the text fits.
  for (let at = lines.length; at > 0 && measured(kept).parts > mostParts; at--) {
    const before = kept;
    const short = shortened(before[at] ?? '', (line) => measured(before.with(at, line)).parts <= mostParts);
    kept = before.with(at, short);
  }
  return measured(kept.filter((line) => line !== ''));
}
