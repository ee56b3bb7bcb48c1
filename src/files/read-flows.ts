import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import type { FlowDocument } from '../flow/document.ts';
import type { FlowProblem } from '../flow/problem.ts';
import { listYamlFiles } from './list-yaml-files.ts';
import { readYaml } from './read-yaml.ts';

/** Reads every flow file below a folder; paths in problems are relative to `root`. */
export function readFlows(
  folder: string,
  root: string,
): { documents: FlowDocument[]; problems: FlowProblem[] } {
  const read = listYamlFiles(folder).map((path) =>
    readYaml(relative(root, path), readFileSync(path, 'utf8')),
  );
  return { documents: read.map((one) => one.document), problems: read.flatMap((one) => one.problems) };
}
