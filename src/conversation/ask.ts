import { openSides, pathOf, type Step } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import { optionIds } from '../flow/checks/check-condition.ts';
import type { Value, Values } from '../wording/say.ts';
import type { Ask, Choice } from './message.ts';
import type { WalkRecord } from './record.ts';

const letters = 'abcdefghijklmnopqrstuvwxyz';

/** What a text about a step may name: the member it is about. */
export function stepValues(checklist: Checklist, record: WalkRecord, step: Step): Values {
  if (step.group === undefined || step.member === undefined) return {};
  const members = pathOf(checklist.index, record.sheet).facts.members(step.group);
  const number = members.indexOf(step.member) + 1;
  return { member: { member: { group: step.group, key: step.member, number } } };
}

function choicesOf(step: Step): Choice[] {
  const { question } = step;
  const ids = question.picks?.map((pick) => String(pick.value)) ?? optionIds(question);
  const kind = question.kind === 'yesNo' ? 'yesNo' : question.kind === 'sides' ? 'side' : undefined;
  return ids.map((id, position) => ({
    id,
    // A bare number is a measure here: such a choice is taken by its letter.
    number: question.picks ? 0 : position + 1,
    letter: letters[position] ?? '',
    label: { text: kind ? `words/${kind}/${id}` : `option/${question.id}/${id}` },
  }));
}

function hintOf(step: Step, sides: readonly string[]): string {
  const { kind, by } = step.question;
  if (by === 'side') {
    if (kind === 'yesNo') return 'hint.which-sides';
    if (kind === 'length') return 'hint.length-by-side';
    return kind === 'several'
      ? 'hint.several-by-side'
      : sides.length === 1
        ? 'hint.choice'
        : 'hint.choice-by-side';
  }
  if (kind === 'length' || kind === 'slope')
    return step.question.picks ? 'hint.measure-or-pick' : `hint.${kind}`;
  return `hint.${kind}`;
}

/** What a volunteer reads aloud, and what helps them with the answer. */
function guided(step: Step, values: Values): Pick<Ask, 'say' | 'guide'> {
  const said = (part: string): Value => ({ text: `question/${step.question.id}/${part}`, values });
  const text = values['member'] === undefined ? 'call.say' : 'call.say-member';
  return {
    say: { text, values: { ...values, say: said('say') } },
    guide: {
      listen: { text: 'call.listen', values: { text: said('listen') } },
      cannotTell: { text: 'call.cannot-tell', values: { text: said('cannotTell') } },
    },
  };
}

/** The question that a record asks now, ready for a channel; nothing while none is asked. */
export function askOf(checklist: Checklist, record: WalkRecord): Ask | undefined {
  const { key, phase, pending } = record.cursor;
  if (phase !== 'asking' || key === undefined || pending) return undefined;
  const step = pathOf(checklist.index, record.sheet).byKey.get(key);
  if (!step) return undefined;
  const open = openSides(step, record.sheet);
  const sides = open.length > 0 ? open : (step.sides ?? []);
  const values = stepValues(checklist, record, step);
  const { question } = step;
  // A yes or no by side is answered with the sides themselves.
  const byWhichSides = question.by === 'side' && question.kind === 'yesNo';
  const sideChoices = sides.map((side, position) => ({
    id: side,
    number: position + 1,
    letter: letters[position] ?? '',
    label: { text: `words/side/${side}` },
  }));
  return {
    key,
    question: question.id,
    kind: question.kind,
    ...(record.call
      ? guided(step, values)
      : { say: { text: `question/${question.id}/ask`, values: { ...values, sides: { sides } } } }),
    choices: byWhichSides ? sideChoices : choicesOf(step),
    several: question.kind === 'several' || question.kind === 'sides' || byWhichSides,
    sides,
    hint: { text: hintOf(step, sides), values: { sides: { sides } } },
  };
}
