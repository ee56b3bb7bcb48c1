import type { Assessment } from '../../assess/assess.ts';
import type { Place } from '../../findings/place.ts';
import { type Side, sideNames } from '../../flow/schema/base.ts';
import type { Say, Value, Values } from '../../wording/say.ts';

/** A member as it is said: "tree 2". */
export function memberValue(assessment: Assessment, group: string, key: string): Value {
  const number = assessment.path.facts.members(group).indexOf(key) + 1;
  return { member: { group, key, number } };
}

/** What a text about these places may name: {side}, {sides} and {member}. */
export function placeValues(assessment: Assessment, places: readonly Place[]): Values {
  const sides = sideNames.filter((side) => places.some((place) => place.sides.includes(side)));
  const members = places.flatMap(({ group, member }): Value[] =>
    group === undefined || member === undefined ? [] : [memberValue(assessment, group, member)],
  );
  const all: readonly Side[] = sides.length > 0 ? sides : sideNames;
  return {
    side: { sides: all },
    sides: { sides: all },
    ...(members.length > 0 ? { member: { list: members } } : {}),
  };
}

/** A finding at its places, in the flow's own words. */
export function sayFinding(assessment: Assessment, finding: string, places: readonly Place[]): Say {
  return { text: `finding/${finding}/say`, values: placeValues(assessment, places) };
}

/** A job at its places, in the flow's own words. */
export function sayAction(assessment: Assessment, action: string, places: readonly Place[]): Say {
  return { text: `action/${action}/do`, values: placeValues(assessment, places) };
}

/** For a finding named before it is known where. */
export const somewhere: Values = {
  side: { text: 'practice.somewhere' },
  sides: { text: 'practice.somewhere' },
  member: { text: 'practice.something' },
};

/** For a job named without a place. */
export const whereverNeeded: Values = {
  side: { text: 'practice.sides-in-need' },
  sides: { text: 'practice.sides-in-need' },
  member: { text: 'practice.something' },
};
