import type { Material } from './material.ts';
import type { Report } from './report.ts';

/** The first sentence of a caution stands for it where it has no short name. */
const firstSentence = (text: string) => /^.*?[.!?](?= |$)/.exec(text)?.[0] ?? text;

/** The cautions of all jobs and of the upkeep, each once; leaving comes first. */
export function reportCautions(
  material: Material,
  jobs: readonly Report['jobs'][number][],
): Report['cautions'] {
  const { wording, checklist } = material;
  const named = new Set([
    ...jobs.flatMap((job) => job.cautions),
    ...material.upkeep.flatMap((one) => one.cautions),
  ]);
  return checklist.flow.cautions
    .filter((one) => named.has(one.id) || one.id === 'leave-first')
    .map(({ id, sources }) => {
      const text = wording.text(`caution/${id}`);
      const short = `report.caution.${id}`;
      return { id, short: wording.has(short) ? wording.text(short) : firstSentence(text), text, sources };
    });
}
