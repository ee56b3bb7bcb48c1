import { describe, expect, it } from 'vitest';
import { readServeSettings } from '../../src/commands/serve/read-settings.ts';
import { isLoopback } from '../../src/webhook/loopback.ts';
import { exampleSecret, openSettings, siteKey } from './test-site.ts';

describe('the settings of the server', () => {
  it('need nothing on this machine alone', () => {
    expect(readServeSettings({ HOME: '/root', ROOFDOWN_PORT: '' })).toMatchObject({
      ROOFDOWN_HOST: '127.0.0.1',
      ROOFDOWN_PORT: 8080,
      ROOFDOWN_KEEP_DAYS: 365,
    });
  });

  it('take the secrets of every channel', () => {
    expect(readServeSettings({ ...openSettings, ROOFDOWN_HOST: '0.0.0.0' }).ROOFDOWN_SECRET).toHaveLength(24);
  });

  it.each([
    [{ ROOFDOWN_HOST: '0.0.0.0' }, /ROOFDOWN_HOST is 0\.0\.0\.0.*ROOFDOWN_SECRET is needed/],
    [{ ROOFDOWN_HOST: '::' }, /ROOFDOWN_SECRET is needed/],
    [{ ROOFDOWN_HOST: 'roofdown.example.org' }, /ROOFDOWN_SECRET is needed/],
    [
      { ROOFDOWN_PUBLIC_URL: 'https://walks.example.org' },
      /others can reach this server, so ROOFDOWN_SECRET/,
    ],
    [{ ROOFDOWN_HOST: '0.0.0.0', ROOFDOWN_SECRET: exampleSecret }, /ROOFDOWN_KEY is needed/],
    [{ ROOFDOWN_SMS_TOKEN: 'x'.repeat(16), ROOFDOWN_KEY: siteKey }, /ROOFDOWN_PUBLIC_URL is needed/],
    [{ ROOFDOWN_DELIVER_TO: 'https://a.example.org' }, /go together/],
    [{ ROOFDOWN_DATABASE_URL: 'postgres://x', ROOFDOWN_DATABASE_FILE: 'x' }, /two stores/],
    [{ ROOFDOWN_PORT: '80a' }, /ROOFDOWN_PORT must be a whole number/],
    [{ ROOFDOWN_PORT: '70000' }, /ROOFDOWN_PORT must be at most 65535/],
    [{ ROOFDOWN_SECRET: 'hello' }, /ROOFDOWN_SECRET must be whsec_/],
    [{ ROOFDOWN_KEY: 'c2hvcnQ=' }, /ROOFDOWN_KEY must hold at least 32 bytes/],
    [{ ROOFDOWN_DATABASE_URL: 'mysql://x' }, /must start with postgres/],
    [{ ROOFDOWN_PUBLIC_URL: 'javascript:alert(1)' }, /must be an http or https address/],
    [{ ROOFDOWN_TELEGRAM_SECRET: 'short' }, /at least 16 characters/],
    [{ ROOFDOWN_LOG_LEVEL: 'loud' }, /ROOFDOWN_LOG_LEVEL/],
    [{ ROOFDOWN_PROT: '8080' }, /ROOFDOWN_PROT is not a setting/],
  ])('%j are refused with what to do', (env, message) => {
    expect(() => readServeSettings(env)).toThrow(message);
  });

  it('name every fault at once, and never the value of a secret', () => {
    const env = { ROOFDOWN_PORT: 'x', ROOFDOWN_SECRET: 'my-own-secret', ROOFDOWN_KEY: 'my-own-key!' };
    const read = () => readServeSettings(env);
    expect(read).toThrow(/ROOFDOWN_PORT[\s\S]*ROOFDOWN_KEY[\s\S]*ROOFDOWN_SECRET/u);
    expect(read).not.toThrow(/my-own/u);
  });

  it.each([
    ['127.0.0.1', true],
    ['127.8.8.8', true],
    ['::1', true],
    ['localhost', true],
    ['127.0.0.1.example.org', false],
    ['0.0.0.0', false],
    ['10.0.0.1', false],
    ['::', false],
  ])('know whether only this machine reaches %s', (host, loopback) =>
    expect(isLoopback(host)).toBe(loopback),
  );
});
