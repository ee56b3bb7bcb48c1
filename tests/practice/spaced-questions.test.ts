import { createEmptyCard, fsrs, Rating } from 'ts-fsrs';
import { describe, expect, it } from 'vitest';
import { newRound, questionTurn } from '../../src/practice/memory/question-turn.ts';
import { optionsInOrder, readCardAnswer } from '../../src/practice/memory/read-card-answer.ts';
import { dueCards, newMemory, reviewed, withMissed } from '../../src/practice/memory/schedule.ts';
import { realPractice } from './practice-for-tests.ts';

const start = new Date('2026-06-01T08:00:00Z');
const days = (count: number) => new Date(start.getTime() + count * 86_400_000);
const practice = realPractice();
const card = (id: string) => {
  const found = practice.content.cards.find((one) => one.id === id);
  if (!found) throw new Error(`no card ${id}`);
  return found;
};

describe('spaced questions', () => {
  it('come back when the scheduling library says so', () => {
    const scheduler = fsrs({ enable_fuzz: false });
    let theirs = createEmptyCard(start);
    let ours = newMemory(start);
    for (const [when, rating, recall] of [
      [start, Rating.Good, 'good'],
      [days(1), Rating.Good, 'good'],
      [days(6), Rating.Again, 'again'],
      [days(7), Rating.Hard, 'hard'],
    ] as const) {
      theirs = scheduler.next(theirs, when, rating).card;
      ours = reviewed(ours, when, recall);
      expect(ours.due).toBe(theirs.due.toISOString());
    }
  });

  it('are due in the order in which they fell due, ties by id', () => {
    const cards = {
      b: newMemory(days(2)),
      c: newMemory(days(1)),
      a: newMemory(days(2)),
      d: newMemory(days(9)),
    };
    expect(dueCards(cards, days(3))).toEqual(['c', 'a', 'b']);
  });

  it('come back later the better they are known, and soon after a miss', () => {
    let memory = newMemory(start);
    const gaps: number[] = [];
    let now = start;
    for (let times = 0; times < 6; times++) {
      memory = reviewed(memory, now, 'good');
      gaps.push(new Date(memory.due).getTime() - now.getTime());
      now = new Date(memory.due);
    }
    expect(gaps.toSorted((a, b) => a - b)).toEqual(gaps);
    const missed = withMissed({ mesh: memory }, ['mesh', 'lead'], now);
    expect(new Date(missed['mesh']?.due ?? 0).getTime() - now.getTime()).toBeLessThan(gaps.at(-1) ?? 0);
    expect(missed['lead']?.due).toBe(now.toISOString());
  });

  it.each([
    ['mesh', '1/8 in', true],
    ['mesh', 'an eighth of an inch', true],
    ['mesh', '1/4 inch', false],
    ['mesh', '3.2 mm', true],
    ['roof-tree', '5', true],
    ['roof-tree', '5 feet', true],
    ['roof-tree', '1.5 m', true],
    ['roof-tree', '10 ft', false],
    ['line-clear', '10 feet', true],
    ['line-clear', 'not sure', false],
    ['line-prune', 'the utility', true],
    ['line-prune', 'a gardener', false],
    ['dryer', 'a flap that shuts, and no screen', true],
    ['shrub-under-tree', '15 feet', true],
    ['shrub-under-tree', '5 feet', false],
    ['mesh', 'purple', undefined],
  ])('%s: "%s" is %s', (id, said, right) => {
    const shown = optionsInOrder(card(id), 0);
    expect(readCardAnswer(practice, card(id), shown, said)).toBe(right);
  });

  it('show the choices in another order each time', () => {
    const orders = new Set([0, 1, 2].map((times) => optionsInOrder(card('mulch'), times).join()));
    expect(orders.size).toBe(3);
    const firsts = practice.content.cards.filter(
      (one) => 'options' in one && optionsInOrder(one, 0)[0] === one.right,
    );
    const all = practice.content.cards.filter((one) => 'options' in one);
    expect(firsts.length / all.length).toBeLessThan(0.7);
  });

  it('go through what is due, keep each answer and end', () => {
    const cards = { mesh: newMemory(start), 'line-prune': newMemory(start) };
    let turned = questionTurn(practice, newRound(practice, cards, start), cards, { kind: 'hello' }, start);
    expect(turned.round.ids).toEqual(['line-prune', 'mesh']);
    turned = questionTurn(practice, turned.round, turned.cards, { kind: 'text', text: 'the utility' }, start);
    expect(turned.cards['line-prune']?.reps).toBe(1);
    turned = questionTurn(practice, turned.round, turned.cards, { kind: 'text', text: '1/4 in' }, start);
    expect(turned.round).toMatchObject({ phase: 'finished', right: 1, wrong: 1, ids: [] });
    expect(dueCards(turned.cards, start)).toEqual([]);
  });

  it('stop for an emergency of the trainee', () => {
    const cards = { mesh: newMemory(start) };
    const round = newRound(practice, cards, start);
    const turned = questionTurn(
      practice,
      round,
      cards,
      { kind: 'text', text: 'I see flames behind my house' },
      start,
    );
    expect(turned.round.phase).toBe('emergency');
    expect(turned.cards).toEqual(cards);
  });
});
