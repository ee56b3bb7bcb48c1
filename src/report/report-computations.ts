import type { Spot } from '../answers/condition.ts';
import type { HouseInput, HouseOutcome } from '../computations/house/house-computation.ts';
import { allOutcomes, outcomeAt } from '../computations/house/outcome.ts';
import type { Place } from '../findings/place.ts';
import type { Dimension } from '../quantities/index.ts';
import type { Ranked } from '../ranking/rank.ts';
import type { Values } from '../wording/say.ts';
import { computedValues, sayResult, sayValue } from './computed-values.ts';
import type { Material } from './material.ts';
import { capital } from './page.ts';
import { placeText } from './place-text.ts';
import { statusOf } from './report-costs.ts';
import type { Computation } from './schema-computations.ts';

function placeOf({ assessment }: Material, { side, group, member }: Spot): Place {
  if (side !== undefined) return { side, suffix: `@${side}`, sides: [side] };
  if (group === undefined || member === undefined) return { suffix: '', sides: [] };
  const sides = assessment.facts.memberSides(group, member);
  return { group, member, suffix: `@${group}/${member}`, sides };
}

const word = ({ wording }: Material, id: string) => wording.text(`computed.word.${id}`);

function inputName(material: Material, { id, from }: HouseInput): string {
  const { wording, assessment } = material;
  if (from === 'answer') return wording.text(`question/${id}/short`);
  const limit = from === 'limit' ? assessment.facts.limit(id) : undefined;
  return limit === undefined ? word(material, id) : wording.text(`limit/${limit.rulebook}/${id}/what`);
}

function inputOf(material: Material, input: HouseInput): Computation['inputs'][number] {
  const { id, from, value, dimension } = input;
  const said =
    dimension === undefined || typeof value === 'string'
      ? material.wording.text(`option/${id}/${value}`)
      : sayValue(material, value, dimension);
  return { id, what: inputName(material, input), from, value, dimension: dimension ?? null, said };
}

const measured = (
  material: Material,
  one: { readonly id: string; readonly value: number; readonly dimension: Dimension },
) => ({
  id: one.id,
  what: word(material, one.id),
  value: one.value,
  dimension: one.dimension,
  said: sayValue(material, one.value, one.dimension),
});

function textOf(material: Material, outcome: HouseOutcome): string {
  const { wording } = material;
  switch (outcome.kind) {
    case 'result':
      return outcome.values
        .filter(({ id, value }) => id !== 'short' || value > 1e-9)
        .map((one) =>
          wording.text('report.computed.value', {
            what: word(material, one.id),
            said: sayResult(material, one.value, one.dimension),
          }),
        )
        .join('; ');
    case 'outside':
      return wording.text('report.computed.outside', { allowed: outcome.allowed });
    case 'missing':
      return wording.text('report.computed.missing', {
        question: { text: `question/${outcome.question}/short` },
      });
    default:
      return outcome satisfies never;
  }
}

function resultOf(
  material: Material,
  outcome: HouseOutcome,
): Pick<Computation, 'assumptions' | 'values' | 'shopping' | 'notes' | 'sources' | 'status'> {
  if (outcome.kind !== 'result')
    return { assumptions: [], values: [], shopping: [], notes: [], sources: [], status: null };
  return {
    assumptions: outcome.assumptions.map((one) => ({
      ...measured(material, one),
      source: one.source,
      status: statusOf(material, one.source),
    })),
    values: outcome.values.map((one) => ({
      ...measured(material, one),
      said: sayResult(material, one.value, one.dimension),
    })),
    shopping: outcome.shopping.map((line) => ({
      ...measured(material, { id: line.item, value: line.amount, dimension: line.dimension }),
      packs: line.count,
    })),
    notes: outcome.notes.map((note) => material.wording.text(`computed.note.${note}`)),
    sources: [...new Set(outcome.sources)],
    status: outcome.status,
  };
}

function reportOne(material: Material, outcome: HouseOutcome): Computation {
  const place = placeOf(material, outcome.spot);
  return {
    id: outcome.id + place.suffix,
    computation: outcome.id,
    group: outcome.group,
    outcome: outcome.kind,
    title: material.wording.text(`computed.${outcome.id}.title`),
    where: place.suffix === '' ? null : placeText(material, [place]),
    sides: [...place.sides],
    text: textOf(material, outcome),
    inputs: outcome.inputs.map((input) => inputOf(material, input)),
    ...resultOf(material, outcome),
  };
}

/** Whether a job of the list asks for what is to be bought: nobody needs gravel that no job lays. */
function isWanted({ assessment }: Material, outcome: HouseOutcome, place: Place): boolean {
  if (outcome.group !== 'supplies') return true;
  return assessment.ranked.some(
    ({ proposal }) =>
      proposal.action.workedOut.includes(outcome.id) &&
      (place.suffix === '' || proposal.place.suffix === place.suffix),
  );
}

/** Everything that was worked out, with inputs, result, sources and status. */
export function reportComputations(material: Material): Computation[] {
  return allOutcomes(material.assessment.house)
    .filter((outcome) => isWanted(material, outcome, placeOf(material, outcome.spot)))
    .map((outcome) => reportOne(material, outcome));
}

/** What the computations say to some jobs shown as one, in sentences; equal ones once, with their places. */
export function workedOutFor(material: Material, jobs: readonly Ranked[]): string[] {
  const { wording, assessment } = material;
  const told = new Map<string, Place[]>();
  for (const { proposal } of jobs) {
    for (const id of proposal.action.workedOut) {
      const outcome = outcomeAt(assessment.house, id, proposal.place);
      if (outcome?.kind !== 'result') continue;
      const place = placeOf(material, outcome.spot);
      const text = wording.text(`computed.${id}.job`, computedValues(material, outcome));
      const before = told.get(text) ?? [];
      if (!before.some((one) => one.suffix === place.suffix)) told.set(text, [...before, place]);
    }
  }
  const everywhere = new Set(jobs.map(({ proposal }) => proposal.place.suffix)).size;
  return [...told].map(([text, places]) => {
    const named = places.some((place) => place.suffix !== '') && places.length < everywhere;
    const values: Values = { text, where: named ? capital(placeText(material, places)) : '' };
    return named ? wording.text('report.computed.at', values) : text;
  });
}
