import { nearestWords } from '../../answers/reading/correct-spelling.ts';

/** Something that words may mean, with the words it is known by. */
export interface Idea {
  readonly id: string;
  /** Words of its own sentence, which a trainee may say in full. */
  readonly core: ReadonlySet<string>;
  /** All its words with how much each says for it, in (0, 1]. */
  readonly weights: ReadonlyMap<string, number>;
  /** Short names: all words of one said together mean it. */
  readonly names: readonly (readonly string[])[];
}

/** Ideas of one kind, with how telling each word is among them. */
export interface Ideas {
  readonly list: readonly Idea[];
  readonly rarity: ReadonlyMap<string, number>;
  readonly byWord: ReadonlyMap<string, readonly Idea[]>;
  readonly words: readonly string[];
}

export interface Match {
  readonly id: string;
  /** 1 and more is as good as certain. */
  readonly score: number;
}

/** Prepares ideas: a word that few of them have tells more (inverse document frequency). */
export function prepareIdeas(list: readonly Idea[]): Ideas {
  const byWord = new Map<string, Idea[]>();
  for (const idea of list)
    for (const word of idea.weights.keys()) {
      const known = byWord.get(word);
      if (known) known.push(idea);
      else byWord.set(word, [idea]);
    }
  const rarity = new Map(
    [...byWord].map(([word, ideas]) => [word, Math.log(1 + list.length / ideas.length)] as const),
  );
  return { list, rarity, byWord, words: [...byWord.keys()].filter((word) => word.length >= 4) };
}

const sum = (words: Iterable<string>, rarity: ReadonlyMap<string, number>): number => {
  let total = 0;
  for (const word of words) total += rarity.get(word) ?? 0;
  return total;
};

/** How far an idea is named by its short names alone. */
function nameScore(said: ReadonlySet<string>, idea: Idea, ideas: Ideas, all: number): number {
  let best = 0;
  for (const name of idea.names) {
    if (name.length === 0 || !name.every((word) => said.has(word))) continue;
    best = Math.max(best, all > 0 ? sum(name, ideas.rarity) / all : 0);
  }
  // Said with nothing else, a name is as good as a whole sentence.
  if (best >= 1 - 1e-9) return 2;
  return best === 0 ? 0 : 0.7 + 0.3 * best;
}

/** A sentence of at least so many words, said in full with little else, is meant above all that share words with it. */
const wholeSentence = 2;
const mostOf = 0.75;

function scoreOf(said: ReadonlySet<string>, idea: Idea, ideas: Ideas, all: number): number {
  let covered = 0;
  let common = 0;
  for (const word of said) {
    const rare = ideas.rarity.get(word) ?? 0;
    covered += rare * (idea.weights.get(word) ?? 0);
    if (idea.core.has(word)) common += rare;
  }
  const core = sum(idea.core, ideas.rarity);
  const whole = idea.core.size >= wholeSentence && common >= core - 1e-9 && common >= mostOf * all;
  if (whole) return 1 + common / all;
  const alike = core + all > 0 ? (2 * common) / (core + all) : 0;
  const coverage = all > 0 ? covered / all : 0;
  const score = Math.max(0.7 * coverage + 0.3 * alike, nameScore(said, idea, ideas, all));
  return score;
}

/** Words that no idea knows are put right where that is clear, and otherwise count for nothing. */
function spelled(stems: readonly string[], ideas: Ideas): Set<string> {
  const right = stems.flatMap((stem) => {
    if (ideas.byWord.has(stem)) return [stem];
    const near = stem.length >= 5 ? nearestWords(stem, ideas.words) : [];
    return near.length === 1 ? near : [];
  });
  return new Set(right);
}

const least = 0.35;

/** The ideas that a text may mean, the likeliest first; `prefer` adds to the score of one. */
export function matchIdeas(
  ideas: Ideas,
  stems: readonly string[],
  prefer: (id: string) => number = () => 0,
): Match[] {
  const said = spelled(stems, ideas);
  if (said.size === 0) return [];
  const all = sum(said, ideas.rarity);
  const candidates = new Set([...said].flatMap((word) => ideas.byWord.get(word) ?? []));
  return [...candidates]
    .map((idea) => ({ id: idea.id, bare: scoreOf(said, idea, ideas, all) }))
    .filter(({ bare }) => bare >= least)
    .map(({ id, bare }) => ({ id, score: bare + prefer(id) }))
    .sort((a, b) => b.score - a.score || (a.id < b.id ? -1 : 1));
}

const tooClose = 0.08;

/** The matches that cannot be told apart from the best one; a single one is meant. */
export function meant(matches: readonly Match[]): readonly Match[] {
  const best = matches[0]?.score ?? 0;
  return matches.filter(({ score }) => score > best - tooClose);
}
