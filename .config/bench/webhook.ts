// Measures answers a second over HTTP against a bare handler with the same store. Run it with:
//   node .config/bench/run.mjs webhook
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import Database from 'libsql';
import { sign } from '../../src/webhook/standard-webhooks.ts';
import { buildProgram } from '../../tests/support/build-program.ts';
import { startPostgres } from '../../tests/support/postgres.ts';
import { realProgramme } from '../../tests/support/programme.ts';

const key = Buffer.alloc(32, 9);
const secret = `whsec_${key.toString('base64')}`;
const connections = 16;
/** The compiler of the engine needs that many answers to settle. */
const warmAnswers = 4_000;
const measureMilliseconds = 6_000;
const folder = mkdtempSync(join(tmpdir(), 'roofdown-bench-'));
const flow = join(folder, 'flow.json');
writeFileSync(flow, JSON.stringify(realProgramme().checklist.flow));
const program = await buildProgram(new URL('./webhook-server.ts', import.meta.url).pathname);
const agent = new Agent({ keepAlive: true, maxSockets: 64 });

async function serve(kind: 'ours' | 'bare', where: string) {
  const child = spawn(process.execPath, [program, kind, where, flow, secret], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines = createInterface({ input: child.stdout });
  const port = await new Promise<number>((resolve) => lines.once('line', (line) => resolve(Number(line.slice(5)))));
  const cpuMilliseconds = () => {
    const said = new Promise<number>((resolve) => lines.once('line', (line) => resolve(Number(line.slice(4)))));
    child.kill('SIGUSR2');
    return said;
  };
  const stop = () => new Promise((resolve) => child.once('exit', resolve) && child.kill('SIGKILL'));
  return { port, cpuMilliseconds, stop };
}

let messages = 0;
function post(port: number, path: string, body: string): Promise<string> {
  messages += 1;
  const id = `m${process.pid}-${messages}`;
  const timestamp = Math.floor(Date.now() / 1000);
  const headers = {
    'content-type': 'application/json',
    'content-length': Buffer.byteLength(body),
    'webhook-id': id,
    'webhook-timestamp': timestamp,
    'webhook-signature': sign(key, id, timestamp, body),
  };
  return new Promise((resolve, reject) => {
    const sent = request({ port, host: '127.0.0.1', path, method: 'POST', agent, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (chunk: string) => {
        text += chunk;
      });
      response.on('end', () => ((response.statusCode ?? 500) < 300 ? resolve(text) : reject(new Error(text))));
    });
    sent.on('error', reject).end(body);
  });
}

/** One person after the other, on each connection: a walk of answers, then the next walk. */
async function person(ports: readonly number[], kind: 'ours' | 'bare', over: () => boolean, times: number[], from: number) {
  for (let walk = 0; !over(); walk += 1) {
    const port = ports[(from + walk) % ports.length] ?? 0;
    const id = kind === 'bare' ? `w${process.pid}-${from}-${walk}` : (JSON.parse(await post(port, '/walks', '{}')) as { walk: string }).walk;
    for (let turn = 0; turn < 40 && !over(); turn += 1) {
      const started = performance.now();
      await post(port, `/walks/${id}/messages`, turn === 0 ? '{"text":"no"}' : '{"text":"not sure"}');
      times.push(performance.now() - started);
    }
  }
}

interface Measured {
  readonly perSecond: number;
  readonly median: number;
  readonly p99: number;
  /** Processor time of the servers for one answer, in milliseconds. */
  readonly cpu: number;
}

async function measure(kind: 'ours' | 'bare', wheres: readonly string[]): Promise<Measured> {
  const servers = await Promise.all(wheres.map((where) => serve(kind, where)));
  const ports = servers.map((one) => one.port);
  const round = async (over: (times: readonly number[]) => boolean) => {
    const times: number[] = [];
    await Promise.all(Array.from({ length: connections }, (_, n) => person(ports, kind, () => over(times), times, n)));
    return times;
  };
  const cpu = async () => (await Promise.all(servers.map((one) => one.cpuMilliseconds()))).reduce((a, b) => a + b, 0);
  await round((times) => times.length >= warmAnswers);
  await cpu();
  const until = performance.now() + measureMilliseconds;
  const times = (await round(() => performance.now() >= until)).sort((a, b) => a - b);
  const spent = await cpu();
  await Promise.all(servers.map((one) => one.stop()));
  const at = (share: number) => times[Math.floor(times.length * share)] ?? 0;
  return { perSecond: times.length / (measureMilliseconds / 1000), median: at(0.5), p99: at(0.99), cpu: spent / times.length };
}

/** Fills a SQLite file with copies of one short walk, in bulk: what counts is how deep the tables are. */
function fill(file: string, count: number): void {
  const db = new Database(file);
  db.exec(`INSERT INTO walks SELECT 'copy-' || n.value, w.revision, w.started_at, w.updated_at, w.phase, w.answered, w.label, w.data
    FROM (WITH RECURSIVE c(value) AS (SELECT 1 UNION ALL SELECT value + 1 FROM c WHERE value < ${count}) SELECT value FROM c) n,
    (SELECT * FROM walks ORDER BY length(data) LIMIT 1) w`);
  db.prepare('PRAGMA wal_checkpoint(TRUNCATE)').all();
  db.close();
}

const ratio = (a: number, b: number) => (a / b).toFixed(2);
const say = (what: string, { perSecond, median, p99, cpu }: Measured) =>
  console.log(`${what}: ${perSecond.toFixed(0)} answers/s, median ${median.toFixed(1)} ms, p99 ${p99.toFixed(1)} ms (${ratio(p99, median)} x), ${cpu.toFixed(2)} ms of processor each`);

/** Each measured three times, the two in turn, so that a slow moment of the machine meets both; the middle one counts. */
async function inTurn(name: string, where: (kind: string, run: number) => string | Promise<string>) {
  const runs: { bare: Measured; ours: Measured }[] = [];
  for (let run = 0; run < 3; run += 1)
    runs.push({ bare: await measure('bare', [await where('bare', run)]), ours: await measure('ours', [await where('ours', run)]) });
  const middle = (kind: 'bare' | 'ours') =>
    runs.map((one) => one[kind]).sort((a, b) => a.perSecond - b.perSecond)[1] as Measured;
  const [bare, ours] = [middle('bare'), middle('ours')];
  say(`${name}, bare`, bare);
  say(`${name}, roofdown`, ours);
  console.log(`${name}: ${ratio(ours.perSecond, bare.perSecond)} of bare by the clock, ${ratio(bare.cpu, ours.cpu)} by processor time`);
}

async function measurePostgres() {
  const postgres = await startPostgres({ durable: true });
  await inTurn('PostgreSQL', () => postgres.newDatabase());
  const shared = await postgres.newDatabase();
  say('PostgreSQL, one server', await measure('ours', [shared]));
  say('PostgreSQL, two servers', await measure('ours', [shared, shared]));
  await postgres.stop();
}

console.log(`Node ${process.version}, ${availableParallelism()} cores, ${connections} connections, load from the same machine`);
const only = process.argv[2];
if (only !== '--million') await inTurn('SQLite FULL', (kind, run) => join(folder, `${kind}-${run}.sqlite`));
if (only === '--million') {
  for (const count of [1_000, 1_000_000]) {
    const file = join(folder, `filled-${count}.sqlite`);
    await measure('ours', [file]);
    fill(file, count);
    say(`SQLite with ${count} stored walks`, await measure('ours', [file]));
  }
}
if (only !== '--million') await measurePostgres();
rmSync(folder, { recursive: true, force: true });
agent.destroy();
