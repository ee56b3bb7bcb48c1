/** A fault that a person can mend: shown as one line on stderr, without a stack. */
export class ProgramError extends Error {
  readonly exitCode: number;
  constructor(message: string, exitCode = 2) {
    super(message);
    this.exitCode = exitCode;
  }
}
