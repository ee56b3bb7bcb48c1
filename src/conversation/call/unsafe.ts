import { buildPhraseBook, type PhraseBook, phraseAt } from '../../answers/reading/phrase-book.ts';
import { tokenise } from '../../answers/reading/tokens.ts';
import type { Call } from '../../flow/schema/call.ts';
import type { Part } from '../message.ts';
import { say } from '../turned.ts';

interface UnsafeBooks {
  readonly never: PhraseBook<true>;
  readonly unsafe: PhraseBook<string>;
}

const books = new WeakMap<Call, UnsafeBooks>();

function booksOf(call: Call): UnsafeBooks {
  const before = books.get(call);
  if (before) return before;
  const built = {
    never: buildPhraseBook(call.unsafe.flatMap((one) => one.never.map((words) => [words, true] as const))),
    unsafe: buildPhraseBook(call.unsafe.flatMap((one) => one.words.map((words) => [words, one.id] as const))),
  };
  books.set(call, built);
  return built;
}

/** Whether what was typed says that the caller starts something unsafe: the id of what, or nothing. */
export function unsafeIn(call: Call, text: string): string | undefined {
  const { never, unsafe } = booksOf(call);
  const tokens = tokenise(text.toLowerCase());
  for (let at = 0; at < tokens.length; at++) {
    const masked = phraseAt(never, tokens, at);
    if (masked) {
      at = masked.next - 1;
      continue;
    }
    const found = phraseAt(unsafe, tokens, at);
    if (found) return found.item;
  }
  return undefined;
}

/** The line to read out, at once; `any` when it is not known what they do. */
export function stopParts(what: string): Part[] {
  return [say(`call.stop.${what}`, undefined, 'warning'), say('call.stop.then', undefined, 'quiet')];
}
