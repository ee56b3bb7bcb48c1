import type { Material } from './material.ts';
import type { Report } from './report.ts';

type Referring = Pick<
  Report,
  | 'findings'
  | 'elements'
  | 'waysIn'
  | 'actions'
  | 'jobs'
  | 'alsoWorth'
  | 'cautions'
  | 'rulebook'
  | 'computations'
>;

function sourcesReferredTo(report: Referring, upkeep: Material['upkeep']): Set<string> {
  const jobs = [...report.jobs, ...report.alsoWorth];
  return new Set([
    ...report.findings.flatMap((one) => one.sources),
    ...report.elements.flatMap((one) => one.sources),
    ...report.waysIn.flatMap((one) => one.sources),
    ...report.actions.flatMap((one) => one.sources),
    ...jobs.flatMap((one) => one.rules.map((rule) => rule.source)),
    ...jobs.flatMap((one) => one.cost?.lines.map((line) => line.source) ?? []),
    ...report.cautions.flatMap((one) => one.sources),
    ...report.rulebook.notes.map((note) => note.source),
    ...report.computations.flatMap((one) => [...one.sources, ...one.assumptions.map(({ source }) => source)]),
    ...upkeep.flatMap((one) => one.sources),
  ]);
}

/** Every source to which the report refers, once, in the order of the flow. */
export function reportSources(material: Material, report: Referring): Report['sources'] {
  const referred = sourcesReferredTo(report, material.upkeep);
  return material.checklist.flow.sources
    .filter((one) => referred.has(one.id))
    .map(({ id, title, by, year, status, note, url }) => ({
      id,
      title,
      by,
      year: year ?? null,
      status,
      note: note ?? null,
      url: url ?? null,
    }));
}
