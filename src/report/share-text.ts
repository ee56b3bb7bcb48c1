import { type RankedGroup, takenOffBy } from '../ranking/rank.ts';
import type { Material } from './material.ts';

/** A share in the plain words of the flow: "about a third". */
function shareWord({ assessment, checklist }: Material, taken: number): string {
  const all = assessment.exposure - assessment.left;
  const part = all > 0 ? taken / all : 0;
  const words = [...checklist.flow.walk.shareWords].sort((a, b) => b.atLeast - a.atLeast);
  return words.find((one) => part >= one.atLeast)?.say ?? words.at(-1)?.say ?? '';
}

/** A share as a part of all that the jobs can take off. */
export function shareText(material: Material, taken: number): string {
  return material.wording.text('report.share', { share: shareWord(material, taken) });
}

/** Told where a job does this many times more by itself than at its turn, ... */
const muchMore = 2;
/** ... and at least this part of all that can be taken off. */
const worthTelling = 0.08;
/** A job done before takes its share of the difference when it takes at least this part of it. */
const takesOver = 0.3;

const proposalsOf = (group: RankedGroup) => group.jobs.map((job) => job.proposal);
const turnOf = (group: RankedGroup) => Math.min(...group.jobs.map((job) => job.turn));

/** What two groups both take off, so that the second finds it gone. */
function overlap({ assessment }: Material, one: RankedGroup, other: RankedGroup): number {
  const together = takenOffBy([...proposalsOf(one), ...proposalsOf(other)], assessment.chains);
  return one.alone + other.alone - together;
}

/** What a job would do by itself, where jobs before it leave it little; nothing where that is not so. */
export function aloneText(
  material: Material,
  group: RankedGroup,
  numbers: ReadonlyMap<RankedGroup, number>,
): string | null {
  const { assessment, wording } = material;
  const all = assessment.exposure - assessment.left;
  if (group.alone < muchMore * group.share || group.alone < worthTelling * all) return null;
  const earlier = [...numbers]
    .filter(([other, number]) => number > 0 && other !== group && turnOf(other) < turnOf(group))
    .map(([other, number]) => ({ number, shared: overlap(material, group, other) }))
    .filter(({ shared }) => shared >= takesOver * (group.alone - group.share))
    .sort((a, b) => b.shared - a.shared)
    .slice(0, 2)
    .map(({ number }) => number)
    .sort((a, b) => a - b);
  return wording.text('report.alone', {
    share: shareWord(material, group.alone),
    count: earlier.length,
    earlier: { list: earlier },
  });
}
