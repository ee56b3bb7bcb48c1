import type { WalkMachine } from './compile-machine.ts';

interface StateNode {
  readonly key: string;
  readonly states: Readonly<Record<string, StateNode>>;
  readonly always?: readonly { readonly target?: readonly StateNode[] | undefined }[] | undefined;
  readonly transitions: ReadonlyMap<
    string,
    readonly { readonly target?: readonly StateNode[] | undefined }[]
  >;
}

function targetsOf(
  list: readonly { readonly target?: readonly StateNode[] | undefined }[] | undefined,
): string[] {
  return [...new Set((list ?? []).flatMap((one) => one.target?.map((node) => node.key) ?? []))];
}

function stopLines(stop: StateNode, titles: ReadonlyMap<string, string>): string[] {
  const inner = Object.values(stop.states);
  const first = inner[0]?.key;
  return [
    `  state "${titles.get(stop.key) ?? stop.key}" as stop_${stop.key} {`,
    ...(first === undefined ? [] : [`    [*] --> ${first}`]),
    ...inner.flatMap((node) =>
      targetsOf(node.always)
        .filter((target) => target in stop.states)
        .map((target) => `    ${node.key} --> ${target}`),
    ),
    '  }',
  ];
}

/** Where a stop is left for another: drawn between the stops, so that the picture stays readable. */
function leavingLines(stops: readonly StateNode[]): string[] {
  const home = new Map(
    stops.flatMap((stop) => Object.keys(stop.states).map((key) => [key, `stop_${stop.key}`])),
  );
  return stops.flatMap((stop) => {
    const targets = Object.values(stop.states).flatMap((node) => targetsOf(node.always));
    const outside = targets
      .map((target) => home.get(target) ?? target)
      .filter((target) => target !== `stop_${stop.key}`);
    return [...new Set(outside)].map((target) => `  stop_${stop.key} --> ${target}`);
  });
}

/** The machine as a Mermaid state diagram: stops with their questions, and the events that lead out of the walk. */
export function drawMachine(machine: WalkMachine, titles: ReadonlyMap<string, string>): string {
  const root = machine.root as unknown as StateNode;
  const asking = root.states['asking'];
  const stops = Object.values(asking?.states ?? {}).filter((node) => Object.keys(node.states).length > 0);
  const outer = Object.values(root.states).filter((node) => node !== asking);
  const out = [...root.transitions].flatMap(([event, list]) =>
    targetsOf(list)
      .filter((target) => outer.some((node) => node.key === target))
      .map((target) => `  walking --> ${target}: ${event}`),
  );
  const between = outer.flatMap((node) =>
    [...node.transitions].flatMap(([event, list]) =>
      [
        ...new Set(
          targetsOf(list).map((target) => (outer.some((one) => one.key === target) ? target : 'walking')),
        ),
      ].map((target) => `  ${node.key} --> ${target}: ${event}`),
    ),
  );
  return [
    'stateDiagram-v2',
    '  [*] --> walking',
    '  state "The walk, from every state" as walking',
    `  walking --> stop_${stops[0]?.key ?? ''}`,
    ...stops.flatMap((stop) => stopLines(stop, titles)),
    ...leavingLines(stops),
    ...out,
    ...between,
    '',
  ].join('\n');
}
