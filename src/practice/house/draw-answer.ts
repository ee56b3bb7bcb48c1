import type { Answer, AnswerValue, PlainAnswer } from '../../answers/answer.ts';
import type { Facts, Spot } from '../../answers/condition.ts';
import type { Step } from '../../answers/path.ts';
import { readBound } from '../../flow/bound.ts';
import { optionIds } from '../../flow/checks/check-condition.ts';
import type { Question } from '../../flow/flow.ts';
import type { Side } from '../../flow/schema/base.ts';
import type { HouseRules, LevelName } from '../schema/practice-file.ts';
import type { HouseMaker } from './house-maker.ts';
import { drawOne, drawSome, type Random } from './random.ts';

/** What an answer is drawn with. */
export interface Draw {
  readonly maker: HouseMaker;
  readonly level: LevelName;
  readonly random: Random;
  readonly facts: Facts;
}

const given = (value: AnswerValue): PlainAnswer => ({ status: 'given', value });

/** Candidates with their weights: the first prior that holds here, or all options alike. */
function weightsAt({ maker, level: name, facts }: Draw, question: Question, spot: Spot): [string, number][] {
  const prior = maker.priors
    .get(question.id)
    ?.find(({ test }) => test === undefined || test(facts, spot) === 'yes');
  const ids = optionIds(question);
  const picks = (question.picks ?? []).map((pick) => String(pick.value));
  const plain = (ids.length > 0 ? ids : picks).map((id): [string, number] => [id, 0.5]);
  const base = prior ? Object.entries(prior.are) : plain;
  const telling = maker.telling.get(question.id);
  const level = maker.rules.levels[name];
  const never = (maker.never.get(question.id) ?? []).filter(({ test }) => test(facts, spot) === 'yes');
  const banned = new Set(never.flatMap(({ values }) => values));
  return base
    .filter(([id]) => !banned.has(id))
    .map(([id, weight]) => [id, telling?.has(id) ? tilted(weight, level.telling, question.kind) : weight]);
}

/** Several answers are chances each by itself; they are tilted without leaving [0, 1]. */
function tilted(weight: number, by: number, kind: Question['kind']): number {
  return kind === 'several' ? (weight * by) / (weight * by + 1 - weight) : weight * by;
}

function drawSeveral(
  { random }: Draw,
  question: Question,
  weights: readonly [string, number][],
): PlainAnswer {
  const isAlone = (id: string) => question.options?.some((one) => one.id === id && one.alone) === true;
  const chosen = weights.filter(([id, chance]) => !isAlone(id) && random() < chance).map(([id]) => id);
  if (chosen.length > 0) return given(chosen);
  const alone = weights.find(([id]) => isAlone(id))?.[0];
  const one = alone ?? drawOne(random, weights);
  return one === undefined ? { status: 'notSure' } : given([one]);
}

function measured(question: Question, written: string): PlainAnswer {
  const value = readBound(question.kind === 'number' ? Number(written) : written, question.kind);
  return typeof value === 'number' ? given(value) : { status: 'notSure' };
}

type Measures = HouseRules['near'][string];

/** With this chance one of some measures, each as likely as the other. */
function drawMeasure(random: Random, measures: Measures | undefined, chance: number): string | undefined {
  if (!measures || random() >= chance) return undefined;
  return drawOne(
    random,
    measures.map((value) => [String(value), 1] as const),
  );
}

/** One answer at one spot. */
function drawPlain(draw: Draw, question: Question, spot: Spot): PlainAnswer {
  const { random, maker } = draw;
  const { near, clear, levels } = maker.rules;
  const level = levels[draw.level];
  const measure =
    drawMeasure(random, near[question.id], level.near) ??
    (level.clear > 0 ? drawMeasure(random, clear[question.id], level.clear) : undefined);
  if (measure !== undefined) return measured(question, measure);
  const weights = weightsAt(draw, question, spot);
  if (question.kind === 'several') return drawSeveral(draw, question, weights);
  const id = drawOne(random, weights);
  if (id === undefined) return { status: 'notSure' };
  return question.kind === 'choice' || question.kind === 'yesNo' ? given(id) : measured(question, id);
}

const holds = (answer: PlainAnswer | undefined, value: string): boolean =>
  answer?.status === 'given' &&
  (typeof answer.value === 'object' ? answer.value.includes(value) : answer.value === value);

const withValue = (answer: PlainAnswer | undefined, value: string, many: boolean): PlainAnswer => {
  if (!many) return given(value);
  const before = answer?.status === 'given' && typeof answer.value === 'object' ? answer.value : [];
  return given([...before.filter((id) => id !== 'none'), value]);
};

/** Adds or takes sides until as many have the value as the rules ask. */
function keepSideRules(
  draw: Draw,
  question: Question,
  sides: Map<Side, PlainAnswer>,
  otherwise: (side: Side) => PlainAnswer,
): void {
  for (const { rule, test } of draw.maker.sideRules.get(question.id) ?? []) {
    if (test && test(draw.facts, {}) !== 'yes') continue;
    const allowed = [...sides.keys()].filter((side) =>
      weightsAt(draw, question, { side }).some(([id]) => id === rule.value),
    );
    const has = () => [...sides].filter(([, answer]) => holds(answer, rule.value)).map(([side]) => side);
    const missing = Math.min(rule.atLeast, allowed.length) - has().length;
    const free = allowed.filter((side) => !has().includes(side));
    for (const side of drawSome(draw.random, free, Math.max(0, missing)))
      sides.set(side, withValue(sides.get(side), rule.value, question.kind === 'several'));
    const spare = has().length - (rule.atMost ?? has().length);
    for (const side of drawSome(draw.random, has(), Math.max(0, spare))) sides.set(side, otherwise(side));
  }
}

/** Another answer than the one of which there are too many. */
function otherAnswer(draw: Draw, question: Question, side: Side): PlainAnswer {
  const rules = draw.maker.sideRules.get(question.id) ?? [];
  const out = new Set(rules.map(({ rule }) => rule.value));
  const left = weightsAt(draw, question, { side }).filter(([id]) => !out.has(id));
  return given(drawOne(draw.random, left) ?? 'no');
}

function drawSides(draw: Draw, step: Step): Answer {
  const { question } = step;
  const sides = new Map<Side, PlainAnswer>();
  // Most houses have the same walls, windows and eaves all round: a side is like the one before it half the time.
  let before: PlainAnswer | undefined;
  for (const side of step.sides ?? []) {
    const fresh = drawPlain(draw, question, { side });
    const value = before?.status === 'given' ? before.value : undefined;
    const fits = weightsAt(draw, question, { side }).some(([id]) => id === value);
    const same = question.kind === 'choice' && before !== undefined && fits && draw.random() < 0.5;
    const answer = same && before ? before : fresh;
    sides.set(side, answer);
    before = answer;
  }
  keepSideRules(draw, question, sides, (side) => otherAnswer(draw, question, side));
  return { status: 'bySide', sides: Object.fromEntries(sides) };
}

function drawMembers({ maker, random }: Draw, question: Question): PlainAnswer {
  const group = maker.checklist.index.groups.get(question.counts ?? '');
  const weights = maker.rules.counts[question.id] ?? [1];
  const count = drawOne(
    random,
    weights.map((weight, number) => [number, weight] as const),
  );
  const keys = Array.from({ length: count ?? 0 }, (_, position) => `${group?.keyLetter}${position + 1}`);
  return given(keys);
}

/** Draws the answer to a step, or takes the fixed one. */
export function drawAnswer(draw: Draw, step: Step): Answer {
  const { question } = step;
  const { rules } = draw.maker;
  const fixed = rules.fixed[question.id];
  if (fixed !== undefined) return fixed === 'skip' ? { status: 'skipped' } : given(fixed);
  if (question.counts !== undefined) return drawMembers(draw, question);
  if (question.kind === 'text') return { status: 'skipped' };
  if (question.kind === 'sides') {
    const count = draw.random() < 0.2 ? 2 : 1;
    return given(drawSome(draw.random, draw.facts.sides, count));
  }
  if (step.sides) return drawSides(draw, step);
  const spot = step.group === undefined ? {} : { group: step.group, member: step.member ?? '' };
  return drawPlain(draw, question, spot);
}
