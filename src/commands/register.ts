import type { Command } from 'commander';
import type { CommandIo } from './io.ts';

/** Set by a command that ends well with another meaning than "done": 3 after an order to leave. */
export interface Outcome {
  exitCode: number;
}

/** Adds a command to the program. */
export type Register = (program: Command, io: CommandIo, outcome: Outcome) => void;
