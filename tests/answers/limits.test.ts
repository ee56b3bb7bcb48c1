import { describe, expect, it } from 'vitest';
import { indexFlow } from '../../src/answers/flow-index.ts';
import { limitsOf } from '../../src/answers/limits.ts';
import { layOutPath } from '../../src/answers/path.ts';
import { realProgramme } from '../support/programme.ts';
import { smallFlow } from '../support/small-flow.ts';

const flow = smallFlow();

describe('the limits of a place', () => {
  it('are the general ones where no place is chosen', () => {
    expect(limitsOf(flow, 'general').get('gapMax')).toMatchObject({
      value: 0.003175,
      dimension: 'length',
      rulebook: 'general',
    });
    expect(limitsOf(flow, 'nowhere').get('gapMax')).toMatchObject({ rulebook: 'general' });
  });

  it('lie over the general ones, and say who sets them', () => {
    expect(limitsOf(flow, 'hillside').get('gapMax')).toMatchObject({ value: 0.002, rulebook: 'hillside' });
  });

  it('lie over those of the place under them, which lie over the general ones', () => {
    const three = smallFlow((file, text) => {
      if (file === 'rulebook-general.yaml')
        return text.replace(
          '  limits:\n',
          '  limits:\n    away: { value: 30 ft, what: away, source: handbook }\n    steep: { value: 20 %, what: steep, source: handbook }\n',
        );
      if (file === 'rulebook-hillside.yaml')
        return text.replace(
          '  limits:\n',
          '  limits:\n    away: { value: 40 ft, what: away, source: handbook }\n',
        );
      return text;
    });
    const top = {
      ...three.rulebooks[1],
      id: 'top',
      over: 'hillside',
      limits: { steep: { value: '15 %', what: 'steep', source: 'handbook' } },
    };
    const stacked = { ...three, rulebooks: [...three.rulebooks, top as (typeof three.rulebooks)[number]] };
    const limits = limitsOf(stacked, 'top');
    expect([...limits.values()].map(({ id, rulebook }) => [id, rulebook]).sort()).toEqual([
      ['away', 'hillside'],
      ['gapMax', 'hillside'],
      ['steep', 'top'],
    ]);
    expect(limits.get('steep')).toMatchObject({ value: 15, dimension: 'slope' });
  });

  it('follow from the answer about the place', () => {
    const index = indexFlow(flow);
    const at = (value: string) => layOutPath(index, { 'about.place': { status: 'given', value } });
    expect(at('hillside').limits.get('gapMax')?.value).toBe(0.002);
    expect(at('general').limits.get('gapMax')?.value).toBe(0.003175);
    expect(layOutPath(index, { 'about.place': { status: 'notSure' } }).rulebook).toBe('general');
    expect(at('a place that was taken out').rulebook).toBe('general');
  });

  it('of every real rulebook are those of the general one and no others, each with a value', () => {
    const { checklist } = realProgramme();
    const names = [...(checklist.index.limits.get('general')?.keys() ?? [])];
    for (const [place, limits] of checklist.index.limits) {
      expect([...limits.keys()], place).toEqual(names);
      for (const { id, value, dimension } of limits.values()) {
        expect(Number.isNaN(value), `${place} ${id}`).toBe(false);
        expect(dimension, `${place} ${id}`).toBe(checklist.index.limits.get('general')?.get(id)?.dimension);
      }
    }
  });
});
