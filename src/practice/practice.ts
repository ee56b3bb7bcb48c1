import type { Programme } from '../conversation/programme.ts';
import type { Words } from '../flow/schema/words.ts';
import { type HouseMaker, prepareHouseMaker } from './house/house-maker.ts';
import { type FindingFacts, findingFacts } from './key/finding-facts.ts';
import { createContentReader } from './reading/content.ts';
import { buildLexicon, type Lexicon } from './reading/ideas.ts';
import { buildVerbBook, type VerbBook } from './reading/verb.ts';
import type { PracticeContent } from './schema/practice-file.ts';

/** Everything a practice session needs besides its state and a message: frozen, built once. */
export interface Practice {
  readonly programme: Programme;
  readonly content: PracticeContent;
  readonly words: Words;
  readonly facts: ReadonlyMap<string, FindingFacts>;
  readonly maker: HouseMaker;
  readonly lexicon: Lexicon;
  readonly verbs: VerbBook;
  readonly askOnly: ReadonlySet<string>;
}

/** Builds the practice of a programme from checked practice files. */
export function buildPractice(programme: Programme, content: PracticeContent): Practice {
  const { checklist } = programme;
  const { flow } = checklist;
  const words = flow.words[flow.walk.language];
  if (!words) throw new Error(`The flow has no words for "${flow.walk.language}".`);
  const reader = createContentReader(words, content.words);
  return {
    programme,
    content,
    words,
    facts: findingFacts(flow),
    maker: prepareHouseMaker(checklist, content.house),
    lexicon: buildLexicon(reader, flow, content),
    verbs: buildVerbBook(words, content.words),
    askOnly: new Set(content.words.askOnly),
  };
}
