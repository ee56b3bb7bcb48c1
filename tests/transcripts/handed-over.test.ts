import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readHandedOver, runHandedOver } from '../support/handed-over.ts';

const folder = join('transcripts-demo', 'handed-over');

describe('the demonstration of a call that is handed over', () => {
  it.each(readdirSync(folder))('%s is what the program says today', async (name) => {
    const path = join(folder, name);
    const text = readFileSync(path, 'utf8');
    const today = await runHandedOver(readHandedOver(text));
    if (process.env['UPDATE_TRANSCRIPTS']) writeFileSync(path, today);
    else expect(text).toBe(today);
  });

  it('gives a code in the call that opens the walk by text message', () => {
    for (const name of readdirSync(folder)) {
      const { texted } = readHandedOver(readFileSync(join(folder, name), 'utf8'));
      const [, said = '', , chat = ''] = readFileSync(join(folder, name), 'utf8').split(/```(?:text)?\n/);
      const code = /Code: ([\d-]{14})/.exec(said)?.[1];
      expect(texted).toContain(code);
      expect(chat).toContain('from your call are here');
    }
  });
});
