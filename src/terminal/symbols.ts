/** Every character of the terminal's own that is more than a letter; each has a fallback in ASCII. */
export interface Symbols {
  readonly prompt: string;
  readonly pointer: string;
  readonly chosen: string;
  readonly notChosen: string;
  readonly done: string;
  readonly here: string;
  readonly ahead: string;
  readonly above: string;
  readonly below: string;
  /** Fills the part of the drawing where the walk is. */
  readonly fill: string;
  readonly cut: string;
}

export const unicodeSymbols: Symbols = {
  prompt: '>',
  pointer: '❯',
  chosen: '[x]',
  notChosen: '[ ]',
  done: '●',
  here: '▶',
  ahead: '○',
  above: '↑',
  below: '↓',
  fill: '█',
  cut: '…',
};

export const asciiSymbols: Symbols = {
  prompt: '>',
  pointer: '>',
  chosen: '[x]',
  notChosen: '[ ]',
  done: '#',
  here: '>',
  ahead: '-',
  above: '^',
  below: 'v',
  fill: '#',
  cut: '~',
};

/** ASCII where the locale is not UTF-8 or the screen is the bare Linux console, whose font has few characters. */
export function chooseSymbols(env: Readonly<Record<string, string | undefined>>, platform: string): Symbols {
  if (env.TERM === 'linux') return asciiSymbols;
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
  if (/utf-?8/i.test(locale)) return unicodeSymbols;
  if (locale === '' && platform === 'darwin') return unicodeSymbols;
  // Windows Terminal says so; the old console shows question marks.
  return platform === 'win32' && env.WT_SESSION !== undefined ? unicodeSymbols : asciiSymbols;
}
