import type { Spot } from '../answers/condition.ts';
import type { Path } from '../answers/path.ts';
import type { Side } from '../flow/schema/base.ts';

/** Where a finding, element or action is: the whole house, a side, or a member of a group. */
export interface Place extends Spot {
  /** `@left`, `@trees/t2`, or nothing for the whole house. */
  readonly suffix: string;
  /** The sides on which it counts; empty where the side of a member is not known. */
  readonly sides: readonly Side[];
}

/** All places at which something decided `per` house, side or group can be. */
export function placesOf(per: string, path: Path): readonly Place[] {
  if (per === 'house') return [{ suffix: '', sides: path.sides }];
  if (per === 'side') return path.sides.map((side) => ({ side, suffix: `@${side}`, sides: [side] }));
  return path.facts.members(per).map((member) => ({
    group: per,
    member,
    suffix: `@${per}/${member}`,
    sides: path.facts.memberSides(per, member),
  }));
}
