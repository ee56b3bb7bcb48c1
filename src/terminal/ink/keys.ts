import type { Key } from 'ink';
import type { Edit } from './editor.ts';

/** What a key press asks for while an answer is made. */
export type DraftCommand =
  | Edit
  | { readonly kind: 'up' | 'down' | 'pageUp' | 'pageDown' | 'nextPage' | 'escape' };

/** What a key press asks for. */
export type Command = DraftCommand | { readonly kind: 'submit' } | { readonly kind: 'interrupt' };

/** The control characters that mean something, alone or inside a paste. */
const controls: ReadonlyMap<string, Command> = new Map<string, Command>([
  ['\r', { kind: 'submit' }],
  ['\n', { kind: 'submit' }],
  ['\u007f', { kind: 'backspace' }],
  ['\b', { kind: 'backspace' }],
  ['\u0003', { kind: 'interrupt' }],
  ['\u0004', { kind: 'interrupt' }],
  ['\u0001', { kind: 'start' }],
  ['\u0005', { kind: 'end' }],
  ['\u0015', { kind: 'clear' }],
  ['\u0017', { kind: 'deleteWord' }],
]);

type NamedKey = Exclude<
  keyof Key,
  'ctrl' | 'meta' | 'shift' | 'super' | 'hyper' | 'capsLock' | 'numLock' | 'eventType'
>;

const named: Readonly<Partial<Record<NamedKey, Command['kind']>>> = {
  return: 'submit',
  // The Backspace key of most terminals is told as `delete`.
  backspace: 'backspace',
  delete: 'backspace',
  upArrow: 'up',
  downArrow: 'down',
  leftArrow: 'left',
  rightArrow: 'right',
  pageUp: 'pageUp',
  pageDown: 'pageDown',
  home: 'start',
  end: 'end',
  tab: 'nextPage',
  escape: 'escape',
};

/**
 * The commands in what one `useInput` call brings: one key, or several at once from a paste or from fast typing,
 * with the line breaks among them.
 */
export function readKeys(input: string, key: Key): readonly Command[] {
  for (const [name, kind] of Object.entries(named)) {
    if (key[name as NamedKey]) return [{ kind } as Command];
  }
  if (key.ctrl) return readControl(input);
  // A sequence that is not known arrives without its escape character; it is no text.
  if (key.meta || /^\[[\d;?<>=]*[~A-Za-z]$/u.test(input)) return [];
  return readText(input);
}

function readControl(letter: string): readonly Command[] {
  if (!/^[a-z]$/u.test(letter)) return [];
  const command = controls.get(String.fromCharCode(letter.charCodeAt(0) - 96));
  return command ? [command] : [];
}

function readText(input: string): readonly Command[] {
  const commands: Command[] = [];
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the control characters are what separates the text
  for (const piece of input.replaceAll('\r\n', '\r').split(/([\u0000-\u001f\u007f-\u009f])/u)) {
    const command = controls.get(piece);
    if (command) commands.push(command);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: any other control character is dropped
    else if (piece !== '' && !/^[\u0000-\u001f\u007f-\u009f]$/u.test(piece))
      commands.push({ kind: 'insert', text: piece });
  }
  return commands;
}
