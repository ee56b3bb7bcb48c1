import { describe, expect, it } from 'vitest';
import { wordingFor } from '../../src/commands/wording-for.ts';
import { callText, mostParts } from '../../src/report/call-text.ts';
import { septetsOf } from '../../src/wording/gsm7.ts';
import { splitSms } from '../../src/wording/sms-parts.ts';
import { realProgramme } from '../support/programme.ts';

const { checklist } = realProgramme();
const wording = wordingFor(checklist, { sheet: {}, language: 'en', audience: 'volunteer' });

type Given = Parameters<typeof callText>[0];

function reportWith(jobs: readonly string[], authority = 'Quillan Bend Fire District'): Given {
  return { jobs: jobs.map((text) => ({ do: text })), rulebook: { authority } } as unknown as Given;
}

/** Septets as 3GPP TS 23.038 counts them: one for the basic table, two for the extension table. */
const septets = (text: string) => [...text].reduce((sum, one) => sum + (septetsOf(one) ?? Number.NaN), 0);

describe('the text after a call', () => {
  it('names the first three jobs, promises nothing and says whom to ask', () => {
    const { text, parts } = callText(
      reportWith(['Rake the leaves.', 'Mesh the vents.', 'Move the wood.', 'Mow.']),
      wording,
    );
    expect(text.split('\n')).toEqual([
      'Your house and wildfire, first:',
      '1. Rake the leaves',
      '2. Mesh the vents',
      '3. Move the wood',
      'No promise. Told to leave? Leave.',
      'Ask: Quillan Bend Fire District',
    ]);
    expect(parts).toBe(1);
  });

  it.each([1, 20, 60, 120, 400])(
    'takes at most three parts, however long its jobs are (%i words)',
    (words) => {
      const job = `Clear ${Array.from({ length: words }, () => 'everything').join(' ')}.`;
      const { text, parts } = callText(
        reportWith([job, job, job], 'The authority of a place with a very long name'),
        wording,
      );
      expect(parts).toBeLessThanOrEqual(mostParts);
      expect(parts).toBe(splitSms(text).length);
      expect(text).toContain('1. Clear');
      expect(text).toContain('Leave.');
      // 153 septets a part of a long message (3GPP TS 23.040 9.2.3.24.1).
      for (const part of splitSms(text)) expect(septets(part)).toBeLessThanOrEqual(parts === 1 ? 160 : 153);
    },
  );

  it('is written with characters of the basic table where jobs have others', () => {
    const { text } = callText(reportWith(['Fit 1/8 in mesh – “whole”, no wider than ½ in…']), wording);
    expect(septets(text)).not.toBeNaN();
    expect(text).toContain('1/2 in...');
  });

  it('says what every house should do where nothing stands out', () => {
    expect(callText(reportWith([]), wording).text).toContain('leaves off the roof');
  });
});
