import type { Register } from './register.ts';

const help = `
Settings are read from the environment; the README lists them. Without any, the server listens on
127.0.0.1:8080 and keeps its walks in server.sqlite of the data folder.

Example:
  ROOFDOWN_PORT=8080 roofdown serve
`;

/** Waits for the first signal that asks the program to end. */
const asked = () =>
  new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });

/** `serve`: the chat webhook; ends after the turns in flight when it is asked to. */
export const registerServe: Register = (program, io) => {
  program
    .command('serve')
    .description('answer the same walk over HTTP: JSON, text messages, Telegram')
    .addHelpText('after', help)
    .action(async () => {
      const { startServer } = await import('./serve/run-server.ts');
      const server = await startServer(io);
      await asked();
      await server.stop();
    });
};
