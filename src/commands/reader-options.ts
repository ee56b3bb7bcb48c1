import type { Audience, UnitSystem } from '../wording/say.ts';
import { ProgramError } from './program-error.ts';

export interface ReaderOptions {
  readonly units?: string;
  readonly audience?: string;
}

function oneOf<T extends string>(name: string, value: string, known: readonly T[]): T {
  const found = known.find((one) => one === value);
  if (found === undefined)
    throw new ProgramError(`--${name} ${value} is not known. Say one of: ${known.join(', ')}.`);
  return found;
}

/** Who reads, from the options of a command. */
export function readerOf({ units, audience }: ReaderOptions): { units?: UnitSystem; audience?: Audience } {
  return {
    ...(units === undefined ? {} : { units: oneOf<UnitSystem>('units', units, ['imperial', 'metric']) }),
    ...(audience === undefined
      ? {}
      : { audience: oneOf<Audience>('audience', audience, ['resident', 'volunteer', 'trainee']) }),
  };
}
