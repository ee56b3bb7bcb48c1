import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/commands/program.ts';
import { startServer } from '../../src/commands/serve/run-server.ts';
import { realProgramme } from '../support/programme.ts';
import { exampleSecret, siteKey } from './test-site.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'roofdown-serve-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function outside(env: Readonly<Record<string, string>>) {
  const written = { out: '', err: '' };
  const into = (name: 'out' | 'err') =>
    new Writable({
      write: (chunk, _, done) => {
        written[name] += String(chunk);
        done();
      },
    });
  const io = {
    stdin: Readable.from([]),
    stdout: into('out'),
    stderr: into('err'),
    env: { XDG_DATA_HOME: folder, ...env },
    home: folder,
    clock: () => new Date(),
  };
  return { io, written };
}

describe('the serve command', () => {
  it.each([
    [{ ROOFDOWN_HOST: '0.0.0.0' }, 'ROOFDOWN_SECRET is needed'],
    [{ ROOFDOWN_HOST: '0.0.0.0', ROOFDOWN_SECRET: exampleSecret }, 'ROOFDOWN_KEY is needed'],
    [{ ROOFDOWN_PORT: 'eighty' }, 'ROOFDOWN_PORT must be a whole number'],
  ])('refuses %j with exit code 2 and a clear line, and does not listen', async (env, line) => {
    const { io, written } = outside(env);
    expect(await runProgram(['serve'], io)).toBe(2);
    expect(written.err).toContain(line);
    expect(written.out).toBe('');
  });

  it('says which address is taken', async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) =>
      other.listen(0, '127.0.0.1', () => {
        const address = other.address();
        resolve(typeof address === 'object' && address ? address.port : 0);
      }),
    );
    const { io } = outside({ ROOFDOWN_PORT: String(port) });
    await expect(startServer(io, async () => realProgramme())).rejects.toThrow(
      /another program listens there/,
    );
    other.close();
  });

  it('serves a walk over a real connection, keeps it in a file of its own, and logs no more than it must', async () => {
    const { io, written } = outside({ ROOFDOWN_PORT: '0', ROOFDOWN_KEY: siteKey });
    const server = await startServer(io, async () => realProgramme());
    const base = `http://127.0.0.1:${server.address.port}`;
    const start = await fetch(`${base}/walks`, { method: 'POST' });
    const { walk } = (await start.json()) as { walk: string };
    expect(await (await fetch(`${base}/walks/${walk}/report?format=text`)).text()).toContain('house');
    expect((await fetch(`${base}/readyz`)).status).toBe(200);
    await server.stop();
    await expect(fetch(`${base}/healthz`)).rejects.toThrow();
    const lines = written.out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines.map((line) => line.msg)).toEqual(
      expect.arrayContaining(['listening', 'request', 'stopping', 'stopped']),
    );
    expect(written.out).not.toContain(walk);
    const again = await startServer(io, async () => realProgramme());
    expect((await fetch(`http://127.0.0.1:${again.address.port}/walks/${walk}`)).status).toBe(200);
    await again.stop();
  });
});
