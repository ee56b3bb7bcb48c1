import type { Token } from '../../answers/reading/tokens.ts';
import type { VerbName } from '../schema/practice-file.ts';

/** A message taken apart. */
export interface Said {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly verb: VerbName | undefined;
  /** What follows the verb. */
  readonly rest: readonly Token[];
}
