import type { Message } from '../../conversation/message.ts';

/** Most bytes that a button may carry. */
export const mostBytes = 64;

/** What a button carries: the revision that showed it, its question and its option; nothing when that is too long. */
export function callbackData(revision: number, key: string, option: string): string | undefined {
  const data = `${revision} ${key} ${option}`;
  return Buffer.byteLength(data) <= mostBytes ? data : undefined;
}

/** The press that a button's data means; nothing when it was not made here. */
export function readCallbackData(data: string): (Message & { kind: 'choose' }) | undefined {
  const parts = /^(\d{1,9}) (\S+) (.+)$/u.exec(data);
  if (!parts) return undefined;
  const [, revision = '', key = '', option = ''] = parts;
  return { kind: 'choose', key, option, revision: Number(revision) };
}
