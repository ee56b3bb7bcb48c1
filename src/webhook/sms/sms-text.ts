import type { Part, Reply } from '../../conversation/message.ts';
import type { WalkRecord } from '../../conversation/record.ts';
import { say } from '../../conversation/turned.ts';
import { toPlainCharacters } from '../../wording/gsm7.ts';
import { wordReply } from '../../wording/word-reply.ts';
import { choiceLine } from '../choice-line.ts';
import { reportLink } from '../report-link.ts';
import type { Site } from '../site.ts';

/** What is said more quietly is left out, except how an answer was taken and help that was asked for. */
const isLeftOut = (part: Part) =>
  part.kind === 'say' && part.tone === 'quiet' && !/^(?:note|help)\./u.test(part.text);

function reportParts(site: Site, record: WalkRecord): Part[] {
  // What closes a call reads the first jobs out itself.
  const count = record.call ? 0 : 3;
  const jobs = site.firstJobs(record, count).map((one) => one.replace(/[.;]$/u, ''));
  const link = reportLink(site, record.id);
  return [
    ...(jobs.length > 0 ? [say('webhook.first-jobs', { jobs: jobs.join('; ') })] : []),
    ...(link
      ? [say('webhook.report-link', link), say('webhook.report-link-until', link)]
      : [say('webhook.no-link')]),
  ];
}

/** The parts as they fit a phone: the answers read back and the report are a link. */
function shortParts(site: Site, record: WalkRecord, parts: readonly Part[]): Part[] {
  const firstReadBack = parts.findIndex((part) => part.kind === 'readBack');
  const link = reportLink(site, record.id);
  return parts.flatMap((part, position): Part[] => {
    if (part.kind === 'report') return reportParts(site, record);
    if (part.kind === 'readBack')
      return position === firstReadBack && link ? [say('webhook.answers-link', link)] : [];
    return isLeftOut(part) ? [] : [part];
  });
}

/** A reply as one plain text for a phone, without the line on how to answer; empty when nothing is said. */
export function smsText(site: Site, record: WalkRecord, reply: Reply): string {
  const parts = shortParts(site, record, reply.parts);
  const { blocks, ask } = wordReply({ ...reply, parts }, site.wordingFor(record));
  const choices = (ask?.choices ?? []).map(choiceLine);
  // A phone has room for what a volunteer listens for when they ask for help, as for the long help.
  const helped = reply.parts.some((part) => part.kind === 'say' && part.text === 'help.look');
  const guide = ask?.guide && helped ? [ask.guide.listen, ask.guide.cannotTell] : [];
  const asked = ask ? [ask.question, ...guide, ...choices] : [];
  const lines = [...blocks.flatMap((block) => block.lines), ...asked];
  return toPlainCharacters(lines.filter((line) => line !== '').join('\n'));
}
