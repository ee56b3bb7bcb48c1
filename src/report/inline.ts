import { Lexer, type MarkedToken, type Token } from 'marked';
import type { Span, Spans } from './document.ts';

/** Links that lead out of a report; any other is shown as its words only. */
const ALLOWED = /^(?:https:\/\/|mailto:)/i;

function spansOf(tokens: readonly Token[]): Span[] {
  return tokens.flatMap((token) => spanOf(token as MarkedToken));
}

function spanOf(token: MarkedToken): Span[] {
  switch (token.type) {
    case 'strong':
      return [{ kind: 'strong', spans: spansOf(token.tokens) }];
    case 'em':
      return [{ kind: 'em', spans: spansOf(token.tokens) }];
    case 'codespan':
      return [{ kind: 'code', text: token.text }];
    case 'link':
      return ALLOWED.test(token.href)
        ? [{ kind: 'link', href: token.href, spans: spansOf(token.tokens) }]
        : spansOf(token.tokens);
    case 'br':
      return [{ kind: 'text', text: ' ' }];
    case 'text':
    case 'escape':
      return [{ kind: 'text', text: token.text }];
    default:
      // Raw HTML, images and whatever else Markdown knows have no place in a sentence of a flow.
      return [];
  }
}

/** A sentence of the flow with its light Markdown as spans. Text that people typed must never come here. */
export function inline(sentence: string): Spans {
  return spansOf(Lexer.lexInline(sentence));
}
