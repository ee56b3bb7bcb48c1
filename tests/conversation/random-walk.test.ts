import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isOpen, pathOf } from '../../src/answers/path.ts';
import { assess } from '../../src/assess/assess.ts';
import type { Message, Reply } from '../../src/conversation/message.ts';
import { newWalk } from '../../src/conversation/new-walk.ts';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';
import { takeTurn } from '../../src/conversation/turn.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { answersAsYaml } from '../../src/files/write-answers.ts';
import { realProgramme } from '../support/programme.ts';
import { oneOf, type Random, seededRandom } from '../support/random-answers.ts';
import { otherTalk, sayAnswer } from '../support/random-talk.ts';

const programme = realProgramme();
const { checklist } = programme;
const day = new Date('2026-06-12T16:00:00Z');
const fresh = () => newWalk(programme, 'walk-1' as WalkId, day);

interface Walked {
  readonly record: WalkRecord;
  readonly messages: readonly Message[];
  readonly replies: readonly Reply[];
}

/** What is said next: mostly an answer; else anything a person may say, a late press, a pause, a cry for help. */
function nextMessage(reply: Reply | undefined, replies: readonly Reply[], random: Random): Message {
  if (!reply) return { kind: 'hello' };
  if (reply.phase === 'emergency')
    return { kind: 'text', text: oneOf(['yes', 'yes we are safe', 'mm'], random) };
  if (!reply.ask) return { kind: 'text', text: reply.phase === 'readBack' ? 'change roof condition' : 'no' };
  const chance = random();
  if (chance < 0.12) return { kind: 'text', text: oneOf(otherTalk, random) };
  if (chance < 0.14) return { kind: 'text', text: 'pause' };
  if (chance < 0.15) return { kind: 'text', text: 'the house is on fire' };
  if (chance < 0.18) {
    const earlier = oneOf(replies, random);
    const choice =
      earlier.ask && earlier.ask.choices.length > 0 && earlier.ask.question !== 'about.danger'
        ? oneOf(earlier.ask.choices, random)
        : undefined;
    if (earlier.ask && choice)
      return { kind: 'choose', key: earlier.ask.key, option: choice.id, revision: earlier.revision };
  }
  return { kind: 'text', text: sayAnswer(programme, reply.ask, random) };
}

/** A walk with much beside the point at first, then answers alone until they are read back. */
function walk(
  seed: number,
  wild: number,
  watch: (before: WalkRecord, message: Message, after: WalkRecord, reply: Reply) => void = () => {},
): Walked {
  const random = seededRandom(seed);
  const messages: Message[] = [];
  const replies: Reply[] = [];
  let record = fresh();
  for (let count = 0; count < wild + 400; count++) {
    const reply = replies.at(-1);
    if (count > wild && reply?.phase === 'readBack') break;
    const straight = count > wild && reply?.ask;
    const message: Message = straight
      ? { kind: 'text', text: sayAnswer(programme, straight, random) }
      : nextMessage(reply, replies, random);
    const turned = takeTurn(programme, record, message, day);
    watch(record, message, turned.record, turned.reply);
    record = turned.record;
    messages.push(message);
    replies.push(turned.reply);
  }
  return { record, messages, replies };
}

function listOf(sheet: WalkRecord['sheet']) {
  const { found, waysIn, ranked, exposure, left } = assess(checklist, sheet);
  return {
    found: found.map((one) => one.id),
    ways: waysIn.map(({ id, weight }) => [id, weight]),
    jobs: ranked.map(({ rank, turn, share, alone, proposal }) => [
      rank,
      turn,
      proposal.id,
      proposal.lane,
      share,
      alone,
    ]),
    exposure,
    left,
  };
}

describe('a walk in which people say all sorts of things', () => {
  it('ends in the read-back, with nothing left open', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 0, max: 120 }), (seed, wild) => {
        const { record, replies } = walk(seed, wild);
        expect(record.cursor.phase).toBe('readBack');
        expect(
          pathOf(checklist.index, record.sheet).steps.filter((step) => isOpen(step, record.sheet)),
        ).toEqual([]);
        expect(replies.at(-1)?.parts.some((part) => part.kind === 'readBack')).toBe(true);
      }),
      { numRuns: 30 },
    );
  });

  it('never loses an answer, and changes none but the one that is spoken about', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 30, max: 150 }), (seed, wild) => {
        walk(seed, wild, (before, message, after) => {
          const asked = message.kind === 'choose' ? message.key : before.cursor.key;
          const removed = message.kind === 'text' && message.text.startsWith('remove') ? 'trees.count' : '';
          for (const [key, answer] of Object.entries(before.sheet)) {
            if (key === asked || key === removed) expect(after.sheet[key]).toBeDefined();
            else expect(after.sheet[key], `${key} after ${JSON.stringify(message)}`).toEqual(answer);
          }
        });
      }),
      { numRuns: 20 },
    );
  });

  it('gives the same list live, taken up from JSON after every turn, and headless from its answers as a file', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom('imperial', 'metric'),
        (seed, wild, units) => {
          const live = walk(seed, wild);
          let resumed = fresh();
          live.messages.forEach((message, position) => {
            const turned = takeTurn(realProgramme(), JSON.parse(JSON.stringify(resumed)), message, day);
            expect(turned.reply).toEqual(live.replies[position]);
            resumed = turned.record;
          });
          expect(resumed).toEqual(live.record);
          const file = answersAsYaml(checklist, live.record.sheet, units as 'imperial');
          const headless = readAnswers(checklist.index, 'house.yaml', file);
          expect(headless.problems).toEqual([]);
          expect(listOf(headless.sheet)).toEqual(listOf(live.record.sheet));
        },
      ),
      { numRuns: 25 },
    );
  });

  it('says after every turn how far it is', () => {
    walk(7, 60, (_, __, after, reply) => {
      const { answered, asked, stop, stops } = reply.progress;
      expect(answered).toBeLessThanOrEqual(asked);
      expect(asked).toBe(pathOf(checklist.index, after.sheet).steps.length);
      expect(stops.map((one) => one.id)).toEqual(checklist.flow.stops.map((one) => one.id));
      expect(stops.filter((one) => one.state === 'here').map((one) => one.id)).toEqual(
        stop === undefined ? [] : [stop],
      );
      expect(reply.ask === undefined || answered < asked || after.cursor.phase === 'asking').toBe(true);
      expect(reply.revision).toBe(after.revision);
    });
  });

  it('is always answered by a question or by words, never by silence', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        walk(seed, 80, (_, __, after, reply) => {
          expect(reply.parts.length + (reply.ask ? 1 : 0)).toBeGreaterThan(0);
          if (after.cursor.phase === 'asking' && !after.cursor.pending)
            expect(reply.ask?.key).toBe(after.cursor.key);
        });
      }),
      { numRuns: 10 },
    );
  });
});
