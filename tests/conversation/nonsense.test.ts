import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathOf } from '../../src/answers/path.ts';
import { takeTurn } from '../../src/conversation/turn.ts';
import { realProgramme } from '../support/programme.ts';
import { randomSheet, seededRandom } from '../support/random-answers.ts';
import { day, saidIn, talk, walkWith } from '../support/walks.ts';

const programme = realProgramme();
const { index } = programme.checklist;
const sheets = Array.from({ length: 80 }, (_, seed) =>
  randomSheet(index, seededRandom(seed), { unsure: 0, partial: 0 }),
);

/** A walk at each question of the flow, with its own answer taken off the sheet again. */
const atQuestion = index.flow.questions.map((question) => {
  for (const sheet of sheets) {
    const step = pathOf(index, sheet).steps.find((one) => one.question.id === question.id);
    if (!step) continue;
    const { [step.key]: _, ...rest } = sheet;
    return [question.id, walkWith(programme, rest, step.key)] as const;
  }
  throw new Error(`No random walk reaches ${question.id}.`);
});

const nonsense = ['zxqv blorp', '??!', '𝕬𝖇𝖈 ✂️✂️', '99999999999999999999', "'; ghkk lpqz; --"];

describe('nonsense', () => {
  it.each(atQuestion.filter(([id]) => index.questions.get(id)?.kind !== 'text'))(
    'is met with help, not silence, at %s',
    (_, record) => {
      for (const text of nonsense) {
        const { record: after, reply } = talk(programme, record, text);
        const [first] = saidIn(reply);
        expect(first, text).toMatch(/^(?:not-understood\.|help\.|emergency\.is-it)/);
        expect(after.sheet, text).toEqual(record.sheet);
        if (!after.cursor.pending) expect(reply.ask?.key, text).toBe(record.cursor.key);
      }
    },
  );

  it('is what the names are that the language keeps for itself', () => {
    for (const text of ['constructor', '__proto__', 'toString', 'hasOwnProperty valueOf']) {
      for (const [, record] of atQuestion) {
        const { record: after } = talk(programme, record, text);
        if (record.cursor.key !== undefined && !(record.cursor.key in after.sheet))
          expect(after.sheet).toEqual(record.sheet);
      }
    }
  });

  it('never lets the record grow, a thousand times over', () => {
    const start = walkWith(programme, sheets[0] ?? {}, 'roof.covering');
    const size = JSON.stringify(start).length;
    let record = start;
    for (let count = 0; count < 1_000; count++) {
      record = takeTurn(
        programme,
        record,
        { kind: 'text', text: `blorp ${'zx'.repeat(count % 50)}q` },
        day,
      ).record;
    }
    expect(record.sheet).toEqual(start.sheet);
    expect(record.revision).toBe(start.revision + 1_000);
    // Only the digits of the revision are new.
    expect(JSON.stringify(record).length - size).toBeLessThanOrEqual(4);
  });

  it('never throws, whatever is written at whatever question', () => {
    const records = atQuestion.map(([, record]) => record);
    fc.assert(
      fc.property(
        fc.constantFrom(...records),
        fc.oneof(fc.string({ maxLength: 200, unit: 'binary' }), fc.string({ unit: 'grapheme' })),
        (record, text) => {
          const { reply } = takeTurn(programme, record, { kind: 'text', text }, day);
          expect(reply.parts.length + (reply.ask ? 1 : 0)).toBeGreaterThan(0);
        },
      ),
      { numRuns: 1_000 },
    );
  });

  it('is refused in words when it comes as a press on a choice', () => {
    const record = walkWith(programme, {}, 'about.place');
    for (const key of ['roof.treated', 'nowhere', '__proto__', 'trees/t9/trees.height']) {
      const { record: after, reply } = talk(programme, record, {
        kind: 'choose',
        key,
        option: 'yes',
        revision: 0,
      });
      expect(saidIn(reply)).toEqual(['walk.late-unknown']);
      expect(after.sheet).toEqual({});
    }
    const wrong = talk(programme, record, {
      kind: 'choose',
      key: 'about.place',
      option: 'atlantis',
      revision: 0,
    });
    expect(saidIn(wrong.reply)).toEqual(['walk.late-unknown']);
    expect(wrong.record.sheet).toEqual({});
  });
});
