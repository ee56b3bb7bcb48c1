import type { Flow } from '../../flow/flow.ts';
import type { RawCondition } from '../../flow/schema/condition.ts';

function collect(condition: RawCondition, into: Map<string, Set<string>>): void {
  for (const part of [...(condition.all ?? []), ...(condition.any ?? [])]) collect(part, into);
  if (condition.where) collect(condition.where, into);
  if (condition.question === undefined) return;
  const values = condition.oneOf ?? (condition.is === undefined ? [] : [condition.is]);
  const known = into.get(condition.question) ?? new Set<string>();
  for (const value of values) known.add(String(value));
  into.set(condition.question, known);
}

/** question id -> the options that a finding looks for; what stands under "not" is left out. */
export function tellingOptions(flow: Flow): ReadonlyMap<string, ReadonlySet<string>> {
  const telling = new Map<string, Set<string>>();
  for (const finding of flow.findings) collect(finding.when, telling);
  return telling;
}
