import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../src/commands/serve/run-server.ts';
import { realProgramme } from '../support/programme.ts';
import { runCommand } from '../support/run-command.ts';
import { exampleSecret, siteKey } from '../webhook/test-site.ts';

const folder = mkdtempSync(join(tmpdir(), 'roofdown-hand-over-'));
const nothing = () => new Writable({ write: (_chunk, _encoding, done) => done() });
let server: RunningServer;
let at: string;

beforeAll(async () => {
  const env = {
    XDG_DATA_HOME: folder,
    ROOFDOWN_PORT: '0',
    ROOFDOWN_SECRET: exampleSecret,
    ROOFDOWN_KEY: siteKey,
  };
  const io = {
    stdin: Readable.from([]),
    stdout: nothing(),
    stderr: nothing(),
    env,
    home: folder,
    clock: () => new Date(),
  };
  server = await startServer(io, async () => realProgramme());
  at = `http://127.0.0.1:${server.address.port}`;
});
afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

const others: Server[] = [];
afterEach(() => {
  for (const one of others.splice(0)) one.close();
});

/** A server that answers as it is told; gives its address. */
async function serverThat(
  answer: (count: number) => { status: number; body: string } | 'nothing',
): Promise<string> {
  let count = 0;
  const one = createServer((request, response) => {
    count += 1;
    const said = answer(count);
    request.resume();
    if (said === 'nothing') return void request.socket.destroy();
    response.writeHead(said.status, { 'content-type': 'application/json' }).end(said.body);
  });
  others.push(one);
  await new Promise<void>((resolve) => one.listen(0, '127.0.0.1', resolve));
  return `http://127.0.0.1:${(one.address() as AddressInfo).port}`;
}

/** The clock of the tests stands still, the server's does not: requests are signed with the time of the server. */
const call = (argv: readonly string[], lines: readonly string[], data?: string, secret = exampleSecret) =>
  runCommand(
    ['call', '--plain', ...argv],
    lines,
    data,
    undefined,
    { ROOFDOWN_SECRET: secret },
    () => new Date(),
  );

const opened = [
  'no',
  'at home',
  'y',
  'y',
  '555-0142',
  'tamber county',
  'note two dogs',
  'roof covering: tile',
];
const codeIn = (out: string) => /Code: ([\d-]{14})/.exec(out)?.[1] ?? '';

describe('roofdown call --server', () => {
  it('hands a call over to a second volunteer, who goes on with all of it, once', async () => {
    const first = await call(['--server', at], [...opened, 'hand over to a colleague', 'yes', 'pause']);
    const code = codeIn(first.out);
    expect(code).not.toBe('');
    const data = mkdtempSync(join(folder, 'second-'));
    const second = await call(['--server', at, '--take-over', code], ['pause'], data);
    expect(second.code).toBe(0);
    for (const words of ['The call is yours now. 3 answers are kept', 'Call back: 555-0142', 'two dogs'])
      expect(second.out).toContain(words);
    const { out: list } = await runCommand(['walks', 'list'], [], data);
    expect(list).toContain('3 answer');
    const third = await call(['--server', at, '--take-over', code], []);
    expect(third.code).toBe(2);
    expect(third.err).toContain('No walk waits under this code');
  });

  it('asks before the call is closed, and says to the caller where their answers go', async () => {
    const { out } = await call(['--server', at], [...opened, 'finish', 'yes', 'yes', 'yes']);
    expect(out.replace(/\s+/g, ' ')).toContain('unless you say yes to that later');
    expect(out.indexOf('I can give you a code')).toBeLessThan(out.indexOf('Code: '));
    expect(out.indexOf('Code: ')).toBeLessThan(out.indexOf('Closing the call'));
  });

  it('takes back what waits when the call is erased, and says so where it cannot', async () => {
    const told = [...opened, 'hand over', 'yes', 'forget me', 'yes'];
    const { out } = await call(['--server', at], told);
    expect(out).toContain('Nothing of this walk is kept');
    expect(out).not.toContain('A copy that was handed over waits');
    const gone = await call(['--server', at, '--take-over', codeIn(out)], []);
    expect(gone.err).toContain('No walk waits under this code');
    const left = JSON.stringify({ code: '4829-1530-6712', hours: 5, reach: null });
    const dies = await serverThat((count) => (count < 3 ? { status: 200, body: left } : 'nothing'));
    const { out: kept } = await call(['--server', dies], told);
    expect(kept).toContain('A copy that was handed over waits');
  });

  it('can take a call again whose answer got lost, from the same computer only', async () => {
    const first = await call(['--server', at], [...opened, 'hand over to a colleague', 'yes', 'pause']);
    const code = codeIn(first.out);
    const [mine, other] = [mkdtempSync(join(folder, 'mine-')), mkdtempSync(join(folder, 'other-'))];
    const again = ['--server', at, '--take-over', code];
    expect((await call(again, ['pause'], mine)).code).toBe(0);
    expect((await call(again, ['pause'], other)).code).toBe(2);
    expect((await call(again, ['pause'], mine)).out).toContain('Call back: 555-0142');
  });

  it('tells a volunteer who types a code into a call how it is taken over', async () => {
    const first = await call(['--server', at], [...opened, 'hand over', 'yes', 'pause']);
    const { out } = await call(['--server', at], [codeIn(first.out)]);
    expect(out).toContain('--take-over CODE');
  });

  it('is an address of something else when that answers so, and no matter of the secret', async () => {
    const other = await serverThat(() => ({ status: 404, body: 'nothing here' }));
    const { code, err } = await call(['--server', other], []);
    expect(code).toBe(2);
    expect(err).toContain('is no chat service');
    expect(err).not.toContain('ROOFDOWN_SECRET');
    const ill = await serverThat(() => ({ status: 503, body: '' }));
    expect((await call(['--server', ill], ['no'])).err).toContain('cannot do it just now');
  });

  it('takes over one call only', async () => {
    const { code, err } = await call(['--server', at, '--take-over', '4829 1530 6712', '--new'], []);
    expect(code).toBe(2);
    expect(err).toContain('Give one of them');
  });

  it('goes on when the service is away, says so, and tries again when asked', async () => {
    const gone = 'http://127.0.0.1:9';
    const { code, out, err } = await call(['--server', gone], [...opened, 'hand over', 'yes', 'pause']);
    expect(code).toBe(0);
    expect(err).toContain('cannot be reached');
    expect(out).toContain('No code was made');
    expect(out).toContain('"hand over" tries again');
  });

  it('sends a request again that got no answer', async () => {
    const left = JSON.stringify({ code: '4829-1530-6712', hours: 5, reach: null });
    const flaky = await serverThat((count) => (count % 2 === 1 ? 'nothing' : { status: 200, body: left }));
    const { out, err } = await call(['--server', flaky], [...opened, 'hand over', 'yes', 'pause']);
    expect(err).toBe('');
    expect(codeIn(out)).toBe('4829-1530-6712');
  });

  it('says that something else than a chat service answers', async () => {
    const other = await serverThat(() => ({ status: 200, body: '{"hello":1}' }));
    const { out } = await call(['--server', other], [...opened, 'hand over', 'yes', 'pause']);
    expect(out).toContain('answered with something else than a code');
  });

  it('is refused before the call with a wrong secret', async () => {
    const wrong = `whsec_${Buffer.alloc(32, 3).toString('base64')}`;
    const { code, err, out } = await call(['--server', at], [], undefined, wrong);
    expect(code).toBe(2);
    expect(err).toContain('ROOFDOWN_SECRET must be the same');
    expect(out).toBe('');
  });

  it.each(['walks', 'http://walks.example.org', 'https://walks.example.org/path', 'ftp://127.0.0.1'])(
    'does not take %s for an address',
    async (server) => {
      const { code, err } = await call(['--server', server], []);
      expect(code).toBe(2);
      expect(err).toContain('Give the https address');
    },
  );

  it('needs an address to take a call over', async () => {
    const { code, err } = await call(['--take-over', '4829 1530 6712'], []);
    expect(code).toBe(2);
    expect(err).toContain('--take-over needs --server');
  });

  it('has no code without a chat service', async () => {
    const { out } = await call([], [...opened, 'hand over', 'finish', 'yes']);
    expect(out).toContain('This call stays on this computer');
    expect(out).not.toContain('I can give you a code');
  });
});
