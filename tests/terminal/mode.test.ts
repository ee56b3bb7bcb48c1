import { describe, expect, it } from 'vitest';
import { chooseTerminalMode, type TerminalFacts } from '../../src/terminal/mode.ts';

const bothEnds = { stdinIsTTY: true, stdoutIsTTY: true, env: { TERM: 'xterm-256color' }, flags: {} };

const table: readonly (readonly [string, Partial<TerminalFacts>, 'interactive' | 'plain'])[] = [
  ['both ends a terminal', {}, 'interactive'],
  ['input from a pipe', { stdinIsTTY: false }, 'plain'],
  ['output to a pipe', { stdoutIsTTY: false }, 'plain'],
  ['neither end a terminal', { stdinIsTTY: false, stdoutIsTTY: false }, 'plain'],
  ['CI=true', { env: { CI: 'true' } }, 'plain'],
  ['CI=1', { env: { CI: '1' } }, 'plain'],
  ['CI=woodpecker', { env: { CI: 'woodpecker' } }, 'plain'],
  ['CI empty', { env: { CI: '' } }, 'interactive'],
  ['CI=false', { env: { CI: 'false' } }, 'interactive'],
  ['CI=0', { env: { CI: '0' } }, 'interactive'],
  ['CONTINUOUS_INTEGRATION=true', { env: { CONTINUOUS_INTEGRATION: 'true' } }, 'plain'],
  ['TERM=dumb', { env: { TERM: 'dumb' } }, 'plain'],
  ['TERM unset', { env: {} }, 'interactive'],
  ['ACCESSIBLE=1', { env: { ACCESSIBLE: '1' } }, 'plain'],
  ['ACCESSIBLE=0', { env: { ACCESSIBLE: '0' } }, 'interactive'],
  ['--plain', { flags: { plain: true } }, 'plain'],
  ['NO_COLOR, which is about colour only', { env: { NO_COLOR: '1' } }, 'interactive'],
];

describe('the mode of the terminal', () => {
  it.each(table)('with %s', (_, facts, expected) => {
    expect(chooseTerminalMode({ ...bothEnds, ...facts })).toBe(expected);
  });

  it('is interactive only when nothing at all speaks against it', () => {
    const against: readonly Partial<TerminalFacts>[] = [
      { stdinIsTTY: false },
      { stdoutIsTTY: false },
      { env: { CI: '1' } },
      { env: { TERM: 'dumb' } },
      { env: { ACCESSIBLE: '1' } },
      { flags: { plain: true } },
    ];
    for (let mask = 0; mask < 2 ** against.length; mask += 1) {
      const facts = against.filter((_, bit) => (mask >> bit) & 1);
      const env = Object.assign({}, ...facts.map((one) => one.env ?? {}));
      const mode = chooseTerminalMode(Object.assign({}, bothEnds, ...facts, { env }));
      expect(mode, JSON.stringify(facts)).toBe(mask === 0 ? 'interactive' : 'plain');
    }
  });
});
