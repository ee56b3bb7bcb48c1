import type { Say } from '../../wording/say.ts';
import type { Kappa } from '../agreement/kappa.ts';

const rounded = (value: number) => (Math.round(value * 100) / 100).toFixed(2);

/** Kappa in words: the number with its interval, or why there is none. */
export function sayKappa(kappa: Kappa): Say {
  switch (kappa.kind) {
    case 'noPairs':
      return { text: 'practice.kappa.no-pairs' };
    case 'oneClass':
      return { text: 'practice.kappa.one-class', values: { pairs: kappa.pairs } };
    case 'kappa': {
      const values = { kappa: rounded(kappa.kappa), pairs: kappa.pairs };
      if (!kappa.interval) return { text: 'practice.kappa.no-interval', values };
      const { low, high } = kappa.interval;
      return { text: 'practice.kappa.value', values: { ...values, low: rounded(low), high: rounded(high) } };
    }
  }
}
