/** Computations of a house, in the order in which a report tells them. */
export const HOUSE_IDS = [
  'vents-attic',
  'vents-floor',
  'vents-flow',
  'slope-spread',
  'crown-gap',
  'shrub-gap',
  'limb-up',
  'limb-seasons',
  'shrub-under-tree',
  'heat-shrub-glass',
  'heat-shrub-wood',
  'heat-firewood-glass',
  'heat-firewood-wood',
  'heat-deck-glass',
  'heat-deck-wood',
  'heat-fence-glass',
  'heat-fence-wood',
  'heat-shed-glass',
  'heat-shed-wood',
  'heat-house-glass',
  'heat-house-wood',
  'zones',
  'gravel',
  'mesh-high',
  'mesh-roof',
  'mesh-floor',
  'eave-sealant',
  'garage-strip',
  'fence-end',
] as const;
export type HouseId = (typeof HOUSE_IDS)[number];

/** Numbers for conditions and costs: a computation, one of its values, and a unit where it is not the base unit. */
const NAMED = [
  'crown-gap.gap',
  'crown-gap.short',
  'shrub-gap.gap',
  'shrub-gap.short',
  'limb-up.branchHeight',
  'limb-up.short',
  'shrub-under-tree.short',
  'vents-attic.factor',
  'vents-floor.factor',
  'slope-spread.timesFaster',
  'gravel.covered.sqft',
  'mesh-high.order.sqft',
  'mesh-roof.order.sqft',
  'mesh-floor.order.sqft',
  'eave-sealant.cartridges',
  'fence-end.length.ft',
] as const;

/** Every id that a flow file may name where a computation is asked for. */
export const COMPUTED_IDS: readonly string[] = [...HOUSE_IDS, ...NAMED];
