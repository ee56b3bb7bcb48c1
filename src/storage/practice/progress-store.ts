import { createHash, randomUUID } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import type { ProgressStore, TraineeProgress } from '../../practice/progress.ts';
import { StorageError } from '../storage-error.ts';
import { describeIssues, parseJson } from '../stored-record.ts';

/** Only what this program decides by is checked; what a newer one wrote besides is kept. */
const Stored = z.looseObject({
  version: z.literal(1),
  trainee: z.string().min(1),
  consent: z.boolean(),
  sessions: z.array(
    z.looseObject({ startedAt: z.string(), endedAt: z.string(), debrief: z.looseObject({}) }),
  ),
  cards: z.record(z.string(), z.looseObject({ due: z.iso.datetime() })),
  open: z
    .looseObject({ phase: z.string(), events: z.array(z.looseObject({ kind: z.string() })) })
    .exactOptional(),
  revision: z.number().int().min(0),
});

/** A file name that tells who it is and never clashes or leaves the folder. */
function fileName(trainee: string): string {
  const plain = trainee
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  const hash = createHash('sha256').update(trainee).digest('hex').slice(0, 8);
  return `${plain || 'trainee'}-${hash}.json`;
}

function readProgress(path: string): TraineeProgress {
  const data = parseJson(readFileSync(path, 'utf8'));
  const fault = (reason: string) =>
    new StorageError(
      'unreadableWalk',
      path,
      `The practice file ${path} cannot be read (${reason}). Move it away to begin afresh.`,
    );
  if (data.kind === 'unreadable') throw fault(data.reason);
  const checked = Stored.safeParse(data.value);
  if (!checked.success) throw fault(describeIssues(checked.error));
  return checked.data as unknown as TraineeProgress;
}

function syncFolder(folder: string): void {
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** The file appears whole or not at all, also after a power cut: written aside, flushed, put in place, folder flushed. */
function writeWhole(folder: string, path: string, text: string): void {
  const aside = `${path}.${randomUUID()}.tmp`;
  const handle = openSync(aside, 'wx', 0o600);
  try {
    writeSync(handle, text);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(aside, path);
  syncFolder(folder);
}

/** Progress of trainees as one JSON file each in a folder of its own. */
export function createProgressStore(folder: string): ProgressStore {
  const pathOf = (trainee: string) => join(folder, fileName(trainee));
  const load = (trainee: string) => (existsSync(pathOf(trainee)) ? readProgress(pathOf(trainee)) : undefined);
  return {
    load: async (trainee) => load(trainee),
    save: async (progress) => {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const kept = load(progress.trainee);
      if ((kept?.revision ?? 0) !== progress.revision - 1) return 'conflict';
      writeWhole(folder, pathOf(progress.trainee), `${JSON.stringify(progress)}\n`);
      return 'saved';
    },
    list: async () => {
      if (!existsSync(folder)) return [];
      const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
      return names.sort().map((name) => readProgress(join(folder, name)));
    },
    remove: async (trainee) => {
      if (!existsSync(pathOf(trainee))) return false;
      rmSync(pathOf(trainee));
      return true;
    },
  };
}
