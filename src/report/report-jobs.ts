import type { RankedGroup } from '../ranking/rank.ts';
import type { Material } from './material.ts';
import { placeText, placeValues } from './place-text.ts';
import type { Report } from './report.ts';
import { laneBecause } from './report-actions.ts';
import { workedOutFor } from './report-computations.ts';
import { costOfGroup } from './report-costs.ts';
import { rulesBehind } from './report-rules.ts';
import { aloneText, shareText } from './share-text.ts';

type Job = Report['jobs'][number];
type Numbers = ReadonlyMap<RankedGroup, number>;

const epsilon = 1e-12;

/** Numbers of the list from 1; jobs that close no way in, such as a call, have number 0 and stand apart. */
export function numberJobs(groups: readonly RankedGroup[]): Numbers {
  let number = 0;
  return new Map(
    groups.map((group) => {
      const treats = group.jobs.some((job) => job.proposal.treats.size > 0);
      number += treats ? 1 : 0;
      return [group, treats ? number : 0];
    }),
  );
}

/** What, where and how, in words for all places of a group together. */
function textsOf(material: Material, group: RankedGroup) {
  const { wording } = material;
  const actions = [...new Set(group.jobs.map((job) => job.proposal.action))];
  const each = actions.map((action) => {
    const places = group.jobs
      .filter((job) => job.proposal.action === action)
      .map((job) => job.proposal.place);
    const values = placeValues(material, places);
    const say = (part: string) => wording.text(`action/${action.id}/${part}`, values);
    return {
      do: say('do'),
      why: say('why'),
      how: action.how.map((_, position) => say(`how.${position}`)),
      ask: (action.contractor?.ask ?? []).map((_, position) => say(`ask.${position}`)),
      permit: action.contractor ? say('permit') : '',
      by: action.demandedWhen ? say('demandedBy') : '',
    };
  });
  const join = (pick: (one: (typeof each)[number]) => string) =>
    [...new Set(each.map(pick))].filter((text) => text !== '').join(' ');
  const flat = (pick: (one: (typeof each)[number]) => string[]) => [...new Set(each.flatMap(pick))];
  return {
    do: join((one) => one.do),
    why: join((one) => one.why),
    how: flat((one) => one.how),
    contractor: { ask: flat((one) => one.ask), permit: join((one) => one.permit) },
    demandedBy: join((one) => one.by),
  };
}

/** The other groups that hold one of these jobs. */
function groupsWith(group: RankedGroup, numbers: Numbers, holds: (other: RankedGroup) => boolean) {
  return [...numbers].filter(([other]) => other !== group && holds(other));
}

function relationsOf(material: Material, group: RankedGroup, numbers: Numbers) {
  const required = new Set(group.jobs.flatMap((job) => job.proposal.requires));
  const instead = new Set(group.jobs.flatMap((job) => job.proposal.insteadOf ?? []));
  const before = groupsWith(group, numbers, (other) =>
    other.jobs.some((job) => required.has(job.proposal.id)),
  );
  const insteadOf = groupsWith(group, numbers, (other) =>
    other.jobs.some((job) => job.proposal.insteadOf !== undefined && instead.has(job.proposal.insteadOf)),
  ).map(([, number]) => number);
  const ties = groupsWith(
    group,
    numbers,
    (other) =>
      group.share > epsilon &&
      Math.abs(other.share - group.share) <= epsilon &&
      Math.abs(other.alone - group.alone) <= epsilon,
  );
  const byRank = new Map([...numbers].map(([other, number]) => [other.rank, number]));
  const eitherOf = group.eitherOf.map((rank) => byRank.get(rank) ?? 0);
  return {
    tiedWith: ties.map(([, number]) => number),
    before: before.flatMap(([, number]) => (number > 0 ? [number] : [])),
    beforeText: before.flatMap(([other, number]) => (number > 0 ? [] : [textsOf(material, other).do])),
    insteadOf,
    eitherOf: eitherOf.filter((number) => number > 0 && !insteadOf.includes(number)),
  };
}

/** Cautions as the flow lists them: leaving comes first. */
function inOrderOfFlow({ checklist }: Material, ids: ReadonlySet<string>): string[] {
  return checklist.flow.cautions.flatMap(({ id }) => (ids.has(id) ? [id] : []));
}

function amountsOf(material: Material, group: RankedGroup) {
  const closed = new Set(group.jobs.flatMap((job) => job.closes));
  const lessened = new Set(group.jobs.flatMap((job) => job.lessens).filter((way) => !closed.has(way)));
  const proposals = group.jobs.map((job) => job.proposal);
  const sum = (end: 'low' | 'high') => proposals.reduce((total, one) => total + one.action.hours[end], 0);
  return {
    closes: closed.size,
    lessens: lessened.size,
    ...costOfGroup(material, proposals),
    hours: { low: sum('low'), high: sum('high') },
    cautions: inOrderOfFlow(material, new Set(proposals.flatMap((one) => one.cautions))),
    rules: rulesBehind(material, [...new Set(proposals.flatMap((one) => one.action.rules))]),
    comesBack: proposals.some((one) => one.action.comesBack),
  };
}

function reportJob(material: Material, group: RankedGroup, numbers: Numbers): Job {
  const { exposure } = material.assessment;
  const proposals = group.jobs.map((job) => job.proposal);
  const { contractor, demandedBy, ...texts } = textsOf(material, group);
  const lane = proposals[0]?.lane ?? 'hand';
  const part = (taken: number) => (exposure > 0 ? taken / exposure : 0);
  return {
    rank: numbers.get(group) ?? 0,
    actions: proposals.map((one) => one.id),
    ...texts,
    workedOut: workedOutFor(material, group.jobs),
    where: placeText(
      material,
      proposals.map((one) => one.place),
    ),
    lane,
    laneBecause: proposals.map((one) => laneBecause(material, one)).find((text) => text !== null) ?? null,
    share: part(group.share),
    shareText: shareText(material, group.share),
    alone: part(group.alone),
    aloneShareText: shareText(material, group.alone),
    aloneText: aloneText(material, group, numbers),
    ...amountsOf(material, group),
    ...relationsOf(material, group, numbers),
    demandedBy: proposals.some((one) => one.demanded) ? demandedBy : null,
    contractor: lane === 'trade' && contractor.ask.length > 0 ? contractor : null,
  };
}

/** The jobs as they are shown: the ranked list, and those that close no way in. */
export function reportJobs(material: Material, numbers: Numbers): Pick<Report, 'jobs' | 'alsoWorth'> {
  const all = material.assessment.groups.map((group) => reportJob(material, group, numbers));
  return { jobs: all.filter((job) => job.rank > 0), alsoWorth: all.filter((job) => job.rank === 0) };
}

/** The best first hour: jobs of one kind in one line. */
export function reportFirstHour(material: Material): Report['firstHour'] {
  const { firstHour } = material.assessment;
  const actions = [...new Set(firstHour.map((one) => one.proposal.action))];
  return actions.map((action) => {
    const jobs = firstHour.filter((one) => one.proposal.action === action);
    const values = placeValues(
      material,
      jobs.map((one) => one.proposal.place),
    );
    return {
      actions: jobs.map((one) => one.proposal.id),
      do: material.wording.text(`action/${action.id}/do`, values),
    };
  });
}
