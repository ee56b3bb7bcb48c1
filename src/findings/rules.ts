import { compileCondition, type Test } from '../answers/condition.ts';
import type { FlowIndex } from '../answers/flow-index.ts';
import type { Action, Caution, Upkeep } from '../flow/schema/action.ts';
import type { Text } from '../flow/schema/base.ts';
import type { Element, Finding } from '../flow/schema/finding.ts';

/** Findings, elements and actions of a flow with their conditions compiled. Built once. */
export interface Rules {
  readonly findings: ReadonlyMap<string, { readonly finding: Finding; readonly when: Test }>;
  readonly elements: readonly { readonly element: Element; readonly when: Test }[];
  readonly actions: readonly ActionRule[];
  readonly upkeep: readonly { readonly upkeep: Upkeep; readonly when: Test | undefined }[];
  readonly cautions: ReadonlyMap<string, Caution>;
}

export interface ActionRule {
  readonly action: Action;
  readonly when: Test | undefined;
  readonly laneWhen: readonly {
    readonly test: Test;
    readonly lane: Action['lane'];
    readonly because: Text;
  }[];
  readonly cautionsWhen: readonly { readonly test: Test; readonly cautions: readonly string[] }[];
  readonly demanded: Test | undefined;
}

/** Compiles the rules of a flow. */
export function compileRules(index: FlowIndex): Rules {
  const compile = (raw: Parameters<typeof compileCondition>[0]) =>
    compileCondition(raw, (id) => index.questions.get(id));
  const maybe = (raw: Parameters<typeof compileCondition>[0] | undefined) => (raw ? compile(raw) : undefined);
  const { flow } = index;
  return {
    findings: new Map(flow.findings.map((finding) => [finding.id, { finding, when: compile(finding.when) }])),
    elements: flow.elements.map((element) => ({ element, when: compile(element.when) })),
    actions: flow.actions.map((action) => ({
      action,
      when: maybe(action.when),
      laneWhen: action.laneWhen.map((one) => ({
        test: compile(one.if),
        lane: one.lane,
        because: one.because,
      })),
      cautionsWhen: action.cautionsWhen.map((one) => ({ test: compile(one.if), cautions: one.cautions })),
      demanded: maybe(action.demandedWhen?.if),
    })),
    upkeep: flow.upkeep.map((upkeep) => ({ upkeep, when: maybe(upkeep.when) })),
    cautions: new Map(flow.cautions.map((one) => [one.id, one])),
  };
}
