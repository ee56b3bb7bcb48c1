import { describe, expect, it } from 'vitest';
import { realProgramme } from '../support/programme.ts';

/**
 * Jobs that scrape, drill, cut or take off what may be painted, or dig where its flakes lie: rule of the United States on
 * renovation, 40 CFR 745, for houses from before 1978.
 */
const disturbing = [
  ...['fill-eave-gaps', 'enclose-eaves', 'metal-roof-edge', 'metal-gutters', 'clad-wall-above'],
  ...['seal-walls', 'mend-rot', 'metal-band', 're-clad-wall', 'lower-ground', 'take-down-vines'],
  ...['door-seal', 'solid-door', 'seal-frames', 'metal-screens', 'tempered-windows', 'garage-strip'],
  ...[
    'mesh-vents',
    'mesh-floor-vents',
    'listed-vents',
    'listed-floor-vents',
    'close-skirting',
    'sound-skirting',
  ],
  ...['screen-deck', 'rebuild-deck-strip', 'metal-fence-end', 'one-fence', 'harden-facing-side'],
  ...['close-shed', 'rebuild-shed', 'harden-outbuilding', 'move-shed', 'mend-cover', 'metal-cover'],
];

describe('jobs that disturb old paint', () => {
  const { flow } = realProgramme().checklist;

  it.each(disturbing)('%s warns of lead, also where the year is not known', (id) => {
    const action = flow.actions.find((one) => one.id === id);
    const when = action?.cautionsWhen.find(({ cautions }) => cautions.includes('lead-paint'));
    expect(when?.if).toMatchObject({
      question: 'about.year-built',
      below: { limit: 'leadYear' },
      whenUnknown: 'yes',
    });
  });

  it('say what lead work needs, once, in the caution', () => {
    const caution = flow.cautions.find(({ id }) => id === 'lead-paint');
    expect(String(caution?.say)).toMatch(/certified firm/);
  });
});
