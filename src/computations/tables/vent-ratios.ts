import type { VentRatioRule } from '../formulas/vent-ratio.ts';

/** Attic rule of the model code before its 2015 edition: either condition is enough. Source: irc-r806; reported. */
export const ATTIC_RULE_BEFORE_2015: VentRatioRule = { base: 150, reduced: 300, needs: 'any' };

/** Attic rule of the model code from its 2015 edition on: both conditions. Source: irc-r806; reported. */
export const ATTIC_RULE_SINCE_2015: VentRatioRule = { base: 150, reduced: 300, needs: 'all' };

/** Under-floor rule of the model code: a ground vapour retarder reduces it. Source: irc-r408; reported. */
export const UNDER_FLOOR_RULE: VentRatioRule = { base: 150, reduced: 1500, needs: 'all' };
