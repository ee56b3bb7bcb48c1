import type { HouseOutcome } from '../computations/house/house-computation.ts';
import { type Dimension, sayQuantity } from '../quantities/index.ts';
import type { Value, Values } from '../wording/say.ts';
import { heatValues } from './heat-text.ts';
import type { Material } from './material.ts';

/** A worked-out number as it is said to the reader; parts of a whole as percent. */
export function sayValue({ wording }: Material, value: number, dimension: Dimension): string {
  if (dimension === 'fraction') return `${Math.round(value * 100)} %`;
  return sayQuantity(value, dimension, wording.reader.units).text;
}

/** A result as it is said: a heat in two digits, which is all that it is good for, and a part above the whole as times. */
export function sayResult(material: Material, value: number, dimension: Dimension): string {
  if (dimension === 'fraction' && value >= 1.005)
    return material.wording.text('report.computed.times', { times: Number(value.toPrecision(2)) });
  return sayValue(material, dimension === 'heatFlux' ? Number(value.toPrecision(2)) : value, dimension);
}

/** Names of values as texts may use them: `below-wood-short` is {belowWoodShort}. */
const camel = (id: string) => id.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

/**
 * What the sentence of a result may name: each value and assumption as it is said, plain counts as numbers, measures
 * that went in (those of the answers by their last word), `met`, `sized` and `below` for choosing between wordings, and
 * for a heat `suns` and `does`.
 */
export function computedValues(material: Material, outcome: HouseOutcome & { kind: 'result' }): Values {
  const said = (value: number, dimension: Dimension): Value =>
    dimension === 'count' && Number.isInteger(value) ? value : sayResult(material, value, dimension);
  const has = (id: string) => (outcome.values.some((one) => one.id === id) ? 'yes' : 'no');
  const short = outcome.values.find((one) => one.id === 'short')?.value ?? 0;
  const inputs = outcome.inputs.flatMap((one): [string, Value][] =>
    typeof one.value === 'string' || one.dimension === undefined
      ? []
      : [[`input_${camel(one.id.split('.').at(-1) ?? one.id)}`, said(one.value, one.dimension)]],
  );
  return {
    ...Object.fromEntries(inputs),
    ...Object.fromEntries(
      [...outcome.assumptions, ...outcome.values].map((one) => [
        camel(one.id),
        said(one.value, one.dimension),
      ]),
    ),
    met: short <= 1e-9 ? 'yes' : 'no',
    sized: has('grossThen'),
    below: has('below-wood-short'),
    ...heatValues(outcome),
  };
}
