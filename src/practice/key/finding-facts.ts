import type { Flow } from '../../flow/flow.ts';
import type { Finding } from '../../flow/schema/finding.ts';
import { namedIn } from './questions-in.ts';

/** What is known of a finding from the flow alone. */
export interface FindingFacts {
  readonly finding: Finding;
  /** The questions that its condition reads, those of findings named in it included. */
  readonly questions: readonly string[];
  /** The stop under which it is shown. */
  readonly stop: string;
}

function questionsOf(flow: Flow, finding: Finding, seen: ReadonlySet<string>): string[] {
  const { questions, findings } = namedIn(finding.when);
  const others = flow.findings.filter((one) => findings.includes(one.id) && !seen.has(one.id));
  const deeper = others.flatMap((one) => questionsOf(flow, one, new Set([...seen, one.id])));
  return [...new Set([...questions, ...deeper])];
}

/** By its name, or else the last stop of the walk that its condition needs. */
function stopOf(flow: Flow, finding: Finding, questions: readonly string[]): string {
  const named = flow.stops.find((stop) => finding.id.startsWith(`${stop.id}.`));
  if (named) return named.id;
  const needed = flow.questions.filter((one) => questions.includes(one.id)).map((one) => one.stop);
  return flow.stops.findLast((stop) => needed.includes(stop.id))?.id ?? flow.stops[0]?.id ?? '';
}

/** The facts of all findings of a flow, by id. */
export function findingFacts(flow: Flow): ReadonlyMap<string, FindingFacts> {
  return new Map(
    flow.findings.map((finding) => {
      const questions = questionsOf(flow, finding, new Set([finding.id]));
      return [finding.id, { finding, questions, stop: stopOf(flow, finding, questions) }];
    }),
  );
}
