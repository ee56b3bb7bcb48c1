import type { Answer, AnswerSheet } from '../../answers/answer.ts';
import { answerKey } from '../../answers/answer.ts';
import { isOpen, layOutPath, type Step } from '../../answers/path.ts';
import { assess } from '../../assess/assess.ts';
import type { Level, LevelName } from '../schema/practice-file.ts';
import { type Draw, drawAnswer } from './draw-answer.ts';
import type { HouseMaker } from './house-maker.ts';
import type { PracticeHouse } from './practice-house.ts';
import { createRandom, drawOne, drawSome, type Random } from './random.ts';

/** A length that may not exceed another is cut to it. */
function keepLess({ rules }: HouseMaker, step: Step, answer: Answer, sheet: AnswerSheet): Answer {
  const rule = rules.lessThan.find((one) => one.question === step.question.id);
  if (!rule || answer.status !== 'given' || typeof answer.value !== 'number') return answer;
  const other = sheet[answerKey(rule.than, step.group, step.member)];
  if (other?.status !== 'given' || typeof other.value !== 'number') return answer;
  return { status: 'given', value: Math.min(answer.value, other.value / 2) };
}

/** Answers every question of the walk in turn, on the path as it then stands. */
function drawSheet(maker: HouseMaker, level: LevelName, random: Random, fixed: AnswerSheet): AnswerSheet {
  const { index } = maker.checklist;
  let sheet = fixed;
  for (;;) {
    const path = layOutPath(index, sheet);
    const step = path.steps.find((one) => isOpen(one, sheet));
    if (!step) return Object.fromEntries(path.steps.map((one) => [one.key, sheet[one.key] as Answer]));
    const draw: Draw = { maker, level, random, facts: path.facts };
    sheet = { ...sheet, [step.key]: keepLess(maker, step, drawAnswer(draw, step), sheet) };
  }
}

// Nearly every second house fits, so that this many never do only where the rules contradict each other.
const mostDraws = 60;

/** Draws houses until one has as many findings as the level wants; the same random numbers give the same house. */
function drawFitting(maker: HouseMaker, level: LevelName, random: Random, fixed: AnswerSheet): AnswerSheet {
  const wanted = maker.rules.levels[level].findings;
  let sheet = drawSheet(maker, level, random, fixed);
  if (!wanted) return sheet;
  for (let draws = 1; draws < mostDraws; draws += 1) {
    const { length } = assess(maker.checklist, sheet).found;
    if (length >= wanted.atLeast && length <= wanted.atMost) break;
    sheet = drawSheet(maker, level, random, fixed);
  }
  return sheet;
}

function drawDistractors(maker: HouseMaker, level: Level, random: Random): PracticeHouse['distractors'] {
  const { distractors } = maker.rules;
  const isFirst = (one: (typeof distractors)[number]) =>
    level.first === 'any' || (level.first === 'lookalikes') === (one.looksLike !== undefined);
  const first = drawSome(random, distractors.filter(isFirst), level.distractors);
  const rest = distractors.filter((one) => !isFirst(one));
  const chosen = [...first, ...drawSome(random, rest, level.distractors - first.length)];
  const byStop: Record<string, string[]> = {};
  for (const one of chosen) byStop[one.stop] = [...(byStop[one.stop] ?? []), one.id];
  return byStop;
}

/** What is played around the answers: distractors, the resident's temper, perhaps an alarm. */
export function playHouse(
  maker: HouseMaker,
  house: Pick<PracticeHouse, 'name' | 'sheet' | 'seed' | 'level'> & { readonly key?: readonly string[] },
): PracticeHouse {
  const level = maker.rules.levels[house.level];
  const random = createRandom(house.seed ^ 0x5eed);
  const temper = drawOne(
    random,
    level.tempers.map((one) => [one, 1] as const),
  );
  const distractors = drawDistractors(maker, level, random);
  const alarmAt = random() < level.alarm ? drawSome(random, maker.rules.alarmStops, 1)[0] : undefined;
  return { ...house, temper: temper ?? 'plain', distractors, ...(alarmAt === undefined ? {} : { alarmAt }) };
}

/** A made-up house: the same seed, level and place give the same house. */
export function makeHouse(
  maker: HouseMaker,
  seed: number,
  level: LevelName,
  place: string | undefined = undefined,
): PracticeHouse {
  const question = maker.checklist.index.roles.get('place');
  const fixed: AnswerSheet =
    place === undefined || !question ? {} : { [question.id]: { status: 'given', value: place } };
  const sheet = drawFitting(maker, level, createRandom(seed), fixed);
  return playHouse(maker, { name: `seed-${seed}`, sheet, level, seed });
}
