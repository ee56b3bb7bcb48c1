import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ServerStore } from '../../src/conversation/ports.ts';
import { walk } from '../storage/walks.ts';
import { post, type ServerProcess, serverStarter } from './server-process.ts';
import { jsonRequest, siteKey, testSite } from './test-site.ts';

/** A store as a server process and as this process open it. */
export interface CrashStore {
  readonly settings: Readonly<Record<string, string>>;
  readonly open: () => Promise<ServerStore>;
}

/**
 * Stops a server without warning at every step of a turn, then sends the same message again: the answer is there
 * exactly once, and each repetition gets the same reply.
 */
export function describeCrashes(name: string, prepare: (folder: string) => Promise<CrashStore>): void {
  describe(`a server on ${name} that is killed within a turn`, () => {
    let folder: string;
    let store: CrashStore;
    let start: (settings: Readonly<Record<string, string>>) => Promise<ServerProcess>;
    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'roofdown-killed-'));
      store = await prepare(folder);
      start = await serverStarter(folder);
    }, 60_000);
    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    /** One killed turn; whether the server lived to answer. */
    async function killAt(moment: 'before' | 'after', step: number): Promise<'killed' | 'answered'> {
      const server = await start(store.settings);
      const tag = `${moment}-${step}`;
      const begun = await post(server.port, '/walks', {}, `start-${tag}`);
      const path = `/walks/${begun.body.walk}/messages`;
      await server.arm(moment, step);
      const outcome = await post(server.port, path, { text: 'no' }, `m-${tag}`).then(
        () => 'answered' as const,
        () => 'killed' as const,
      );
      await server.end('SIGKILL');
      const opened = await store.open();
      const { webhook } = testSite({ ROOFDOWN_KEY: siteKey }, { store: opened });
      const again = async () => {
        const request = jsonRequest('POST', path, { text: 'no' }, { 'webhook-id': `m-${tag}` });
        return (await (await webhook.fetch(request)).json()) as Record<string, unknown>;
      };
      const first = await again();
      expect(first, tag).toMatchObject({ revision: 2, ask: { key: 'about.place' } });
      expect(await again(), tag).toEqual(first);
      await opened.close();
      return outcome;
    }

    /** One killed turn that takes a walk which waits under a code. */
    async function killTakingAt(moment: 'before' | 'after', step: number): Promise<'killed' | 'answered'> {
      const server = await start(store.settings);
      const tag = `take-${moment}-${step}`;
      const waiting = walk(`left-${tag}`, { sheet: { 'about.danger': { status: 'given', value: 'no' } } });
      const left = await post(
        server.port,
        '/hand-overs',
        { walk: waiting, to: 'caller', since: waiting.startedAt },
        `leave-${tag}`,
      );
      const { code } = left.body;
      await server.arm(moment, step);
      const outcome = await post(server.port, '/walks', { text: code }, `m-${tag}`).then(
        () => 'answered' as const,
        () => 'killed' as const,
      );
      await server.end('SIGKILL');
      const opened = await store.open();
      const { webhook } = testSite({ ROOFDOWN_KEY: siteKey }, { store: opened });
      const send = async (id: string) => {
        const request = jsonRequest('POST', '/walks', { text: code }, { 'webhook-id': id });
        return (await (await webhook.fetch(request)).json()) as Record<string, unknown>;
      };
      const first = await send(`m-${tag}`);
      expect(JSON.stringify(first), tag).toContain('The answer from your call is here');
      expect(await send(`m-${tag}`), tag).toEqual(first);
      expect(JSON.stringify(await send(`other-${tag}`)), tag).toContain('That code opens nothing');
      await opened.close();
      return outcome;
    }

    it.each([
      ['the answer', killAt],
      ['the walk that waited under a code', killTakingAt],
    ])(
      'has %s exactly once, wherever it was killed',
      async (_, kill) => {
        const outcomes: string[] = [];
        for (let step = 1; step < 40; step += 1) {
          outcomes.push(await kill('before', step));
          if (outcomes.at(-1) === 'answered') break;
        }
        expect(outcomes.at(-1)).toBe('answered');
        // Loading, begin, message, walk, commit and answer at least.
        expect(outcomes.filter((one) => one === 'killed').length).toBeGreaterThanOrEqual(6);
        // The commit was sent, and its end was not seen.
        const commit = outcomes.length - 2;
        expect(await kill('after', commit)).toBe('killed');
      },
      120_000,
    );
  });
}
