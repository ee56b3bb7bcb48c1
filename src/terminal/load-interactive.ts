import type { InteractiveOptions } from './ink/run-interactive.tsx';
import type { TerminalEnd } from './ports.ts';

/**
 * Loads the interactive terminal, which nothing else does. The drawing library draws nothing while `CI` is merely
 * there, even empty, so the empty ones are taken out of `env` (the environment of the process) before.
 */
export async function loadInteractive(
  env: Record<string, string | undefined>,
): Promise<(options: InteractiveOptions) => Promise<TerminalEnd>> {
  for (const name of ['CI', 'CONTINUOUS_INTEGRATION']) if (env[name] === '') delete env[name];
  return (await import('./ink/run-interactive.tsx')).runInteractive;
}
