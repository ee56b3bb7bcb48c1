import type { RawCondition } from '../../flow/schema/condition.ts';

/** Ids of the questions and findings that a condition names, however deep. */
export function namedIn(condition: RawCondition): {
  readonly questions: string[];
  readonly findings: string[];
} {
  const inside = [
    ...(condition.all ?? []),
    ...(condition.any ?? []),
    ...(condition.not ? [condition.not] : []),
    ...(condition.where ? [condition.where] : []),
  ].map(namedIn);
  const own = [condition.question, condition.answered].filter((id) => id !== undefined);
  return {
    questions: [...own, ...inside.flatMap((one) => one.questions)],
    findings: [
      ...(condition.finding === undefined ? [] : [condition.finding]),
      ...inside.flatMap((one) => one.findings),
    ],
  };
}
