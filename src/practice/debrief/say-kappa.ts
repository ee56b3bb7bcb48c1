import type { Say } from '../../wording/say.ts';
import type { Kappa } from '../agreement/kappa.ts';

const rounded = (value: number) => (Math.round(value * 100) / 100).toFixed(2);

/** Kappa in words: the number with its interval, or why there is none; `phrases` says with whom one agrees. */
export function sayKappa(kappa: Kappa, phrases = 'practice.kappa'): Say {
  switch (kappa.kind) {
    case 'noPairs':
      return { text: `${phrases}.no-pairs` };
    case 'oneClass':
      return { text: `${phrases}.one-class`, values: { pairs: kappa.pairs } };
    case 'kappa': {
      const values = { kappa: rounded(kappa.kappa), pairs: kappa.pairs };
      if (!kappa.interval)
        return { text: `${phrases}.${kappa.kappa === 1 ? 'no-interval' : 'no-width'}`, values };
      const { low, high } = kappa.interval;
      return { text: `${phrases}.value`, values: { ...values, low: rounded(low), high: rounded(high) } };
    }
  }
}
