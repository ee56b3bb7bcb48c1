import type { Writable } from 'node:stream';

/** Writes text at the speed at which the other end takes it. */
export interface Writer {
  /** Resolves when more may be written; never rejects: a reader that went away is told by `isGone`. */
  readonly write: (text: string) => Promise<void>;
  readonly isGone: () => boolean;
  readonly release: () => void;
}

/** Wraps a stream; its errors (a closed pipe, a closed window) are caught from here until `release`. */
export function createWriter(output: Writable): Writer {
  let gone = false;
  const onError = (): void => {
    gone = true;
  };
  output.on('error', onError);
  const isGone = (): boolean => gone || output.destroyed || output.writableEnded;
  return {
    isGone,
    write: async (text) => {
      if (isGone() || output.write(text)) return;
      await drained(output);
    },
    release: () => {
      output.off('error', onError);
    },
  };
}

function drained(output: Writable): Promise<void> {
  return new Promise((resolve) => {
    const done = (): void => {
      for (const event of ['drain', 'close', 'error']) output.off(event, done);
      resolve();
    };
    for (const event of ['drain', 'close', 'error']) output.on(event, done);
  });
}
