import type { Readable, Writable } from 'node:stream';

/** The outside of a command: streams, environment and clock, so that every command can be tested without a process. */
export interface CommandIo {
  readonly stdin: Readable & { readonly isTTY?: boolean };
  readonly stdout: Writable & { readonly isTTY?: boolean; readonly columns?: number; readonly rows?: number };
  readonly stderr: Writable;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
  readonly clock: () => Date;
  /** Makes the name of a new walk; random and unguessable when it is not given. */
  readonly newId?: () => string;
}

/** Writes to a stream and waits until it took it: a report must not be cut off by the end of the process. */
export function write(stream: Writable, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text, (error) =>
      error && (error as NodeJS.ErrnoException).code !== 'EPIPE' ? reject(error) : resolve(),
    );
  });
}
