import type { LimitInForce } from '../../answers/limits.ts';
import { wordings } from '../../answers/reading/wordings.ts';
import { readLength } from '../../quantities/index.ts';
import type { Practice } from '../practice.ts';
import { contentOf } from '../reading/content.ts';
import { matchIdeas, meant, prepareIdeas } from '../reading/match.ts';
import type { Card } from '../schema/practice-file.ts';
import { pickedChoice } from '../session/pending.ts';

/** The limit a card asks for, as the general rulebook has it. */
export function limitOfCard(practice: Practice, card: Card): LimitInForce | undefined {
  const { flow, index } = practice.programme.checklist;
  return 'limit' in card ? index.limits.get(flow.walk.generalRulebook)?.get(card.limit) : undefined;
}

const hash = (text: string): number =>
  [...text].reduce((value, letter) => (Math.imul(value, 31) + (letter.codePointAt(0) ?? 0)) >>> 0, 11);

/** The choices of a card, in another order each time it comes back, so that their place tells nothing. */
export function optionsInOrder(card: Card, times: number): readonly string[] {
  if (!('options' in card)) return [];
  const ids = card.options.map((option) => option.id);
  const start = (hash(card.id) + times) % ids.length;
  const turned = [...ids.slice(start), ...ids.slice(0, start)];
  return (hash(card.id) >> 3) % 2 === 0 ? turned : turned.reverse();
}

const close = 0.02;

function isMeasure(limit: LimitInForce, text: string): boolean | undefined {
  if (typeof limit.value !== 'number') return undefined;
  const unit = limit.value < 0.3 ? 'in' : 'ft';
  const read = readLength(text, { unsafeEnd: 'low', unit });
  if (read.kind !== 'length') return undefined;
  return Math.abs(read.metres - limit.value) <= close * limit.value;
}

function optionSaid(practice: Practice, card: Card, shown: readonly string[], text: string) {
  if (!('options' in card)) return undefined;
  const { reader } = practice.lexicon;
  const ideas = prepareIdeas(
    card.options.map(({ id, label }) => {
      const stems = wordings(label).flatMap((one) => contentOf(reader, one).stems);
      return { id, core: new Set(stems), weights: new Map(stems.map((stem) => [stem, 1])), names: [stems] };
    }),
  );
  const exact = card.options.find((one) =>
    wordings(one.label).some((label) => label.toLowerCase() === text.toLowerCase()),
  );
  const picked = pickedChoice(text, shown) ?? exact?.id;
  if (picked !== undefined) return picked;
  const matches = meant(matchIdeas(ideas, contentOf(reader, text).stems));
  return matches.length === 1 ? matches[0]?.id : undefined;
}

/** Whether an answer is right; `undefined` when it cannot be read as an answer at all. */
export function readCardAnswer(
  practice: Practice,
  card: Card,
  shown: readonly string[],
  text: string,
): boolean | undefined {
  const unsure =
    practice.words.notSure.includes(text.toLowerCase()) || practice.words.skip.includes(text.toLowerCase());
  if (unsure) return false;
  if ('limit' in card) {
    const limit = limitOfCard(practice, card);
    return limit ? isMeasure(limit, text) : undefined;
  }
  const said = optionSaid(practice, card, shown, text);
  return said === undefined ? undefined : said === card.right;
}
