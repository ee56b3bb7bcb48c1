import { laneOrder } from '../../ranking/order.ts';
import type { Ranked } from '../../ranking/rank.ts';
import type { Practice } from '../practice.ts';
import { knownHouse } from '../session/known.ts';
import type { PracticeEvent, PracticeState } from '../session/state.ts';
import type { AdviceGiven, AdviceLine, CautionsGiven } from './debrief.ts';

type Advised = Extract<PracticeEvent, { kind: 'advised' }>;

const firstJobs = 3;

/** The jobs of the list that an advice means. */
function jobsMeant(ranked: readonly Ranked[], advised: AdviceLine): Ranked[] {
  return ranked.filter(
    ({ proposal }) =>
      proposal.action.id === advised.action &&
      (advised.places.length === 0 || advised.places.includes(proposal.place.suffix)),
  );
}

const laneOf = (job: Ranked) => laneOrder.indexOf(job.proposal.lane);

/** The cheaper job, the one that takes most off, that the program does before these and nobody advised yet. */
function cheaperBefore(
  ranked: readonly Ranked[],
  jobs: readonly Ranked[],
  earlier: readonly Advised[],
): Ranked | undefined {
  const said = new Set(earlier.flatMap((event) => jobsMeant(ranked, event)));
  const lane = Math.min(...jobs.map(laneOf));
  const turn = Math.min(...jobs.map((job) => job.turn));
  const ways = new Set(jobs.flatMap((job) => job.lessens));
  const cheaper = ranked.filter(
    (job) =>
      !said.has(job) &&
      laneOf(job) < lane &&
      job.turn < turn &&
      job.share > 0 &&
      job.lessens.some((way) => ways.has(way)),
  );
  return cheaper.reduce<Ranked | undefined>(
    (best, job) => (best === undefined || job.share > best.share ? job : best),
    undefined,
  );
}

/** Jobs among the first three of the list, as shown, that were never advised; none where one part is practised alone. */
function unsaidJobs(practice: Practice, state: PracticeState, advised: readonly Advised[]): string[] {
  if (state.part !== undefined) return [];
  const { groups } = knownHouse(practice, state).assessment;
  const said = new Set(advised.map((event) => event.action));
  return groups
    .filter((group) => group.jobs.some((job) => job.proposal.treats.size > 0))
    .slice(0, firstJobs)
    .filter((group) => !group.jobs.some((job) => said.has(job.proposal.action.id)))
    .flatMap((group) => group.jobs[0]?.proposal.action.id ?? []);
}

/** What was advised: right, too costly first, not called for, or against the rulebook. */
export function adviceGiven(practice: Practice, state: PracticeState): AdviceGiven {
  const { ranked } = knownHouse(practice, state).assessment;
  const advised = state.events.filter((event) => event.kind === 'advised');
  const right: AdviceLine[] = [];
  const costlyFirst: AdviceGiven['costlyFirst'][number][] = [];
  const notCalledFor: AdviceLine[] = [];
  const brokenLimits: AdviceGiven['brokenLimits'][number][] = [];
  for (const [position, { action, places, limit }] of advised.entries()) {
    const line = { action, places };
    const jobs = jobsMeant(ranked, line);
    const called = jobs.map((job) => job.proposal.place.suffix);
    const wide = places.filter((place) => !called.includes(place));
    if (limit) brokenLimits.push({ ...line, limit: limit.id, saidMetres: limit.saidMetres });
    if (jobs.length === 0) notCalledFor.push(line);
    else if (wide.length > 0) notCalledFor.push({ action, places: wide });
    if (jobs.length === 0 || limit) continue;
    const asked = { action, places: places.filter((place) => called.includes(place)) };
    const cheaper = cheaperBefore(ranked, jobs, advised.slice(0, position));
    if (cheaper) costlyFirst.push({ ...asked, cheaper: cheaper.proposal.action.id });
    else right.push(asked);
  }
  const wrong = state.events.flatMap((event) => (event.kind === 'wrongAdvice' ? [event.id] : []));
  return {
    right,
    costlyFirst,
    notCalledFor,
    brokenLimits,
    wrong,
    unsaid: unsaidJobs(practice, state, advised),
  };
}

/** The cautions given, and those that jobs which were rightly advised call for and nobody gave. */
export function cautionsGiven(practice: Practice, state: PracticeState): CautionsGiven {
  const { ranked } = knownHouse(practice, state).assessment;
  const given = [
    ...new Set(state.events.flatMap((event) => (event.kind === 'cautioned' ? [event.caution] : []))),
  ];
  const needed = new Map<string, Set<string>>();
  for (const event of state.events) {
    if (event.kind !== 'advised') continue;
    for (const { proposal } of jobsMeant(ranked, event))
      for (const caution of proposal.cautions)
        needed.set(caution, (needed.get(caution) ?? new Set()).add(proposal.action.id));
  }
  const forgotten = [...needed]
    .filter(([caution]) => !given.includes(caution))
    .map(([caution, actions]) => ({ caution, actions: [...actions] }))
    .sort((a, b) => b.actions.length - a.actions.length || (a.caution < b.caution ? -1 : 1));
  return { given, needed: needed.size, forgotten };
}
