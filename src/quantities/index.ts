export { CONVERSIONS, type Dimension, dimensionOf, type UnitId, type UnitOf } from './conversions.ts';
export { explainReason } from './explain-reason.ts';
export { ENGLISH_NUMBER_WORDS, type NumberWords } from './number-words.ts';
export { type ReadArea, type ReadAreaOptions, readArea } from './read-area.ts';
export { type ReadLength, type ReadLengthOptions, readLength } from './read-length.ts';
export { type ReadNumber, type ReadNumberOptions, readNumber, readYear } from './read-number.ts';
export {
  type NotRead,
  type NotReadReason,
  type ReadQuantity,
  readQuantity,
  type UnsafeEnd,
} from './read-quantity.ts';
export { type ReadSlope, type ReadSlopeOptions, readSlope } from './read-slope.ts';
export { ownLength, type Said, type SayOptions, sayLength, type UnitSystem } from './say-length.ts';
export { sayArea, sayQuantity, saySlope, sayVolume } from './say-quantity.ts';
export { slopeDegrees, slopeFromRise, slopePercent } from './slope.ts';
export * from './units.ts';
