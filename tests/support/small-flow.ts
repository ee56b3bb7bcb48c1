import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { readYaml } from '../../src/files/read-yaml.ts';
import { buildFlow } from '../../src/flow/build-flow.ts';
import type { Flow } from '../../src/flow/flow.ts';
import { sayProblem } from '../../src/flow/problem.ts';

const folder = resolve('tests/flow/sound');

/** The small complete flow of the tests, with each of its texts changed as wanted; throws when it is not sound. */
export function smallFlow(change: (file: string, text: string) => string = (_, text) => text): Flow {
  const files = readdirSync(folder).map((file) => [file, readFileSync(join(folder, file), 'utf8')] as const);
  const words = ['words.yaml', readFileSync(resolve('flows/words/en.yaml'), 'utf8')] as const;
  const read = [...files, words].map(([file, text]) => readYaml(file, change(file, text)));
  const built = buildFlow(
    read.map((one) => one.document),
    { computations: [], fingerprint: (text) => String(text.length) + text.slice(-40) },
  );
  if (!built.flow)
    throw new Error([...read.flatMap((one) => one.problems), ...built.problems].map(sayProblem).join('\n'));
  return built.flow;
}
