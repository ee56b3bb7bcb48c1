/**
 * What studies found to matter more, as orders of jobs on houses made for them (tests/planning/houses). Written down
 * before any weight was set by them. A study says which way the order goes, never how far apart the two are.
 */
export interface PublishedOrder {
  readonly house: string;
  readonly study: string;
  /** What the study found, in our words, and how well it is known. */
  readonly claim: string;
  /**
   * `alone`: what the jobs take off when nothing else is done, as in a comparison of houses with and without.
   * `list`: their places in the list, where cheap jobs are counted as done first.
   */
  readonly by: 'alone' | 'list';
  /** Each of these, with all its places, comes before each of `after`. */
  readonly before: readonly string[];
  readonly after: readonly string[];
}

const closedEaves = 'enclose-eaves';

export const publishedOrders: readonly PublishedOrder[] = [
  {
    house: 'eaves-vents-windows',
    study: 'Syphard & Keeley 2019, factors in more than 40,000 exposed structures, California (read)',
    claim:
      'enclosed eaves, vent screens and multi-pane windows differed most consistently, before siding and distant clearing',
    by: 'alone',
    before: [closedEaves, 'mesh-vents', 'tempered-windows'],
    after: ['re-clad-wall', 'thin-far'],
  },
  {
    house: 'parallel-fence',
    study: 'NIST TN 2228, 187 burns of fences and mulch (read)',
    claim: 'two fences side by side are out of proportion worse than one clean fence',
    by: 'alone',
    before: ['metal-fence-end@left', 'one-fence@left'],
    after: ['metal-fence-end@right'],
  },
  {
    house: 'fence-with-fuel',
    study: 'NIST TN 2228, 187 burns of fences and mulch (read)',
    claim:
      'a fence with mulch or litter at its foot is out of proportion worse than a clean one, which burns slowly',
    by: 'alone',
    before: ['clear-fence-base@left', 'metal-fence-end@left'],
    after: ['metal-fence-end@right'],
  },
  {
    house: 'near-and-far-fuel',
    study: 'Syphard and others 2014, defensible space and structures lost, San Diego County (read)',
    claim:
      'treatment at 5-20 m works best and nothing is gained beyond 30 m; plants touching the house counted',
    by: 'list',
    before: ['take-out-shrubs', 'make-islands'],
    after: ['thin-far'],
  },
  {
    house: 'near-and-far-fuel-steep',
    study: 'Syphard and others 2014, defensible space and structures lost, San Diego County (read)',
    claim: 'the same on slopes',
    by: 'list',
    before: ['take-out-shrubs', 'make-islands'],
    after: ['thin-far'],
  },
  {
    house: 'near-and-far-fuel',
    study: 'Gibbons and others 2012, houses lost in the 2009 fires in Victoria (read)',
    claim: 'fuel changed close to the house does more than fuel changed farther out',
    by: 'alone',
    before: ['take-out-shrubs', 'make-islands'],
    after: ['thin-far'],
  },
  {
    house: 'shed-at-the-wall',
    study: 'NIST TN 2235 and the hazard method built on it (reported)',
    claim: 'with a shed too near, hardening the house does not pay: the shed goes first',
    by: 'list',
    before: ['move-shed'],
    after: ['re-clad-wall', 'tempered-windows', 'listed-vents'],
  },
  {
    house: 'firewood-and-furniture',
    study: 'NIST, 62 burns of firewood piles (read)',
    claim:
      'a pile was a high hazard in nearly all burns, out to 24 ft; at the wall it goes before lesser things',
    by: 'list',
    before: ['move-firewood'],
    after: ['move-things'],
  },
];

/** The six weaknesses of California Civil Code 1102.6f (reported), and the jobs of which one has to stand in the list. */
export const sixWeaknesses: readonly {
  readonly weakness: string;
  readonly house: string;
  readonly jobs: readonly string[];
}[] = [
  {
    weakness: 'vents with openings over 1/8 in',
    house: 'six-weaknesses-shake',
    jobs: ['mesh-vents', 'listed-vents'],
  },
  { weakness: 'untreated wood shingle or shake roof', house: 'six-weaknesses-shake', jobs: ['new-roof'] },
  {
    weakness: 'combustible landscaping within 5 ft',
    house: 'six-weaknesses-shake',
    jobs: ['take-out-shrubs'],
  },
  {
    weakness: 'combustible landscaping within 5 ft: mulch',
    house: 'six-weaknesses-shake',
    jobs: ['take-out-mulch'],
  },
  {
    weakness: 'what burns under an attached deck',
    house: 'six-weaknesses-shake',
    jobs: ['empty-under-deck'],
  },
  {
    weakness: 'single-pane or non-tempered windows',
    house: 'six-weaknesses-shake',
    jobs: ['tempered-windows'],
  },
  {
    weakness: 'loose or missing bird-stopping or flashing',
    house: 'six-weaknesses-tile',
    jobs: ['close-roof-ends'],
  },
  {
    weakness: 'gutters without noncombustible covers',
    house: 'six-weaknesses-tile',
    jobs: ['gutter-guards'],
  },
];
