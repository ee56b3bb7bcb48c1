import { homedir } from 'node:os';
import { runProgram } from './commands/program.ts';

// A reader that went away, such as `head`, ends the output and is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await runProgram(process.argv.slice(2), {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  home: homedir(),
  clock: () => new Date(),
});
