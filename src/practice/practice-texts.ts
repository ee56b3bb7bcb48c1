import type { Text } from '../flow/schema/base.ts';
import type { TextId } from '../wording/say.ts';
import type { PracticeContent } from './schema/practice-file.ts';

/** Every text of the practice files under its id, to be laid beside those of the flow. */
export function practiceTexts({ phrases, cards }: PracticeContent): ReadonlyMap<TextId, Text> {
  const ofCards = cards.flatMap((card): [TextId, Text][] => [
    [`card/${card.id}/ask`, card.ask],
    [`card/${card.id}/because`, card.because],
    ...('options' in card
      ? card.options.map((option): [TextId, Text] => [`card/${card.id}/option/${option.id}`, option.label])
      : []),
  ]);
  return new Map([...Object.entries(phrases), ...ofCards]);
}
