import type { Token } from './tokens.ts';

const set = (words: string): ReadonlySet<string> => new Set(words.split(' '));

const DENIES = set(
  'no not never nothing nobody none noone without isnt arent wasnt werent aint dont doesnt didnt havent hasnt wont cant cannot neither nor zero',
);
/** "No" and "without" deny a thing only through such words: "no visible smoke", "no sign of fire". */
const BETWEEN_NO = set(
  'visible sign signs of any active actual real more current obvious immediate smell evidence trace or and flames flame fire fires smoke embers sparks open nearby wild big large new one has been told us ordered wildfire order orders warning warnings to',
);
const NO = set('no without zero');
/** After these nothing is denied any more. */
const BREAKS = set(
  'but because so through sure certain only just think know idea until unless yet except cause since theres breathe way wait power stop',
);
const SUPPOSES = set(
  'if unless would could might may would suppose supposing imagine when whenever before after during since ago last once years yesterday history used past possible risk worry worried afraid against prevent preventing maybe',
);
/** How many words back a denial or supposition reaches. */
const REACH = 6;

/** The words before a phrase in its own clause, the nearest first; a comma ends the clause. */
export function clauseBefore(tokens: readonly Token[], first: Token): readonly string[] {
  const at = tokens.indexOf(first);
  const words: string[] = [];
  for (let index = at - 1; index >= 0 && words.length < REACH; index -= 1) {
    const token = tokens[index] as Token;
    if (token.kind === 'mark' && !'-/&'.includes(token.text)) {
      // "No fire, smoke or embers": a comma between things denied together parts nothing.
      const listed = token.text === ',' && BETWEEN_NO.has(tokens[index - 1]?.text ?? '');
      if (!listed) break;
    } else words.push(token.text);
  }
  return words;
}

function isDenied(before: readonly string[]): boolean {
  for (const [distance, word] of before.entries()) {
    if (DENIES.has(word)) {
      if (!NO.has(word)) return !BREAKS.has(before[distance - 1] ?? '');
      return before.slice(0, distance).every((one) => BETWEEN_NO.has(one));
    }
    if (BREAKS.has(word)) return false;
  }
  return false;
}

/** How much a phrase counts after the words before it: 2 sure, 1 doubt, 0 nothing. */
export function weighWords(before: readonly string[], level: number): number {
  if (isDenied(before)) return 0;
  const unsure = before.some(
    (word, at) => (word === 'sure' || word === 'know') && DENIES.has(before[at + 1] ?? ''),
  );
  const supposed = before.some((word) => SUPPOSES.has(word));
  return supposed || unsure ? level - 1 : level;
}
