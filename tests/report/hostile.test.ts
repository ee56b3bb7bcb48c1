import { Marked } from 'marked';
import { describe, expect, it } from 'vitest';
import { renderReport } from '../../src/report/formats.ts';
import { hostile, withTyped } from './hostile.ts';
import { reportOf } from './report-of.ts';

const rendered = (text: string, format: 'text' | 'markdown' | 'html' | 'json', width = 80) => {
  const { report, wording } = reportOf('fernhollow-lane-12', {
    change: withTyped(text),
    notes: [text, text],
  });
  return { output: renderReport(report, wording, format, { width }), report };
};

/** Everything that could steer a screen or turn a line round; a newline alone may stand. */
const steering =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff\u{e0000}-\u{e007f}]/u;

/** Tags that the page and its Markdown are made of. */
const tags = new Set(
  'html head meta title style body main h1 h2 h3 p ul ol li dl div dt dd article span strong em code a bdi table thead tbody tr th td'.split(
    ' ',
  ),
);

function tagsOf(html: string): string[] {
  return [...html.replace(/<!doctype html>/, '').matchAll(/<\/?([a-zA-Z][^\s>/]*)/g)].map(
    ([, tag]) => tag ?? '',
  );
}

const hrefs = (html: string) =>
  [...html.matchAll(/(?:href|src)\s*=\s*"([^"]*)"/g)].map(([, href]) => href ?? '');

describe.each(hostile)('typed text %j', (text) => {
  it('cannot steer a terminal, nor break out of its line, in the text', () => {
    const { output, report } = rendered(text, 'text', 60);
    expect(output).not.toMatch(steering);
    expect(report.notes[0]).not.toMatch(/[\r\n]/);
    expect(output).not.toMatch(/^(?:# heading|- item|> quote|```|\|---)/m);
  });

  it('is no markup in the Markdown', () => {
    const { output } = rendered(text, 'markdown');
    const calm = rendered('calm', 'markdown').output;
    expect(output).not.toMatch(steering);
    const read = (markdown: string) => new Marked({ gfm: true }).parse(markdown) as string;
    const html = read(output);
    expect(tagsOf(html).sort()).toEqual(tagsOf(read(calm)).sort());
    expect(hrefs(html)).toEqual(hrefs(read(calm)));
  });

  it('is no markup in the page', () => {
    const { output } = rendered(text, 'html');
    const calm = rendered('calm', 'html').output;
    expect(output).not.toMatch(steering);
    expect(tagsOf(output).filter((tag) => !tags.has(tag))).toEqual([]);
    expect(tagsOf(output)).toEqual(tagsOf(calm));
    expect(hrefs(output)).toEqual(hrefs(calm));
    expect(output).not.toMatch(/<[^>]*\son\w+\s*=/i);
  });

  it('stays whole as data in the JSON, with every control character written out', () => {
    const { output } = rendered(text, 'json');
    expect(output).not.toMatch(steering);
    expect(JSON.parse(output).answers['about.insurer-asks'].value).toBe(text);
  });
});

it('shows what was typed, in every format', () => {
  const typed = 'Clear 5 feet & <photograph> it *twice*';
  expect(rendered(typed, 'text').output).toContain('Clear 5 feet & <photograph> it *twice*');
  expect(rendered(typed, 'markdown').output).toContain('Clear 5 feet \\& \\<photograph\\> it \\*twice\\*');
  expect(rendered(typed, 'html').output).toContain(
    '<bdi>Clear 5 feet &amp; &lt;photograph&gt; it *twice*</bdi>',
  );
  expect(rendered(typed, 'json').output).toContain(typed);
});
