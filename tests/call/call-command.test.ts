import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../support/run-command.ts';

const folder = mkdtempSync(join(tmpdir(), 'roofdown-call-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const opened = ['no', 'at home', 'y', 'y', '555-0142', 'tamber county'];

describe('roofdown call', () => {
  it('says what to say, what to listen for and what to do if they cannot tell', async () => {
    const { code, out } = await runCommand(['call', '--for', 'the Quillan Bend Fire District'], opened);
    expect(code).toBe(0);
    expect(out).toContain('the Quillan Bend Fire');
    for (const words of ['Say: "', 'Listen for: ', "If they can't tell: ", 'It is kept in a file on my'])
      expect(out).toContain(words);
  });

  it('offers a dropped call again, with the number to call back and the notes, and takes new minutes', async () => {
    await runCommand(['call'], [...opened, 'note two dogs'], folder);
    const { out } = await runCommand(['call', '--minutes', '6'], ['yes'], folder);
    expect(out).toContain('Call back: 555-0142');
    expect(out).toContain('two dogs');
    expect(out).toContain('6 minutes in all');
  });

  it('closes with what to read out, the text and the page for the visit', async () => {
    const { code, out } = await runCommand(
      ['call', '--new'],
      [...opened, '1', 'roof covering: wood shake', 'finish', 'yes'],
      folder,
    );
    expect(code).toBe(0);
    for (const words of [
      'READ OUT: "Here is what',
      'Text to copy and send (',
      'Refer them to:',
      'Not asked: ',
    ])
      expect(out).toContain(words);
    const { out: list } = await runCommand(['walks', 'list'], [], folder);
    expect(list).not.toContain('0142');
  });

  it('ends with the order to leave, exit 3', async () => {
    const { code, out } = await runCommand(['call', '--new'], ['yes']);
    expect(code).toBe(3);
    expect(out).toContain('LEAVE NOW');
  });

  it.each(['0', '8.5', 'soon', '500'])('says what is wrong with --minutes %s', async (minutes) => {
    const { code, err } = await runCommand(['call', '--minutes', minutes]);
    expect(code).toBe(2);
    expect(err).toContain('Say whole minutes');
  });
});
