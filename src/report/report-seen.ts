import type { Found } from '../findings/find.ts';
import type { ReadyElement } from '../ranking/readiness.ts';
import type { WayIn } from '../ranking/ways-in.ts';
import type { Value, Values } from '../wording/say.ts';
import type { Material } from './material.ts';
import { placeValues } from './place-text.ts';
import type { Report } from './report.ts';

/** The stop at which a finding is met: that of the first question its condition asks. */
function stopOf({ checklist }: Material, found: Found): string {
  const read = JSON.stringify(found.finding.when).matchAll(/"(?:question|answered)":"([^"]+)"/g);
  const stops = [...read].map(([, id]) => checklist.index.questions.get(id ?? '')?.stop);
  const named = checklist.flow.stops.find((stop) => found.finding.id.startsWith(`${stop.id}.`))?.id;
  return named ?? stops.at(-1) ?? checklist.flow.stops[0]?.id ?? '';
}

/** All findings, each at its place. */
export function reportFindings(material: Material): Report['findings'] {
  return material.assessment.found.map((one) => ({
    id: one.id,
    stop: stopOf(material, one),
    sides: [...one.place.sides],
    sources: one.finding.sources,
  }));
}

/** Findings of one kind as one line, in the order of the stops. */
export function findingLines(material: Material): Report['findingLines'] {
  const { wording, assessment, checklist } = material;
  const kinds = new Map<string, Found[]>();
  for (const one of assessment.found) kinds.set(one.finding.id, [...(kinds.get(one.finding.id) ?? []), one]);
  const lines = [...kinds].flatMap(([id, list]) => {
    const [first] = list;
    if (!first) return [];
    const values = placeValues(
      material,
      list.map((one) => one.place),
    );
    return [
      {
        stop: stopOf(material, first),
        findings: list.map((one) => one.id),
        text: wording.text(`finding/${id}/say`, values),
        why: wording.text(`finding/${id}/why`, values),
        noAction:
          first.finding.noAction === undefined ? null : wording.text(`finding/${id}/noAction`, values),
      },
    ];
  });
  const order = checklist.flow.stops.map((stop) => stop.id);
  return lines.sort((a, b) => order.indexOf(a.stop) - order.indexOf(b.stop));
}

/** All elements that are there, with their readiness. */
export function reportElements(material: Material): Report['elements'] {
  return material.assessment.elements.map((one) => {
    const { element, place } = one.present;
    return {
      id: one.id,
      what: elementText(material, one),
      side: place.side ?? null,
      sides: [...place.sides],
      readiness: one.readiness,
      low: one.low,
      high: one.high,
      basis: element.basis,
      sources: element.sources,
    };
  });
}

function elementText(material: Material, one: ReadyElement): string {
  return material.wording.text(`element/${one.kind}`, placeValues(material, [one.present.place]));
}

function wayText(material: Material, way: WayIn, elements: readonly ReadyElement[]): string {
  const names = elements.map((one, position): [string, Value] => [
    `e${position + 1}`,
    elementText(material, one),
  ]);
  const sides = way.side === undefined ? material.assessment.path.sides : [way.side];
  const values: Values = { ...Object.fromEntries(names), side: { sides }, sides: { sides } };
  return material.wording.text(`way/${way.kind.id}`, values);
}

/** All ways in, each told as a chain. */
export function reportWaysIn(material: Material): Report['waysIn'] {
  const { waysIn, elements } = material.assessment;
  return waysIn.map((way) => {
    const chain = way.elements.flatMap((position) => elements[position] ?? []);
    return {
      id: way.id,
      text: wayText(material, way, chain),
      side: way.side ?? null,
      elements: chain.map((one) => one.id),
      weight: way.weight,
      sources: way.kind.sources,
    };
  });
}
