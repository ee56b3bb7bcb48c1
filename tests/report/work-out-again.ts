/** What the report says of a job, as far as its rank depends on it. */
interface Job {
  readonly id: string;
  readonly lane: string;
  readonly costly: boolean;
  readonly treats: Readonly<Record<string, number>>;
  readonly requires: readonly string[];
  readonly insteadOf: string | null;
  readonly demanded: boolean;
}

/** The parts of a report's JSON from which the ranking follows. */
interface Written {
  readonly tradeFloor: number;
  readonly elements: readonly { readonly id: string; readonly readiness: number }[];
  readonly waysIn: readonly { readonly id: string; readonly elements: readonly string[] }[];
  readonly actions: readonly Job[];
  readonly leftOut: readonly Job[];
}

const near = 1e-12;
const lanes = ['hand', 'shop', 'trade'];

/** The weight of every way in, once some jobs are done: everything multiplied out afresh, nothing remembered. */
function weightsAfter(written: Written, done: readonly Job[]): number[] {
  const left = new Map(
    written.elements.map(({ id, readiness }) => {
      const lowest = new Map<string, number>();
      for (const job of done) {
        const residual = job.treats[id];
        const group = job.insteadOf ?? job.id;
        if (residual !== undefined) lowest.set(group, Math.min(residual, lowest.get(group) ?? 1));
      }
      return [id, [...lowest.values()].reduce((product, one) => product * one, readiness)];
    }),
  );
  return written.waysIn.map(({ elements }) =>
    elements.reduce((product, id) => product * (left.get(id) ?? Number.NaN), 1),
  );
}

const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);

/**
 * The ranking once more, slowly and from the written report alone: lanes in turn, within a lane the job that takes
 * most off what is left, ties by what a job takes off alone and then by id; a job waits for those it requires.
 */
export function workOutAgain(written: Written) {
  const all = [...written.actions, ...written.leftOut];
  const now = sum(weightsAfter(written, []));
  const alone = new Map(all.map((job) => [job.id, now - sum(weightsAfter(written, [job]))]));
  const aloneOf = (job: Job) => alone.get(job.id) ?? 0;
  const done: Job[] = [];
  const passed = new Set<string>();
  const ordered: { job: Job; share: number }[] = [];
  const take = (job: Job) => {
    passed.add(job.id);
    const before = weightsAfter(written, done);
    const heaviest = Math.max(
      0,
      ...written.waysIn.map((way, position) =>
        way.elements.some((id) => job.treats[id] !== undefined) ? (before[position] ?? 0) : 0,
      ),
    );
    if (job.costly && !job.demanded && heaviest < written.tradeFloor) return;
    done.push(job);
    ordered.push({ job, share: sum(before) - sum(weightsAfter(written, done)) });
  };
  for (const lane of lanes.keys()) {
    for (;;) {
      const left = sum(weightsAfter(written, done));
      const ready = all
        .filter((job) => !passed.has(job.id) && lanes.indexOf(job.lane) <= lane)
        .filter((job) => job.requires.every((id) => passed.has(id)))
        .map((job) => ({ job, gain: left - sum(weightsAfter(written, [...done, job])) }));
      const most = Math.max(...ready.map(({ gain }) => gain));
      const [next] = ready
        .filter(({ gain }) => gain >= most - near)
        .sort((a, b) => byAlone(aloneOf(a.job), aloneOf(b.job), a.job.id, b.job.id));
      if (!next) break;
      take(next.job);
    }
  }
  const listed = ordered
    .map(({ job, share }, position) => ({ job, share, turn: position + 1, alone: aloneOf(job) }))
    .filter(
      ({ job, share, alone }) =>
        share > near || alone > near || job.demanded || Object.keys(job.treats).length === 0,
    )
    .sort((a, b) =>
      Math.abs(a.share - b.share) > near ? b.share - a.share : byAlone(a.alone, b.alone, a.job.id, b.job.id),
    );
  return { now, left: now - sum(ordered.map(({ share }) => share)), listed, ordered };
}

function byAlone(a: number, b: number, idA: string, idB: string): number {
  if (Math.abs(a - b) > near) return b - a;
  return idA < idB ? -1 : 1;
}
