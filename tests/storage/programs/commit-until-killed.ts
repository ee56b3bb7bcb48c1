import { writeSync } from 'node:fs';
import type { WalkId } from '../../../src/conversation/record.ts';
import { createSqliteStore } from '../../../src/storage/sqlite/sqlite-store.ts';
import { reply, walk } from '../walks.ts';

// Commits turns without end, three walks at a time, and says each one only after it was acknowledged.
const store = createSqliteStore({ file: process.argv[2] ?? '' });

async function turnWithoutEnd(id: string): Promise<never> {
  for (;;) {
    const loaded = await store.load(id as WalkId);
    const revision = (loaded?.revision ?? 0) + 1;
    const sheet = { ...loaded?.sheet, [`q${revision % 40}`]: { status: 'given', value: revision } as const };
    const outcome = await store.commit({
      record: walk(id, { sheet, revision }),
      expected: loaded?.revision ?? 'new',
      message: { channel: 'test', id: `${id}-${revision}`, reply: reply(revision) },
    });
    if (outcome !== 'saved') throw new Error(`${id} at ${revision}: ${outcome}`);
    writeSync(1, `${id} ${revision}\n`);
  }
}

await Promise.all(['a', 'b', 'c'].map(turnWithoutEnd));
