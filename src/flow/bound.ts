import { readLength, readSlope } from '../quantities/index.ts';

/**
 * A bound or limit as written (`4 ft`, `1/8 in`, `20 %`, 1978) as a number in base units: metres for lengths,
 * percent for slopes, the number itself otherwise; or what is wrong with it.
 */
export function readBound(written: number | string, kind: string): number | { readonly problem: string } {
  if (kind === 'length') {
    if (typeof written === 'number') return { problem: `a length needs a unit, such as "${written} ft".` };
    const read = readLength(written, { unsafeEnd: 'low' });
    return read.kind === 'length' && read.assumedUnit === undefined
      ? read.metres
      : { problem: `"${written}" is not a length with a unit, such as "4 ft" or "1/8 in".` };
  }
  if (typeof written === 'number') return written;
  if (kind === 'slope') {
    const read = readSlope(written);
    return read.kind === 'slope' ? read.percent : { problem: `"${written}" is not a slope, such as "20 %".` };
  }
  const number = Number(written);
  return Number.isFinite(number) ? number : { problem: `"${written}" is not a number.` };
}
