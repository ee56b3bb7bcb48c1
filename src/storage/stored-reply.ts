import * as z from 'zod';
import type { Reply } from '../conversation/message.ts';
import { describeIssues, parseJson, type ReadRow } from './stored-record.ts';

const Stored = z.looseObject({
  parts: z.array(z.looseObject({ kind: z.enum(['say', 'readBack', 'report']) })),
  ask: z
    .looseObject({
      key: z.string(),
      question: z.string(),
      choices: z.array(z.looseObject({ id: z.string() })),
    })
    .exactOptional(),
  phase: z.enum(['asking', 'readBack', 'finished', 'emergency', 'paused']),
  progress: z.looseObject({ stops: z.array(z.looseObject({ id: z.string() })) }),
  revision: z.number().int().min(0),
});

/** A reply as one JSON text; `readStoredReply` reads it back. */
export function writeStoredReply(reply: Reply): string {
  return JSON.stringify(reply);
}

/** Reads the reply that was stored with a message. */
export function readStoredReply(json: string): ReadRow<Reply> {
  const data = parseJson(json);
  if (data.kind === 'unreadable') return data;
  const checked = Stored.safeParse(data.value);
  if (!checked.success) return { kind: 'unreadable', reason: describeIssues(checked.error) };
  return { kind: 'read', value: checked.data as unknown as Reply };
}
