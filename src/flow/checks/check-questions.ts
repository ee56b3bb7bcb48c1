import { readBound } from '../bound.ts';
import type { Flow } from '../flow.ts';
import { type Located, problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import type { RawCondition } from '../schema/condition.ts';
import { checkCondition, optionIds, scopeOf } from './check-condition.ts';
import { type Lookup, reference, references } from './references.ts';

type Question = Flow['questions'][number];
type Here = Located<Question>;

const optionLists = new Set(['choice', 'several']);
/** Roles that are taken as said, so an unknown one has no prior. */
const withoutPrior = new Set(['danger', 'place', 'units', 'sides', 'label']);

/** Everything wrong with the questions: their own fields, what they refer to, and their order. */
export function checkQuestions(parts: FlowParts, lookup: Lookup): FlowProblem[] {
  const position = new Map(parts.questions.map((one, index) => [one.item.id, index]));
  return parts.questions.flatMap((located, index) => [
    ...checkPlace(located, lookup),
    ...checkKind(located, lookup),
    ...checkPriors(located, lookup),
    ...checkBranch(located, lookup),
    ...checkOrder(located, position, index),
    ...references(located, 'cautions', 'caution', located.item.cautions, lookup.cautions),
    ...checkRenamed(located, position),
  ]);
}

/** An answer follows a question to its new name only where the old one is gone. */
function checkRenamed(located: Here, position: ReadonlyMap<string, number>): FlowProblem[] {
  return located.item.renamedFrom.flatMap((old, index) =>
    position.has(old)
      ? [problemAt(located, ['renamedFrom', index], `"${old}" is still a question of its own.`)]
      : [],
  );
}

/** The stop is the file's own, so it is named once: at the file's first question. */
function checkStop(located: Here, lookup: Lookup): FlowProblem[] {
  if (located.path.at(-1) !== 0) return [];
  const { document, item } = located;
  const file = { item, document, path: [] };
  return item.stop === ''
    ? [problemAt(located, [], 'a file with questions starts with "stop:" and the id of a stop.')]
    : reference(file, ['stop'], 'stop', item.stop, lookup.stops);
}

function checkPlace(located: Here, lookup: Lookup): FlowProblem[] {
  const { item } = located;
  return [
    ...checkStop(located, lookup),
    ...(item.of === undefined ? [] : reference(located, ['of'], 'group', item.of, lookup.groups)),
    ...(item.of !== undefined && item.by
      ? [
          problemAt(
            located,
            ['by'],
            'a question about a member is not asked by side: ask "kind: sides" of the member.',
          ),
        ]
      : []),
    ...(item.role === 'place' && item.when
      ? [problemAt(located, ['when'], 'the place sets the limits of every branch: it is asked of everybody.')]
      : []),
    ...(item.where && !item.by ? [problemAt(located, ['where'], '"where" goes with "by: side".')] : []),
  ];
}

function checkOwnWords(located: Here): FlowProblem[] {
  const { kind, words } = located.item;
  if (words === undefined) return [];
  if (kind !== 'yesNo') return [problemAt(located, ['words'], `a ${kind} takes no "words" of its own.`)];
  return words.no
    .filter((phrase) => words.yes.includes(phrase))
    .map((phrase) => problemAt(located, ['words', 'no'], `"${phrase}" is there for yes and for no.`));
}

function checkKind(located: Here, lookup: Lookup): FlowProblem[] {
  const { item } = located;
  const problems: FlowProblem[] = [];
  const needs = (key: string, present: boolean, wanted: boolean) => {
    if (present === wanted) return;
    const text = wanted ? `a ${item.kind} needs "${key}".` : `a ${item.kind} takes no "${key}".`;
    problems.push(problemAt(located, wanted ? ['kind'] : [key], text));
  };
  needs('options', (item.options?.length ?? 0) > 0, optionLists.has(item.kind));
  needs('unsafeEnd', item.unsafeEnd !== undefined, item.kind === 'length');
  needs('bare', item.bare !== undefined, item.kind === 'length');
  needs('counts', item.counts !== undefined, item.kind === 'count');
  problems.push(...checkOwnWords(located));
  if (item.counts !== undefined)
    problems.push(...reference(located, ['counts'], 'group', item.counts, lookup.groups));
  const ids = optionIds(item);
  const twice = ids.filter((id, index) => ids.indexOf(id) !== index);
  problems.push(...twice.map((id) => problemAt(located, ['options'], `the option "${id}" is there twice.`)));
  for (const key of ['min', 'max'] as const) {
    const read = item[key] === undefined ? 0 : readBound(item[key], item.kind);
    if (typeof read !== 'number') problems.push(problemAt(located, [key], read.problem));
  }
  for (const [index, pick] of (item.picks ?? []).entries()) {
    const read = readBound(pick.value, item.kind);
    if (typeof read !== 'number') problems.push(problemAt(located, ['picks', index, 'value'], read.problem));
  }
  if (item.role === 'place')
    problems.push(...ids.flatMap((id) => reference(located, ['options'], 'rulebook', id, lookup.rulebooks)));
  return problems;
}

function checkPriors(located: Here, lookup: Lookup): FlowProblem[] {
  const { item } = located;
  const open = item.kind === 'text' || item.kind === 'sides' || item.kind === 'count';
  if (!item.priors) {
    if (open || (item.role !== undefined && withoutPrior.has(item.role))) return [];
    return [
      problemAt(
        located,
        ['kind'],
        `"${item.id}" needs "priors": how likely each answer is when it is not known.`,
      ),
    ];
  }
  return item.priors.flatMap((prior, index) => checkPrior(located, lookup, index, prior.are, prior.if));
}

function checkPrior(
  located: Here,
  lookup: Lookup,
  index: number,
  are: Readonly<Record<string, number>>,
  when: RawCondition | undefined,
): FlowProblem[] {
  const { item } = located;
  const inside = ['priors', index, 'are'];
  const problems = when
    ? checkCondition({ located, lookup }, ['priors', index, 'if'], when, scopeOf(item.of ?? 'house'))
    : [];
  const measured = !['choice', 'yesNo', 'several'].includes(item.kind);
  const known = new Set(optionIds(item));
  for (const id of Object.keys(are)) {
    const read = measured ? readBound(item.kind === 'number' ? Number(id) : id, item.kind) : 0;
    if (typeof read !== 'number') problems.push(problemAt(located, [...inside, id], read.problem));
    else if (!measured) problems.push(...reference(located, [...inside, id], 'option', id, known));
  }
  const sum = Object.values(are).reduce((total, part) => total + part, 0);
  if (item.kind !== 'several' && Math.abs(sum - 1) > 0.005)
    problems.push(
      problemAt(located, inside, `these probabilities add up to ${Number(sum.toFixed(3))}, not to 1.`),
    );
  return problems;
}

function checkBranch(located: Here, lookup: Lookup): FlowProblem[] {
  const { item } = located;
  const problems: FlowProblem[] = [];
  const scope = scopeOf(item.of ?? 'house');
  for (const key of ['when', 'where'] as const) {
    const condition = item[key];
    if (!condition) continue;
    const inner = key === 'where' ? { ...scope, side: true } : scope;
    problems.push(...checkCondition({ located, lookup }, [key], condition, inner));
    if (condition.whenUnknown === undefined && mayBeUnknown(condition))
      problems.push(
        problemAt(
          located,
          [key],
          'say what to do when this is not known: "whenUnknown: yes" asks, "no" does not.',
        ),
      );
  }
  return problems;
}

/** `answered` is never unknown; everything else may be. */
function mayBeUnknown(condition: RawCondition): boolean {
  if (condition.whenUnknown !== undefined) return false;
  const parts = condition.all ?? condition.any ?? (condition.not ? [condition.not] : undefined);
  if (parts) return parts.some(mayBeUnknown);
  return condition.answered === undefined;
}

/** A branch looks back only: so a pass over the questions in order settles what is asked, and every path ends. */
function checkOrder(located: Here, position: ReadonlyMap<string, number>, index: number): FlowProblem[] {
  return (['when', 'where'] as const).flatMap((key) => {
    const condition = located.item[key];
    const later = condition ? questionsIn(condition).filter((id) => (position.get(id) ?? -1) >= index) : [];
    return later.map((id) => problemAt(located, [key], `it depends on "${id}", which is asked later.`));
  });
}

/** The ids of all questions that a condition reads. */
export function questionsIn(condition: RawCondition): string[] {
  const parts = [...(condition.all ?? []), ...(condition.any ?? [])];
  if (condition.not) parts.push(condition.not);
  if (condition.where) parts.push(condition.where);
  const own = condition.question ?? condition.answered;
  return [...(own === undefined ? [] : [own]), ...parts.flatMap(questionsIn)];
}
