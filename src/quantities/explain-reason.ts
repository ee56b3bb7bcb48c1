import type { NotRead } from './read-quantity.ts';

/** Error text for a text that could not be read as a quantity. */
export function explainReason({ reason, detail }: NotRead): string {
  switch (reason) {
    case 'empty':
      return 'nothing was entered';
    case 'noNumber':
      return 'there is no number in it';
    case 'negative':
      return 'it is below zero';
    case 'tooLarge':
      return 'it is larger than can be right';
    case 'tooSmall':
      return 'it is smaller than can be right';
    case 'otherDimension':
      return `the unit ${detail ?? ''} measures something else`.replace('  ', ' ');
    case 'severalValues':
      return 'it holds more than one value';
    case 'ambiguousRatio':
      return 'it is not clear which of the two is the rise; say rise in run, percent or degrees';
    case 'notFinite':
      return 'it is not a number that can be used';
    case 'notUnderstood':
      return detail === undefined ? 'it could not be read' : `the word "${detail}" could not be read`;
    default:
      return reason satisfies never;
  }
}
