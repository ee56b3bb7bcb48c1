/** The ratio rule of a place: `base` applies unless the conditions for `reduced` are met, any or all of them. */
export type VentRatioRule = {
  readonly base: number;
  readonly reduced: number;
  readonly needs: 'any' | 'all';
};

/**
 * Ratio of vented area to net free area under a place's rule, from which of its conditions are met (for an
 * attic: a vapour retarder, and upper and lower vents in balance). Source: irc-r806, R806.2 as reported: either
 * condition before the 2015 edition, both since. Unknown conditions are passed as not met.
 */
export function ventRatio(rule: VentRatioRule, conditionsMet: readonly boolean[]): number {
  const met =
    rule.needs === 'all'
      ? conditionsMet.every(Boolean) && conditionsMet.length > 0
      : conditionsMet.some(Boolean);
  return met ? rule.reduced : rule.base;
}
