import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Flow } from '../flow/flow.ts';
import type { FlowProblem } from '../flow/problem.ts';
import { readShape } from '../flow/read-shape.ts';
import { checkPractice } from '../practice/checks/check-practice.ts';
import type { ReadPracticeFile } from '../practice/checks/practice-parts.ts';
import { type PracticeContent, PracticeFile } from '../practice/schema/practice-file.ts';
import { readYaml } from './read-yaml.ts';

export type ReadPractice =
  | { readonly content: PracticeContent; readonly files: readonly ReadPracticeFile[] }
  | { readonly content?: undefined; readonly problems: readonly FlowProblem[] };

function readOne(path: string, root: string): Partial<ReadPracticeFile> & { problems: FlowProblem[] } {
  const { document, problems } = readYaml(relative(root, path), readFileSync(path, 'utf8'));
  if (problems.length > 0) return { document, problems };
  return { document, ...readShape(PracticeFile, document) };
}

function missing(folder: string, root: string, what: string): FlowProblem {
  const problem = `no file of this folder has the part "${what}".`;
  return { path: relative(root, folder), line: 1, column: 1, at: what, problem };
}

/** Reads the practice files of a folder; parts may stand in any file, paths in problems are relative to `root`. */
export function readPractice(folder: string, root: string): ReadPractice {
  if (!existsSync(folder)) return { problems: [missing(folder, root, 'house')] };
  const names = readdirSync(folder).filter((name) => /\.ya?ml$/.test(name));
  const read = names.sort().map((name) => readOne(join(folder, name), root));
  const problems = read.flatMap((one) => one.problems);
  const files = read.flatMap(({ file, document }) => (file && document ? [{ file, document }] : []));
  const house = files.find(({ file }) => file.house)?.file.house;
  const words = files.find(({ file }) => file.words)?.file.words;
  if (problems.length > 0) return { problems };
  if (!house || !words) return { problems: [missing(folder, root, house ? 'words' : 'house')] };
  const phrases = Object.assign(
    {},
    ...files.map(({ file }) => file.phrases ?? {}),
  ) as PracticeContent['phrases'];
  const cards = files.flatMap(({ file }) => file.cards ?? []);
  return { content: { house, words, cards, phrases }, files };
}

/** Reads the practice files and holds them against the flow they belong to. */
export function readCheckedPractice(
  folder: string,
  root: string,
  flow: Flow,
  computations: readonly string[],
): ReadPractice {
  const read = readPractice(folder, root);
  if (!read.content) return read;
  const problems = checkPractice(flow, read.files, computations);
  return problems.length > 0 ? { problems } : read;
}
