import { readBound } from '../../flow/bound.ts';
import type { Question } from '../../flow/flow.ts';
import { stemsOf } from './tokens.ts';
import { wordings } from './wordings.ts';

/** An option, a pick of a measure, or one of yes and no. */
export interface PreparedOption {
  readonly id: string;
  readonly alone: boolean;
  /** Of a pick, in base units. */
  readonly value?: number;
  readonly phrases: readonly string[];
}

/** The kinds of question that a measure answers. */
export const measuredKinds: ReadonlySet<string> = new Set(['length', 'number', 'slope']);

/** A label up to its first colon, comma or bracket: "Closed in" of "Closed in: a flat board". */
function headOf(label: string): string | undefined {
  const head = label.split(/[:,(;]/)[0]?.trim() ?? '';
  return head.length > 2 && head.length < label.length ? head : undefined;
}

/** Heads of labels name their option too, where no other option is named so. */
function withHeads(
  options: readonly PreparedOption[],
  labels: readonly (readonly string[])[],
): PreparedOption[] {
  const keyOf = (phrase: string) => stemsOf(phrase).join(' ');
  const heads = labels.map((list) => [...new Set(list.flatMap((label) => headOf(label) ?? []))]);
  return options.map((option, at) => {
    const taken = new Set(
      options.flatMap((other, index) =>
        index === at ? [] : [...other.phrases, ...(heads[index] ?? [])].map(keyOf),
      ),
    );
    const own = (heads[at] ?? []).filter((head) => !taken.has(keyOf(head)));
    return { ...option, phrases: [...option.phrases, ...own] };
  });
}

/** What a question offers, with every phrase that names it. */
export function prepareOptions(question: Question): PreparedOption[] {
  if (question.kind === 'yesNo')
    return (['yes', 'no'] as const).map((id) => ({ id, alone: false, phrases: question.words?.[id] ?? [] }));
  if (measuredKinds.has(question.kind)) {
    const picks = (question.picks ?? []).map((pick) => {
      const bound = readBound(pick.value, question.kind);
      const value = typeof bound === 'number' ? { value: bound } : {};
      return {
        id: String(pick.value),
        alone: false,
        phrases: [...wordings(pick.label), ...pick.words],
        ...value,
      };
    });
    return withHeads(
      picks,
      (question.picks ?? []).map((pick) => wordings(pick.label)),
    );
  }
  const options = (question.options ?? []).map((option) => ({
    id: option.id,
    alone: option.alone === true,
    phrases: [option.id.replaceAll('-', ' '), ...wordings(option.label), ...option.words],
  }));
  return withHeads(
    options,
    (question.options ?? []).map((option) => wordings(option.label)),
  );
}
