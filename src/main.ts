import * as nodeModule from 'node:module';
import { homedir } from 'node:os';

// From Node 22 on, what was compiled once is kept: the next start need not compile it again.
if ('enableCompileCache' in nodeModule) (nodeModule.enableCompileCache as () => void)();

// A reader that went away, such as `head`, ends the output and is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const { runProgram } = await import('./commands/program.ts');
process.exitCode = await runProgram(process.argv.slice(2), {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  home: homedir(),
  clock: () => new Date(),
});
