import { cleanText } from '../../answers/reading/clean-text.ts';
import { tokenise } from '../../answers/reading/tokens.ts';
import { leaveParts } from '../../conversation/emergency.ts';
import type { Message, Part } from '../../conversation/message.ts';
import { newWalk } from '../../conversation/new-walk.ts';
import type { WalkId } from '../../conversation/record.ts';
import { say } from '../../conversation/turned.ts';
import type { Value } from '../../wording/say.ts';
import { sourceValue } from '../debrief/say-next.ts';
import type { Practice } from '../practice.ts';
import { partMessage } from '../reading/verb.ts';
import type { Card } from '../schema/practice-file.ts';
import { heardDanger } from '../session/danger.ts';
import type { PracticeTurned } from '../session/turned.ts';
import { limitOfCard, optionsInOrder, readCardAnswer } from './read-card-answer.ts';
import { type CardMemory, dueCards, type Recall, reviewed } from './schedule.ts';

/** A round of questions: plain data, kept with the trainee's progress. */
export interface QuestionRound {
  readonly phase: 'asking' | 'finished' | 'emergency' | 'paused';
  /** Waiting, the one being asked first. */
  readonly ids: readonly string[];
  readonly helped: boolean;
  readonly right: number;
  readonly wrong: number;
}

type Cards = Readonly<Record<string, CardMemory>>;

/** What came of a message in a round of questions. */
export interface QuestionTurned {
  readonly round: QuestionRound;
  readonly cards: Cards;
  readonly parts: readonly Part[];
  readonly choices: NonNullable<PracticeTurned['choices']>;
}

/** A round of all cards that are due now. */
export function newRound(practice: Practice, cards: Cards, now: Date): QuestionRound {
  const known = new Set(practice.content.cards.map((card) => card.id));
  const ids = dueCards(cards, now).filter((id) => known.has(id));
  return { phase: ids.length > 0 ? 'asking' : 'finished', ids, helped: false, right: 0, wrong: 0 };
}

const cardOf = (practice: Practice, id: string | undefined): Card | undefined =>
  practice.content.cards.find((card) => card.id === id);

function answerOf(practice: Practice, card: Card): Value {
  if ('options' in card) return { text: `card/${card.id}/option/${card.right}` };
  const limit = limitOfCard(practice, card);
  return typeof limit?.value === 'number' ? { metres: limit.value } : '';
}

function sourceOf(practice: Practice, card: Card): Value {
  const source = sourceValue(practice, card.source);
  return card.where === undefined
    ? { text: 'practice.next.read', values: { source } }
    : { text: 'practice.next.read-at', values: { source, where: card.where } };
}

/** Asks the card that is next, or ends the round. */
function askNext(
  practice: Practice,
  round: QuestionRound,
  cards: Cards,
  before: readonly Part[],
): QuestionTurned {
  const card = cardOf(practice, round.ids[0]);
  if (!card) {
    const { right, wrong } = round;
    const over =
      right + wrong === 0
        ? say('practice.questions.none')
        : say('practice.questions.over', { right, all: right + wrong });
    return { round: { ...round, phase: 'finished' }, cards, parts: [...before, over], choices: [] };
  }
  const shown = optionsInOrder(card, cards[card.id]?.reps ?? 0);
  const choices = shown.map((id) => ({ id, label: { text: `card/${card.id}/option/${id}` } }));
  return { round, cards, parts: [...before, say(`card/${card.id}/ask`)], choices };
}

function takeAnswer(
  practice: Practice,
  round: QuestionRound,
  cards: Cards,
  card: Card,
  text: string,
  now: Date,
): QuestionTurned {
  const memory = cards[card.id];
  const shown = optionsInOrder(card, memory?.reps ?? 0);
  const right = readCardAnswer(practice, card, shown, text);
  if (right === undefined || !memory)
    return askNext(practice, round, cards, [say('practice.questions.not-read')]);
  const recall: Recall = right ? (round.helped ? 'hard' : 'good') : 'again';
  const next = { ...cards, [card.id]: reviewed(memory, now, recall) };
  const said = say(right ? 'practice.questions.right' : 'practice.questions.wrong', {
    answer: answerOf(practice, card),
    because: { text: `card/${card.id}/because` },
    read: sourceOf(practice, card),
  });
  const count = right ? { right: round.right + 1 } : { wrong: round.wrong + 1 };
  return askNext(practice, { ...round, ...count, helped: false, ids: round.ids.slice(1) }, next, [said]);
}

function stop(practice: Practice, round: QuestionRound, cards: Cards, now: Date): QuestionTurned {
  const walk = newWalk(practice.programme, 'practice' as WalkId, now);
  const parts = [
    say('practice.emergency.real', undefined, 'emergency'),
    ...leaveParts(practice.programme, walk),
  ];
  return { round: { ...round, phase: 'emergency' }, cards, parts, choices: [] };
}

function hintFor(practice: Practice, round: QuestionRound, cards: Cards, card: Card): QuestionTurned {
  const hinted = say('practice.questions.hint', { read: sourceOf(practice, card) });
  return askNext(practice, { ...round, helped: true }, cards, [hinted]);
}

function takeText(
  practice: Practice,
  round: QuestionRound,
  cards: Cards,
  raw: string,
  now: Date,
): QuestionTurned {
  const text = cleanText(raw);
  const tokens = tokenise(text.toLowerCase());
  const said = { text, tokens, ...partMessage(practice.verbs, tokens) };
  const danger = heardDanger(practice, said);
  const card = cardOf(practice, round.ids[0]);
  if (danger?.sure) return stop(practice, round, cards, now);
  if (round.phase === 'emergency') {
    if (!practice.words.yes.includes(text.toLowerCase()))
      return { round, cards, parts: [say('emergency.safe-now', undefined, 'emergency')], choices: [] };
    return askNext(practice, { ...round, phase: 'asking' }, cards, [say('emergency.go-on')]);
  }
  if (round.phase === 'paused') return askNext(practice, { ...round, phase: 'asking' }, cards, []);
  if (!card) return askNext(practice, round, cards, []);
  if (said.verb === 'pause' || said.verb === 'done')
    return {
      round: { ...round, phase: 'paused' },
      cards,
      parts: [say('practice.questions.paused')],
      choices: [],
    };
  if (said.verb === 'hint' || said.verb === 'help') return hintFor(practice, round, cards, card);
  return takeAnswer(practice, round, cards, card, text, now);
}

/** One turn of a round of questions: pure and synchronous. */
export function questionTurn(
  practice: Practice,
  round: QuestionRound,
  cards: Cards,
  message: Message,
  now: Date,
): QuestionTurned {
  switch (message.kind) {
    case 'emergency':
      return stop(practice, round, cards, now);
    case 'text':
      return takeText(practice, round, cards, message.text, now);
    case 'choose':
      return takeText(practice, round, cards, message.option, now);
    case 'hello':
    case 'carrier':
      return askNext(practice, { ...round, phase: 'asking' }, cards, [
        ...(round.ids.length > 0 ? [say('practice.questions.intro', { count: round.ids.length })] : []),
      ]);
  }
}
