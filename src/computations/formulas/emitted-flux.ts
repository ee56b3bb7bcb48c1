import { type Kelvins, type WattsPerSquareMetre, wattsPerSquareMetre } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/** Stefan-Boltzmann constant, W/(m2 K4): exact since the 2019 revision of the SI, to the digits given. */
const STEFAN_BOLTZMANN = 5.670_374_419e-8;

/**
 * Heat that a hot face sends out, emissivity x sigma x T^4. Source: bre-187, appendix A (Stefan-Boltzmann law).
 * Range: 273 to 2,500 K, emissivity above 0 to 1.
 */
export function emittedFlux(temperature: Kelvins, emissivity: number): WattsPerSquareMetre | Outside {
  if (!within(temperature, 273, 2500)) return outside('temperature', '273 to 2,500 K');
  if (!within(emissivity, 0.01, 1)) return outside('emissivity', '0.01 to 1');
  return wattsPerSquareMetre(emissivity * STEFAN_BOLTZMANN * temperature ** 4);
}
