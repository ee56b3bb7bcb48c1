import { isOpen } from '../answers/path.ts';
import { cleanText } from '../answers/reading/clean-text.ts';
import type { Material } from './material.ts';
import { reportPlanning } from './plan-data.ts';
import type { Report } from './report.ts';
import { reportActions, reportLeftOut } from './report-actions.ts';
import { answersRead, reportToFindOut } from './report-answers.ts';
import { reportCautions } from './report-cautions.ts';
import { reportComputations } from './report-computations.ts';
import { numberJobs, reportFirstHour, reportJobs } from './report-jobs.ts';
import { reportRulebook } from './report-rules.ts';
import { findingLines, reportElements, reportFindings, reportWaysIn } from './report-seen.ts';
import { reportSources } from './report-sources.ts';

function reportWalk(material: Material): Report['walk'] {
  const { walk, wording, sheet, checklist, assessment } = material;
  const label = checklist.index.roles.get('label');
  const answer = label && assessment.path.byKey.has(label.id) ? sheet[label.id] : undefined;
  const { steps } = assessment.path;
  return {
    id: walk.id,
    label: answer?.status === 'given' ? cleanText(String(answer.value)) : null,
    date: walk.date,
    flow: checklist.flow.fingerprint,
    audience: wording.reader.audience,
    language: wording.reader.language,
    units: wording.reader.units,
    seed: walk.seed,
    asked: steps.length,
    open: steps.filter((step) => isOpen(step, sheet)).length,
  };
}

/**
 * Nothing costly is needed: every question has an answer, nothing is unknown that could bring a job, no trade job
 * takes anything off, and no job from the shop takes off as much as a way in weighs for which a trade is called.
 */
function isInOrder(
  { assessment, checklist }: Material,
  open: number,
  toFindOut: Report['toFindOut'],
): boolean {
  const floor = checklist.flow.walk.tradeFloor;
  const costly = assessment.groups.some((group) =>
    group.jobs.some(
      ({ proposal, share }) =>
        proposal.treats.size > 0 &&
        ((proposal.lane === 'trade' && share > 0) || (proposal.lane === 'shop' && share >= floor)),
    ),
  );
  return open === 0 && !costly && toFindOut.every((one) => one.stake === 0 && !one.opens);
}

/** Puts an assessment into words for one reader: plain data, from which the ranking can be worked out again. */
export function buildReport(material: Material): Report {
  const { assessment, wording, checklist, sheet } = material;
  const numbers = numberJobs(assessment.groups);
  const { jobs, alsoWorth } = reportJobs(material, numbers);
  const walk = reportWalk(material);
  const unknown = reportToFindOut(material);
  const parts = {
    findings: reportFindings(material),
    elements: reportElements(material),
    waysIn: reportWaysIn(material),
    actions: reportActions(material),
    jobs,
    alsoWorth,
    cautions: reportCautions(material, [...jobs, ...alsoWorth]),
    rulebook: reportRulebook(material),
    computations: reportComputations(material),
  };
  return {
    version: 1,
    walk,
    stops: checklist.flow.stops.map(({ id }) => ({ id, title: wording.text(`stop/${id}/title`) })),
    exposure: { now: assessment.exposure, left: assessment.left },
    tradeFloor: checklist.flow.walk.tradeFloor,
    inOrder: isInOrder(material, walk.open, unknown),
    biggestChange: (assessment.biggestChange && numbers.get(assessment.biggestChange)) || null,
    firstHour: reportFirstHour(material),
    ...parts,
    plan: [...assessment.ranked].sort((a, b) => a.turn - b.turn).map((one) => one.proposal.id),
    leftOut: reportLeftOut(material),
    findingLines: findingLines(material),
    toFindOut: unknown,
    planning: reportPlanning(material, numbers),
    upkeep: material.upkeep.map(({ id, seasons, cautions }) => ({
      id,
      seasons,
      do: wording.text(`upkeep/${id}`),
      cautions,
    })),
    sources: reportSources(material, parts),
    answers: sheet,
    answersRead: answersRead(material),
    notes: material.walk.notes.map((note) => cleanText(note)),
  };
}
