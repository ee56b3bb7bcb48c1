import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ServeEnvironment } from '../../src/commands/serve/read-settings.ts';
import { type RunningServer, startServer } from '../../src/commands/serve/run-server.ts';
import { realProgramme } from '../support/programme.ts';
import { exampleSecret, siteKey } from './test-site.ts';

const readme = readFileSync('README.md', 'utf8');
const run = promisify(execFile);

/** The block of shell commands that starts with this comment. */
function block(title: string): string {
  const found = [...readme.matchAll(/```sh\n([\s\S]*?)```/gu)].find(([, text]) =>
    text?.startsWith(`# ${title}`),
  );
  if (!found?.[1]) throw new Error(`The README has no block "# ${title}".`);
  return found[1];
}

let folder: string;
const servers: RunningServer[] = [];
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'roofdown-readme-'));
});
afterAll(async () => {
  for (const server of servers) await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** Follows a block against a server with these settings; gives what it printed. */
async function follow(title: string, settings: Readonly<Record<string, string>>): Promise<string> {
  const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() });
  const env = { XDG_DATA_HOME: folder, ROOFDOWN_PORT: '0', ...settings };
  const io = {
    stdin: Readable.from([]),
    stdout: nowhere,
    stderr: nowhere,
    env,
    home: folder,
    clock: () => new Date(),
  };
  const server = await startServer(io, async () => realProgramme());
  servers.push(server);
  const commands = block(title).replaceAll('127.0.0.1:8080', `127.0.0.1:${server.address.port}`);
  return (await run('bash', ['-euc', commands])).stdout;
}

describe('following the README', () => {
  it('finishes a walk with curl, from the first question to the list', async () => {
    const said = await follow('A walk with curl', {});
    expect(said).toContain('Where is the house?');
    expect(said).toContain('"phase":"finished"');
    expect(said).toMatch(/^[A-Z].*\n/mu);
    expect(said).not.toContain('/problems/');
  });

  it('signs requests with openssl', async () => {
    const said = await follow('The same, signed', { ROOFDOWN_SECRET: exampleSecret, ROOFDOWN_KEY: siteKey });
    expect(said).toContain('"key":"about.place"');
    expect(said).toMatch(/^# /mu);
    expect(said).not.toContain('/problems/');
  });

  it('meets every setting of the server', () => {
    const missing = Object.keys(ServeEnvironment.shape).filter((name) => !readme.includes(`\`${name}\``));
    expect(missing).toEqual([]);
  });
});
