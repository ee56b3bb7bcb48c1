import type { Answer } from '../../answers/answer.ts';
import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Side } from '../../flow/schema/base.ts';
import type { Say, Value, Values } from '../../wording/say.ts';
import { sayKappa } from '../debrief/say-kappa.ts';
import type { Agreement, AnswerDifference, FindingDifference, StopAgreement } from './compare-sheets.ts';

const asValue = ({ text, values }: Say): Value => ({ text, ...(values ? { values } : {}) });

function answerValue(question: string, answer: Answer | undefined, side: Side | undefined): Value {
  const one = side !== undefined && answer?.status === 'bySide' ? answer.sides[side] : answer;
  return one === undefined ? { text: 'agree.no-answer' } : { answer: one, question };
}

/** Sides on which the two differ in the same way are told together. */
function alikeSides({ sides, first, second }: AnswerDifference): Side[][] {
  const on = (answer: Answer | undefined, side: Side) =>
    answer?.status === 'bySide' ? answer.sides[side] : answer;
  const groups = new Map<string, Side[]>();
  for (const side of sides) {
    const key = JSON.stringify([on(first, side) ?? null, on(second, side) ?? null]);
    groups.set(key, [...(groups.get(key) ?? []), side]);
  }
  return [...groups.values()];
}

/** One line, or one for each way in which the answers differ by side. */
function answerParts(difference: AnswerDifference): Part[] {
  const { question, member, sides, first, second } = difference;
  const thing = { text: `question/${question}/short` };
  const both = (side?: Side): Values => ({
    first: answerValue(question, first, side),
    second: answerValue(question, second, side),
  });
  if (member) return [say('agree.answer.member', { thing, member: { member }, ...both() })];
  if (sides.length === 0) return [say('agree.answer', { thing, ...both() })];
  return alikeSides(difference).map((alike) =>
    say('agree.answer.side', { thing, side: { sides: alike }, ...both(alike[0]) }),
  );
}

function findingPart({ pair, foundBy }: FindingDifference): Part {
  const { place, finding } = pair;
  const number = Number((place.member ?? '').slice(1));
  const member: Value =
    place.group === undefined || place.member === undefined
      ? ''
      : { member: { group: place.group, key: place.member, number } };
  const sides = { sides: place.side === undefined ? place.sides : [place.side] };
  const values: Values = { side: sides, sides, member };
  return say(`agree.found-${foundBy}`, { finding: { text: `finding/${finding}/say`, values } });
}

function stopParts(stop: StopAgreement): Part[] {
  const kappa = asValue(sayKappa(stop.kappa, 'agree.kappa'));
  const title = { text: `stop/${stop.stop}/title` };
  const same = stop.answers.length + stop.findings.length === 0;
  return [
    say('agree.stop', { stop: title, kappa }, 'heading'),
    ...(same ? [say('agree.same')] : []),
    ...stop.answers.flatMap(answerParts),
    ...stop.findings.map(findingPart),
    ...(stop.open > 0 ? [say('agree.open', { count: stop.open })] : []),
  ];
}

/** Where two walks of one house differ, in words. */
export function agreementParts(agreement: Agreement): Part[] {
  return [
    say('agree.title', undefined, 'heading'),
    say('agree.whole', { kappa: asValue(sayKappa(agreement.whole, 'agree.kappa')) }),
    say('agree.about', undefined, 'quiet'),
    ...agreement.stops.flatMap(stopParts),
  ];
}
