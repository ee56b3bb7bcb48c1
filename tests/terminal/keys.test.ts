import fc from 'fast-check';
import type { Key } from 'ink';
import { describe, expect, it } from 'vitest';
import { edit, editorText, emptyEditor } from '../../src/terminal/ink/editor.ts';
import { readKeys } from '../../src/terminal/ink/keys.ts';

const noKey: Key = {
  upArrow: false,
  downArrow: false,
  leftArrow: false,
  rightArrow: false,
  pageDown: false,
  pageUp: false,
  home: false,
  end: false,
  return: false,
  escape: false,
  ctrl: false,
  shift: false,
  tab: false,
  backspace: false,
  delete: false,
  meta: false,
  super: false,
  hyper: false,
  capsLock: false,
  numLock: false,
};

const insert = (text: string) => ({ kind: 'insert', text });
const kinds = (...names: readonly string[]) => names.map((kind) => ({ kind }));

describe('keys', () => {
  it.each([
    ['a letter', 'y', {}, [insert('y')]],
    ['Enter', '', { return: true }, kinds('submit')],
    ['a line feed', '\n', {}, kinds('submit')],
    ['Backspace told as backspace', '', { backspace: true }, kinds('backspace')],
    ['Backspace told as delete', '', { delete: true }, kinds('backspace')],
    ['an arrow', '', { downArrow: true }, kinds('down')],
    ['Ctrl-C', 'c', { ctrl: true }, kinds('interrupt')],
    ['Ctrl-D', 'd', { ctrl: true }, kinds('interrupt')],
    ['Ctrl-U', 'u', { ctrl: true }, kinds('clear')],
    ['another Ctrl key', 'z', { ctrl: true }, []],
    ['Alt and a letter', 'x', { meta: true }, []],
    ['Escape', '', { escape: true, meta: true }, kinds('escape')],
    ['Tab', '', { tab: true }, [{ kind: 'nextPage' }]],
    ['a sequence nobody knows', '[57358u', {}, []],
    ['a pasted line', 'yes\r', {}, [insert('yes'), { kind: 'submit' }]],
    [
      'two pasted lines',
      'yes\r\nno\n',
      {},
      [insert('yes'), { kind: 'submit' }, insert('no'), { kind: 'submit' }],
    ],
    ['fast Backspaces', 'ab\u007f\u007f', {}, [insert('ab'), { kind: 'backspace' }, { kind: 'backspace' }]],
    ['Ctrl-C in a paste', 'ab\u0003', {}, [insert('ab'), { kind: 'interrupt' }]],
    ['other control characters', 'a\u0007b\u009bc', {}, [insert('a'), insert('b'), insert('c')]],
    ['brackets that are text', '[a] (b)', {}, [insert('[a] (b)')]],
  ])('%s', (_, input, key, expected) => {
    expect(readKeys(input, { ...noKey, ...key })).toEqual(expected);
  });
});

describe('the line being typed', () => {
  const typed = (text: string) => edit(emptyEditor, { kind: 'insert', text });

  it.each(['👩‍👩‍👧', '🇫🇮', 'e\u0301', '❤️', '屋'])('loses %s whole by one Backspace', (character) => {
    expect(edit(typed(`ab${character}`), { kind: 'backspace' })).toEqual({ before: 'ab', after: '' });
  });

  it('is changed where the cursor stands', () => {
    const left = edit(edit(typed('ti👩‍👩‍👧e'), { kind: 'left' }), { kind: 'left' });
    expect(left).toEqual({ before: 'ti', after: '👩‍👩‍👧e' });
    expect(editorText(edit(left, { kind: 'insert', text: 'l' }))).toBe('til👩‍👩‍👧e');
    expect(edit(left, { kind: 'right' })).toEqual({ before: 'ti👩‍👩‍👧', after: 'e' });
    expect(edit(left, { kind: 'start' })).toEqual({ before: '', after: 'ti👩‍👩‍👧e' });
    expect(edit(left, { kind: 'end' }).after).toBe('');
    expect(edit(left, { kind: 'clear' })).toEqual(emptyEditor);
    expect(edit(typed('brown tile  '), { kind: 'deleteWord' }).before).toBe('brown ');
  });

  it('never loses a character by moving', () => {
    const move = fc.constantFrom<'left' | 'right' | 'start' | 'end'>('left', 'right', 'start', 'end');
    const text = fc.string({ unit: fc.constantFrom('a', '👩‍👩‍👧', 'e\u0301', ' '), maxLength: 8 });
    fc.assert(
      fc.property(text, fc.array(move), (start, moves) => {
        const moved = moves.reduce((editor, kind) => edit(editor, { kind }), typed(start));
        expect(editorText(moved)).toBe(start);
      }),
    );
  });
});
