import type { Mark } from './mark.ts';
import type { Part } from './read-value.ts';
import { joinSelections, type SideItem, type SideSelection } from './side-items.ts';

/** A value with the sides it holds for. */
interface SidePair {
  readonly selection: SideSelection;
  readonly part: Part;
  readonly valueFirst: boolean;
}

/** An answer by side, taken apart. */
export interface SideClauses {
  readonly pairs: readonly SidePair[];
  /** Sides named without a value. */
  readonly listed: SideSelection | undefined;
  /** Values named without sides. */
  readonly spread: readonly Part[];
}

/** How the kind of question settles what can be read in two ways. */
export interface ClauseRules {
  /** Naming a side is a yes. */
  readonly namingIsYes: boolean;
  /** Values add up: "bark, grass at the front" are both at the front. */
  readonly valuesAddUp: boolean;
  /** Whether one measure was cut in two at a comma: "2 feet, 6 inches". */
  readonly joins: (first: Part, second: Part) => boolean;
}

/** Two parts as one, as if joined by a comma. */
function joinParts(first: Part, second: Part): Part {
  const comma: Mark = { role: 'comma', text: ',', start: 0, end: 0 };
  return { marks: [...first.marks, comma, ...second.marks], text: `${first.text}, ${second.text}` };
}

type Sided = Extract<SideItem, { type: 'sides' | 'value' }>;

const noise = (part: Part): boolean =>
  part.marks.every(({ role }) => role === 'word' || role === 'letter' || role === 'filler');

function segmentsOf(items: readonly SideItem[]): Sided[][] {
  const segments: Sided[][] = [[]];
  for (const item of items) {
    if (item.type === 'sides' || item.type === 'value') segments.at(-1)?.push(item);
    else segments.push([]);
  }
  return segments.filter((segment) => segment.length > 0);
}

/** Sides and values in turn, as pairs; undefined when one is left over. */
function pairsIn(segment: readonly Sided[]): SidePair[] | undefined {
  const ends = [segment[0], segment.at(-1)];
  const odd = segment.length % 2 === 1;
  const spare = odd ? ends.findIndex((end) => end?.type === 'value' && noise(end.part)) : -1;
  if (odd && spare < 0) return undefined;
  const kept = odd ? (spare === 0 ? segment.slice(1) : segment.slice(0, -1)) : segment;
  const pairs: SidePair[] = [];
  for (let at = 0; at + 1 < kept.length; at += 2) {
    const [first, second] = [kept[at], kept[at + 1]];
    if (first?.type === 'value' && second?.type === 'sides')
      pairs.push({ selection: second.selection, part: first.part, valueFirst: true });
    else if (first?.type === 'sides' && second?.type === 'value')
      pairs.push({ selection: first.selection, part: second.part, valueFirst: false });
  }
  return pairs;
}

interface State {
  pairs: SidePair[];
  listed: SideSelection | undefined;
  spread: Part[];
}

function takeSides(state: State, selection: SideSelection): void {
  const value = state.spread.pop();
  const last = state.pairs.at(-1);
  if (value !== undefined) state.pairs.push({ selection, part: value, valueFirst: true });
  else if (last?.valueFirst && state.listed === undefined)
    state.pairs[state.pairs.length - 1] = { ...last, selection: joinSelections(last.selection, selection) };
  else state.listed = state.listed === undefined ? selection : joinSelections(state.listed, selection);
}

function takeValue(state: State, part: Part, rules: ClauseRules): boolean {
  const last = state.pairs.at(-1);
  const before = state.spread.at(-1);
  if (state.listed !== undefined) {
    state.pairs.push({ selection: state.listed, part, valueFirst: false });
    state.listed = undefined;
  } else if (before !== undefined && (rules.valuesAddUp || rules.joins(before, part)))
    state.spread[state.spread.length - 1] = joinParts(before, part);
  else if (last === undefined || before !== undefined) state.spread.push(part);
  else if (!last.valueFirst && (rules.valuesAddUp || rules.joins(last.part, part)))
    state.pairs[state.pairs.length - 1] = { ...last, part: joinParts(last.part, part) };
  else return noise(part);
  return true;
}

function takePairs(state: State, pairs: SidePair[], rules: ClauseRules): void {
  const [first, ...more] = pairs;
  if (first === undefined) return;
  let joined = first;
  const before = state.spread.at(-1);
  if (first.valueFirst && before !== undefined && (rules.valuesAddUp || rules.joins(before, first.part))) {
    state.spread.pop();
    joined = { ...first, part: joinParts(before, first.part) };
  }
  if (!first.valueFirst && state.listed !== undefined && !rules.namingIsYes) {
    joined = { ...first, selection: joinSelections(state.listed, first.selection) };
    state.listed = undefined;
  }
  state.pairs.push(joined, ...more);
}

/** Takes an answer by side apart; undefined when it cannot be told which value belongs to which side. */
export function readClauses(items: readonly SideItem[], rules: ClauseRules): SideClauses | undefined {
  const state: State = { pairs: [], listed: undefined, spread: [] };
  for (const segment of segmentsOf(items)) {
    const [only] = segment;
    if (segment.length > 1) {
      const pairs = pairsIn(segment);
      if (pairs === undefined) return undefined;
      takePairs(state, pairs, rules);
    } else if (only?.type === 'sides') takeSides(state, only.selection);
    else if (only?.type === 'value' && !takeValue(state, only.part, rules)) return undefined;
  }
  return state;
}
