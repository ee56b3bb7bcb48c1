import type { Block, ReportDocument, Span, Spans } from './document.ts';
import { plainWords } from './document.ts';
import { pageStyle, styleHash } from './page-style.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const safe = (text: string) => text.replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? '');

function spanHtml(span: Span): string {
  switch (span.kind) {
    case 'text':
      return safe(span.text);
    case 'typed':
      // What people typed may run in another direction: it must not turn the line round.
      return `<bdi>${safe(span.text)}</bdi>`;
    case 'code':
      return `<code>${safe(span.text)}</code>`;
    case 'strong':
    case 'em':
      return `<${span.kind}>${words(span.spans)}</${span.kind}>`;
    case 'link':
      return `<a href="${safe(span.href)}" rel="noreferrer">${words(span.spans)}</a>`;
    default:
      return span satisfies never;
  }
}

const words = (spans: Spans) => spans.map(spanHtml).join('');

function tableHtml({ head, rows }: Block & { kind: 'table' | 'grid' }): string {
  const top = head.map((cell) => `<th scope="col">${words(cell)}</th>`).join('');
  const body = rows
    .map((row) => `<tr>${row.map((cell) => `<td>${words(cell)}</td>`).join('')}</tr>`)
    .join('\n');
  return `<div class="wide" tabindex="0" role="region" aria-label="${safe(plainWords(head[0] ?? []))}"><table>\n<thead><tr>${top}</tr></thead>\n<tbody>\n${body}\n</tbody>\n</table></div>`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h${block.level}>${words(block.spans)}</h${block.level}>`;
    case 'paragraph':
      return `<p${block.tone === 'plain' ? '' : ` class="${block.tone}"`}>${words(block.spans)}</p>`;
    case 'list': {
      const tag = block.ordered ? 'ol' : 'ul';
      return `<${tag}>\n${block.items.map((item) => `<li>${words(item)}</li>`).join('\n')}\n</${tag}>`;
    }
    case 'fields':
      return `<dl>\n${block.rows.map(({ name, value }) => `<div><dt>${words(name)}</dt><dd>${words(value)}</dd></div>`).join('\n')}\n</dl>`;
    case 'caution':
      return `<p class="caution"><strong>${words(block.name)}.</strong> ${words(block.spans)}</p>`;
    case 'table':
    case 'grid':
      return tableHtml(block);
    case 'drawing':
      return '';
    case 'job': {
      const number = block.number === undefined ? '' : `<span class="number">${block.number}.</span> `;
      return `<article>\n<h3>${number}${words(block.title)}</h3>\n${block.blocks.map(blockHtml).join('\n')}\n</article>`;
    }
    default:
      return block satisfies never;
  }
}

/** A report as one HTML page that holds everything it needs: no scripts, nothing fetched. */
export function renderHtml(document: ReportDocument): string {
  return `<!doctype html>
<html lang="${safe(document.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src '${styleHash}'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="color-scheme" content="light dark">
<title>${safe(plainWords(document.title))}</title>
<style>${pageStyle}</style>
</head>
<body>
<main>
${document.blocks.map(blockHtml).join('\n')}
</main>
</body>
</html>
`;
}
