import type { Flow, Question } from '../../flow/flow.ts';
import type { Stop } from '../../flow/schema/file.ts';
import { nearestWords } from './correct-spelling.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { stemsOf } from './tokens.ts';
import { wordings } from './wordings.ts';

const about = new Set(ENGLISH_TALK_WORDS.aboutTarget.flatMap(stemsOf));

/** The words of a target without "my answer about the". */
export function targetStems(stems: readonly string[]): readonly string[] {
  return stems.filter((stem) => !about.has(stem));
}

interface StopNames {
  readonly byName: ReadonlyMap<string, string>;
  readonly words: readonly string[];
}

const stopCache = new WeakMap<readonly Stop[], StopNames>();

function stopNames(stops: readonly Stop[]): StopNames {
  const found = stopCache.get(stops);
  if (found !== undefined) return found;
  const byName = new Map<string, string>();
  for (const stop of stops) {
    for (const name of [stop.id, ...wordings(stop.title), ...stop.words]) {
      for (const stems of [stemsOf(name), targetStems(stemsOf(name))]) {
        const key = stems.join(' ');
        if (key !== '' && !byName.has(key)) byName.set(key, stop.id);
      }
    }
  }
  const built = { byName, words: [...byName.keys()].filter((key) => !key.includes(' ')) };
  stopCache.set(stops, built);
  return built;
}

/** The stop that is named by these words, small misspellings included. */
export function findStop(stems: readonly string[], stops: readonly Stop[]): string | undefined {
  const { byName, words } = stopNames(stops);
  const exact = byName.get(stems.join(' ')) ?? byName.get(targetStems(stems).join(' '));
  if (exact !== undefined) return exact;
  const kept = targetStems(stems);
  const [only] = kept;
  if (kept.length !== 1 || only === undefined) return undefined;
  const ids = new Set(nearestWords(only, words).map((word) => byName.get(word)));
  return ids.size === 1 ? [...ids][0] : undefined;
}

interface QuestionWords {
  readonly question: Question;
  readonly names: readonly string[];
  readonly named: ReadonlySet<string>;
  readonly asked: ReadonlySet<string>;
}

const questionCache = new WeakMap<readonly Question[], readonly QuestionWords[]>();

function questionWords(questions: readonly Question[]): readonly QuestionWords[] {
  const found = questionCache.get(questions);
  if (found !== undefined) return found;
  const built = questions.map((question) => {
    const id = stemsOf(question.id.replace(/[.-]/g, ' '));
    const short = targetStems(stemsOf(question.short ?? ''));
    const told = [
      ...wordings(question.ask),
      ...(question.options ?? []).flatMap((one) => wordings(one.label)),
    ];
    const names = [id, short].map((stems) => stems.join(' ')).filter((name) => name !== '');
    return { question, names, named: new Set([...id, ...short]), asked: new Set(told.flatMap(stemsOf)) };
  });
  questionCache.set(questions, built);
  return built;
}

function best(kept: readonly string[], words: readonly QuestionWords[]): readonly Question[] {
  let most = 0;
  let found: Question[] = [];
  for (const one of words) {
    const scores: number[] = kept.map((stem) => (one.named.has(stem) ? 3 : one.asked.has(stem) ? 1 : 0));
    if (scores.includes(0)) continue;
    const score = scores.reduce((sum, part) => sum + part, 0);
    if (score > most) found = [];
    if (score >= most) found.push(one.question);
    most = Math.max(most, score);
  }
  return found;
}

/** The question that has exactly this name, by its short name or its id ("roof covering"). */
export function namedQuestion(
  stems: readonly string[],
  questions: readonly Question[],
): Question | undefined {
  const name = targetStems(stems).join(' ');
  const found = questionWords(questions).filter((one) => one.names.includes(name));
  return found.length === 1 ? found[0]?.question : undefined;
}

/** The questions that these words may mean, by their names and by what they ask. */
export function findQuestions(stems: readonly string[], questions: readonly Question[]): readonly Question[] {
  const kept = targetStems(stems);
  return kept.length === 0 ? [] : best(kept, questionWords(questions));
}

/** A member by its key ("t2"), its number ("tree 2", "the second tree"); without a number, the group alone. */
export function findMember(
  text: string,
  groups: Flow['groups'],
): { readonly group: string; readonly member?: string } | undefined {
  const stems = targetStems(stemsOf(text));
  for (const group of groups) {
    const names = new Set([...stemsOf(group.one), ...stemsOf(group.many), group.keyLetter]);
    if (!stems.some((stem) => names.has(stem))) continue;
    const others = stems.filter((stem) => !names.has(stem) && stem !== 'number');
    if (others.length === 0) return { group: group.id };
    const number = others.length === 1 ? numberOf(others[0] ?? '') : undefined;
    if (number !== undefined) return { group: group.id, member: `${group.keyLetter}${number}` };
  }
  return undefined;
}

const numbers = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

function numberOf(stem: string): number | undefined {
  if (/^\d{1,2}(?:st|nd|rd|th)?$/.test(stem)) return Number.parseInt(stem, 10);
  const ordinal = ENGLISH_TALK_WORDS.ordinals.indexOf(stem);
  const place = ordinal >= 0 ? ordinal : numbers.indexOf(stem);
  return place >= 0 ? place + 1 : undefined;
}
