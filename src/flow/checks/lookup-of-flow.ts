import type { Flow } from '../flow.ts';
import type { Lookup } from './references.ts';

const ids = (list: readonly { readonly id: string }[]) => new Set(list.map((one) => one.id));
const byId = <T extends { readonly id: string }>(list: readonly T[]) =>
  new Map(list.map((one) => [one.id, one]));

/** What files beside a checked flow may refer to. */
export function lookupOfFlow(flow: Flow, computations: readonly string[]): Lookup {
  const general = flow.rulebooks.find((one) => one.id === flow.walk.generalRulebook);
  return {
    stops: ids(flow.stops),
    groups: byId(flow.groups),
    questions: byId(flow.questions),
    findings: byId(flow.findings),
    elements: byId(flow.elements),
    sets: new Map(Object.entries(flow.sets)),
    actions: ids(flow.actions),
    cautions: ids(flow.cautions),
    costs: ids(flow.costs),
    sources: ids(flow.sources),
    limits: new Set(Object.keys(general?.limits ?? {})),
    rulebooks: ids(flow.rulebooks),
    computations: new Set(computations),
  };
}
