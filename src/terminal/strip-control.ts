// biome-ignore-start lint/suspicious/noControlCharactersInRegex: these are the characters to be removed
/** Whole control sequences: CSI (`ESC [ … letter`), strings (OSC, DCS, PM, APC, SOS up to their end), two-character escapes. */
const sequences =
  /(?:\u001b\[|\u009b)[0-?]*[ -/]*[@-~]|(?:\u001b[\]PX^_]|[\u0090\u0098\u009d-\u009f])[^\u0007\u001b\u009c]*(?:\u0007|\u001b\\|\u009c|$)|\u001b[ -/]*[0-~]/gu;
const controls = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/gu;
// biome-ignore-end lint/suspicious/noControlCharactersInRegex: as above
/** Characters that turn the direction of the text around them, so that a line could show what it does not say. */
const directions = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/**
 * Text that is safe to show: no control sequence or character can reach the terminal. Line breaks stay, tabs
 * and separators become spaces.
 */
export function stripControl(text: string): string {
  return text
    .replace(/\r\n?|[\u2028\u2029\u0085]/gu, '\n')
    .replaceAll('\t', ' ')
    .replace(sequences, '')
    .replace(controls, '')
    .replace(directions, '');
}

/** The same, on one line. */
export function stripToLine(text: string): string {
  return stripControl(text).replaceAll('\n', ' ');
}
