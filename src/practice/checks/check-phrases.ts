import { optionIds } from '../../flow/checks/check-condition.ts';
import { duplicateIds, type Lookup } from '../../flow/checks/references.ts';
import { didYouMean, nearest } from '../../flow/did-you-mean.ts';
import { type Located, problemAt } from '../../flow/located.ts';
import type { FlowProblem } from '../../flow/problem.ts';
import { temperNames } from '../schema/practice-file.ts';
import type { PracticeParts } from './practice-parts.ts';

interface Needed {
  readonly phrase: string;
  /** Where the thing stands that needs the phrase. */
  readonly at: Located<unknown>;
  readonly inside: readonly (string | number)[];
}

/** What is named in practice files brings its own phrase. */
function neededByParts(parts: PracticeParts): Needed[] {
  return [
    ...parts.houses.flatMap((house) =>
      house.item.distractors.map(({ id }, index) => ({
        phrase: `practice.distractor/${id}`,
        at: house,
        inside: ['distractors', index, 'id'],
      })),
    ),
    ...parts.words.flatMap((words) =>
      (['unsafe', 'wrongAdvice'] as const).flatMap((key) =>
        words.item[key].map(({ id }, index) => ({
          phrase: `practice.${key === 'unsafe' ? 'unsafe' : 'wrong'}/${id}`,
          at: words,
          inside: [key, index, 'id'],
        })),
      ),
    ),
  ];
}

/** What stands in the flow or the program is missed where the phrases begin. */
function neededByFlow(parts: PracticeParts, lookup: Lookup): Needed[] {
  const [first] = parts.phrases;
  if (!first) return [];
  const at = { ...first, path: ['phrases'] };
  const ids = [
    ...[...lookup.cautions].map((id) => `practice.caution/${id}`),
    ...[...lookup.stops].map((id) => `practice.risk/${id}`),
    ...temperNames.map((id) => `practice.opening.temper/${id}`),
  ];
  return ids.map((phrase) => ({ phrase, at, inside: [] }));
}

function checkSight(phrase: PracticeParts['phrases'][number], lookup: Lookup): FlowProblem[] {
  const [kind, id = '', option = ''] = phrase.item.id.split('/');
  if (kind !== 'practice.sight') return [];
  const question = lookup.questions.get(id);
  if (!question)
    return [problemAt(phrase, [], `there is no question "${id}".`, didYouMean(id, lookup.questions.keys()))];
  const options = optionIds(question);
  if (options.includes(option)) return [];
  const suggestion = didYouMean(option, options) ?? `It has: ${options.join(', ')}.`;
  return [problemAt(phrase, [], `"${id}" has no option "${option}".`, suggestion)];
}

/** The phrase that was probably written for a missing one. */
function perhaps(phrase: string, unused: readonly string[]): string | undefined {
  const [kind] = phrase.split('/');
  const written = nearest(
    phrase,
    unused.filter((id) => id.startsWith(`${kind}/`)),
  );
  return written === undefined ? undefined : `Is "${written}" meant to be it?`;
}

/** Phrases that are missing, that stand twice, or that describe what no question has. */
export function checkPhrases(parts: PracticeParts, lookup: Lookup): FlowProblem[] {
  const known = new Set(parts.phrases.map(({ item }) => item.id));
  const needed = [...neededByParts(parts), ...neededByFlow(parts, lookup)];
  const unused = [...known].filter((id) => !needed.some(({ phrase }) => phrase === id));
  return [
    ...duplicateIds('phrase', parts.phrases),
    ...needed
      .filter(({ phrase }) => !known.has(phrase))
      .map(({ phrase, at, inside }) =>
        problemAt(at, inside, `there is no phrase "${phrase}".`, perhaps(phrase, unused)),
      ),
    ...parts.phrases.flatMap((phrase) => checkSight(phrase, lookup)),
  ];
}
