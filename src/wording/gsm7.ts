/** The basic character set of 3GPP TS 23.038 6.2.1, in the order of its codes; code 27 is the escape. */
const basic =
  '@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞ\u001bÆæßÉ !"#¤%&\'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà';
/** Its extension table, 6.2.1.1: each takes two. */
const extended = '\f^{}\\[~]|€';

const single = new Set([...basic].filter((one) => one !== '\u001b'));
const double = new Set(extended);

/** How many septets a character takes; nothing when it is in neither table. */
export function septetsOf(character: string): 1 | 2 | undefined {
  if (single.has(character)) return 1;
  return double.has(character) ? 2 : undefined;
}

/** What a character is written as, so that one of them does not more than halve the room of a whole message. */
const plain: Readonly<Record<string, string>> = {
  '‘': "'",
  '’': "'",
  '‚': "'",
  '“': '"',
  '”': '"',
  '„': '"',
  '–': '-',
  '—': '-',
  '‑': '-',
  '−': '-',
  '…': '...',
  '•': '-',
  '·': '-',
  '×': 'x',
  '°': ' deg',
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '\u00a0': ' ',
  '\u202f': ' ',
  '\u2009': ' ',
  '²': '2',
  '³': '3',
  á: 'a',
  í: 'i',
  ó: 'o',
  ú: 'u',
};

/** The text with characters that are not in the tables written plainly, where that can be done. */
export function toPlainCharacters(text: string): string {
  return [...text].map((one) => (septetsOf(one) === undefined ? (plain[one] ?? one) : one)).join('');
}

/** Whether a text can be sent in septets. */
export function isGsm7(text: string): boolean {
  return [...text].every((one) => septetsOf(one) !== undefined);
}
