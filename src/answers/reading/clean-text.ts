/** The longest message that is read, in characters. */
const MOST_CHARACTERS = 1000;

const ESCAPE = '\\u001b';
const STRING_END = `(?:\\u0007|${ESCAPE}\\\\|\\u009c)?`;
/** Escape sequences of terminals: titles and links, device strings, colours and cursor moves, single letters. */
const ESCAPES = new RegExp(
  [
    `(?:${ESCAPE}[\\]PX^_]|\\u009d)[^\\u0007\\u001b\\u009c]*${STRING_END}`,
    `(?:${ESCAPE}\\[|\\u009b)[0-?]*[ -/]*[@-~]?`,
    `${ESCAPE}[ -/]*[0-~]?`,
  ].join('|'),
  'g',
);
/** Characters that are not seen but change what is: direction overrides, zero-width and tag characters. */
const UNSEEN = /[\p{Cf}\p{Co}\p{Cn}\p{Cs}]/gu;
const SPACE = /[\p{Cc}\p{Z}]+/gu;

const PLAIN: Readonly<Record<string, string>> = {
  '‘': "'",
  '’': "'",
  '‚': "'",
  '‛': "'",
  '′': "'",
  ʼ: "'",
  '`': "'",
  '´': "'",
  '“': '"',
  '”': '"',
  '„': '"',
  '‟': '"',
  '″': '"',
  '‐': '-',
  '‑': '-',
  '‒': '-',
  '–': '-',
  '—': '-',
  '−': '-',
};
const SIGNS = /[‘’‚‛′ʼ`´“”„‟″‐‑‒–—−]/g;
const PLAIN_ALREADY = /^[!-_a-~]+(?: [!-_a-~]+)*$/;

/**
 * A typed text without anything that could steer a screen: no control, escape, direction or unseen characters;
 * quotes and dashes plain, spaces single, composed (NFC), at most `most` characters.
 */
export function cleanText(raw: string, most: number = MOST_CHARACTERS): string {
  if (raw.length <= most && PLAIN_ALREADY.test(raw)) return raw;
  const bounded = raw.length > most * 8 ? raw.slice(0, most * 8) : raw;
  const clean = bounded
    .replace(ESCAPES, ' ')
    .normalize('NFC')
    .replace(UNSEEN, '')
    .replace(SIGNS, (sign) => PLAIN[sign] ?? sign)
    .replace(SPACE, ' ')
    .trim();
  if (clean.length <= most) return clean;
  return Array.from(clean).slice(0, most).join('').trimEnd();
}
