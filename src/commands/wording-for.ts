import type { Limits } from '../answers/limits.ts';
import { pathOf } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from '../conversation/record.ts';
import { unitsOf } from '../conversation/units.ts';
import { catalogueOf } from '../wording/catalogue.ts';
import { createWording, type Reader, type Texts, type Wording } from '../wording/wording.ts';

const made = new WeakMap<Checklist, Texts>();

/** The texts of a checklist, gathered once. */
export function textsOf(checklist: Checklist): Texts {
  const before = made.get(checklist);
  if (before) return before;
  const texts = { catalogue: catalogueOf(checklist.flow), questions: checklist.index.questions };
  made.set(checklist, texts);
  return texts;
}

const wordings = new WeakMap<Limits, Map<string, Wording>>();

/** The wording for the reader of a walk, as its answers stand; made once for all readers alike. */
export function wordingFor(
  checklist: Checklist,
  record: Pick<WalkRecord, 'sheet' | 'language' | 'audience' | 'units'>,
  escaping?: Reader['escape'],
): Wording {
  const { limits } = pathOf(checklist.index, record.sheet);
  const units = unitsOf(checklist, record.sheet, record.units);
  const { language, audience } = record;
  const reader = { language, audience, units, limits };
  if (escaping) return createWording(textsOf(checklist), { ...reader, escape: escaping });
  const known = wordings.get(limits) ?? new Map<string, Wording>();
  const key = `${language} ${audience} ${units}`;
  const wording = known.get(key) ?? createWording(textsOf(checklist), reader);
  wordings.set(limits, known.set(key, wording));
  return wording;
}
