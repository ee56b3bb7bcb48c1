import type { FlowDocument } from '../../flow/document.ts';
import type { Located } from '../../flow/located.ts';
import type { HouseRules, PracticeFile, TraineeWords } from '../schema/practice-file.ts';

/** A practice file whose shape is right, with its document. */
export interface ReadPracticeFile {
  readonly file: PracticeFile;
  readonly document: FlowDocument;
}

type PracticeCard = NonNullable<PracticeFile['cards']>[number];

/** The parts of all practice files, each with its place. */
export interface PracticeParts {
  readonly houses: readonly Located<HouseRules>[];
  readonly words: readonly Located<TraineeWords>[];
  readonly cards: readonly Located<PracticeCard>[];
  readonly phrases: readonly Located<{ readonly id: string }>[];
}

/** Gathers the parts, in the order of the files. */
export function gatherPractice(files: readonly ReadPracticeFile[]): PracticeParts {
  return {
    houses: files.flatMap(({ file, document }) =>
      file.house ? [{ item: file.house, document, path: ['house'] }] : [],
    ),
    words: files.flatMap(({ file, document }) =>
      file.words ? [{ item: file.words, document, path: ['words'] }] : [],
    ),
    cards: files.flatMap(({ file, document }) =>
      (file.cards ?? []).map((item, index) => ({ item, document, path: ['cards', index] })),
    ),
    phrases: files.flatMap(({ file, document }) =>
      Object.keys(file.phrases ?? {}).map((id) => ({ item: { id }, document, path: ['phrases', id] })),
    ),
  };
}
