import { cleanText } from './clean-text.ts';
import { meaningOf } from './mark.ts';
import { markTokens } from './mark-tokens.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import type { Message } from './read-answer.ts';
import type { AnswerReading } from './reading.ts';
import { statusOnly } from './value-reading.ts';

/** The longest text that is kept as an answer, in characters. */
export const MOST_TEXT = 500;

/** Reads free text; not sure and skip when the message is that and no more. */
export function readText(message: Message, prepared: PreparedQuestion): AnswerReading {
  const status = statusOnly(meaningOf(markTokens(message.tokens, prepared)));
  if (status !== undefined) return { kind: 'answer', answer: status.answer };
  const value = cleanText(message.text, MOST_TEXT);
  const cut = value.length < message.text.length;
  return {
    kind: 'answer',
    answer: { status: 'given', value },
    ...(cut ? { note: { cutTo: MOST_TEXT } } : {}),
  };
}
