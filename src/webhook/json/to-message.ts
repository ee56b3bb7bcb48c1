import type { Message } from '../../conversation/message.ts';
import type { MessageBody } from './schemas.ts';

/** The message that a body means. */
export function toMessage(body: MessageBody): Message {
  if ('text' in body) return { kind: 'text', text: body.text };
  if ('choose' in body) return { kind: 'choose', ...body.choose };
  return 'emergency' in body ? { kind: 'emergency' } : { kind: 'hello' };
}
