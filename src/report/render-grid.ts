import { wrap } from './wrap.ts';

const gap = 2;
const leastFirst = 20;

const pad = (text: string, width: number) => ' '.repeat(Math.max(0, width - text.length)) + text;

/** Columns do not fit: each row is a line of its own, each cell with its heading. */
function asList(head: readonly string[], rows: readonly (readonly string[])[], width: number): string[] {
  return rows.flatMap(([first = '', ...rest]) => {
    const cells = rest.map((cell, at) => `${head[at + 1] ?? ''}: ${cell}`);
    return wrap([first, ...cells].join('; '), width, '- ', '  ');
  });
}

/** A table in columns for a terminal: the first column takes the room that is left, the others stand to the right. */
export function gridLines(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  width: number,
): string[] {
  const widths = head.map((name, at) =>
    Math.max(...name.split(' ').map((word) => word.length), ...rows.map((row) => row[at]?.length ?? 0)),
  );
  const others = widths.slice(1).reduce((sum, one) => sum + one + gap, 0);
  const first = width - others;
  if (first < leastFirst) return asList(head, rows, width);
  const rowLines = (row: readonly string[], top: boolean) => {
    const cells = row.map((cell, at) => wrap(cell, at === 0 ? first : (widths[at] ?? 1)));
    const height = Math.max(1, ...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, line) =>
      cells
        .map((lines, at) => {
          const text = (top ? lines[line - height + lines.length] : lines[line]) ?? '';
          return at === 0 ? text.padEnd(first) : ' '.repeat(gap) + pad(text, widths[at] ?? 1);
        })
        .join('')
        .trimEnd(),
    );
  };
  return [...rowLines(head, true), ...rows.flatMap((row) => rowLines(row, false))];
}

const cell = (text: string) => text.replaceAll('|', '\\|');

/** A table in the Markdown that knows tables (GitHub's). */
export function gridMarkdown(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map(cell).join(' | ')} |`;
  const rule = `| ${head.map((_, at) => (at === 0 ? '---' : '--:')).join(' | ')} |`;
  return [line(head), rule, ...rows.map(line)].join('\n');
}
