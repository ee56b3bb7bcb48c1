import { type AnswerKey, type AnswerSheet, answerKey } from '../answers/answer.ts';
import type { FlowIndex } from '../answers/flow-index.ts';
import { isOpen, layOutPath, pathOf } from '../answers/path.ts';
import { type FileValueRead, readFileValue } from '../answers/read-file-value.ts';
import { didYouMean } from '../flow/did-you-mean.ts';
import type { FlowDocument } from '../flow/document.ts';
import type { Question } from '../flow/flow.ts';
import type { FlowProblem } from '../flow/problem.ts';
import { readYaml } from './read-yaml.ts';

/** An answer file as read: the sheet, what is worth a word, and what makes it unusable. */
export interface ReadAnswers {
  readonly sheet: AnswerSheet;
  /** Not wrong, but worth knowing: answers to questions that are not asked, units that were assumed. */
  readonly warnings: readonly FlowProblem[];
  readonly problems: readonly FlowProblem[];
}

type Path = readonly (string | number)[];
type Units = 'imperial' | 'metric';

interface Reading {
  readonly index: FlowIndex;
  readonly document: FlowDocument;
  readonly units: Units | undefined;
  sheet: AnswerSheet;
  readonly warnings: FlowProblem[];
  readonly problems: FlowProblem[];
}

function note(reading: Reading, path: Path, problem: string, suggestion?: string): FlowProblem {
  const place = { path: reading.document.path, ...reading.document.positionOf(path), at: path.join('.') };
  return { ...place, problem, ...(suggestion === undefined ? {} : { suggestion }) };
}

const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function unitsNow({ index, sheet, units }: Reading): Units {
  if (units) return units;
  const role = index.roles.get('units');
  const answer = role && sheet[role.id];
  if (answer?.status === 'given') return answer.value === 'metric' ? 'metric' : 'imperial';
  const { rulebook } = pathOf(index, sheet);
  return index.flow.rulebooks.find((one) => one.id === rulebook)?.units ?? 'imperial';
}

/** Reads one value into the sheet; the sides are those asked about as the sheet stands so far. */
function take(reading: Reading, question: Question, key: AnswerKey, value: unknown, path: Path): void {
  const { index } = reading;
  const asked = layOutPath(index, reading.sheet);
  const sides = asked.byKey.get(key)?.sides ?? asked.sides;
  const words = index.flow.words[index.flow.walk.language];
  if (!words) throw new Error('The flow has no words in its own language.');
  const read: FileValueRead = readFileValue(value, question, {
    words,
    sides,
    groups: index.flow.groups,
    units: unitsNow(reading),
  });
  if ('problem' in read) {
    reading.problems.push(note(reading, path, read.problem, read.suggestion));
    return;
  }
  reading.sheet = { ...reading.sheet, [key]: read.answer };
  if (read.assumedUnit) {
    reading.warnings.push(note(reading, path, `the bare number was taken in ${read.assumedUnit}.`));
  }
}

/** Members are a list under the id of their group; each may have a key of its own. */
function takeMembers(reading: Reading, group: string, list: unknown, path: Path): void {
  const { index } = reading;
  const kind = index.groups.get(group);
  const count = index.countQuestions.get(group);
  if (!kind || !count) return;
  if (!Array.isArray(list)) {
    reading.problems.push(note(reading, path, `"${group}" is a list, one entry for each ${kind.one}.`));
    return;
  }
  if (list.length > kind.max) {
    reading.problems.push(
      note(reading, path, `there are ${list.length} ${kind.many}; at most ${kind.max} can be taken.`),
    );
    return;
  }
  const keys = memberKeys(list, kind.keyLetter);
  reading.sheet = { ...reading.sheet, [count.id]: { status: 'given', value: keys } };
  list.forEach((entry: unknown, position) => {
    if (isMapping(entry)) takeMember(reading, group, keys[position] ?? '', entry, [...path, position]);
    else
      reading.problems.push(
        note(reading, [...path, position], `an entry of "${group}" maps questions to answers.`),
      );
  });
}

function memberKeys(list: readonly unknown[], letter: string): string[] {
  const own = list.map((entry) =>
    isMapping(entry) && typeof entry['key'] === 'string' ? entry['key'] : undefined,
  );
  let next = 0;
  return own.map((key) => {
    if (key !== undefined && new RegExp(`^${letter}\\d+$`).test(key)) return key;
    do next++;
    while (own.includes(`${letter}${next}`));
    return `${letter}${next}`;
  });
}

function takeMember(
  reading: Reading,
  group: string,
  member: string,
  entry: Record<string, unknown>,
  path: Path,
): void {
  const questions = reading.index.flow.questions.filter((one) => one.of === group);
  const idOf = (name: string) => (name.includes('.') ? name : `${group}.${name}`);
  const known = new Set([
    ...questions.map((one) => one.id),
    ...questions.map((one) => one.id.split('.').slice(1).join('.')),
  ]);
  for (const name of Object.keys(entry)) {
    if (name === 'key' || questions.some((one) => one.id === idOf(name))) continue;
    reading.problems.push(
      note(
        reading,
        [...path, name],
        `there is no question "${name}" about ${group}.`,
        didYouMean(name, known),
      ),
    );
  }
  for (const question of questions) {
    const name = Object.keys(entry).find((one) => idOf(one) === question.id);
    if (name !== undefined)
      take(reading, question, answerKey(question.id, group, member), entry[name], [...path, name]);
  }
}

/** Names that stand for nothing the flow asks. */
function unknownNames(reading: Reading, root: Record<string, unknown>): void {
  const { index } = reading;
  const known = new Set([...index.questions.keys(), ...index.groups.keys()]);
  for (const name of Object.keys(root)) {
    const question = index.questions.get(name);
    if (question?.of !== undefined) {
      reading.problems.push(
        note(
          reading,
          [name],
          `"${name}" is asked of each of ${question.of}: put it into the list "${question.of}".`,
        ),
      );
    } else if (!known.has(name)) {
      reading.problems.push(
        note(reading, [name], `there is no question "${name}".`, didYouMean(name, known)),
      );
    }
  }
}

/** In the order of the walk, so that each value is read with the place, the units and the sides already known. */
function takeAll(reading: Reading, root: Record<string, unknown>): void {
  const groups = new Set<string>();
  for (const question of reading.index.flow.questions) {
    if (question.of !== undefined && !groups.has(question.of)) {
      groups.add(question.of);
      if (question.of in root) takeMembers(reading, question.of, root[question.of], [question.of]);
    }
    if (question.id in root) take(reading, question, question.id, root[question.id], [question.id]);
  }
}

/** Every answer that stands on the sheet although its question is not asked. */
function warnOffPath(reading: Reading): void {
  const { byKey } = layOutPath(reading.index, reading.sheet);
  for (const key of Object.keys(reading.sheet)) {
    if (byKey.has(key)) continue;
    const [group, , id] = key.split('/');
    const path = id === undefined ? [key] : [group ?? ''];
    reading.warnings.push(
      note(reading, path, `"${id ?? key}" is not asked for this house, so its answer is not used.`),
    );
  }
}

/** What was asked and not answered counts as not sure. */
function fillUp(index: FlowIndex, given: AnswerSheet): AnswerSheet {
  let sheet = given;
  for (;;) {
    const open = layOutPath(index, sheet).steps.find((step) => isOpen(step, sheet));
    if (!open) return sheet;
    const before = sheet[open.key];
    const known = before?.status === 'bySide' ? before.sides : {};
    const rest = Object.fromEntries((open.sides ?? []).map((side) => [side, { status: 'notSure' } as const]));
    const answer = open.sides
      ? ({ status: 'bySide', sides: { ...rest, ...known } } as const)
      : ({ status: 'notSure' } as const);
    sheet = { ...sheet, [open.key]: answer };
  }
}

/** Reads an answer file (YAML or JSON): a mapping of question id to value, members as lists under their group. */
export function readAnswers(index: FlowIndex, path: string, text: string, units?: Units): ReadAnswers {
  const { document, problems } = readYaml(path, text);
  const reading: Reading = { index, document, units, sheet: {}, warnings: [], problems: [...problems] };
  if (problems.length > 0) return reading;
  const root = document.value ?? {};
  if (!isMapping(root)) {
    reading.problems.push(
      note(reading, [], 'an answer file maps question ids to answers, such as "roof.covering: tile".'),
    );
    return reading;
  }
  unknownNames(reading, root);
  takeAll(reading, root);
  warnOffPath(reading);
  return { sheet: fillUp(index, reading.sheet), warnings: reading.warnings, problems: reading.problems };
}
