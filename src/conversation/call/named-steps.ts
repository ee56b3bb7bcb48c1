import { pathOf, type Step } from '../../answers/path.ts';
import { findQuestions, findStop, namedQuestion, targetStems } from '../../answers/reading/find-target.ts';
import { stemsOf } from '../../answers/reading/tokens.ts';
import type { Checklist } from '../../assess/checklist.ts';
import { type Side, sideNames } from '../../flow/schema/base.ts';
import type { WalkRecord } from '../record.ts';

/** What a name may stand for: steps of the path, and whether it names anything of the flow at all. */
export interface Named {
  readonly steps: readonly Step[];
  readonly known: boolean;
  /** Sides that stand in the name: "fence on the left". */
  readonly sides: readonly Side[];
}

const nothing: Named = { steps: [], known: false, sides: [] };

/** One step for a question that is asked of each tree: that of the tree talked about, else the first. */
function onePerQuestion(steps: readonly Step[], member: string | undefined): Step[] {
  const ids = [...new Set(steps.map((step) => step.question.id))];
  return ids.flatMap((id) => {
    const same = steps.filter((step) => step.question.id === id);
    return same.find((step) => step.member === member) ?? same[0] ?? [];
  });
}

/** The questions of the path that a name may mean: one by its own name, else by its words, else those of a stop. */
export function stepsNamed(checklist: Checklist, record: WalkRecord, name: string): Named {
  const stems = stemsOf(name);
  const sides = sideNames.filter((side) => stems.includes(side));
  const kept = targetStems(stems).filter((stem) => !sideNames.some((side) => side === stem));
  if (kept.length === 0) return nothing;
  const { flow, index } = checklist;
  const exact = namedQuestion(kept, flow.questions);
  const stop = exact ? undefined : findStop(kept, flow.stops);
  const ids = new Set(
    exact
      ? [exact.id]
      : [
          ...findQuestions(kept, flow.questions).map((one) => one.id),
          ...flow.questions.filter((one) => one.stop === stop).map((one) => one.id),
        ],
  );
  const { steps, byKey } = pathOf(index, record.sheet);
  const here = record.cursor.key === undefined ? undefined : byKey.get(record.cursor.key)?.member;
  const found = onePerQuestion(
    steps.filter((step) => ids.has(step.question.id)),
    here,
  );
  return { steps: found, known: ids.size > 0, sides };
}

/** How much of a text is the name of a question or of its stop: a word of the name counts more. */
function mention(checklist: Checklist, step: Step, stems: ReadonlySet<string>): number {
  const { question } = step;
  const stop = checklist.flow.stops.find((one) => one.id === question.stop);
  const count = (names: readonly string[]) =>
    [...new Set(names.flatMap(stemsOf))].filter((stem) => stems.has(stem)).length;
  return 2 * count([question.short ?? '']) + count(stop?.words ?? []);
}

/** The questions of the path whose names stand in a text, those most named alone. */
export function stepsMentioned(checklist: Checklist, record: WalkRecord, text: string): Step[] {
  const stems = new Set(targetStems(stemsOf(text)));
  const { steps, byKey } = pathOf(checklist.index, record.sheet);
  const here = record.cursor.key === undefined ? undefined : byKey.get(record.cursor.key)?.member;
  const weighed = onePerQuestion(steps, here)
    .map((step) => ({ step, weight: mention(checklist, step, stems) }))
    .filter((one) => one.weight > 0);
  return weighed.sort((a, b) => b.weight - a.weight).map((one) => one.step);
}
