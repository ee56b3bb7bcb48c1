import type { Place } from '../findings/place.ts';
import { type Side, sideNames } from '../flow/schema/base.ts';
import type { Value, Values } from '../wording/say.ts';
import type { Material } from './material.ts';

/** All sides of some places, in the order in which one walks round. */
function sidesOf(places: readonly Place[]): Side[] {
  return sideNames.filter((side) => places.some((place) => place.sides.includes(side)));
}

type Assessed = Pick<Material, 'assessment'>;

function memberValue({ assessment }: Assessed, group: string, key: string): Value {
  const number = assessment.facts.members(group).indexOf(key) + 1;
  return { member: { group, key, number } };
}

function membersOf(material: Assessed, places: readonly Place[]): Value[] {
  return places.flatMap(({ group, member }) =>
    group === undefined || member === undefined ? [] : [memberValue(material, group, member)],
  );
}

/** What a text about these places may name: {side}, {sides} and {member}. */
export function placeValues(material: Assessed, places: readonly Place[]): Values {
  const members = membersOf(material, places);
  const sides = sidesOf(places);
  return {
    ...(sides.length > 0 ? { side: { sides }, sides: { sides } } : {}),
    ...(members.length > 0 ? { member: { list: members } } : {}),
  };
}

/** The places as people say them: "all sides", "front and left", "tree 2 (left)", "the whole house". */
export function placeText(material: Material, places: readonly Place[]): string {
  const { wording, assessment } = material;
  const members = places.flatMap((place): Value[] => {
    if (place.group === undefined || place.member === undefined) return [];
    const member = memberValue(material, place.group, place.member);
    const all = place.sides.length === assessment.path.sides.length;
    if (place.sides.length === 0 || all) return [member];
    return [{ text: 'report.place.member', values: { member, sides: { sides: place.sides } } }];
  });
  if (members.length > 0) return wording.value({ list: members });
  const sides = sidesOf(places.filter((place) => place.side !== undefined));
  if (sides.length === 0) return wording.text('report.place.house');
  if (sides.length > 1 && sides.length === assessment.path.sides.length)
    return wording.text('report.place.all-sides');
  return wording.value({ sides });
}
