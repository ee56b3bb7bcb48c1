/**
 * Coefficient of a round-wire screen by Reynolds number. Source: blevins-1984, as reproduced in a public library of
 * fluid formulas; status reported.
 */
export const ROUND_WIRE_BETA: readonly { readonly reynolds: number; readonly beta: number }[] = [
  { reynolds: 20, beta: 1.3 },
  { reynolds: 30, beta: 1.1 },
  { reynolds: 40, beta: 0.95 },
  { reynolds: 60, beta: 0.83 },
  { reynolds: 80, beta: 0.75 },
  { reynolds: 100, beta: 0.7 },
  { reynolds: 200, beta: 0.6 },
  { reynolds: 400, beta: 0.52 },
];
