import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../support/run-command.ts';

const folder = mkdtempSync(join(tmpdir(), 'practise-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const fernhollow = 'tests/houses/fernhollow-lane-12.yaml';
const run = (argv: readonly string[], lines: readonly string[] = []) => runCommand(argv, lines, folder);

describe('practise', () => {
  it('keeps the session after every turn, and goes on where it stopped', async () => {
    const first = await run(
      ['practise', '--as', 'kept', '--house', '8'],
      ['go to the roof', 'I find bark mulch at the back'],
    );
    expect(first.out).toContain('Practice walk: house seed-8');
    expect(first.out).toContain('Start "roofdown practise" again');
    const second = await run(['practise', '--as', 'kept'], ['my findings']);
    expect(second.out).toContain('Welcome back');
    expect(second.out).toContain('Bark or wood chips lie within 5 ft of the house at the back.');
  });

  it('debriefs, brings the missed facts back as questions, and shows progress', async () => {
    const ended = await run(
      ['practise', '--as', 'first of all', '--house', fernhollow],
      ['go to the roof', 'done', 'yes'],
    );
    expect(ended.code).toBe(0);
    expect(ended.out).toContain('Debrief: house fernhollow-lane-12');
    expect(ended.out).toContain("(Cohen's kappa)");
    expect(ended.out).toMatch(/questions wait for you/);
    const asked = await run(['practise', 'questions', '--as', 'first of all'], ['not sure']);
    expect(asked.out).toContain('It is:');
    const progress = await run(['practise', 'progress', '--as', 'first of all']);
    expect(progress.out).toContain('2026-06-12, house fernhollow-lane-12: caught 0 of');
  });

  it('exports only with consent, and forgets on request', async () => {
    const none = await run(['practise', 'export']);
    expect(none.out.trim().split('\r\n')).toHaveLength(1);
    await run(['practise', 'consent', 'yes', '--as', 'first of all']);
    const some = await run(['practise', 'export']);
    expect(some.out).toContain('first of all,2026-06-12T16:00:00.000Z');
    await run(['practise', 'forget', '--as', 'first of all']);
    expect((await run(['practise', 'export'])).out).not.toContain('first of all');
  });

  it('ends with exit code 3 and the order to leave when the trainee is in danger', async () => {
    const danger = await run(['practise', '--as', 'danger', '--house', '2'], ['I see flames in my street']);
    expect(danger.code).toBe(3);
    expect(danger.out).toContain('LEAVE NOW');
    const back = await run(['practise', '--as', 'danger'], ['yes', 'where am I']);
    expect(back.out).toContain('are you safe now');
  });

  it("takes a supervisor's house and key, and says what is wrong with a key", async () => {
    const key = join(folder, 'key.yaml');
    writeFileSync(key, '- zone0.bark@front\n');
    const own = await run(['practise', '--as', 'own', '--house', fernhollow, '--key', key], ['done', 'yes']);
    expect(own.out).toContain('Of 1 finding at its place you caught 0.');
    writeFileSync(key, '- zone0.brk@front\n');
    const wrong = await run(['practise', '--as', 'own', '--house', fernhollow, '--key', key]);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('Did you mean "zone0.bark@front"?');
  });

  it.each([
    [['practise', '--level', 'impossible'], 'There is no level "impossible"'],
    [['practise', '--part', 'cellar'], 'There is no part "cellar"'],
    [['practise', '--place', 'atlantis'], 'There is no place "atlantis"'],
    [['practise', '--house', 'no-such-file.yaml'], 'There is no file'],
    [['practise', 'consent', 'perhaps'], 'Say "consent yes" or "consent no"'],
  ])('%j is a mistake that is said plainly', async (argv, message) => {
    const { code, err } = await run([...argv, '--as', 'mistake']);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });

  it('has help with an example for each command', async () => {
    expect((await run(['practise', '--help'])).out).toContain('roofdown practise --house 41 --level hard');
    expect((await run(['agree', '--help'])).out).toContain('roofdown agree mine.yaml yours.yaml');
  });
});

describe('agree', () => {
  it('shows where two walks differ, by stop, as text and as JSON', async () => {
    const other = join(folder, 'other.yaml');
    const { readFileSync } = await import('node:fs');
    writeFileSync(
      other,
      readFileSync(fernhollow, 'utf8').replace(
        '{ left: quarter, right: quarter }',
        '{ left: eighth, right: quarter }',
      ),
    );
    const text = await run(['agree', fernhollow, other]);
    expect(text.out).toContain('- Cover of the high vents, left: Whole metal mesh');
    expect(text.out).toContain('Only the first finds: High vents at the left have coarse mesh');
    const json = JSON.parse((await run(['agree', fernhollow, other, '--json'])).out) as {
      whole: { kind: string; kappa: number };
    };
    expect(json.whole.kind).toBe('kappa');
    expect(json.whole.kappa).toBeLessThan(1);
  });
});
