import { readFileSync } from 'node:fs';
import { ServerResponse } from 'node:http';
import { createInterface } from 'node:readline';
import Database from 'libsql';
import pg from 'pg';
import { startServer } from '../../../src/commands/serve/run-server.ts';
import { buildProgramme } from '../../../src/conversation/programme.ts';
import type { Flow } from '../../../src/flow/flow.ts';

// The real server with the flow from a file. It ends without warning at a step of its work with the database, or of
// its answer, when a line on its standard input says so: "before 3" or "after 3".
let armed: { moment: 'before' | 'after'; step: number } | undefined;
let steps = 0;

const die = () => process.kill(process.pid, 'SIGKILL');

function stepping<This, Arguments extends unknown[], Result>(
  original: (this: This, ...args: Arguments) => Result,
): (this: This, ...args: Arguments) => Result {
  return function (this: This, ...args: Arguments): Result {
    if (!armed) return original.apply(this, args);
    steps += 1;
    if (armed.moment === 'before' && armed.step === steps) die();
    const result = original.apply(this, args);
    if (armed.moment === 'after' && armed.step === steps) die();
    return result;
  };
}

pg.Client.prototype.query = stepping(pg.Client.prototype.query as never) as never;
Database.prototype.exec = stepping(Database.prototype.exec as never) as never;
const { prepare } = Database.prototype;
Database.prototype.prepare = function (this: Database.Database, sql: string) {
  const statement = prepare.call(this, sql);
  statement.run = stepping(statement.run.bind(statement) as never) as never;
  statement.all = stepping(statement.all.bind(statement) as never) as never;
  return statement;
} as never;
ServerResponse.prototype.end = stepping(ServerResponse.prototype.end as never) as never;

const flow = JSON.parse(readFileSync(process.env.TEST_FLOW ?? '', 'utf8')) as Flow;
const io = {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  home: '/nonexistent',
  clock: () => new Date(),
};
const server = await startServer(io, async () => buildProgramme(flow));
process.stdout.write(`port ${server.address.port}\n`);

createInterface({ input: process.stdin }).on('line', (line) => {
  const [moment, step] = line.split(' ');
  steps = 0;
  armed = { moment: moment === 'after' ? 'after' : 'before', step: Number(step) };
  process.stdout.write('armed\n');
});

process.once('SIGTERM', () => {
  void server.stop().then(() => process.exit(0));
});
