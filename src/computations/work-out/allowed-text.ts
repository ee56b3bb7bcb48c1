import { sayQuantity } from '../../quantities/index.ts';
import type { InputDef } from './computation.ts';

/** What an input allows, as help and error text: a range in both unit systems, or the options. */
export function allowedText(input: InputDef): string {
  switch (input.kind) {
    case 'outline':
      return 'an outline such as "40 x 30 ft", "40 x 30 ft less 10 x 12 at back right" or walls in order, not crossing';
    case 'choice':
      return input.options.map(({ id }) => id).join(', ');
    case 'quantity': {
      const range = (system: 'imperial' | 'metric'): string => {
        const low = sayQuantity(input.min, input.dimension, system, { round: 'up' }).text;
        const high = sayQuantity(input.max, input.dimension, system, { round: 'down' }).text;
        return `${low} to ${high}`;
      };
      const [imperial, metric] = [range('imperial'), range('metric')];
      const whole = input.whole ? 'a whole number, ' : '';
      return imperial === metric ? `${whole}${imperial}` : `${whole}${imperial} (${metric})`;
    }
    default:
      return input satisfies never;
  }
}
