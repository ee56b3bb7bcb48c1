import type { Token } from '../../answers/reading/tokens.ts';
import { readLength } from '../../quantities/index.ts';

const units =
  /^(?:inch|inches|in|foot|feet|ft|yards?|metres?|meters?|m|cm|mm|centimetres?|centimeters?|millimetres?)$/;
const longest = 4;

/** The first length that a text names, in metres: "a quarter inch", "10 feet", "1/8 in". */
export function saidLengthMetres(tokens: readonly Token[]): number | undefined {
  for (const [at, token] of tokens.entries()) {
    if (!units.test(token.text)) continue;
    for (let start = Math.max(0, at - longest); start < at; start++) {
      const words = tokens.slice(start, at + 1).map((one) => one.text);
      const read = readLength(words.join(' '), { unsafeEnd: 'low' });
      if (read.kind === 'length' && read.assumedUnit === undefined) return read.metres;
    }
  }
  return undefined;
}
