import { cleanText } from '../answers/reading/clean-text.ts';
import type { Message } from './message.ts';
import type { Programme } from './programme.ts';
import { readFor } from './read.ts';
import type { WalkRecord } from './record.ts';

/**
 * Whoever writes before anything was asked is greeted, whatever they wrote: it answers no question yet.
 * Words of danger are taken as they are.
 */
export function greetingInstead(programme: Programme, record: WalkRecord, message: Message): Message {
  if (record.revision > 0 || message.kind !== 'text') return message;
  const reading = readFor(programme.checklist, record, undefined, cleanText(message.text));
  return reading.kind === 'emergency' ? message : { kind: 'hello' };
}
