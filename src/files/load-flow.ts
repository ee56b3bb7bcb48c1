import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Flow } from '../flow/flow.ts';
import type { FlowProblem } from '../flow/problem.ts';
import { listYamlFiles } from './list-yaml-files.ts';

/** Where the flow files are, and where their checked form is kept between starts. */
export interface FlowFolders {
  /** The project's root: paths in problems are relative to it. */
  readonly root: string;
  readonly flows: string;
  readonly built: string;
}

export type LoadedFlow =
  | { readonly flow: Flow }
  | { readonly flow?: undefined; readonly problems: readonly FlowProblem[] };

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 16);

/** Path, size and time of change of every flow file: when none changed, the checked form still holds. */
function stampOf({ root, flows }: FlowFolders): string {
  return listYamlFiles(flows)
    .map((path) => {
      const { size, mtimeMs } = statSync(path);
      return `${relative(root, path)} ${size} ${mtimeMs}`;
    })
    .join('\n');
}

function readBuilt(folders: FlowFolders, stamp: string): Flow | undefined {
  const path = join(folders.built, 'flow.json');
  if (!existsSync(path)) return undefined;
  const text = readFileSync(path, 'utf8');
  const end = text.indexOf('\n');
  return text.slice(0, end) === sha256(stamp) ? (JSON.parse(text.slice(end + 1)) as Flow) : undefined;
}

/** Kept for the next start; a folder that cannot be written only costs time. */
function keepBuilt(folders: FlowFolders, stamp: string, flow: Flow): void {
  try {
    mkdirSync(folders.built, { recursive: true });
    const path = join(folders.built, `flow-${process.pid}.json`);
    writeFileSync(path, `${sha256(stamp)}\n${JSON.stringify(flow)}`);
    renameSync(path, join(folders.built, 'flow.json'));
  } catch {
    // A read-only installation reads the flow files at each start.
  }
}

/** Reads and checks all flow files, without the kept form. */
export async function checkFlowFiles(
  folders: Omit<FlowFolders, 'built'>,
  computations: readonly string[],
): Promise<LoadedFlow> {
  const [{ readFlows }, { buildFlow }] = await Promise.all([
    import('./read-flows.ts'),
    import('../flow/build-flow.ts'),
  ]);
  const { documents, problems } = readFlows(folders.flows, folders.root);
  if (problems.length > 0) return { problems };
  const built = buildFlow(documents, { computations, fingerprint: sha256 });
  return built.flow ? { flow: built.flow } : { problems: built.problems };
}

/** The checked flow: the kept form while no flow file changed, otherwise read and checked again. */
export async function loadFlow(folders: FlowFolders, computations: readonly string[]): Promise<LoadedFlow> {
  const stamp = stampOf(folders);
  const before = readBuilt(folders, stamp);
  if (before) return { flow: before };
  const loaded = await checkFlowFiles(folders, computations);
  if (loaded.flow) keepBuilt(folders, stamp, loaded.flow);
  return loaded;
}
