import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { AnswerSheet } from '../../answers/answer.ts';
import type { FlowIndex } from '../../answers/flow-index.ts';
import { readAnswers } from '../../files/read-answers.ts';
import { readYaml } from '../../files/read-yaml.ts';
import { didYouMean } from '../../flow/did-you-mean.ts';
import { sayProblem } from '../../flow/problem.ts';
import { ProgramError } from '../program-error.ts';

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new ProgramError(`The file cannot be read: ${reason}. Give the path of a YAML or JSON file.`);
  }
}

/** The answers of a house from a file; faults are named with file, line and column. */
export function readHouseFile(
  index: FlowIndex,
  path: string,
): { readonly name: string; readonly sheet: AnswerSheet } {
  const read = readAnswers(index, path, readText(path));
  if (read.problems.length > 0)
    throw new ProgramError(
      `${read.problems.map(sayProblem).join('\n')}\nMend the answer file and try again.`,
    );
  return { name: basename(path).replace(/\.(?:ya?ml|json)$/, ''), sheet: read.sheet };
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
