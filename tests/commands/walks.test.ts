import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../support/run-command.ts';
import { readTranscript } from '../support/transcript.ts';

const typed = (name: string) => readTranscript(readFileSync(`transcripts-demo/${name}.md`, 'utf8')).typed;
const folder = () => mkdtempSync(join(tmpdir(), 'roofdown-'));

async function finished(): Promise<string> {
  const data = folder();
  await runCommand(['walk', '--plain'], typed('41-larkspur-way'), data);
  return data;
}

describe('walks kept on this machine', () => {
  it('lists, shows, exports and deletes a walk', async () => {
    const data = await finished();
    const list = await runCommand(['walks', 'list'], [], data);
    expect(list.out).toContain('41 Larkspur Way');
    const id = list.out.slice(0, 8);
    expect((await runCommand(['walks', 'show', id], [], data)).out).toContain('nothing costly is needed');
    const refused = await runCommand(['walks', 'delete', id], [], data);
    expect(refused.code).toBe(2);
    expect((await runCommand(['walks', 'list'], [], data)).out).toContain(id);
    expect((await runCommand(['walks', 'delete', id, '--yes'], [], data)).code).toBe(0);
    expect((await runCommand(['walks', 'list'], [], data)).out).toContain('No walk is kept');
  });

  it('exports answers that give the same report headless as the walk itself', async () => {
    const data = await finished();
    const id = (await runCommand(['walks'], [], data)).out.slice(0, 8);
    const exported = join(folder(), 'house.yaml');
    writeFileSync(exported, (await runCommand(['walks', 'export', id], [], data)).out);
    const shown = JSON.parse((await runCommand(['walks', 'show', id, '--format', 'json'], [], data)).out);
    const headless = JSON.parse((await runCommand(['walk', '--answers', exported, '--format', 'json'])).out);
    expect({ ...headless, walk: { ...headless.walk, id: shown.walk.id }, answers: null }).toEqual({
      ...shown,
      answers: null,
    });
  });
});

describe('a walk that was left', () => {
  it('is offered again, goes on where it stopped, and gives the same report as one in a single sitting', async () => {
    // Without the last line: it answers the question about money, which is asked once the walk is finished.
    const lines = typed('41-larkspur-way').slice(0, -1);
    const data = folder();
    for (let from = 0; from < lines.length; from += 9) {
      const part = lines.slice(from, from + 9);
      const run = await runCommand(['walk', '--plain'], from === 0 ? part : ['yes', ...part], data);
      expect(run.code).toBe(0);
      if (from > 0) expect(run.out).toContain('A walk is not finished');
    }
    const show = async (place: string) => {
      const id = (await runCommand(['walks'], [], place)).out.slice(0, 8);
      const report = JSON.parse((await runCommand(['walks', 'show', id, '--format', 'json'], [], place)).out);
      return { ...report, walk: { ...report.walk, id: null } };
    };
    expect(await show(data)).toEqual(await show(await finished()));
  });

  it('is kept when the person begins a new one', async () => {
    const data = folder();
    await runCommand(['walk', '--plain'], ['no', 'tamber county'], data);
    const run = await runCommand(['walk', '--plain', '--new'], ['no'], data);
    expect(run.out).toContain('This walk goes round one house');
  });

  it('stops for an emergency even at the offer to go on', async () => {
    const data = folder();
    await runCommand(['walk', '--plain'], ['no', 'tamber county'], data);
    const run = await runCommand(['walk', '--plain'], ['I see flames behind the house'], data);
    expect(run.out).toContain('LEAVE NOW');
    expect(run.code).toBe(3);
    const again = await runCommand(['walk', '--plain'], ['yes', 'yes'], data);
    expect(again.out).toContain('are you safe now');
  });
});
