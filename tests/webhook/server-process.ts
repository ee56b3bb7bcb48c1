import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { buildProgram } from '../support/build-program.ts';
import { realProgramme } from '../support/programme.ts';
import { siteKey } from './test-site.ts';

/** A server in a process of its own. */
export interface ServerProcess {
  readonly port: number;
  readonly child: ChildProcess;
  readonly log: string[];
  /** From now on it ends without warning at this step; see the program. */
  readonly arm: (moment: 'before' | 'after', step: number) => Promise<void>;
  /** Ends it with a signal; gives its exit code, or the signal. */
  readonly end: (signal: NodeJS.Signals) => Promise<number | string>;
}

/** Builds the program and writes the flow beside; gives what starts a server with these settings. */
export async function serverStarter(
  folder: string,
): Promise<(settings: Readonly<Record<string, string>>) => Promise<ServerProcess>> {
  const program = await buildProgram(fileURLToPath(new URL('./programs/server.ts', import.meta.url)));
  const flow = join(folder, 'flow.json');
  writeFileSync(flow, JSON.stringify(realProgramme().checklist.flow));
  return (settings) => startProcess(program, { TEST_FLOW: flow, ...settings });
}

async function startProcess(
  program: string,
  settings: Readonly<Record<string, string>>,
): Promise<ServerProcess> {
  const { PATH = '' } = process.env;
  const env = {
    PATH,
    ROOFDOWN_PORT: '0',
    ROOFDOWN_KEY: siteKey,
    ROOFDOWN_MESSAGES_PER_MINUTE: '100000',
    ROOFDOWN_STARTS_PER_MINUTE: '100000',
    ...settings,
  };
  const child = spawn(process.execPath, [program], { env, stdio: ['pipe', 'pipe', 'inherit'] });
  const log: string[] = [];
  const lines = createInterface({ input: child.stdout });
  const said = (wanted: RegExp) =>
    new Promise<string>((resolve, reject) => {
      const look = (line: string) => {
        if (wanted.test(line)) resolve(line);
      };
      lines.on('line', look);
      child.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${log.join(' ')}`)));
    });
  lines.on('line', (line) => log.push(line));
  const port = Number((await said(/^port /u)).slice(5));
  return {
    port,
    child,
    log,
    arm: async (moment, step) => {
      const armed = said(/^armed$/u);
      child.stdin.write(`${moment} ${step}\n`);
      await armed;
    },
    end: async (signal) => {
      if (child.exitCode !== null || child.signalCode !== null)
        return child.exitCode ?? child.signalCode ?? 0;
      const ended = once(child, 'exit');
      child.kill(signal);
      const [code, by] = await ended;
      return (code as number | null) ?? String(by);
    },
  };
}

/** Posts a message to a server; rejects when the connection breaks. */
export async function post(
  port: number,
  path: string,
  body: unknown,
  id: string,
): Promise<{ status: number; body: Record<string, unknown> }> {
  const response = await fetch(`http://127.0.0.1:${port}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'webhook-id': id },
    body: JSON.stringify(body),
    signal: AbortSignal.timeout(15_000),
  });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
}
