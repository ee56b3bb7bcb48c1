import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { FlowDocument } from '../flow/document.ts';
import type { FlowProblem } from '../flow/problem.ts';
import { type PracticeContent, PracticeFile } from '../practice/schema/practice-file.ts';
import { readYaml } from './read-yaml.ts';

export type ReadPractice =
  | { readonly content: PracticeContent; readonly documents: readonly FlowDocument[] }
  | { readonly content?: undefined; readonly problems: readonly FlowProblem[] };

interface Read {
  readonly document: FlowDocument;
  readonly file: PracticeFile | undefined;
  readonly problems: readonly FlowProblem[];
}

function readOne(path: string, root: string): Read {
  const { document, problems } = readYaml(relative(root, path), readFileSync(path, 'utf8'));
  const parsed = problems.length > 0 ? undefined : PracticeFile.safeParse(document.value ?? {});
  const issues = parsed?.success === false ? parsed.error.issues : [];
  const wrong = issues.map((issue): FlowProblem => {
    const position = document.positionOf(issue.path);
    return { path: document.path, ...position, at: issue.path.map(String).join('.'), problem: issue.message };
  });
  return { document, file: parsed?.data, problems: [...problems, ...wrong] };
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
  const files = read.flatMap((one) => one.file ?? []);
  const house = files.find((file) => file.house)?.house;
  const words = files.find((file) => file.words)?.words;
  if (problems.length > 0) return { problems };
  if (!house || !words) return { problems: [missing(folder, root, house ? 'words' : 'house')] };
  const phrases = Object.assign({}, ...files.map((file) => file.phrases ?? {})) as PracticeContent['phrases'];
  const cards = files.flatMap((file) => file.cards ?? []);
  return { content: { house, words, cards, phrases }, documents: read.map((one) => one.document) };
}
