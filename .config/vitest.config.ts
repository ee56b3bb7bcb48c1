import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    env: { TZ: 'America/Phoenix', LANG: 'en_US.UTF-8', NO_COLOR: '1' },
    setupFiles: ['tests/support/fixed-seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: 'forks',
  },
});
