/** Help text of the notes that results carry by id; the wording of a report may replace it. */
export const NOTES = {
  'local-code-decides': 'Local code and the local fire authority decide.',
  'printed-area-wins': 'A net free area printed on the vent wins over the table.',
  'half-high-half-low': 'Half of the area belongs high (ridge, gable), half low (eaves).',
  'remesh-add-or-listed':
    'Re-mesh these and add the missing area, or choose a vent listed for embers and flame.',
  'rounded-up': 'Whole pieces are always rounded up.',
  'mesh-stops-embers-only': 'Mesh holds back embers; it does not stop flame.',
  'fine-mesh-clogs': 'Fine mesh clogs with dust and paint: clean it.',
  'appliance-air-first': 'First make sure that no gas appliance draws its air from this space.',
  'embers-ignore-it': 'Embers do not obey this: it is about heat from flame alone.',
  'never-safe-distance': 'This is an estimate to compare with, never a safe distance.',
  'threshold-from-memory': 'The threshold is from memory, so no distance is worked out from it.',
  'tested-no-threshold': 'The glass was tested to this heat and did not break; that is no limit.',
  'flares-only': 'It flares and is over soon: the threshold for long heat is for comparison only.',
  'fence-in-part': 'A clean fence by itself burns a few feet at a time: give the part that burns at once.',
  'stricter-wins': 'The longest of the worked out, customary and code distances is the one to keep.',
  'still-air': 'Still air: wind leans flames towards the house and lengthens their reach.',
  'receiver-mid-flame': 'The weak spot is taken opposite the middle of the flame, where it is hottest.',
  'near-by-too-high': 'A point source gives too much heat close to the flame.',
  'boundary-steeper': 'The slope lies on the boundary of two classes; the steeper one was taken.',
  'edge-to-edge': 'Gaps are from edge to edge, not from trunk to trunk.',
  'shrub-usually-goes': 'Limbing that high takes too much of the tree: usually the shrub goes instead.',
  'no-more-than-quarter':
    'At most a quarter of the foliage in a season; a ceiling, ask an arborist. Never top.',
  'upslope-only': 'This holds uphill; wind, fuel and the shape of the land are left out.',
  'lot-lines-straight': 'Lot lines are taken as straight and parallel to the sides of the house.',
  'corner-on-both-sides': 'Ground past a corner of the lot counts on both sides, but once in the total.',
  'ask-the-neighbour': "Nobody may clear another's land without consent: work together.",
  'line-caps-duty': 'A lot line limits the duty, not the fire.',
  'not-bark': 'Stone only; keep 6 in between the ground and the siding.',
  'keep-drains-open': 'Never fill what must drain or breathe.',
  'paint-no-fire-protection': 'Paint keeps wood sound; it is no fire protection.',
  'buried-services': 'Have buried services marked before setting posts.',
} as const satisfies Record<string, string>;

/** Id of a note. */
export type NoteId = keyof typeof NOTES;
