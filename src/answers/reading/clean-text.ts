/** The longest message that is read, in characters. */
export const MOST_CHARACTERS = 1000;

/** Escape sequences of terminals: titles and links, device strings, colours and cursor moves, single letters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const ESCAPES = /[\x1b\x9d]\][^\x07\x1b\x9c]*(?:\x07|\x1b\\|\x9c)?|(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]?|\x1b[PX^_][^\x1b\x9c]*(?:\x1b\\|\x9c)?|\x1b[ -/]*[0-~]?/g;
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
