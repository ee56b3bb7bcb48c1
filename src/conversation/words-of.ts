import type { Checklist } from '../assess/checklist.ts';
import type { Words } from '../flow/schema/words.ts';
import type { WalkRecord } from './record.ts';

/** The words of a person's language, else of the walk's own. */
export function wordsOf({ flow }: Checklist, { language }: Pick<WalkRecord, 'language'>): Words | undefined {
  return flow.words[language] ?? flow.words[flow.walk.language];
}
