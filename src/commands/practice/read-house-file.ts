import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Answer, AnswerSheet } from '../../answers/answer.ts';
import type { FlowIndex } from '../../answers/flow-index.ts';
import { readAnswers } from '../../files/read-answers.ts';
import { readYaml } from '../../files/read-yaml.ts';
import { didYouMean } from '../../flow/did-you-mean.ts';
import { type FlowProblem, sayProblem } from '../../flow/problem.ts';
import { ProgramError } from '../program-error.ts';

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT')
      throw new ProgramError(`There is no file "${path}". Give the path of a YAML or JSON file.`);
    const reason = error instanceof Error ? error.message : String(error);
    throw new ProgramError(`The file cannot be read: ${reason}. Give the path of a YAML or JSON file.`);
  }
}

/** A house as its answer file says it; `warnings` are worth a word and no fault. */
interface HouseFile {
  readonly name: string;
  readonly sheet: AnswerSheet;
  readonly warnings: readonly FlowProblem[];
}

const saysNothing = (answer: Answer): boolean =>
  answer.status === 'bySide'
    ? Object.values(answer.sides).every((one) => one.status === 'notSure')
    : answer.status === 'notSure';

/** The answers of houses from files; the faults of all of them are named with file, line and column. */
export function readHouseFiles(index: FlowIndex, paths: readonly string[]): readonly HouseFile[] {
  const read = paths.map((path) => ({ path, ...readAnswers(index, path, readText(path)) }));
  const problems = read.flatMap((one) => one.problems);
  const files = new Set(problems.map((one) => one.path)).size > 1 ? 'files' : 'file';
  if (problems.length > 0)
    throw new ProgramError(`${problems.map(sayProblem).join('\n')}\nMend the answer ${files} and try again.`);
  const empty = read.find(({ sheet }) => Object.values(sheet).every(saysNothing));
  if (empty)
    throw new ProgramError(`${empty.path} has no answers. "roofdown questions" tells what can be answered.`);
  return read.map(({ path, sheet, warnings }) => ({
    name: basename(path).replace(/\.(?:ya?ml|json)$/, ''),
    sheet,
    warnings,
  }));
}

/** The answers of one house from its file. */
export function readHouseFile(index: FlowIndex, path: string): HouseFile {
  const [file] = readHouseFiles(index, [path]);
  if (!file) throw new Error('one path gives one file');
  return file;
}

/** A supervisor's own key: a list of findings with their places, such as `vents.coarse-high@left`. */
export function readKeyFile(path: string, known: ReadonlySet<string>): string[] {
  const { document, problems } = readYaml(path, readText(path));
  const value = document.value as { findings?: unknown } | unknown[] | undefined;
  const list = Array.isArray(value) ? value : value?.findings;
  if (problems.length > 0) throw new ProgramError(problems.map(sayProblem).join('\n'));
  if (!Array.isArray(list))
    throw new ProgramError(`${path}: a key is a list of findings, such as "- vents.coarse-high@left".`);
  const ids = list.map(String);
  const wrong = ids.filter((id) => !known.has(id));
  if (wrong.length === 0) return ids;
  const lines = wrong.map((id) =>
    `${path}: there is no finding "${id}" at this house. ${didYouMean(id, known) ?? ''}`.trim(),
  );
  throw new ProgramError(lines.join('\n'));
}
