import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';

/** Lines of a stream, one when it is asked for. */
export interface LineReader {
  /** The next line, or `undefined` at the end of input, on an error of the stream, and once interrupted. */
  readonly next: () => Promise<string | undefined>;
  readonly close: () => void;
}

/** Reads lines; `interrupted` ends the input at once, even while a line is waited for. */
export function createLineReader(input: Readable, interrupted?: AbortSignal): LineReader {
  const lines: string[] = [];
  let ended = interrupted?.aborted ?? false;
  let waiting: ((line: string | undefined) => void) | undefined;
  const reader = createInterface({ input, terminal: false, crlfDelay: Number.POSITIVE_INFINITY });

  const answer = (line: string | undefined): void => {
    const resolve = waiting;
    waiting = undefined;
    resolve?.(line);
  };
  const end = (): void => {
    ended = true;
    if (lines.length === 0) answer(undefined);
  };
  const interrupt = (): void => {
    lines.length = 0;
    end();
  };
  reader.on('line', (line) => {
    if (waiting) answer(line);
    else {
      lines.push(line);
      if (!ended) reader.pause();
    }
  });
  reader.on('close', end);
  input.on('error', end);
  interrupted?.addEventListener('abort', interrupt);

  return {
    next: () => {
      const line = lines.shift();
      if (line !== undefined || ended) return Promise.resolve(line);
      return new Promise((resolve) => {
        waiting = resolve;
        reader.resume();
      });
    },
    close: () => {
      interrupted?.removeEventListener('abort', interrupt);
      input.off('error', end);
      reader.close();
    },
  };
}
