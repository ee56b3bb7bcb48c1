import { wordings } from '../../answers/reading/wordings.ts';
import type { Flow } from '../../flow/flow.ts';
import type { Text } from '../../flow/schema/base.ts';
import type { RawCondition } from '../../flow/schema/condition.ts';
import type { PracticeContent } from '../schema/practice-file.ts';
import { type ContentReader, contentOf } from './content.ts';
import { type Idea, type Ideas, prepareIdeas } from './match.ts';

/** Everything that a trainee can name. */
export interface Lexicon {
  readonly reader: ContentReader;
  readonly questions: Ideas;
  readonly findings: Ideas;
  readonly actions: Ideas;
  readonly cautions: Ideas;
  /** The words with which jobs begin: said first, a job is meant and no finding. */
  readonly doing: ReadonlySet<string>;
}

const withoutPlaces = (text: string) => text.replace(/\{[^}]*\}/g, ' ');

interface Source {
  readonly id: string;
  readonly core: readonly string[];
  readonly more: readonly string[];
  readonly names: readonly string[];
}

function ideaOf(reader: ContentReader, { id, core, more, names }: Source): Idea {
  const stemsIn = (text: string) => contentOf(reader, withoutPlaces(text)).stems;
  const weights = new Map<string, number>();
  const add = (texts: readonly string[], weight: number) => {
    for (const text of texts)
      for (const stem of stemsIn(text)) weights.set(stem, Math.max(weight, weights.get(stem) ?? 0));
  };
  add([...core, ...names], 1);
  add([id.replaceAll(/[.-]/g, ' ')], 0.8);
  add(more, 0.6);
  const whole = new Set(core.flatMap(stemsIn));
  return { id, core: whole, weights, names: names.map(stemsIn) };
}

function optionsIn(condition: RawCondition): { question: string; option: string }[] {
  const inside = [
    ...(condition.all ?? []),
    ...(condition.any ?? []),
    ...(condition.where ? [condition.where] : []),
  ];
  const values = condition.oneOf ?? (condition.is === undefined ? [] : [condition.is]);
  const own = values.map((value) => ({ question: condition.question ?? '', option: String(value) }));
  return [...own, ...inside.flatMap(optionsIn)];
}

/** The words people use for the answers that make a finding. */
function answerWords(flow: Flow, when: RawCondition): string[] {
  return optionsIn(when).flatMap(({ question, option }) => {
    const asked = flow.questions.find((one) => one.id === question);
    const found = asked?.options?.find((one) => one.id === option);
    return found ? [...wordings(found.label), ...found.words] : [];
  });
}

const first = (text: Text): string[] => wordings(text).slice(0, 1);

function questionIdeas(reader: ContentReader, flow: Flow, content: PracticeContent): Ideas {
  return prepareIdeas(
    flow.questions.map((one) =>
      ideaOf(reader, {
        id: one.id,
        core: one.short === undefined ? first(one.ask) : [one.short],
        more: [...first(one.ask), ...(one.options ?? []).flatMap((option) => first(option.label))],
        names: [...(one.short === undefined ? [] : [one.short]), ...(content.words.questions[one.id] ?? [])],
      }),
    ),
  );
}

/** Gathers all that can be named, in the flow's own words and those of the practice files. */
export function buildLexicon(reader: ContentReader, flow: Flow, content: PracticeContent): Lexicon {
  const { words, phrases } = content;
  const shortOf = (id: string) => {
    const text = phrases[`practice.caution/${id}`];
    return text === undefined ? [] : first(text);
  };
  const doing = words.doing.flatMap((text) => contentOf(reader, text).stems.slice(0, 1));
  return {
    reader,
    doing: new Set(doing),
    questions: questionIdeas(reader, flow, content),
    findings: prepareIdeas(
      flow.findings.map((one) =>
        ideaOf(reader, {
          id: one.id,
          core: first(one.say),
          more: answerWords(flow, one.when),
          names: words.findings[one.id] ?? [],
        }),
      ),
    ),
    actions: prepareIdeas(
      flow.actions.map((one) =>
        ideaOf(reader, { id: one.id, core: first(one.do), more: [], names: words.actions[one.id] ?? [] }),
      ),
    ),
    cautions: prepareIdeas(
      flow.cautions.map((one) =>
        ideaOf(reader, {
          id: one.id,
          core: first(one.say),
          more: [],
          names: [...(words.cautions[one.id] ?? []), ...shortOf(one.id), ...one.words],
        }),
      ),
    ),
  };
}
