import type { Flow } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';
import type { WayIn as WayInKind } from '../flow/schema/finding.ts';
import type { Attack, ReadyElement } from './readiness.ts';

/** A chain of elements, all present at one side, from ember or flame to the inside of the house. */
export interface WayIn {
  /** `mulch-to-window@left/zone0.bark+win.single` */
  readonly id: string;
  readonly kind: WayInKind;
  /** Nothing for a way in that is counted once for the house. */
  readonly side: Side | undefined;
  /** Positions in the list of ready elements, in the order of the chain. */
  readonly elements: readonly number[];
  /** The product of their readiness. */
  readonly weight: number;
}

interface Link {
  readonly attack: Attack;
  readonly kinds: readonly string[];
}

function linksOf(way: WayInKind, sets: Flow['sets']): Link[] {
  return way.chain.map((link) => {
    const [attack, id] =
      'ember' in link ? (['ember', link.ember] as const) : (['flame', link.flame] as const);
    return { attack, kinds: sets[id] ?? [id] };
  });
}

/** Members of one group in one chain are the same member: a tree's own distance, not another's. */
function fits(element: ReadyElement, chain: readonly ReadyElement[]): boolean {
  const { group, member } = element.present.place;
  return chain.every(
    (one) =>
      one.kind !== element.kind &&
      (group === undefined || one.present.place.group !== group || one.present.place.member === member),
  );
}

/**
 * All ways in: for each kind and side, every combination of elements standing at that side.
 * An element without a side of its own stands on every side, so that the whole house counts as often as its sides do.
 */
export function waysIn(flow: Flow, elements: readonly ReadyElement[], sides: readonly Side[]): WayIn[] {
  const byKind = new Map<string, number[]>();
  elements.forEach((element, position) => {
    const key = `${element.kind}:${element.attack}`;
    const list = byKind.get(key);
    if (list) list.push(position);
    else byKind.set(key, [position]);
  });
  const found: WayIn[] = [];
  for (const kind of flow.waysIn) {
    const links = linksOf(kind, flow.sets);
    const candidates = links.map((link) =>
      link.kinds.flatMap((one) => byKind.get(`${one}:${link.attack}`) ?? []),
    );
    if (candidates.some((list) => list.length === 0)) continue;
    for (const side of kind.once ? [undefined] : sides) {
      const here = candidates.map((list) =>
        side === undefined
          ? list
          : list.filter((position) => elements[position]?.present.place.sides.includes(side)),
      );
      combine(kind, side, here, elements, found);
    }
  }
  return found;
}

function combine(
  kind: WayInKind,
  side: Side | undefined,
  slots: readonly (readonly number[])[],
  elements: readonly ReadyElement[],
  found: WayIn[],
): void {
  const extend = (chain: readonly number[], taken: readonly ReadyElement[], weight: number): void => {
    const slot = slots[chain.length];
    if (!slot) {
      const names = taken.map(
        (one) => one.kind + (one.present.place.member ? `.${one.present.place.member}` : ''),
      );
      found.push({
        id: `${kind.id}${side ? `@${side}` : ''}/${names.join('+')}`,
        kind,
        side,
        elements: chain,
        weight,
      });
      return;
    }
    for (const position of slot) {
      const element = elements[position];
      if (element && fits(element, taken))
        extend([...chain, position], [...taken, element], weight * element.readiness);
    }
  };
  extend([], [], 1);
}
