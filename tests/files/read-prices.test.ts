import { describe, expect, it } from 'vitest';
import { readPrices } from '../../src/files/read-prices.ts';
import { sayProblem } from '../../src/flow/problem.ts';
import { withPrices } from '../../src/planning/prices.ts';
import { readFlow } from '../support/programme.ts';

const flow = readFlow();
const read = (text: string) => readPrices(flow, 'prices.yaml', text);
const faults = (text: string) => read(text).problems?.map(sayProblem) ?? [];

describe('a price list of one’s own', () => {
  it('goes over the list line by line, as YAML or JSON', () => {
    for (const text of [
      'year: 2027\nprices:\n  gravel: 1.2\n  mesh: { low: 3, high: 6 }\n',
      '{"year": 2027, "prices": {"gravel": 1.2, "mesh": {"low": 3, "high": 6}}}',
    ]) {
      const { prices } = read(text);
      if (!prices) throw new Error(faults(text).join('\n'));
      const { costs } = withPrices(flow, prices);
      const line = (id: string) => costs.find((one) => one.id === id);
      expect(line('gravel')).toMatchObject({
        low: 1.2,
        high: 1.2,
        year: 2027,
        source: 'own-prices',
        currency: 'USD',
      });
      expect(line('mesh')).toMatchObject({ low: 3, high: 6, source: 'own-prices' });
      expect(line('sealant')).toEqual(flow.costs.find((one) => one.id === 'sealant'));
      expect(costs.length).toBe(flow.costs.length);
    }
    expect(flow.sources.some((one) => one.id === 'own-prices')).toBe(true);
  });

  it('takes lines that it does not name over into its own currency', () => {
    const { prices } = read('currency: CAD\nrate: 1.4\nprices:\n  gravel: 2\n');
    if (!prices) throw new Error('not read');
    const { costs } = withPrices(flow, prices);
    const sealant = flow.costs.find((one) => one.id === 'sealant');
    expect(costs.every((one) => one.currency === 'CAD')).toBe(true);
    expect(costs.find((one) => one.id === 'gravel')?.high).toBe(2);
    expect(costs.find((one) => one.id === 'sealant')?.high).toBeCloseTo(1.4 * (sealant?.high ?? 0), 9);
  });

  it.each([
    [
      'prices:\n  gravle: 2\n',
      'prices.yaml:2:3 prices.gravle: there is no price line "gravle". Did you mean "gravel"?',
    ],
    [
      'prices:\n  gravel: cheap\n',
      'prices.yaml:2:3 prices.gravel: a price is a number, or { low: …, high: … }.',
    ],
    ['prices:\n  gravel: { low: 5, high: 2 }\n', 'prices.yaml:2:3 prices.gravel: low (5) is above high (2).'],
    [
      'prices:\n  gravel: { low: 5, hihg: 7 }\n',
      'prices.yaml:2:21 prices.gravel.hihg: "hihg" is not known here. Did you mean "high"?',
    ],
    ['price:\n  gravel: 2\n', 'prices.yaml:1:1 price: "price" is not known here. Did you mean "prices"?'],
    [
      'currency: dollars\nprices: {}\n',
      'prices.yaml:1:1 currency: a currency has three capital letters, such as USD.',
    ],
    [
      'currency: CAD\nprices:\n  gravel: 2\n',
      'prices.yaml:1:1 currency: lines that you do not name are in USD: say under "rate" what 1 USD costs in CAD.',
    ],
    ['rate: 2\nprices:\n  gravel: 2\n', 'prices.yaml:1:1 rate: a rate goes with another currency than USD.'],
    ['year: soon\nprices: {}\n', 'prices.yaml:1:1 year: a year is a whole number.'],
    [
      '- gravel\n',
      'prices.yaml:1:1 a price list starts with "prices:", and below it lines such as "gravel: 1.20".',
    ],
  ])('says where and what is wrong in %j', (text, fault) => {
    expect(faults(text)).toContain(fault);
  });

  it('never makes a list out of a file with a fault', () => {
    expect(read('prices:\n  gravel: 2\n  mehs: 3\n').prices).toBeUndefined();
    expect(faults('prices: [1, 2\n')[0]).toMatch(/^prices\.yaml:\d+:\d+ /);
  });
});
