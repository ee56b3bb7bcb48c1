import { describe, expect, it } from 'vitest';
import { makeDebrief } from '../../src/practice/debrief/make-debrief.ts';
import { exportCsv } from '../../src/practice/export-csv.ts';
import { makeHouse } from '../../src/practice/house/make-house.ts';
import { newProgress, type TraineeProgress } from '../../src/practice/progress.ts';
import { newSession } from '../../src/practice/session/state.ts';
import { realPractice } from './practice-for-tests.ts';

/**
 * A reader written from the grammar of RFC 4180, section 2 (ABNF): records end in CRLF; a field is plain text without
 * comma, quote, CR and LF, or quoted, in which quotes are doubled. Throws where the text breaks the grammar.
 */
function readCsv(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  const field = (): string => {
    if (text[at] !== '"') {
      const end = text.slice(at).search(/[",\r\n]/);
      if (end < 0 || text[at + end] === '"') throw new Error(`a quote in a plain field, or no end, at ${at}`);
      const plain = text.slice(at, at + end);
      at += end;
      return plain;
    }
    let quoted = '';
    for (at += 1; ; at++) {
      if (at >= text.length) throw new Error('a quoted field without end');
      if (text[at] !== '"') quoted += text[at];
      else if (text[at + 1] === '"') {
        quoted += '"';
        at += 1;
      } else break;
    }
    at += 1;
    return quoted;
  };
  while (at < text.length) {
    const record = [field()];
    while (text[at] === ',') {
      at += 1;
      record.push(field());
    }
    if (text.slice(at, at + 2) !== '\r\n') throw new Error(`a record does not end in CRLF at ${at}`);
    at += 2;
    records.push(record);
  }
  return records;
}

const practice = realPractice();
const start = new Date('2026-06-01T08:00:00Z');

function progressOf(
  trainee: string,
  consent: boolean,
  house = makeHouse(practice.maker, 5, 'ordinary'),
): TraineeProgress {
  const debrief = makeDebrief(practice, newSession(house, start));
  return {
    ...newProgress(trainee),
    consent,
    sessions: [{ startedAt: start.toISOString(), endedAt: start.toISOString(), debrief }],
  };
}

describe("the supervisor's export", () => {
  it('is read back by the grammar of RFC 4180, whatever a trainee is called', () => {
    const name = 'the "new" trainee,\r\nfrom Quillan Bend';
    const records = readCsv(exportCsv([progressOf(name, true), progressOf('plain', true)]));
    expect(records).toHaveLength(3);
    expect(new Set(records.map((record) => record.length)).size).toBe(1);
    expect(records[1]?.[0]).toBe(name);
    const [header = [], row = []] = records;
    const cell = (column: string) => row[header.indexOf(column)];
    const { debrief } = progressOf(name, true).sessions[0] ?? {};
    expect(cell('missed')).toBe(String(debrief?.findings.missed.length));
    expect(cell('missed findings')?.split(' ')).toEqual(debrief?.findings.missed);
  });

  it('holds nobody who did not agree', () => {
    const text = exportCsv([progressOf('agreed', true), progressOf('did not agree', false)]);
    expect(text).toContain('agreed,');
    expect(text).not.toContain('did not agree');
  });

  it('turns no name into a formula of a spreadsheet', () => {
    const [, row] = readCsv(exportCsv([progressOf('=HYPERLINK("http://example.org")', true)]));
    expect(row?.[0]).toMatch(/^'=/);
  });

  it('is only a header where there is nothing', () => {
    expect(readCsv(exportCsv([]))).toHaveLength(1);
  });
});
