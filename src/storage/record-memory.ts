import type { WalkId, WalkRecord } from '../conversation/record.ts';
import { type ReadRow, readStoredRecord } from './stored-record.ts';

/** The walks that were read or written last, as records; the store alone says which text holds. */
export interface RecordMemory {
  /** The record of a stored text: the one that is known when the text is the same, to the letter. */
  readonly read: (json: string, id: WalkId) => ReadRow<WalkRecord>;
  readonly remember: (json: string, record: WalkRecord) => void;
  readonly forget: (id: WalkId) => void;
}

/**
 * Remembers at most so many walks. Checking a stored text costs about as much as a turn, and what was worked out from
 * the answers of a record that is known stays known.
 */
export function createRecordMemory(most = 1000): RecordMemory {
  const known = new Map<WalkId, { readonly json: string; readonly record: WalkRecord }>();
  const remember = (json: string, record: WalkRecord): void => {
    known.delete(record.id);
    known.set(record.id, { json, record });
    if (known.size > most) known.delete(known.keys().next().value ?? record.id);
  };
  return {
    remember,
    forget: (id) => void known.delete(id),
    read: (json, id) => {
      const before = known.get(id);
      if (before?.json === json) return { kind: 'read', value: before.record };
      const now = readStoredRecord(json, id);
      if (now.kind === 'read') remember(json, now.value);
      return now;
    },
  };
}
