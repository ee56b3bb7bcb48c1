import type { Answer, AnswerSheet, PlainAnswer } from '../../src/answers/answer.ts';
import type { Ask } from '../../src/conversation/message.ts';

/** A length as it is typed; `said` in feet and inches that read back to the same. */
function lengthText(lengthMetres: number): string {
  const inches = Math.round((lengthMetres / 0.0254) * 16) / 16;
  return inches >= 24 && inches % 12 === 0 ? `${inches / 12} ft` : `${inches} in`;
}

function plainText(ask: Ask, answer: PlainAnswer | undefined): string {
  if (answer?.status === 'skipped') return 'skip';
  if (answer?.status !== 'given') return 'not sure';
  const { value } = answer;
  const numbered = (id: string) => String(ask.choices.find((one) => one.id === id)?.number ?? id);
  if (ask.kind === 'count') return String(Array.isArray(value) ? value.length : value);
  if (typeof value === 'number') {
    if (ask.kind === 'length') return lengthText(value);
    return ask.kind === 'slope' ? `${value} %` : String(value);
  }
  if (ask.kind === 'text') return String(value);
  return typeof value === 'string' ? numbered(value) : value.map(numbered).join(' and ');
}

function bySideText(ask: Ask, answer: Answer | undefined): string {
  const sides = answer?.status === 'bySide' ? answer.sides : {};
  if (ask.kind === 'yesNo') {
    const unsure = ask.sides.filter((side) => sides[side]?.status !== 'given');
    if (unsure.length > 0) return 'not sure';
    const yes = ask.sides.filter((side) => {
      const one = sides[side];
      return one?.status === 'given' && one.value === 'yes';
    });
    return yes.length === 0 ? 'none' : yes.join(' and ');
  }
  const texts = ask.sides.map((side) => plainText(ask, sides[side]));
  // One answer for all sides: a number alone, since "all 4" may be all four of them.
  if (new Set(texts).size === 1) return texts[0] ?? 'not sure';
  return ask.sides.map((side, at) => `${texts[at]} ${side}`).join(', ');
}

/** What a volunteer types for a caller who answers from these answers. */
export function typedFor(ask: Ask, sheet: AnswerSheet): string {
  const answer = sheet[ask.key];
  if (ask.sides.length > 0) return bySideText(ask, answer);
  return plainText(ask, answer?.status === 'bySide' ? undefined : answer);
}
