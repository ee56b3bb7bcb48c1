import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from './record.ts';

const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}' ]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** Reads a yes or no to a short question that is not of the flow; anything else is `undefined`. */
export function readYesNo(checklist: Checklist, record: WalkRecord, text: string): 'yes' | 'no' | undefined {
  const { flow } = checklist;
  const words = flow.words[record.language] ?? flow.words[flow.walk.language];
  const said = plain(text);
  if (words?.yes.some((word) => said === plain(word) || said.startsWith(`${plain(word)} `))) return 'yes';
  if (words?.no.some((word) => said === plain(word) || said.startsWith(`${plain(word)} `))) return 'no';
  return undefined;
}
