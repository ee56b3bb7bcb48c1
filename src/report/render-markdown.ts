import type { Block, ReportDocument, Span, Spans } from './document.ts';
import { gridMarkdown } from './render-grid.ts';

/** Sentences of the flow: only what Markdown would read as markup inside a line. */
const sentence = (text: string) => text.replace(/[\\`*_[\]<>&~|]/g, '\\$&');

/** What people typed: every mark, so that not even a link by itself comes of it. */
const typedText = (text: string) => text.replace(/[!-/:-@[-`{-~]/g, '\\$&');

function spanText(span: Span): string {
  switch (span.kind) {
    case 'text':
      return sentence(span.text);
    case 'typed':
      return typedText(span.text);
    case 'code':
      return sentence(span.text);
    case 'strong':
      return `**${words(span.spans)}**`;
    case 'em':
      return `*${words(span.spans)}*`;
    case 'link':
      return `[${words(span.spans)}](<${span.href.replace(/[<>\\\s]/g, encodeURIComponent)}>)`;
    default:
      return span satisfies never;
  }
}

function words(spans: Spans): string {
  return spans.map(spanText).join('').replace(/\s+/g, ' ').trim();
}

/** A line that starts like a list, a heading or a rule is none. */
const line = (text: string) => text.replace(/^(\d+)([.)])/, '$1\\$2').replace(/^([#+\-=])/, '\\$1');

function blockText(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `${'#'.repeat(block.level)} ${words(block.spans)}`;
    case 'paragraph':
      return block.tone === 'first' ? `**${words(block.spans)}**` : line(words(block.spans));
    case 'list':
      return block.items
        .map((item, position) => `${block.ordered ? `${position + 1}.` : '-'} ${line(words(item))}`)
        .join('\n');
    case 'fields':
      return block.rows.map(({ name, value }) => `- **${words(name)}:** ${words(value)}`).join('\n');
    case 'caution':
      return `- **${words(block.name)}:** ${words(block.spans)}`;
    case 'table':
      return block.rows.map((row) => `- ${row.map(words).filter(Boolean).join('; ')}`).join('\n');
    case 'grid':
      return gridMarkdown(
        block.head.map(words),
        block.rows.map((row) => row.map(words)),
      );
    case 'drawing':
      return '';
    case 'job': {
      const title = `### ${block.number === undefined ? '' : `${block.number}. `}${words(block.title)}`;
      return [title, ...block.blocks.map(blockText)].join('\n\n');
    }
    default:
      return block satisfies never;
  }
}

/** A report as CommonMark. */
export function renderMarkdown(document: ReportDocument): string {
  const blocks = document.blocks.filter((block) => block.kind !== 'drawing');
  const parts = blocks.map((block, position) => {
    const before = blocks[position - 1];
    const close = block.kind === 'caution' && before?.kind === 'caution';
    return (position === 0 ? '' : close ? '\n' : '\n\n') + blockText(block);
  });
  return `${parts.join('')}\n`;
}
