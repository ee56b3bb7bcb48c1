import type { Reading, ReadingContext } from './reading.ts';

/**
 * Reads what a person typed or said: an emergency before anything else, then an answer to the question, then a
 * command. Never throws, whatever the text.
 */
export function readMessage(text: string, context: ReadingContext): Reading {
  if (text.trim() === '') return { kind: 'notUnderstood', problem: { code: 'empty' } };
  return {
    kind: 'notUnderstood',
    problem: { code: context.question === undefined ? 'noQuestion' : 'noMatch' },
  };
}
