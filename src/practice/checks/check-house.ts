import { readBound } from '../../flow/bound.ts';
import { checkCondition, optionIds } from '../../flow/checks/check-condition.ts';
import { type Lookup, reference, references } from '../../flow/checks/references.ts';
import { didYouMean } from '../../flow/did-you-mean.ts';
import type { Flow } from '../../flow/flow.ts';
import { type Located, problemAt } from '../../flow/located.ts';
import type { FlowProblem } from '../../flow/problem.ts';
import type { HouseRules } from '../schema/practice-file.ts';

type Question = Flow['questions'][number];
type Inside = readonly (string | number)[];
type Rules = Located<HouseRules>;

const measuredKinds = new Set(['length', 'number', 'slope', 'count']);

/** Everything that a house may be given as an answer by name: options, and the values of picks. */
const answersOf = (question: Question): string[] => [
  ...optionIds(question),
  ...(question.picks ?? []).map((pick) => String(pick.value)),
];

/** The problems of a rule about a question: that there is none of this name, or what `check` says about it. */
function withQuestion(
  rules: Rules,
  lookup: Lookup,
  inside: Inside,
  id: string,
  check: (question: Question) => FlowProblem[],
): FlowProblem[] {
  const question = lookup.questions.get(id);
  return question ? check(question) : reference(rules, inside, 'question', id, lookup.questions);
}

function checkAnswer(rules: Rules, inside: Inside, question: Question, answer: string): FlowProblem[] {
  const known = answersOf(question);
  if (known.length === 0 || known.includes(answer)) return [];
  const suggestion = didYouMean(answer, known) ?? `It has: ${known.join(', ')}.`;
  return [problemAt(rules, inside, `"${question.id}" has no answer "${answer}".`, suggestion)];
}

function checkMeasure(
  rules: Rules,
  inside: Inside,
  question: Question,
  written: string | number,
): FlowProblem[] {
  const value = readBound(written, question.kind);
  if (typeof value !== 'number') return [problemAt(rules, inside, value.problem)];
  const bound = (raw: string | number | undefined, otherwise: number) => {
    const read = raw === undefined ? otherwise : readBound(raw, question.kind);
    return typeof read === 'number' ? read : otherwise;
  };
  const fits =
    value >= bound(question.min, Number.NEGATIVE_INFINITY) &&
    value <= bound(question.max, Number.POSITIVE_INFINITY);
  const range = `from ${question.min} to ${question.max}`;
  return fits ? [] : [problemAt(rules, inside, `"${question.id}" takes ${range}, and not ${written}.`)];
}

function checkMeasures(rules: Rules, lookup: Lookup, key: 'near' | 'clear'): FlowProblem[] {
  return Object.entries(rules.item[key]).flatMap(([id, measures]) =>
    withQuestion(rules, lookup, [key, id], id, (question) =>
      measuredKinds.has(question.kind)
        ? measures.flatMap((one, index) => checkMeasure(rules, [key, id, index], question, one))
        : [problemAt(rules, [key, id], `"${id}" is a ${question.kind}, and no measure.`)],
    ),
  );
}

function checkGiven(rules: Rules, lookup: Lookup): FlowProblem[] {
  const { fixed, counts } = rules.item;
  return [
    ...Object.entries(fixed).flatMap(([id, answer]) =>
      withQuestion(rules, lookup, ['fixed', id], id, (question) =>
        answer === 'skip' ? [] : checkAnswer(rules, ['fixed', id], question, answer),
      ),
    ),
    ...Object.keys(counts).flatMap((id) =>
      withQuestion(rules, lookup, ['counts', id], id, (question) =>
        question.kind === 'count'
          ? []
          : [problemAt(rules, ['counts', id], `"${id}" is a ${question.kind}, and counts nothing.`)],
      ),
    ),
    ...checkMeasures(rules, lookup, 'near'),
    ...checkMeasures(rules, lookup, 'clear'),
  ];
}

function checkConsistent(rules: Rules, lookup: Lookup): FlowProblem[] {
  return rules.item.consistent.flatMap((rule, index) => {
    const inside = ['consistent', index] as const;
    return withQuestion(rules, lookup, [...inside, 'question'], rule.question, (question) => [
      ...rule.never.flatMap((one, at) => checkAnswer(rules, [...inside, 'never', at], question, one)),
      ...checkCondition({ located: rules, lookup }, [...inside, 'if'], rule.if, {
        side: question.by === 'side',
        group: question.of,
      }),
    ]);
  });
}

function checkSides(rules: Rules, lookup: Lookup): FlowProblem[] {
  return rules.item.sides.flatMap((rule, index) => {
    const inside = ['sides', index] as const;
    const atMost = rule.atMost ?? rule.atLeast;
    return withQuestion(rules, lookup, [...inside, 'question'], rule.question, (question) => [
      ...checkAnswer(rules, [...inside, 'value'], question, rule.value),
      ...(rule.if
        ? checkCondition({ located: rules, lookup }, [...inside, 'if'], rule.if, {
            side: false,
            group: undefined,
          })
        : []),
      ...(atMost < rule.atLeast
        ? [problemAt(rules, [...inside, 'atMost'], `is less than "atLeast", ${rule.atLeast}.`)]
        : []),
    ]);
  });
}

function checkLevels(rules: Rules): FlowProblem[] {
  return Object.entries(rules.item.levels).flatMap(([name, { findings }]) =>
    findings && findings.atMost < findings.atLeast
      ? [
          problemAt(
            rules,
            ['levels', name, 'findings', 'atMost'],
            `is less than "atLeast", ${findings.atLeast}.`,
          ),
        ]
      : [],
  );
}

function checkDistractors(rules: Rules, lookup: Lookup): FlowProblem[] {
  const { distractors, alarmStops } = rules.item;
  return [
    ...distractors.flatMap((one, index) => [
      ...reference(rules, ['distractors', index, 'stop'], 'stop', one.stop, lookup.stops),
      ...(one.looksLike === undefined
        ? []
        : reference(rules, ['distractors', index, 'looksLike'], 'finding', one.looksLike, lookup.findings)),
      ...(distractors.findIndex((other) => other.id === one.id) < index
        ? [problemAt(rules, ['distractors', index, 'id'], `the distractor "${one.id}" is there twice.`)]
        : []),
    ]),
    ...references(rules, 'alarmStops', 'stop', alarmStops, lookup.stops),
  ];
}

/** Everything in the rules for made-up houses that the flow does not have, or that makes no sense. */
export function checkHouse(rules: Rules, lookup: Lookup): FlowProblem[] {
  return [
    ...checkGiven(rules, lookup),
    ...checkLevels(rules),
    ...checkConsistent(rules, lookup),
    ...checkSides(rules, lookup),
    ...rules.item.lessThan.flatMap((rule, index) => [
      ...reference(rules, ['lessThan', index, 'question'], 'question', rule.question, lookup.questions),
      ...reference(rules, ['lessThan', index, 'than'], 'question', rule.than, lookup.questions),
    ]),
    ...checkDistractors(rules, lookup),
  ];
}
