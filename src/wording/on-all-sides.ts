import { sideNames, type Text } from '../flow/schema/base.ts';
import type { Value } from './say.ts';

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** A text about a side, said of all four: "on all sides" where it has "at the {side}". Any other text is left as it is. */
export function onAllSides(
  written: string,
  catalogue: ReadonlyMap<string, Text>,
  side: Value | undefined,
): string {
  if (typeof side !== 'object' || !('sides' in side) || side.sides.length < sideNames.length) return written;
  const [one, all] = [catalogue.get('words/at-side'), catalogue.get('words/on-all-sides')];
  if (typeof one !== 'string' || typeof all !== 'string') return written;
  return written.replaceAll(one, all).replaceAll(capital(one), capital(all));
}
