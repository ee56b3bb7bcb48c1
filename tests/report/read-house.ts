import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parse } from 'yaml';
import type { Answer, AnswerSheet, AnswerValue, PlainAnswer } from '../../src/answers/answer.ts';
import type { FlowIndex } from '../../src/answers/flow-index.ts';
import { readBound } from '../../src/flow/bound.ts';
import type { Question } from '../../src/flow/flow.ts';

type Written = string | number | boolean | readonly string[] | { readonly [side: string]: Written };

function plain(question: Question, written: Written): PlainAnswer {
  if (written === 'not sure') return { status: 'notSure' };
  if (written === 'skip') return { status: 'skipped' };
  const value = ['length', 'slope', 'number'].includes(question.kind)
    ? readBound(written as string | number, question.kind)
    : written;
  if (value === undefined || (typeof value === 'object' && 'problem' in value))
    throw new Error(`${question.id}: ${JSON.stringify(written)}`);
  return { status: 'given', value: value as AnswerValue };
}

/** One written value as an answer; a by-side question takes one value for all sides or a mapping of sides. */
function answer(question: Question, written: Written): Answer {
  if (question.by === undefined) return plain(question, written);
  const bySide =
    typeof written === 'object' && !Array.isArray(written)
      ? Object.entries(written)
      : ['front', 'left', 'back', 'right'].map((side): [string, Written] => [side, written]);
  return {
    status: 'bySide',
    sides: Object.fromEntries(bySide.map(([side, one]) => [side, plain(question, one)])),
  };
}

/** The answers of a house written plainly: question id -> value, members as lists under their group. */
export function readHouse(index: FlowIndex, name: string): AnswerSheet {
  const written = parse(readFileSync(resolve('tests/houses', `${name}.yaml`), 'utf8'), { version: '1.2' });
  const sheet: Record<string, Answer> = {};
  const question = (id: string) => {
    const found = index.questions.get(id);
    if (!found) throw new Error(`${name}: no question "${id}"`);
    return found;
  };
  for (const [id, value] of Object.entries<Written>(written)) {
    const group = index.groups.get(id);
    if (!group) {
      sheet[id] = answer(question(id), value);
      continue;
    }
    const count = index.countQuestions.get(id);
    if (!count) throw new Error(`${name}: "${id}" is not counted`);
    if (!Array.isArray(value)) {
      sheet[count.id] = plain(count, value);
      continue;
    }
    const members = value as unknown as Record<string, Written>[];
    const keys = members.map((_, position) => `${group.keyLetter}${position + 1}`);
    sheet[count.id] = { status: 'given', value: keys };
    members.forEach((member, position) => {
      for (const [memberId, one] of Object.entries(member))
        sheet[`${id}/${keys[position]}/${memberId}`] = answer(question(memberId), one);
    });
  }
  return sheet;
}
