/** A piece of a line. `typed` is what a person wrote: it is shown, and never read as markup. */
export type Span =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'typed'; readonly text: string }
  | { readonly kind: 'code'; readonly text: string }
  | { readonly kind: 'strong' | 'em'; readonly spans: Spans }
  | { readonly kind: 'link'; readonly href: string; readonly spans: Spans };
export type Spans = readonly Span[];

export interface Field {
  readonly name: Spans;
  readonly value: Spans;
}

/** A part of a document, before it becomes text, Markdown or HTML. */
export type Block =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly spans: Spans }
  | { readonly kind: 'paragraph'; readonly tone: 'plain' | 'first' | 'quiet'; readonly spans: Spans }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly Spans[] }
  | { readonly kind: 'fields'; readonly rows: readonly Field[] }
  /** A job of the list; without a number where it is not ranked. */
  | {
      readonly kind: 'job';
      readonly number: number | undefined;
      readonly title: Spans;
      readonly blocks: readonly Block[];
    }
  | { readonly kind: 'caution'; readonly name: Spans; readonly spans: Spans }
  | { readonly kind: 'table'; readonly head: readonly Spans[]; readonly rows: readonly (readonly Spans[])[] }
  /** A table of short cells, the first one words: stands in columns in every format. */
  | { readonly kind: 'grid'; readonly head: readonly Spans[]; readonly rows: readonly (readonly Spans[])[] }
  /** Lines drawn with plain characters, for terminals; other formats have the numbers beside it. */
  | { readonly kind: 'drawing'; readonly lines: readonly string[] };

/** A whole report, ready to be rendered. */
export interface ReportDocument {
  readonly title: Spans;
  readonly language: string;
  readonly blocks: readonly Block[];
}

/** The words of a line without any mark. */
export function plainWords(spans: Spans): string {
  return spans.map((span) => ('spans' in span ? plainWords(span.spans) : span.text)).join('');
}
