import { compileCondition, type Test } from '../../answers/condition.ts';
import type { Path, Step } from '../../answers/path.ts';
import type { Checklist } from '../../assess/checklist.ts';
import type { RawCondition } from '../../flow/schema/condition.ts';

/** What decides whether a question is asked: the test without its "when unknown", and the questions it reads. */
interface Gate {
  readonly test: Test;
  readonly reads: ReadonlySet<string>;
}

function readBy(condition: RawCondition, into: Set<string>): Set<string> {
  for (const part of [...(condition.all ?? []), ...(condition.any ?? [])]) readBy(part, into);
  if (condition.not) readBy(condition.not, into);
  if (condition.where) readBy(condition.where, into);
  const id = condition.question ?? condition.answered;
  if (id !== undefined) into.add(id);
  return into;
}

const known = new WeakMap<Checklist, ReadonlyMap<string, Gate>>();

function gatesOf(checklist: Checklist): ReadonlyMap<string, Gate> {
  const before = known.get(checklist);
  if (before) return before;
  const { flow, index } = checklist;
  const gates = new Map(
    flow.questions.flatMap((one): [string, Gate][] => {
      if (!one.when) return [];
      const { whenUnknown: _, ...when } = one.when;
      const test = compileCondition(when, (id) => index.questions.get(id));
      return [[one.id, { test, reads: readBy(when, new Set()) }]];
    }),
  );
  known.set(checklist, gates);
  return gates;
}

const spotOf = ({ group, member }: Step) =>
  group === undefined || member === undefined ? {} : { group, member };

/** Whether a step is on the path whatever the answers that are not known yet. */
export function isSurelyAsked(checklist: Checklist, path: Path, step: Step): boolean {
  const gate = gatesOf(checklist).get(step.question.id);
  return !gate || gate.test(path.facts, spotOf(step)) === 'yes';
}

/** More than the deepest row of questions that depend on each other. */
const deepest = 8;

/**
 * The question to ask instead, when a step is on the path only because an earlier answer is not known: the first of
 * those that wait and decide about it; the step itself when there is none.
 */
export function askedBefore(checklist: Checklist, path: Path, open: readonly Step[], wanted: Step): Step {
  const gates = gatesOf(checklist);
  let step = wanted;
  for (let depth = 0; depth < deepest; depth++) {
    const gate = gates.get(step.question.id);
    const { member } = step;
    if (!gate || isSurelyAsked(checklist, path, step)) return step;
    const first = open.find(
      (one) =>
        one !== step &&
        gate.reads.has(one.question.id) &&
        (one.member === undefined || one.member === member),
    );
    if (!first) return step;
    step = first;
  }
  return step;
}
