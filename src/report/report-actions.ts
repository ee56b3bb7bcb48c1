import type { Proposal } from '../ranking/actions.ts';
import type { Ranked } from '../ranking/rank.ts';
import type { Material } from './material.ts';
import { placeValues } from './place-text.ts';
import { stabilityOf } from './plan-data.ts';
import type { Report } from './report.ts';
import { costAt } from './report-costs.ts';

/** What to do at one place, in words. */
function doText(material: Material, { action, place }: Proposal): string {
  return material.wording.text(`action/${action.id}/do`, placeValues(material, [place]));
}

/** Why a job is not in its usual lane. */
export function laneBecause({ wording }: Material, { action, because }: Proposal): string | null {
  const position = action.laneWhen.findIndex((one) => one.because === because);
  return position < 0 ? null : wording.text(`action/${action.id}/because.${position}`);
}

function treatsOf({ assessment }: Material, proposal: Proposal): Record<string, number> {
  return Object.fromEntries(
    [...proposal.treats].map(([position, left]) => [assessment.elements[position]?.id ?? '', left]),
  );
}

function reportAction(material: Material, one: Ranked): Report['actions'][number] {
  const { assessment } = material;
  const { proposal } = one;
  const { action, place } = proposal;
  const part = (taken: number) => (assessment.exposure > 0 ? taken / assessment.exposure : 0);
  return {
    id: proposal.id,
    rank: one.rank,
    turn: one.turn,
    lane: proposal.lane,
    laneBecause: laneBecause(material, proposal),
    do: doText(material, proposal),
    sides: [...place.sides],
    share: part(one.share),
    alone: part(one.alone),
    treats: treatsOf(material, proposal),
    closes: one.closes.map((position) => assessment.waysIn[position]?.id ?? ''),
    lessens: one.lessens.length,
    findings: [...proposal.findings],
    cost: costAt(material, action, place),
    hours: action.hours,
    cautions: [...proposal.cautions],
    requires: [...proposal.requires],
    insteadOf: proposal.insteadOf ?? null,
    demanded: proposal.demanded,
    costly: proposal.costly,
    comesBack: action.comesBack ?? false,
    sources: action.sources,
    stability: stabilityOf(material, proposal.id),
  };
}

/** The jobs of the list, by rank. */
export function reportActions(material: Material): Report['actions'] {
  return material.assessment.ranked.map((one) => reportAction(material, one));
}

/** The jobs that answer a finding and are not on the list: nothing is left for them, or too little for a trade. */
export function reportLeftOut(material: Material): Report['leftOut'] {
  const { proposals, ranked } = material.assessment;
  const listed = new Set(ranked.map((one) => one.proposal.id));
  return proposals
    .filter((one) => !listed.has(one.id))
    .map((one) => ({
      id: one.id,
      do: doText(material, one),
      lane: one.lane,
      treats: treatsOf(material, one),
      requires: [...one.requires],
      insteadOf: one.insteadOf ?? null,
      demanded: one.demanded,
      costly: one.costly,
    }));
}
