import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { newProgress } from '../../../src/practice/progress.ts';
import { createProgressStore } from '../../../src/storage/practice/progress-store.ts';

let folder = '';
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'progress-')), 'practice');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const saved = (trainee: string, revision = 1) => ({ ...newProgress(trainee), revision });

describe('the progress of trainees', () => {
  it('is nothing before the first save, and the same after it', async () => {
    const store = createProgressStore(folder);
    expect(await store.load('the trainee')).toBeUndefined();
    expect(await store.list()).toEqual([]);
    expect(await store.save(saved('the trainee'))).toBe('saved');
    expect(await createProgressStore(folder).load('the trainee')).toEqual(saved('the trainee'));
  });

  it('is kept apart for each trainee, whatever they are called', async () => {
    const store = createProgressStore(folder);
    const names = ['a/b', 'A B', 'a b', '../../up', 'é', '..', 'con'];
    for (const name of names) await store.save(saved(name));
    expect((await store.list()).map((progress) => progress.trainee).sort()).toEqual([...names].sort());
    expect(readdirSync(folder)).toHaveLength(names.length);
  });

  it('is not overwritten by a program that did not see the last save', async () => {
    const store = createProgressStore(folder);
    await store.save(saved('x', 1));
    await store.save(saved('x', 2));
    expect(await store.save({ ...saved('x', 2), consent: true })).toBe('conflict');
    expect((await store.load('x'))?.consent).toBe(false);
  });

  it('is readable by nobody else, and leaves no half-written file', async () => {
    const store = createProgressStore(folder);
    await store.save(saved('x'));
    const [name = ''] = readdirSync(folder);
    expect(readdirSync(folder)).toEqual([name]);
    expect(name).toMatch(/\.json$/);
    expect(statSync(join(folder, name)).mode & 0o077).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, name), 'utf8'))).toEqual(saved('x'));
  });

  it('says which file cannot be read, and touches it not', async () => {
    const store = createProgressStore(folder);
    await store.save(saved('x'));
    const path = join(folder, readdirSync(folder)[0] ?? '');
    writeFileSync(path, '{"version": 1');
    await expect(store.load('x')).rejects.toThrow(path);
    await expect(store.save(saved('x'))).rejects.toThrow(path);
    expect(readFileSync(path, 'utf8')).toBe('{"version": 1');
  });

  it('can be removed', async () => {
    const store = createProgressStore(folder);
    await store.save(saved('x'));
    expect([await store.remove('x'), await store.remove('x')]).toEqual([true, false]);
  });
});
