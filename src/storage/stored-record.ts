import * as z from 'zod';
import type { WalkId, WalkRecord } from '../conversation/record.ts';

// Told apart by their status before anything else: trying one kind after the other costs as much as a whole turn.
const Given = z.looseObject({
  status: z.literal('given'),
  value: z.union([z.string(), z.number(), z.array(z.string())]),
  said: z.string().exactOptional(),
  how: z.enum(['seen', 'told', 'guess']).exactOptional(),
});
const Unknown = z.looseObject({ status: z.enum(['notSure', 'skipped']) });
const BySide = z.looseObject({
  status: z.literal('bySide'),
  sides: z.record(z.string(), z.discriminatedUnion('status', [Given, Unknown])),
});

const Sheet = z.record(z.string(), z.discriminatedUnion('status', [Given, Unknown, BySide]));

const Moment = z.string().refine((text) => !Number.isNaN(Date.parse(text)), 'must be a time');

const Call = z.looseObject({
  since: Moment,
  opened: z.array(z.string()),
  minutes: z.number().exactOptional(),
  behalf: z.string().exactOptional(),
  callBack: z.string().exactOptional(),
});

const Stored = z.looseObject({
  id: z.string().min(1),
  flow: z.string(),
  audience: z.enum(['resident', 'volunteer', 'trainee']),
  language: z.string(),
  units: z.enum(['imperial', 'metric']).exactOptional(),
  sheet: Sheet,
  cursor: z.looseObject({
    phase: z.enum(['asking', 'readBack', 'finished', 'emergency', 'paused']),
    key: z.string().exactOptional(),
    pending: z.looseObject({ kind: z.string() }).exactOptional(),
  }),
  revision: z.number().int().min(0),
  startedAt: Moment,
  updatedAt: Moment,
  call: Call.exactOptional(),
  notes: z.array(z.looseObject({ key: z.string().exactOptional(), text: z.string() })),
  done: z.array(z.looseObject({ action: z.string(), date: z.string() })).exactOptional(),
  earlier: z.array(z.looseObject({ date: z.string(), sheet: Sheet })).exactOptional(),
});

/** What came of reading a stored row: the value, or where and why it cannot be read. */
export type ReadRow<T> =
  | { readonly kind: 'read'; readonly value: T }
  | { readonly kind: 'unreadable'; readonly reason: string };

/** A walk as one JSON text; `readStoredRecord` reads it back. */
export function writeStoredRecord(record: WalkRecord): string {
  return JSON.stringify(record);
}

/**
 * Reads a stored walk. Fields that this version does not know are kept, so that an older program never
 * drops what a newer one wrote.
 */
export function readStoredRecord(json: string, id: WalkId): ReadRow<WalkRecord> {
  const data = parseJson(json);
  if (data.kind === 'unreadable') return data;
  const checked = Stored.safeParse(data.value);
  if (!checked.success) return { kind: 'unreadable', reason: describeIssues(checked.error) };
  if (checked.data.id !== id) return { kind: 'unreadable', reason: `it holds the walk ${checked.data.id}` };
  return { kind: 'read', value: checked.data as unknown as WalkRecord };
}

/** Parses JSON text into a value, with the reason when it is not JSON. */
export function parseJson(json: string): ReadRow<unknown> {
  try {
    return { kind: 'read', value: JSON.parse(json) };
  } catch (error) {
    return { kind: 'unreadable', reason: error instanceof Error ? error.message : String(error) };
  }
}

/** The first three faults of a failed check, each with its path. */
export function describeIssues(error: z.ZodError): string {
  const issues = error.issues
    .slice(0, 3)
    .map((issue) => `${issue.path.join('.') || 'row'}: ${issue.message}`);
  return issues.join('; ');
}
