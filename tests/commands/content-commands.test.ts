import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFlow } from '../support/programme.ts';
import { runCommand } from '../support/run-command.ts';

describe('the commands about the content', () => {
  it('lists every question as JSON with id, stop, kind, options, unit and condition', async () => {
    const run = await runCommand(['questions', '--json']);
    const entries = JSON.parse(run.out) as Record<string, unknown>[];
    expect(entries.map((one) => one['id'])).toEqual(readFlow().questions.map((one) => one.id));
    for (const key of ['id', 'stop', 'kind', 'options', 'unit', 'when', 'where'])
      expect(entries[0]).toHaveProperty(key);
  });

  it('finds the flow files sound, and a broken folder not', async () => {
    expect((await runCommand(['check-flows'])).code).toBe(0);
    const broken = await runCommand(['check-flows', 'tests/flow/broken']);
    expect(broken.code).toBe(2);
    expect(broken.err).toMatch(/\.yaml:\d+:\d+/);
  });

  it.each(['flow', 'report'])('prints a JSON Schema of the %s', async (what) => {
    const schema = JSON.parse((await runCommand(['schema', what])).out) as Record<string, unknown>;
    expect(schema['type']).toBe('object');
  });

  it('draws the machine with every question', async () => {
    const { out } = await runCommand(['picture']);
    expect(out.startsWith('stateDiagram-v2')).toBe(true);
    for (const question of readFlow().questions) expect(out).toContain(question.id.replace(/[.-]/g, '_'));
  });

  it.each(['imperial', 'metric'])(
    'prints a sheet to carry outside in %s units, with every stop',
    async (units) => {
      const { out, code } = await runCommand(['sheet', '--units', units]);
      expect(code).toBe(0);
      for (const stop of readFlow().stops)
        expect(out).toContain(String(stop.title).replace(/\s*\(?[^(]*\{.*$/s, ''));
      expect(out).toMatch(units === 'imperial' ? /5 ft/ : /1\.5 m/);
    },
  );

  it('names its commands in the README', async () => {
    const readme = readFileSync('README.md', 'utf8');
    const help = (await runCommand(['--help'])).out;
    const commands = [...help.matchAll(/^ {2}([a-z-]+)(?: \[| <|\s{2,})/gm)].map((match) => match[1] ?? '');
    for (const command of commands.filter((one) => one !== 'help')) {
      expect(readme, command).toMatch(new RegExp(`(?:roofdown |\`)${command}\\b`));
    }
  });
});
