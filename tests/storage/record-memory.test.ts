import { describe, expect, it } from 'vitest';
import { createRecordMemory } from '../../src/storage/record-memory.ts';
import { writeStoredRecord } from '../../src/storage/stored-record.ts';
import { walk } from './walks.ts';

describe('the memory of records', () => {
  it('gives the known record while the stored text is the same, and reads another text afresh', () => {
    const memory = createRecordMemory();
    const record = walk('w', { revision: 1 });
    const text = writeStoredRecord(record);
    memory.remember(text, record);
    const again = memory.read(text, record.id);
    expect(again.kind === 'read' && again.value).toBe(record);
    const changed = memory.read(writeStoredRecord({ ...record, revision: 2 }), record.id);
    expect(changed).toMatchObject({ kind: 'read', value: { revision: 2 } });
    memory.forget(record.id);
    const fresh = memory.read(text, record.id);
    expect(fresh.kind === 'read' && fresh.value).not.toBe(record);
    expect(fresh).toEqual({ kind: 'read', value: record });
  });

  it('remembers no more walks than it may, and no text that cannot be read', () => {
    const memory = createRecordMemory(2);
    const records = ['a', 'b', 'c'].map((id) => walk(id));
    for (const record of records) memory.remember(writeStoredRecord(record), record);
    const known = (record: ReturnType<typeof walk>) => {
      const read = memory.read(writeStoredRecord(record), record.id);
      return read.kind === 'read' && read.value === record;
    };
    // The newest first, since reading one that is not known takes the place of the oldest.
    expect([...records].reverse().map(known)).toEqual([true, true, false]);
    expect(memory.read('{', walk('a').id).kind).toBe('unreadable');
  });
});
