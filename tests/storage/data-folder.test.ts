import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dataFolderPath, prepareDataFolder } from '../../src/storage/data-folder.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'roofdown-home-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

describe('the data folder', () => {
  // XDG Base Directory Specification 0.8: unset or empty means ~/.local/share; paths must be absolute, others are ignored.
  it.each([
    [{}, '/home/r/.local/share/roofdown'],
    [{ XDG_DATA_HOME: '' }, '/home/r/.local/share/roofdown'],
    [{ XDG_DATA_HOME: 'relative/path' }, '/home/r/.local/share/roofdown'],
    [{ XDG_DATA_HOME: '/data' }, '/data/roofdown'],
  ])('with %j is %s', (env, expected) => {
    expect(dataFolderPath({ env, home: '/home/r' })).toBe(expected);
  });

  it('is made for nobody but the user, the file in it too', () => {
    const made = prepareDataFolder({ env: {}, home });
    if (made.kind !== 'ready') throw new Error(made.message);
    expect(statSync(made.folder).mode & 0o777).toBe(0o700);
    expect(statSync(made.databaseFile).mode & 0o777).toBe(0o600);
    expect(prepareDataFolder({ env: {}, home })).toEqual(made);
  });

  it('says what to do when it cannot be made', () => {
    writeFileSync(join(home, '.local'), 'a file where a folder should be');
    const made = prepareDataFolder({ env: {}, home });
    expect(made.kind).toBe('unusable');
    expect(made.kind === 'unusable' && made.message).toMatch(
      /Answers cannot be kept in .*roofdown.*XDG_DATA_HOME/,
    );
  });
});
