import { type Side, sideNames } from '../../flow/schema/base.ts';
import type { BySideAnswer } from '../answer.ts';
import { type Assigned, type Assignment, assignSides } from './assign-sides.ts';
import { rulesFor } from './clause-rules.ts';
import { type Mark, meaningOf } from './mark.ts';
import { namesPlaces, readPlaces } from './pick-by-place.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import {
  everySide,
  otherSides,
  plainYesNo,
  readListed,
  readPairs,
  readSpread,
  type SideReader,
} from './read-side-values.ts';
import { foreignWords } from './read-yes-no.ts';
import type { ReadingContext } from './reading.ts';
import { readClauses, type SideClauses } from './side-clauses.ts';
import { joinSelections, type SideItem, sideItems } from './side-items.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { type NoValue, noValue, type ReadValue, statusOnly } from './value-reading.ts';

type SideReading = ReadValue<BySideAnswer> | NoValue;

/** Answering "on which sides", the sides not named are a no; unless some were told apart one by one. */
function othersAreNo(clauses: SideClauses, assigned: readonly Assignment[], reader: SideReader): boolean {
  if (!reader.rules.namingIsYes) return false;
  const says = (wanted: 'yes' | 'no') =>
    assigned.some(({ value: { answer } }) => answer.status === 'given' && answer.value === wanted);
  const saysYes = says('yes');
  const naming =
    clauses.listed !== undefined || (clauses.pairs.some((pair) => pair.valueFirst) && !says('no'));
  const wide = assigned.some(({ selection }) => selection.all || selection.rest);
  return naming && saysYes && !wide;
}

function readPlain(items: readonly SideItem[], reader: SideReader, fill = true): Assignment[] | NoValue {
  const clauses = readClauses(items, reader.rules);
  if (clauses === undefined) return noValue({ code: 'mixedSides' });
  const pairs = readPairs(clauses, reader);
  if ('kind' in pairs) return pairs;
  const sided = pairs.length > 0 || clauses.listed !== undefined;
  const spread = readSpread(clauses, reader, sided);
  if ('kind' in spread) return spread;
  const listed = readListed(clauses, reader, pairs.length + spread.length > 0);
  if ('kind' in listed) return listed;
  const all = [...pairs, ...listed, ...spread];
  return fill && othersAreNo(clauses, all, reader)
    ? [...all, { selection: otherSides, value: plainYesNo('no') }]
    : all;
}

const opposite = ({ answer }: ReadValue): ReadValue =>
  plainYesNo(answer.status === 'given' && answer.value === 'yes' ? 'no' : 'yes');

/** "All except the back", "wood except the back is brick". */
function readException(
  before: readonly SideItem[],
  after: readonly SideItem[],
  reader: SideReader,
): Assignment[] | NoValue {
  const whole =
    before.length === 0
      ? [{ selection: everySide, value: plainYesNo('yes') }]
      : readPlain(before, reader, false);
  if ('kind' in whole) return whole;
  const clauses = readClauses(after, reader.rules);
  const base = whole[0];
  if (clauses === undefined || base === undefined || whole.length > 1) return noValue({ code: 'mixedSides' });
  const pairs = readPairs(clauses, reader);
  if ('kind' in pairs) return pairs;
  if (clauses.spread.length > 0) return noValue({ code: 'mixedSides' });
  const left = clauses.listed ?? { sides: [], all: false, rest: false };
  const named = pairs.map((pair) => pair.selection).reduce(joinSelections, left);
  const others = reader.asked.filter((side) => !named.sides.includes(side));
  const excepted =
    reader.rules.namingIsYes && left.sides.length > 0
      ? [{ selection: left, value: opposite(base.value) }]
      : [];
  return [
    { selection: { sides: others, all: false, rest: false }, value: base.value },
    ...excepted,
    ...pairs,
  ];
}

const namesSides = (items: readonly SideItem[]): boolean =>
  items.some((item) => item.type === 'sides' && item.selection.sides.length > 0);

function readItems(items: readonly SideItem[], reader: SideReader): Assignment[] | NoValue {
  const at = items.findIndex((item) => item.type === 'except');
  const before = items.slice(0, Math.max(at, 0)).filter((item) => item.type !== 'break');
  const after = items.slice(at + 1);
  // "Left and right but not the back": what is taken out of named sides was not among them.
  const takenOut =
    at >= 0 && namesSides(before) && after.length > 0 && after.every((item) => item.type === 'sides');
  if (takenOut) return readPlain(items.slice(0, at), reader);
  const exception = at >= 0 && !namesSides(before) && namesSides(after);
  if (!exception || (before.length === 0 && !reader.rules.namingIsYes)) return readPlain(items, reader);
  return readException(before, after, reader);
}

/** Words that mean nothing beside sides are dropped, so that the sides round them stand together. */
function withoutNoise(items: readonly SideItem[]): readonly SideItem[] {
  const kept: SideItem[] = [];
  for (const item of items) {
    if (
      item.type === 'value' &&
      meaningOf(item.part.marks).every((mark) => mark.role === 'word' || mark.role === 'letter')
    )
      continue;
    const last = kept.at(-1);
    if (item.type === 'sides' && last?.type === 'sides' && last.selection.rest === item.selection.rest)
      kept[kept.length - 1] = { type: 'sides', selection: joinSelections(last.selection, item.selection) };
    else kept.push(item);
  }
  return kept;
}

const sideThings = new Set(ENGLISH_TALK_WORDS.sideThings);

/** "The front is clean" names a side and denies it, so strange words are not let pass; "the front door" is the front. */
function saysMore({ marks, prepared }: SideReader): boolean {
  if (prepared.question.kind === 'sides') return false;
  const kept = marks.filter((mark, at) => marks[at - 1]?.role !== 'sides' || !sideThings.has(mark.text));
  return foreignWords(kept, prepared) > 0;
}

function itemsOf(lower: string, { marks, prepared, asked, rules }: SideReader): readonly SideItem[] {
  const items = sideItems(marks, lower, prepared, asked);
  return rules.namingIsYes ? withoutNoise(items) : items;
}

/** "1 and 3", "1-3": sides by their places in the list shown. */
function readNumbered({ marks, asked }: SideReader): Assignment[] | NoValue {
  const places = readPlaces(marks, asked.length);
  if ('kind' in places) return places;
  const sides = places.flatMap((place) => asked[place] ?? []);
  return [
    { selection: { sides, all: false, rest: false }, value: plainYesNo('yes') },
    { selection: otherSides, value: plainYesNo('no') },
  ];
}

function finish(assigned: Assigned, asked: readonly Side[]): SideReading {
  const missing = asked.filter((side) => assigned.sides[side] === undefined);
  if (Object.keys(assigned.sides).length === 0) return noValue({ code: 'noMatch' });
  const note = {
    ...assigned.note,
    ...(missing.length > 0 ? { missing } : {}),
    ...(assigned.notAsked.length > 0 ? { notAsked: assigned.notAsked } : {}),
  };
  return {
    kind: 'value',
    answer: { status: 'bySide', sides: assigned.sides },
    strict: assigned.strict,
    ...(Object.keys(note).length > 0 ? { note } : {}),
  };
}

/** The sides that have their answer already: naming one of them changes it. */
const answeredBefore = ({ before }: ReadingContext): readonly Side[] =>
  before?.status === 'bySide' ? sideNames.filter((side) => before.sides[side] !== undefined) : [];

/** Reads a value for each side, such as "wood at the front, stucco elsewhere"; sides not named stay open. */
export function readBySide(
  marks: readonly Mark[],
  lower: string,
  prepared: PreparedQuestion,
  context: ReadingContext,
): SideReading {
  const asked = context.sides.length > 0 ? context.sides : sideNames;
  const reader = { prepared, context, asked, rules: rulesFor(prepared, context), marks };
  if (reader.rules.namingIsYes && saysMore(reader)) return noValue({ code: 'noMatch' });
  const status = statusOnly(meaningOf(marks));
  const assignments =
    status !== undefined
      ? [{ selection: everySide, value: status }]
      : reader.rules.namingIsYes && namesPlaces(marks)
        ? readNumbered(reader)
        : readItems(itemsOf(lower, reader), reader);
  if ('kind' in assignments) return assignments;
  const assigned = assignSides(assignments, asked, answeredBefore(context));
  if ('kind' in assigned) return assigned;
  const words = reader.rules.namingIsYes && marks.some((mark) => mark.role === 'word');
  return finish({ ...assigned, strict: assigned.strict && !words }, asked);
}
