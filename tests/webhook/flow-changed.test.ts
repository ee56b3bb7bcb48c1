import { describe, expect, it } from 'vitest';
import { buildProgramme } from '../../src/conversation/programme.ts';
import { createMemoryStore } from '../../src/storage/memory/memory-store.ts';
import { realProgramme } from '../support/programme.ts';
import { jsonRequest, type TestSite, testSite } from './test-site.ts';

/** The real flow with one question more, as a server that was brought up to date has it. */
function changedProgramme() {
  const { flow } = realProgramme().checklist;
  const at = flow.questions.findIndex((one) => one.id === 'about.place');
  const like = flow.questions.find((one) => one.kind === 'text' && one.stop === 'about');
  if (!like) throw new Error('the flow has no text question at the first stop');
  const { role: _, when: __, where: ___, ...rest } = like;
  const added = { ...rest, id: 'about.gate', ask: 'What is the gate called?', short: 'Gate' };
  const questions = [...flow.questions.slice(0, at + 1), added, ...flow.questions.slice(at + 1)];
  return buildProgramme({ ...flow, fingerprint: 'changed', questions } as typeof flow);
}

const say = async ({ webhook }: TestSite, walk: string, text: string) => {
  const response = await webhook.fetch(jsonRequest('POST', `/walks/${walk}/messages`, { text }));
  return (await response.json()) as { said: { lines: string[] }[]; ask: { key: string } | null };
};

describe('a walk on a server whose checklist was changed', () => {
  it('keeps every answer, is told what is new, once, and is asked it', async () => {
    const store = createMemoryStore();
    const before = testSite({}, { store });
    const start = await before.webhook.fetch(jsonRequest('POST', '/walks', {}));
    const { walk } = (await start.json()) as { walk: string };
    for (const text of ['no', 'california', 'detached', 'all', 'owner']) await say(before, walk, text);
    const kept = (await store.load(walk as never))?.sheet;

    const after = testSite({}, { store, programme: changedProgramme() });
    const first = await say(after, walk, 'where am i');
    expect(JSON.stringify(first.said)).toContain('brought up to date since you were here');
    const second = await say(after, walk, 'go to about the house');
    expect(JSON.stringify(second.said)).not.toContain('brought up to date');
    expect(second.ask?.key).toBe('about.gate');
    expect((await store.load(walk as never))?.sheet).toEqual(kept);
  });
});
