import { describe, expect, it } from 'vitest';
import type { Text } from '../../src/flow/schema/base.ts';
import { catalogueOf } from '../../src/wording/catalogue.ts';
import type { Audience, UnitSystem, Value, Values } from '../../src/wording/say.ts';
import { createWording } from '../../src/wording/wording.ts';
import { realProgramme } from '../support/programme.ts';

const { checklist } = realProgramme();
const { flow, index } = checklist;
const catalogue = catalogueOf(flow);
const texts = { catalogue, questions: index.questions };
const audiences: readonly Audience[] = ['resident', 'volunteer', 'trainee'];
const systems: readonly UnitSystem[] = ['imperial', 'metric'];

const side: Value = { sides: ['left'] };
const memberOf = (group: string): Value => ({ member: { group, key: 'x1', number: 1 } });
const links: Values = { e1: 'bark', e2: 'a shrub', e3: 'a window', e4: 'a curtain', e5: 'a bed' };
const perValues = (per: string): Values =>
  per === 'house'
    ? {}
    : per === 'side'
      ? { side, sides: side }
      : { side, sides: side, member: memberOf(per) };

/** The names between braces of a text. */
const namesIn = (text: string) => [...text.matchAll(/\{\s*(\w+)/g)].map((match) => match[1] ?? '');
const sentences = (text: Text) =>
  typeof text === 'string' ? [text] : Object.values(text).filter((one) => one !== undefined);

/** What may stand between braces in a text, by what it belongs to; the limits of the place may stand in all. */
function valuesFor(id: string, text: Text): Values {
  const [kind = '', part = ''] = id.split('/');
  if (kind === 'question') {
    const of = index.questions.get(part)?.of;
    return { sides: side, ...(of === undefined ? {} : { member: memberOf(of) }) };
  }
  if (kind === 'finding') return perValues(flow.findings.find((one) => one.id === part)?.per ?? 'house');
  if (kind === 'action') return perValues(flow.actions.find((one) => one.id === part)?.per ?? 'house');
  if (kind === 'way') return { ...links, side, sides: side };
  // Phrases are given what their own code gives them: here anything, so that only their grammar is held.
  if (flow.phrases[id] !== undefined)
    return Object.fromEntries(
      sentences(text)
        .flatMap(namesIn)
        .map((name) => [name, 3]),
    );
  return {};
}

describe('the texts of the real walk', () => {
  it('are many', () => {
    expect(catalogue.size).toBeGreaterThan(1_500);
  });

  it.each(audiences.flatMap((audience) => systems.map((units) => [audience, units] as const)))(
    'can be said to a %s in %s units, with nothing left between braces',
    (audience, units) => {
      for (const [place, limits] of index.limits) {
        const wording = createWording(texts, { language: 'en', audience, units, limits });
        for (const [id, text] of catalogue) {
          const said = wording.text(id, valuesFor(id, text));
          expect(said, `${place} ${id}`).not.toMatch(/[{}]|undefined|NaN|\[object/);
          expect(said.trim(), `${place} ${id}`).not.toBe('');
        }
      }
    },
  );

  it('say lengths of the rulebook in the units of the reader', () => {
    const limits = index.limits.get('general') ?? new Map();
    const said = (units: UnitSystem) =>
      createWording(texts, { language: 'en', audience: 'resident', units, limits }).text(
        'question/trees.lines/ask',
        { member: memberOf('trees') },
      );
    expect(said('imperial')).toContain('10 ft');
    expect(said('metric')).toMatch(/\b3(?:\.\d+)? m\b/);
  });

  it('write no length as a bare figure where the rulebook has it: what a place changes is changed everywhere', () => {
    const place = index.limits.get('tamber-county');
    const changed = [...(place?.values() ?? [])].filter((one) => one.rulebook === 'tamber-county');
    expect(changed.length).toBeGreaterThan(0);
    for (const { id } of changed) {
      const used =
        [...catalogue.values()].some((text) => sentences(text).some((one) => one.includes(`{${id}}`))) ||
        JSON.stringify([flow.findings, flow.elements, flow.questions, flow.actions]).includes(
          `"limit":"${id}"`,
        ) ||
        flow.actions.some((one) => one.rules.includes(id));
      expect(used, id).toBe(true);
    }
  });
});

describe('the limits of the general rulebook', () => {
  it('are each used: in a condition, in a text or as the rule behind a job', () => {
    const whole = JSON.stringify({ ...flow, rulebooks: [] });
    const unused = [...(index.limits.get('general')?.keys() ?? [])].filter(
      (id) =>
        !whole.includes(`{${id}}`) &&
        !whole.includes(`"limit":"${id}"`) &&
        !flow.actions.some((one) => one.rules.includes(id)),
    );
    // Read by the computations of a house, which work out how much vent is needed.
    const computed = ['ventAttic', 'ventAtticEased', 'ventUnder', 'ventUnderEased'];
    expect(unused.filter((id) => !computed.includes(id))).toEqual([]);
  });
});
