import type { AnswerSheet } from '../../src/answers/answer.ts';
import type { Checklist } from '../../src/assess/checklist.ts';

/** What people, or those who mean ill, may type: markup, links, control sequences, turned-round text. */
export const hostile = [
  '<script>alert(1)</script>',
  '</dd></dl></main><style>*{display:none}</style><img src=x onerror=alert(1)>',
  '"><svg/onload=alert(1)>&lt;script&gt;',
  '**bold** __strong__ _em_ `code` ~~gone~~',
  '[here](javascript:alert(1)) ![picture](https://evil.example.org/x.png)',
  '](javascript:alert(1)) [ref]: https://evil.example.org',
  '<https://evil.example.org> https://evil.example.org www.evil.example.org a@evil.example.org',
  '\u001b[31mred\u001b[0m \u001b]0;title\u0007 \u001b]8;;https://evil.example.org\u001b\\link\u001b]8;;\u001b\\ \u001b[2J\u001b[H',
  '\u009b31mC1 \u0090q\u009c \u007f \u0000 \u0008\u0008\u0008',
  'first\r\n# heading\n\n- item\n> quote\n\n```\ncode\n\u2028next\u2029',
  'left \u202Etxet denrut\u202C \u2066isolate\u2069 \u200Bzero\uFEFFwidth\u{E0041}',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: what people may type is not a template.
  "{meshMax} {x, plural, other {#}} '{' ${process} {{7*7}} %s",
  '| a | b |\n|---|---|\n1. x\n+ y\n= z\n--- \\',
  'x'.repeat(300),
  '火事と喧嘩は江戸の華'.repeat(12),
] as const;

/** The sheet with a text in every answer that takes typed words. */
export function withTyped(text: string) {
  return (sheet: AnswerSheet, checklist: Checklist): AnswerSheet => {
    const typedIn = [...checklist.index.questions.values()].filter((one) => one.kind === 'text');
    return {
      ...sheet,
      ...Object.fromEntries(typedIn.map(({ id }) => [id, { status: 'given', value: text }])),
    };
  };
}
