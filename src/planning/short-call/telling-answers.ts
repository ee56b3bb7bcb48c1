import type { Checklist } from '../../assess/checklist.ts';
import type { RawCondition } from '../../flow/schema/condition.ts';

function collect(condition: RawCondition | undefined, into: Map<string, Set<string>>): void {
  if (!condition) return;
  for (const part of [...(condition.all ?? []), ...(condition.any ?? [])]) collect(part, into);
  collect(condition.not, into);
  collect(condition.where, into);
  const { question } = condition;
  if (question === undefined) return;
  const values = condition.oneOf ?? (condition.is === undefined ? [] : [condition.is]);
  const known = into.get(question) ?? new Set<string>();
  for (const value of values) known.add(String(value));
  into.set(question, known);
}

const known = new WeakMap<Checklist, ReadonlyMap<string, ReadonlySet<string>>>();

/** question id -> the options that something of the flow looks for: any other answer changes nothing. */
function tellingOf(checklist: Checklist): ReadonlyMap<string, ReadonlySet<string>> {
  const before = known.get(checklist);
  if (before) return before;
  const { flow } = checklist;
  const into = new Map<string, Set<string>>();
  for (const one of [...flow.findings, ...flow.elements]) collect(one.when, into);
  for (const one of flow.questions) {
    collect(one.when, into);
    collect(one.where, into);
  }
  for (const action of flow.actions) {
    collect(action.when, into);
    for (const lane of action.laneWhen) collect(lane.if, into);
  }
  known.set(checklist, into);
  return into;
}

/** Whether an answer can change anything; measures always can. */
export function isTelling(
  checklist: Checklist,
  question: { id: string; kind: string },
  answer: string,
): boolean {
  if (!['choice', 'several', 'yesNo', 'sides'].includes(question.kind)) return true;
  return tellingOf(checklist).get(question.id)?.has(answer) ?? false;
}
