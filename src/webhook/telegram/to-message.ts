import type { Message } from '../../conversation/message.ts';
import { readCallbackData } from './callback-data.ts';
import type { Update } from './update.ts';

/** What an update asks for. */
export type FromChat =
  | { readonly kind: 'message'; readonly chat: number; readonly message: Message }
  /** Nothing that can be read: told by this phrase, nothing is kept. */
  | { readonly kind: 'notice'; readonly chat: number; readonly phrase: string }
  | { readonly kind: 'nothing' };

/** `/start`, `/help@somebot`: the word without its mark; anything else as it is. */
function messageOfText(text: string): Message {
  const command = /^\/([a-z]+)(?:@\w+)?(?:\s|$)/iu.exec(text)?.[1]?.toLowerCase();
  if (command === 'start') return { kind: 'hello' };
  return { kind: 'text', text: command === undefined ? text : command };
}

/** The message of a chat in an update. */
export function fromUpdate({ message, edited_message, callback_query: press }: Update): FromChat {
  if (press) {
    const chat = press.message?.chat.id ?? press.from.id;
    const choice = readCallbackData(press.data ?? '');
    return choice ? { kind: 'message', chat, message: choice } : { kind: 'nothing' };
  }
  if (edited_message) return { kind: 'notice', chat: edited_message.chat.id, phrase: 'webhook.no-edits' };
  if (!message) return { kind: 'nothing' };
  const text = message.text ?? message.caption;
  if (text === undefined) return { kind: 'notice', chat: message.chat.id, phrase: 'webhook.words-only' };
  return { kind: 'message', chat: message.chat.id, message: messageOfText(text) };
}
