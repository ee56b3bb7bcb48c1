import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { optionIds } from '../../src/flow/checks/check-condition.ts';
import { limitOfCard } from '../../src/practice/memory/read-card-answer.ts';
import { practiceTexts } from '../../src/practice/practice-texts.ts';
import { temperNames } from '../../src/practice/schema/practice-file.ts';
import { realPractice } from './practice-for-tests.ts';

const { programme, content } = realPractice();
const { flow, index } = programme.checklist;
const { words, house, cards, phrases } = content;
const ids = (list: readonly { readonly id: string }[]) => new Set(list.map((one) => one.id));
const unknown = (list: Iterable<string>, known: ReadonlySet<string>) =>
  [...list].filter((id) => !known.has(id));
const sources = ids(flow.sources);
const findings = ids(flow.findings);
const actions = ids(flow.actions);
const cautions = ids(flow.cautions);
const questions = ids(flow.questions);
const stops = ids(flow.stops);

describe('the practice files', () => {
  it('name only what the flow has', () => {
    expect(unknown(Object.keys(words.questions), questions)).toEqual([]);
    expect(unknown(Object.keys(words.findings), findings)).toEqual([]);
    expect(unknown(Object.keys(words.actions), actions)).toEqual([]);
    expect(unknown(Object.keys(words.cautions), cautions)).toEqual([]);
    expect(unknown(words.askOnly, questions)).toEqual([]);
    expect(
      unknown(
        [...words.wrongAdvice, ...words.unsafe].map((one) => one.source),
        sources,
      ),
    ).toEqual([]);
    const limits = new Set(index.limits.get(flow.walk.generalRulebook)?.keys());
    expect(unknown(Object.keys(words.limits), limits)).toEqual([]);
  });

  it('make up houses of questions and options that exist', () => {
    expect(
      unknown(
        [...Object.keys(house.fixed), ...Object.keys(house.counts), ...Object.keys(house.near)],
        questions,
      ),
    ).toEqual([]);
    for (const { question, never } of house.consistent) {
      const asked = index.questions.get(question);
      const picks = (asked?.picks ?? []).map((pick) => String(pick.value));
      expect(unknown(never, new Set([...(asked ? optionIds(asked) : []), ...picks])), question).toEqual([]);
    }
    expect(
      unknown(
        house.sides.map((rule) => rule.question),
        questions,
      ),
    ).toEqual([]);
    expect(unknown([...house.distractors.map((one) => one.stop), ...house.alarmStops], stops)).toEqual([]);
    expect(
      unknown(
        house.distractors.flatMap((one) => one.looksLike ?? []),
        findings,
      ),
    ).toEqual([]);
  });

  it('have cards whose sources, limits, answers and occasions exist', () => {
    expect(new Set(cards.map((card) => card.id)).size).toBe(cards.length);
    const faults = new Set(
      [...words.wrongAdvice, ...words.unsafe]
        .map((one) => one.id)
        .concat('promise', 'alarm', 'danger', 'order', 'costly-first'),
    );
    for (const card of cards) {
      expect(sources.has(card.source), card.id).toBe(true);
      expect(unknown(card.for.findings, findings), card.id).toEqual([]);
      expect(unknown(card.for.actions, actions), card.id).toEqual([]);
      expect(unknown(card.for.cautions, cautions), card.id).toEqual([]);
      expect(unknown(card.for.faults, faults), card.id).toEqual([]);
      if ('limit' in card) expect(limitOfCard(realPractice(), card)?.dimension, card.id).toBe('length');
      else
        expect(
          card.options.map((option) => option.id),
          card.id,
        ).toContain(card.right);
    }
  });

  it('have a short name for each caution, words for each distractor, temper, unsafe act and wrong advice, and a risk for each stop', () => {
    const known = new Set(Object.keys(phrases));
    const needed = [
      ...flow.cautions.map((one) => `practice.caution/${one.id}`),
      ...house.distractors.map((one) => `practice.distractor/${one.id}`),
      ...temperNames.map((one) => `practice.opening.temper/${one}`),
      ...words.unsafe.map((one) => `practice.unsafe/${one.id}`),
      ...words.wrongAdvice.map((one) => `practice.wrong/${one.id}`),
      ...flow.stops.map((one) => `practice.risk/${one.id}`),
    ];
    expect(unknown(needed, known)).toEqual([]);
  });

  it('describe only options that exist', () => {
    for (const id of Object.keys(phrases).filter((one) => one.startsWith('practice.sight/'))) {
      const [, question = '', option = ''] = id.split('/');
      const asked = index.questions.get(question);
      expect(asked && optionIds(asked), id).toContain(option);
    }
  });

  it('have every phrase that the source names', () => {
    const folders = ['src/practice', 'src/commands/practice', 'src/commands'];
    const files = folders.flatMap((folder) =>
      readdirSync(folder, { recursive: folder !== 'src/commands', encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => join(folder, name)),
    );
    const named = files.flatMap((file) =>
      [...readFileSync(file, 'utf8').matchAll(/'((?:practice|agree)\.[a-z.-]+)'/g)].map(
        (match) => match[1] ?? '',
      ),
    );
    const texts = practiceTexts(content);
    const prefixes = ['practice.kappa', 'agree.kappa'];
    expect([...new Set(named)].filter((id) => !texts.has(id) && !prefixes.includes(id))).toEqual([]);
  });
});
