import { inches, type Metres, metres } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/**
 * Clear opening of a square weave with so many wires an inch. Source: astm-e2016 (opening = 1/mesh - wire).
 * Range: mesh 1 to 60 an inch, wire thinner than the pitch.
 */
export function weaveOpening(meshPerInch: number, wire: Metres): Metres | Outside {
  if (!within(meshPerInch, 1, 60)) return outside('meshPerInch', '1 to 60 an inch');
  const pitch = inches(1 / meshPerInch);
  if (!(wire > 0 && wire < pitch))
    return outside('wire', 'above zero and thinner than the spacing of the wires');
  return metres(pitch - wire);
}

/** Open fraction of a square weave, (w / (w + d)) squared. Source: astm-e2016. Range: as `weaveOpening`. */
export function weaveOpenFraction(meshPerInch: number, wire: Metres): number | Outside {
  const opening = weaveOpening(meshPerInch, wire);
  return typeof opening === 'number' ? (opening / (opening + wire)) ** 2 : opening;
}
