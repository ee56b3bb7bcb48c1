import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { SOURCE_STATUS, statusOf } from '../../../src/computations/tables/source-status.ts';

const folder = 'flows/sources';
const listed: { id: string; status: string }[] = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .flatMap((name) => parse(readFileSync(`${folder}/${name}`, 'utf8')).sources);

describe('sources of the computations', () => {
  it.each(Object.entries(SOURCE_STATUS))('lists %s as %s in the source files too', (id, status) => {
    expect(listed.filter((source) => source.id === id).map((source) => source.status)).toEqual([status]);
  });

  it('takes the weakest status of several', () => {
    expect(statusOf(['bre-187', 'irc-r806'])).toBe('reported');
    expect(statusOf(['bre-187', 'trade-practice'])).toBe('practice');
    expect(statusOf(['bre-187', 'glazing-crack-memory', 'trade-practice'])).toBe('memory');
  });
});
