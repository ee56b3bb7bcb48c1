/** One example for each computation, as it is typed after its id. */
export const EXAMPLES: Readonly<Record<string, readonly string[]>> = {
  'vent-required': ['--ventedArea', '1,500 sq ft'],
  'vent-passes': ['--gross', '14 x 12 in', '--cover', 'mesh-eighth'],
  'vent-shortfall': ['--ventedArea', '1,500 sq ft', '--count', '4', '--grossEach', '2 sq ft'],
  'vent-remesh': ['--coverThen', 'mesh-sixteenth', '--ventedArea', '1,500 sq ft'],
  'weave-open-area': ['--meshPerInch', '8', '--wire', '0.017 in'],
  'screen-flow': ['--mesh-now', '4', '--mesh-then', '8'],
  'flame-height': ['--heatRelease', '500 kW', '--diameter', '3 ft'],
  'heat-point-source': ['--heatRelease', '750 kW', '--distance', '2.5 m'],
  'heat-emitted': ['--temperature', '830 C'],
  'heat-from-face': ['--width', '6 m', '--height', '3 m', '--distance', '7.5 m'],
  'heat-from-fire': ['--heatRelease', '4 MW', '--width', '5 ft', '--depth', '3 ft', '--distance', '6 ft'],
  'heat-from-thing': [
    ...['--thing', 'shrub', '--height', '5 ft', '--width', '4 ft'],
    ...['--distance', '6 ft', '--receiver', 'wall-wood'],
  ],
  slope: ['--rise', '4 ft', '--run', '10 ft'],
  'crown-gap': ['--slope', '30 %'],
  'shrub-gap': ['--slope', '10 %', '--shrubHeight', '4 ft'],
  'clearance-over-shrub': ['--shrubHeight', '5 ft'],
  'spread-uphill': ['--slope', '10 degrees'],
  'limb-up': ['--treeHeight', '40 ft'],
  'pruning-seasons': ['--treeHeight', '40 ft', '--branchNow', '2 ft'],
  'zone-areas': ['--outline', '40 x 30 ft', '--lot-left', '8 ft'],
  'zone-overlap': [
    ...['--outline', '40 x 30 ft', '--side', 'left', '--gap', '20 ft'],
    ...['--theirWidth', '40 ft', '--theirDepth', '30 ft'],
  ],
  gravel: ['--area', '500 sq ft', '--depth', '3 in'],
  mesh: ['--width', '14 in', '--height', '12 in', '--count', '6'],
  sealant: ['--length', '60 ft'],
  'weather-strip': ['--width', '16 ft', '--height', '7 ft'],
  paint: ['--area', '400 sq ft'],
  'fence-metal': ['--places', '2'],
};

/** An example as it is typed in a shell. */
export const exampleLine = (id: string): string =>
  [
    'roofdown work-out',
    id,
    ...(EXAMPLES[id] ?? []).map((word) => (/[^\w./-]/.test(word) ? `"${word}"` : word)),
  ].join(' ');
