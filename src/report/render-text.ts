import { type Block, plainWords, type ReportDocument, type Span, type Spans } from './document.ts';
import { gridLines } from './render-grid.ts';
import { cellsOf, wrap } from './wrap.ts';

/** Words of a line; a link shows where it leads. */
function words(spans: Spans): string {
  return spans.map(spanWords).join('');
}

function spanWords(span: Span): string {
  if (span.kind === 'link') {
    const text = plainWords(span.spans);
    return span.href.endsWith(text) ? text : `${text} (${span.href})`;
  }
  return 'spans' in span ? words(span.spans) : span.text;
}

function underlined(text: string, width: number, mark: string): string[] {
  const lines = wrap(text, width);
  return [...lines, mark.repeat(Math.max(...lines.map(cellsOf)))];
}

function rowText(row: readonly Spans[]): string {
  const [first = '', ...rest] = row.map(words).filter((cell) => cell !== '');
  return [first, ...rest].join('; ');
}

function blockLines(block: Block, width: number): string[] {
  switch (block.kind) {
    case 'heading':
      return block.level === 3
        ? wrap(words(block.spans), width)
        : underlined(words(block.spans), width, block.level === 1 ? '=' : '-');
    case 'paragraph':
      return wrap(words(block.spans), width);
    case 'list':
      return block.items.flatMap((item, position) => {
        const mark = block.ordered ? `${position + 1}. ` : '- ';
        return wrap(words(item), width, mark, ' '.repeat(mark.length));
      });
    case 'fields':
      return block.rows.flatMap(({ name, value }) =>
        wrap(`${words(name)}: ${words(value)}`, width, '', '  '),
      );
    case 'caution':
      return wrap(`${words(block.name)}: ${words(block.spans)}`, width, '- ', '  ');
    case 'table':
      return block.rows.flatMap((row) => wrap(rowText(row), width, '- ', '  '));
    case 'grid':
      return gridLines(
        block.head.map(words),
        block.rows.map((row) => row.map(words)),
        width,
      );
    case 'drawing':
      return block.lines.map((line) => line.slice(0, width));
    case 'job':
      return jobLines(block, width);
    default:
      return block satisfies never;
  }
}

function jobLines(job: Block & { kind: 'job' }, width: number): string[] {
  const mark = job.number === undefined ? '* ' : `${job.number}. `;
  const indent = ' '.repeat(Math.min(mark.length, 4));
  const inner = joined(job.blocks, width - indent.length).map((line) => (line === '' ? '' : indent + line));
  return [...wrap(words(job.title), width, mark, indent), ...inner];
}

/** Blocks under one another, an empty line between those of different kinds. */
function joined(blocks: readonly Block[], width: number): string[] {
  return blocks.flatMap((block, position) => {
    const before = blocks[position - 1];
    const close =
      position === 0 ||
      (block.kind === 'caution' && before?.kind === 'caution') ||
      (before?.kind === 'heading' && before.level === 3);
    return [...(close ? [] : ['']), ...blockLines(block, width)];
  });
}

/** A report as plain text for a terminal or a printer, in lines of at most `width` cells (40 to 100). */
export function renderText(document: ReportDocument, width = 80): string {
  const cells = Math.min(100, Math.max(40, Math.floor(width)));
  return `${joined(document.blocks, cells).join('\n')}\n`;
}
