import type { LimitInForce } from '../answers/limits.ts';
import type { Rulebook } from '../flow/schema/rulebook.ts';
import { metres, ownLength } from '../quantities/index.ts';
import type { Material } from './material.ts';
import type { Report } from './report.ts';
import { statusOf } from './report-costs.ts';

function valueText({ wording }: Material, { dimension, value }: LimitInForce): string {
  if (typeof value === 'boolean') return wording.text(`words/yesNo/${value ? 'yes' : 'no'}`);
  if (dimension === 'length') return wording.length(value);
  return dimension === 'slope' ? wording.value({ percent: value }) : String(value);
}

/** A length as its source has it, where the reader's units only come near it. */
function ownText({ wording }: Material, { dimension, value }: LimitInForce): string | null {
  if (dimension !== 'length' || typeof value !== 'number') return null;
  return ownLength(metres(value), wording.reader.units) ?? null;
}

/** Whose rule it is: the place's own, general advice, or a rulebook between them by its title. */
function rulebookText({ assessment, wording, checklist }: Material, id: string): string {
  if (id === checklist.flow.walk.generalRulebook) return wording.text('report.rule.general');
  if (id === assessment.path.rulebook) return wording.text('report.rule.place');
  return checklist.flow.rulebooks.find((one) => one.id === id)?.title ?? id;
}

/** The limits of the place that stand behind a job. */
export function rulesBehind(material: Material, ids: readonly string[]): Report['jobs'][number]['rules'] {
  const { assessment, wording } = material;
  return ids.flatMap((id) => {
    const inForce = assessment.path.limits.get(id);
    if (!inForce) return [];
    const at = `limit/${inForce.rulebook}/${id}`;
    return [
      {
        id,
        what: wording.text(`${at}/what`),
        value: valueText(material, inForce),
        own: ownText(material, inForce),
        note: wording.has(`${at}/note`) ? wording.text(`${at}/note`) : null,
        rulebook: rulebookText(material, inForce.rulebook),
        source: inForce.limit.source,
        status: statusOf(material, inForce.limit.source),
      },
    ];
  });
}

/** The rulebook of the place and those over which it lies, the place first. */
function layersOf(material: Material, id: string): Rulebook[] {
  const { flow } = material.checklist;
  const book = flow.rulebooks.find((one) => one.id === id);
  if (!book) return [];
  const below = book.over ?? flow.walk.generalRulebook;
  return book.id === flow.walk.generalRulebook ? [book] : [book, ...layersOf(material, below)];
}

/** Whose rules apply, whom to ask, and what the place notes beside its limits. */
export function reportRulebook(material: Material): Report['rulebook'] {
  const { assessment, wording } = material;
  const layers = layersOf(material, assessment.path.rulebook);
  const [own] = layers;
  return {
    id: assessment.path.rulebook,
    title: own?.title ?? '',
    invented: own?.invented ?? false,
    hemisphere: own?.hemisphere ?? 'north',
    authority: wording.text(`rulebook/${assessment.path.rulebook}/authority`),
    currency: own?.currency ?? '',
    emergencyNumber: own?.emergencyNumber ?? '',
    notes: layers.flatMap((book) =>
      book.notes.map((note, position) => ({
        text: wording.text(`rulebook/${book.id}/note.${position}`),
        source: note.source,
      })),
    ),
  };
}
