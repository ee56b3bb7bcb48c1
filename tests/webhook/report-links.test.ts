import { describe, expect, it } from 'vitest';
import type { WalkId } from '../../src/conversation/record.ts';
import { readReportToken, reportToken } from '../../src/webhook/report-link.ts';
import { talkOn } from './channel-contract.ts';

const key = Buffer.alloc(32, 1);
const walk = 'sms_abc' as WalkId;
const until = new Date('2026-06-19T16:00:00Z');
const before = new Date('2026-06-19T15:59:59Z');

describe('a link to a report', () => {
  it('opens one walk until its time is over', () => {
    const token = reportToken(key, walk, until);
    expect(readReportToken(key, token, before)).toBe(walk);
    expect(readReportToken(key, token, until)).toBe('over');
  });

  it('holds for no other walk, no later time and no other key', () => {
    const token = reportToken(key, walk, until);
    const [, time = '', signature = ''] = token.split('.');
    const later = reportToken(key, walk, new Date(until.getTime() + 86_400_000)).split('.')[1];
    for (const changed of [
      `sms_abd.${time}.${signature}`,
      `${walk}.${later}.${signature}`,
      `${walk}.${time}.${signature.slice(0, -1)}A`,
      `${walk}.${time}`,
      '',
      '../../etc/passwd',
    ])
      expect(readReportToken(key, changed, before), changed).toBeUndefined();
    expect(readReportToken(Buffer.alloc(32, 2), token, before)).toBeUndefined();
  });

  it('leads to a page that loads and runs nothing, and is gone with the walk', async () => {
    const talk = talkOn('sms');
    await talk.arrive();
    await talk.type('no');
    await talk.type('finish');
    const said = await talk.type('yes');
    const path = /(\/r\/[\w.-]+)/u.exec(said)?.[1] ?? '';
    const open = () => talk.webhook.fetch(new Request(`http://127.0.0.1${path}`));
    const page = await open();
    expect(page.status).toBe(200);
    expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(page.headers.get('referrer-policy')).toBe('no-referrer');
    expect(page.headers.get('cache-control')).toBe('no-store');
    expect(page.headers.get('x-content-type-options')).toBe('nosniff');
    expect(await page.text()).not.toMatch(/<script/iu);
    talk.clock.now = new Date(talk.clock.now.getTime() + 7 * 86_400_000);
    expect((await open()).status).toBe(410);
    talk.clock.now = new Date('2026-06-12T16:00:00Z');
    const [kept] = await talk.store.list();
    await talk.store.remove(kept?.id as WalkId);
    expect((await open()).status).toBe(404);
  });
});
