import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { COMPUTED_IDS } from '../../src/computations/house/computed-ids.ts';
import { buildProgramme, type Programme } from '../../src/conversation/programme.ts';
import { readFlows } from '../../src/files/read-flows.ts';
import { buildFlow } from '../../src/flow/build-flow.ts';
import type { Flow } from '../../src/flow/flow.ts';
import { sayProblem } from '../../src/flow/problem.ts';

/** The real flow files, read and checked afresh; throws with every problem in words. */
export function readFlow(): Flow {
  const root = resolve('.');
  const { documents, problems } = readFlows(resolve('flows'), root);
  const built = buildFlow(documents, {
    computations: COMPUTED_IDS,
    fingerprint: (text) => createHash('sha256').update(text).digest('hex').slice(0, 16),
  });
  if (!built.flow) throw new Error([...problems, ...built.problems].map(sayProblem).join('\n'));
  return built.flow;
}

let programme: Programme | undefined;

/** The programme of the real flow, built once for a test file. */
export function realProgramme(): Programme {
  programme ??= buildProgramme(readFlow());
  return programme;
}
