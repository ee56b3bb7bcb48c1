import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTranscript, runTranscript, writeTranscript } from '../support/transcript.ts';

const folder = 'transcripts-demo';
const names = readdirSync(folder).filter((name) => name.endsWith('.md'));

describe('the demonstration transcripts', () => {
  it('are at least four', () => {
    expect(names.length).toBeGreaterThanOrEqual(4);
  });

  it.each(names)('%s is what the program says today', async (name) => {
    const path = join(folder, name);
    const text = readFileSync(path, 'utf8');
    const transcript = readTranscript(text);
    const today = writeTranscript(transcript, await runTranscript(transcript));
    if (process.env['UPDATE_TRANSCRIPTS']) writeFileSync(path, today);
    else expect(text).toBe(today);
  });

  it('stand in the README as they are', () => {
    const transcript = readFileSync(join(folder, '12-fernhollow-lane.md'), 'utf8').split('\n');
    const quoted = [...readFileSync('README.md', 'utf8').matchAll(/```text\n([\s\S]*?)```/g)].flatMap(
      (match) => match[1]?.split('\n') ?? [],
    );
    expect(quoted.length).toBeGreaterThan(20);
    expect(quoted.filter((line) => line !== '…' && !transcript.includes(line))).toEqual([]);
  });
});
