import type { Path } from '../../answers/path.ts';
import { ENGLISH_TALK_WORDS } from '../../answers/reading/talk-words.ts';
import { stemsOf, type Token } from '../../answers/reading/tokens.ts';
import { type Place, placesOf } from '../../findings/place.ts';
import type { Flow } from '../../flow/flow.ts';
import type { Side } from '../../flow/schema/base.ts';

/** A member named in a message: "tree 2", "the second shed"; without a number the group alone. */
export interface NamedMember {
  readonly group: string;
  readonly number: number | undefined;
}

const numbers = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

function numberOf(token: Token | undefined): number | undefined {
  if (token === undefined) return undefined;
  if (token.kind === 'number' || token.kind === 'ordinal') return token.value;
  const place = Math.max(numbers.indexOf(token.text), ENGLISH_TALK_WORDS.ordinals.indexOf(token.text));
  return place >= 0 ? place + 1 : undefined;
}

const otherNames: Readonly<Record<string, readonly string[]>> = {
  outbuildings: ['shed', 'playhouse', 'garage'],
};
const named = new WeakMap<object, ReadonlySet<string>>();

function namesOf(group: Flow['groups'][number]): ReadonlySet<string> {
  const before = named.get(group);
  if (before) return before;
  const made = new Set([group.one, group.many, ...(otherNames[group.id] ?? [])].flatMap(stemsOf));
  named.set(group, made);
  return made;
}

/** Finds a member of a group by the group's own names, other names for it, and a number before or after. */
export function findNamedMember(groups: Flow['groups'], said: readonly Token[]): NamedMember | undefined {
  const tokens = said.filter((token) => token.kind !== 'mark');
  for (const group of groups) {
    const names = namesOf(group);
    for (const [at, token] of tokens.entries()) {
      if (new RegExp(`^${group.keyLetter}\\d+$`).test(token.text))
        return { group: group.id, number: Number(token.text.slice(1)) };
      if (token.text === group.keyLetter && tokens[at + 1]?.kind === 'number')
        return { group: group.id, number: tokens[at + 1]?.value };
      if (!names.has(token.stem)) continue;
      const number = numberOf(tokens[at + 1]) ?? numberOf(tokens[at - 1]);
      if (number !== undefined || at === tokens.length - 1) return { group: group.id, number };
    }
  }
  return undefined;
}

export type NamedPlaces =
  | { readonly kind: 'places'; readonly places: readonly Place[] }
  /** Sides or a member are needed and were not named. */
  | { readonly kind: 'where'; readonly per: string }
  /** There is no such member or side at this house. */
  | { readonly kind: 'nowhere' };

/** The places that a message names, for something decided `per` house, side or group. */
export function namedPlaces(
  path: Path,
  per: string,
  sides: readonly Side[],
  member: NamedMember | undefined,
): NamedPlaces {
  const all = placesOf(per, path);
  if (per === 'house') return { kind: 'places', places: all };
  if (all.length === 0) return { kind: 'nowhere' };
  if (per === 'side') {
    if (sides.length === 0)
      return all.length === 1 ? { kind: 'places', places: all } : { kind: 'where', per };
    const places = all.filter((place) => place.side !== undefined && sides.includes(place.side));
    return places.length > 0 ? { kind: 'places', places } : { kind: 'nowhere' };
  }
  const number = member?.group === per ? member.number : undefined;
  const one = number === undefined ? undefined : all[number - 1];
  if (number !== undefined) return one ? { kind: 'places', places: [one] } : { kind: 'nowhere' };
  const there =
    sides.length > 0 ? all.filter((place) => place.sides.some((side) => sides.includes(side))) : all;
  return there.length === 1 ? { kind: 'places', places: there } : { kind: 'where', per };
}
