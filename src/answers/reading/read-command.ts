import type { Words } from '../../flow/schema/words.ts';
import { nearestWords } from './correct-spelling.ts';
import { findMember, findQuestions, findStop, namedQuestion, targetStems } from './find-target.ts';
import { buildPhraseBook, type PhraseBook, phraseAt } from './phrase-book.ts';
import type { Command, NotUnderstood, Reading, ReadingContext } from './reading.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { stemsOf, type Token } from './tokens.ts';

const commands: readonly Command[] = [
  'back',
  'help',
  'why',
  'pause',
  'where',
  'startOver',
  'finish',
  'stop',
  'forget',
];
type Target = 'jump' | 'change' | 'remove';
const targets: readonly Target[] = ['jump', 'change', 'remove'];

interface CommandWords {
  readonly whole: ReadonlyMap<string, Command>;
  readonly wholeTarget: ReadonlyMap<string, Target>;
  readonly starts: PhraseBook<Target>;
  readonly single: readonly string[];
}

const polite = buildPhraseBook(ENGLISH_TALK_WORDS.polite.map((phrase) => [phrase, true] as const));
const cache = new WeakMap<Words, CommandWords>();

function commandWords(words: Words): CommandWords {
  const found = cache.get(words);
  if (found !== undefined) return found;
  const whole = new Map<string, Command>();
  for (const command of commands)
    for (const phrase of words.commands[command]) {
      const key = stemsOf(phrase).join(' ');
      if (!whole.has(key)) whole.set(key, command);
    }
  const phrases = targets.flatMap((target) =>
    [...words.commands[target], ...(target === 'jump' ? ENGLISH_TALK_WORDS.jump : [])].map(
      (phrase) => [phrase, target] as const,
    ),
  );
  const wholeTarget = new Map(phrases.map(([phrase, target]) => [stemsOf(phrase).join(' '), target]));
  // "Black" is no slip of "back".
  const single = [...whole.keys()].filter((key) => !key.includes(' ') && key.length > 3 && key !== 'back');
  const built = { whole, wholeTarget, starts: buildPhraseBook(phrases), single };
  cache.set(words, built);
  return built;
}

/** The words of a message without "can we … please". */
function withoutPolite(words: readonly Token[]): readonly Token[] {
  let from = 0;
  let to = words.length;
  for (let found = phraseAt(polite, words, from); found !== undefined && found.next < to; ) {
    from = found.next;
    found = phraseAt(polite, words, from);
  }
  while (to - 1 > from && phraseAt(polite, words, to - 1)?.next === to) to -= 1;
  return words.slice(from, to);
}

const keyOf = (words: readonly Token[]): string => words.map((token) => token.stem).join(' ');
const spokenOf = (tokens: readonly Token[]): readonly Token[] =>
  tokens.filter((token) => token.kind !== 'mark');

/** A command when the message is that and nothing else. `text` decides for messages of signs only ("?"). */
export function readCommand(tokens: readonly Token[], text: string, words: Words): Reading | undefined {
  const { whole, wholeTarget } = commandWords(words);
  const spoken = spokenOf(tokens);
  const keys = spoken.length === 0 ? [text] : [keyOf(spoken), keyOf(withoutPolite(spoken))];
  for (const key of keys) {
    const command = whole.get(key);
    if (command !== undefined) return { kind: 'command', command };
  }
  for (const key of keys) {
    const target = wholeTarget.get(key);
    if (target === 'change') return { kind: 'change' };
    if (target === 'remove') return { kind: 'remove' };
  }
  return undefined;
}

/** A command in a small misspelling, for when nothing else is understood. */
export function guessCommand(
  tokens: readonly Token[],
  words: Words,
  known: ReadonlySet<string>,
): Reading | undefined {
  const { whole, single } = commandWords(words);
  const spoken = withoutPolite(spokenOf(tokens));
  const [only] = spoken;
  if (spoken.length !== 1 || only === undefined || known.has(only.stem)) return undefined;
  const found = new Set(nearestWords(only.stem, single).map((word) => whole.get(word)));
  const [command] = found;
  return found.size === 1 && command !== undefined ? { kind: 'command', command } : undefined;
}

const unknownStop = (said: string, context: ReadingContext): NotUnderstood => ({
  kind: 'notUnderstood',
  problem: { code: 'unknownStop', said, stops: context.stops.map((stop) => stop.id) },
});

function changeOf(rest: readonly Token[], context: ReadingContext): Reading {
  const stems = rest.map((token) => token.stem);
  if (targetStems(stems).length === 0) return { kind: 'change' };
  const named = namedQuestion(stems, context.questions);
  if (named !== undefined) return { kind: 'change', question: named.id, stop: named.stop };
  const stop = findStop(stems, context.stops);
  if (stop !== undefined) return { kind: 'change', stop };
  const found = findQuestions(stems, context.questions);
  const [only] = found;
  if (found.length === 1 && only !== undefined) return { kind: 'change', question: only.id, stop: only.stop };
  const stops = new Set(found.map((question) => question.stop));
  const [common] = stops;
  if (stops.size === 1 && common !== undefined) return { kind: 'change', stop: common };
  const said = rest.map((token) => token.text).join(' ');
  return {
    kind: 'notUnderstood',
    problem: { code: 'unknownQuestion', said, questions: found.slice(0, 5).map((question) => question.id) },
  };
}

/** "Go to the trees", "change my answer about vents", "remove tree 2"; undefined when it starts with none of these. */
export function readTarget(tokens: readonly Token[], context: ReadingContext): Reading | undefined {
  const { starts } = commandWords(context.words);
  const spoken = withoutPolite(spokenOf(tokens));
  const start = phraseAt(starts, spoken, 0);
  if (start === undefined || start.next >= spoken.length) return undefined;
  const rest = spoken.slice(start.next);
  const said = rest.map((token) => token.text).join(' ');
  switch (start.item) {
    case 'jump': {
      const stop = findStop(
        rest.map((token) => token.stem),
        context.stops,
      );
      return stop === undefined ? unknownStop(said, context) : { kind: 'jump', stop };
    }
    case 'change':
      return changeOf(rest, context);
    case 'remove': {
      const found = findMember(said, context.groups);
      return found === undefined ? undefined : { kind: 'remove', ...found };
    }
    default:
      return start.item satisfies never;
  }
}

/** Where no question is asked, the bare name of a stop leads there. */
export function readStopName(tokens: readonly Token[], context: ReadingContext): Reading | undefined {
  const stop = findStop(
    spokenOf(tokens).map((token) => token.stem),
    context.stops,
  );
  return stop === undefined ? undefined : { kind: 'jump', stop };
}
