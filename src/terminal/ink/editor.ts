import { graphemes } from '../display-width.ts';

/** The line being typed, split where the cursor stands. */
export interface Editor {
  readonly before: string;
  readonly after: string;
}

export const emptyEditor: Editor = { before: '', after: '' };

/** A change of the line; each works on whole characters as people see them. */
export type Edit =
  | { readonly kind: 'insert'; readonly text: string }
  | { readonly kind: 'backspace' | 'left' | 'right' | 'start' | 'end' | 'clear' | 'deleteWord' };

/** Everything on the line. */
export function editorText(editor: Editor): string {
  return editor.before + editor.after;
}

/** The line after one change; a change that cannot be made leaves it as it is. */
export function edit(editor: Editor, change: Edit): Editor {
  const { before, after } = editor;
  switch (change.kind) {
    case 'insert':
      return { before: before + change.text, after };
    case 'backspace':
      return { before: withoutLast(before), after };
    case 'left':
      return { before: withoutLast(before), after: before.slice(withoutLast(before).length) + after };
    case 'right': {
      const first = graphemes(after)[0] ?? '';
      return { before: before + first, after: after.slice(first.length) };
    }
    case 'start':
      return { before: '', after: before + after };
    case 'end':
      return { before: before + after, after: '' };
    case 'clear':
      return emptyEditor;
    case 'deleteWord':
      return { before: before.replace(/\S*\s*$/u, ''), after };
  }
}

function withoutLast(text: string): string {
  return graphemes(text).slice(0, -1).join('');
}
