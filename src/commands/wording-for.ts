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

/** The wording for the reader of a walk, as its answers stand. */
export function wordingFor(
  checklist: Checklist,
  record: Pick<WalkRecord, 'sheet' | 'language' | 'audience' | 'units'>,
  escaping?: Reader['escape'],
): Wording {
  const { limits } = pathOf(checklist.index, record.sheet);
  const units = unitsOf(checklist, record.sheet, record.units);
  const { language, audience } = record;
  return createWording(textsOf(checklist), {
    language,
    audience,
    units,
    limits,
    ...(escaping ? { escape: escaping } : {}),
  });
}
