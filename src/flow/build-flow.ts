import { checkParts } from './checks/check-parts.ts';
import type { FlowDocument } from './document.ts';
import type { Flow } from './flow.ts';
import type { ReadFile } from './located.ts';
import { type FlowParts, gatherParts } from './parts.ts';
import type { FlowProblem } from './problem.ts';
import { readFlowFile } from './read-file.ts';

/** What a flow may name that is not in its files. */
export interface KnownOutside {
  /** Ids of computations that conditions, costs and texts may refer to. */
  readonly computations: readonly string[];
  /** A hash of a text, for the fingerprint. */
  readonly fingerprint: (text: string) => string;
}

const items = <T>(located: readonly { readonly item: T }[]): T[] => located.map((one) => one.item);

function assemble(parts: FlowParts, outside: KnownOutside): Flow | undefined {
  const walk = parts.walks[0]?.item;
  if (!walk) return undefined;
  const call = parts.calls[0]?.item;
  const shortCall = parts.shortCalls[0]?.item;
  const flow = {
    walk,
    stops: walk.stops,
    groups: items(parts.groups),
    questions: items(parts.questions),
    findings: items(parts.findings),
    elements: items(parts.elements),
    sets: Object.fromEntries(parts.sets.map(({ item }) => [item.id, item.members])),
    waysIn: items(parts.waysIn),
    actions: items(parts.actions),
    cautions: items(parts.cautions),
    costs: items(parts.costs),
    upkeep: items(parts.upkeep),
    sources: items(parts.sources),
    rulebooks: items(parts.rulebooks),
    words: Object.fromEntries(parts.words.map(({ item }) => [item.language, item])),
    ...(call ? { call } : {}),
    ...(shortCall ? { shortCall } : {}),
    phrases: Object.fromEntries(parts.phrases.map(({ item }) => [item.id, item.text])),
  };
  return { ...flow, fingerprint: outside.fingerprint(JSON.stringify(flow)) };
}

/** Turns read files into a checked flow, or says everything that is wrong with them. */
export function buildFlow(
  documents: readonly FlowDocument[],
  outside: KnownOutside,
): { flow: Flow; problems: [] } | { flow?: undefined; problems: FlowProblem[] } {
  const read = documents.map((document) => ({ document, ...readFlowFile(document) }));
  const shapeProblems = read.flatMap((one) => one.problems);
  const files = read.flatMap((one): ReadFile[] =>
    one.file ? [{ file: one.file, document: one.document }] : [],
  );
  const parts = gatherParts(files);
  // References into a file whose shape is wrong would only repeat the first problem in other words.
  const problems =
    shapeProblems.length > 0 ? shapeProblems : checkParts(parts, documents, outside.computations);
  const flow = problems.length === 0 ? assemble(parts, outside) : undefined;
  return flow ? { flow, problems: [] } : { problems };
}
