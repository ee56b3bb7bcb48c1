import { cubicMetres, feet, inches, metres, toBase } from '../../quantities/index.ts';

/** Bag of gravel of half a cubic foot: common size, from memory (supply-memory). */
export const GRAVEL_BAG = cubicMetres(toBase(0.5, 'cuft'));
/** Bulk density of loose gravel, kg/m3: from memory (supply-memory). */
export const GRAVEL_DENSITY = 1600;
/** Cartridge of 10.1 US fluid ounces, printed on it (arithmetic: 18.2 cubic inches). */
export const SEALANT_CARTRIDGE = cubicMetres(toBase(10.1, 'floz'));
/** Roll of mesh 2 ft wide and 10 ft long: common size, from memory (supply-memory). */
export const MESH_ROLL = { width: feet(2), length: feet(10) };
/** Mesh laid past the opening on each side: common practice, no source. */
export const MESH_OVERLAP = inches(1);
/** Pack of weather strip: common size, from memory (supply-memory). */
export const WEATHER_STRIP_PACK = feet(17);
/** Area a litre of exterior paint covers once, m2: from memory (supply-memory); about 375 sq ft a gallon. */
export const PAINT_COVERAGE = 9.2;
/** US gallon can of paint. */
export const PAINT_CAN = cubicMetres(toBase(1, 'gal'));
/** Width of a metal fence panel: common size, from memory (supply-memory). */
export const FENCE_PANEL = metres(toBase(6, 'ft'));
/** Waste added to each list: common practice, no source. */
export const WASTE = 0.1;
