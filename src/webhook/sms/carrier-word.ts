import type { Message } from '../../conversation/message.ts';

/** Words that carriers reserve, when they are the whole message (common practice of North American carriers, no source). */
const reserved: Readonly<Record<string, 'stop' | 'start' | 'help'>> = {
  stop: 'stop',
  stopall: 'stop',
  'stop all': 'stop',
  unsubscribe: 'stop',
  cancel: 'stop',
  end: 'stop',
  quit: 'stop',
  revoke: 'stop',
  optout: 'stop',
  'opt out': 'stop',
  start: 'start',
  unstop: 'start',
  help: 'help',
  info: 'help',
};

/** The message that a text is: a word of the carriers, or what the person wrote. */
export function messageOfSms(text: string): Message {
  const word =
    reserved[
      text
        .trim()
        .replace(/[.!]+$/u, '')
        .toLowerCase()
    ];
  if (word === 'start') return { kind: 'hello' };
  return word === undefined ? { kind: 'text', text } : { kind: 'carrier', word };
}
