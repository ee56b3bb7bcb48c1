import type { Step } from '../answers/path.ts';
import { cleanText } from '../answers/reading/clean-text.ts';
import type { BudgetPlan } from '../planning/budget-plan.ts';
import { groupKeyOf } from '../planning/doubt/group-table.ts';
import type { Doubt } from '../planning/doubt.ts';
import type { Planning } from '../planning/planning.ts';
import type { ToCheck, VisitBrief } from '../planning/visit-brief.ts';
import type { RankedGroup } from '../ranking/rank.ts';
import type { Material } from './material.ts';
import { placeValues } from './place-text.ts';
import type { Report } from './report.ts';

type Told = NonNullable<Report['planning']>;
type Numbers = ReadonlyMap<RankedGroup, number>;

/** How firm the rank of a job is, where that was worked out. */
export function stabilityOf({ planning }: Material, id: string): Report['actions'][number]['stability'] {
  const found = planning?.doubt.jobs.get(id);
  return found ? { topThree: found.topThree, from: found.from, to: found.to } : null;
}

/** What to do, in the words of the list; nothing for an id that no proposal has. */
function doTexts(material: Material): (id: string) => string {
  const { assessment, wording } = material;
  const byId = new Map(assessment.proposals.map((one) => [one.id, one]));
  return (id) => {
    const one = byId.get(id);
    return one ? wording.text(`action/${one.action.id}/do`, placeValues(material, [one.place])) : id;
  };
}

/** The number of a line of the list by its key; 0 for one that is not on it. */
function numberOfKey(numbers: Numbers): (key: string) => number {
  const byKey = new Map(
    [...numbers].flatMap(([group, number]) =>
      group.jobs.slice(0, 1).map((job) => [groupKeyOf(job.proposal), number] as const),
    ),
  );
  return (key) => byKey.get(key) ?? 0;
}

function doubtTold(
  material: Material,
  doubt: Doubt,
  sensitive: Planning['sensitive'],
  numbers: Numbers,
): Told['doubt'] {
  const numberOf = numberOfKey(numbers);
  const byRank = new Map([...numbers].map(([group, number]) => [group.rank, number]));
  const lines = [...doubt.lines].flatMap(([key, { topThree, from, to }]) => {
    const rank = numberOf(key);
    return rank > 0 ? [{ rank, topThree, from, to }] : [];
  });
  return {
    draws: doubt.draws,
    seed: doubt.seed,
    lines: lines.sort((a, b) => a.rank - b.rank),
    firm: doubt.firm,
    sameThree: doubt.sameThree,
    tossUps: doubt.tossUps.flatMap(({ ranks, firstAhead }) => {
      const told = ranks.map((rank) => byRank.get(rank) ?? 0);
      return told.every((rank) => rank > 0) ? [{ ranks: told, firstAhead }] : [];
    }),
    sensitive: sensitive.map(({ id, readiness, low, high, changesAt, towards, firstThree, change }) => ({
      element: id,
      what: material.wording.text(`element/${id.split(':')[0]}`),
      readiness,
      low,
      high,
      changesAt,
      towards,
      firstThree: firstThree.map(numberOf),
      change,
    })),
  };
}

function budgetTold(material: Material, plan: BudgetPlan): NonNullable<Told['budget']> {
  const doText = doTexts(material);
  const part = (amount: number) => (plan.exposure > 0 ? amount / plan.exposure : 0);
  const step = (one: BudgetPlan['moreMoney']) =>
    one
      ? { extra: one.extra, adds: part(one.adds), newActions: [...one.newJobs], dropped: [...one.dropped] }
      : null;
  return {
    limits: { money: plan.limits.money ?? null, hours: plan.limits.hours ?? null },
    currency: plan.currency ?? null,
    actions: plan.jobs.map(({ id, share, money, hours }) => ({
      id,
      do: doText(id),
      share: part(share),
      money,
      hours,
    })),
    money: plan.money,
    hours: plan.hours,
    takenOff: part(plan.takenOff),
    possible: part(plan.possible),
    exact: plan.exact,
    gap: plan.gap,
    leftOut: plan.leftOut.map((one) => ({ ...one, do: doText(one.id), adds: part(one.adds) })),
    moreMoney: step(plan.moreMoney),
    moreHours: step(plan.moreHours),
  };
}

function stepValues({ assessment }: Material, { group, member }: Step) {
  if (group === undefined || member === undefined) return {};
  const number = assessment.facts.members(group).indexOf(member) + 1;
  return { member: { member: { group, key: member, number } } } as const;
}

function questionOf(material: Material, step: Step): string {
  const values = stepValues(material, step);
  const short = material.wording.text(`question/${step.question.id}/short`, values);
  return step.member === undefined
    ? short
    : material.wording.text('report.about-member', { short, ...values });
}

function answerOf(
  { wording }: Material,
  step: Step,
  answer: ToCheck['reported'],
): { text: string; typed: boolean } {
  if (!answer) return { text: '', typed: false };
  const typed = step.question.kind === 'text' && answer.status === 'given';
  const text = wording.value({ answer, question: step.question.id });
  return { text: typed ? cleanText(text) : text, typed };
}

function briefTold(material: Material, brief: VisitBrief): Told['visitBrief'] {
  const { wording, assessment } = material;
  const toCheck = ({ key, step, because, sides, reported, change, stake }: ToCheck) => {
    const known = reported?.status === 'given' || reported?.status === 'bySide';
    const { text, typed } = answerOf(material, step, known ? reported : undefined);
    const some = sides.length > 0 && sides.length < assessment.path.sides.length;
    return {
      key,
      question: questionOf(material, step),
      where: some ? wording.value({ sides }) : null,
      because,
      reported: known ? text : null,
      typed,
      how: wording.text(`question/${step.question.id}/look`, stepValues(material, step)),
      change: change ?? null,
      stake: stake ?? null,
    };
  };
  return {
    first: [...brief.first],
    leftOut: brief.leftOut,
    stops: brief.stops.map(({ stop, toCheck: checks, reported }) => ({
      stop,
      toCheck: checks.map(toCheck),
      reported: reported.map(({ key, step, answer, how }) => {
        const { text, typed } = answerOf(material, step, answer);
        return { key, question: questionOf(material, step), answer: text, typed, how };
      }),
    })),
  };
}

/** What goes beyond the order of the list, in words for one reader. */
export function reportPlanning(material: Material, numbers: Numbers): Report['planning'] {
  const { planning } = material;
  if (!planning) return null;
  const doText = doTexts(material);
  const { curve } = planning;
  return {
    doubt: doubtTold(material, planning.doubt, planning.sensitive, numbers),
    budget: planning.budget ? budgetTold(material, planning.budget) : null,
    curve: {
      currency: curve.currency ?? null,
      floor: curve.floor,
      points: curve.points.map(({ job, money, hours, left }) => ({
        action: job ?? null,
        do: job === undefined ? null : doText(job),
        money,
        hours,
        left,
      })),
    },
    visitBrief: briefTold(material, planning.brief),
  };
}
