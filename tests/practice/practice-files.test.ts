import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { limitOfCard } from '../../src/practice/memory/read-card-answer.ts';
import { practiceTexts } from '../../src/practice/practice-texts.ts';
import { realPractice } from './practice-for-tests.ts';

const { content } = realPractice();

describe('the practice files', () => {
  it('have a length behind every card that asks for a limit', () => {
    const limits = content.cards.filter((card) => 'limit' in card);
    expect(limits.length).toBeGreaterThan(5);
    for (const card of limits) expect(limitOfCard(realPractice(), card)?.dimension, card.id).toBe('length');
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
    const prefixes = ['practice.kappa', 'agree.kappa', 'practice.sight'];
    expect([...new Set(named)].filter((id) => !texts.has(id) && !prefixes.includes(id))).toEqual([]);
  });
});
