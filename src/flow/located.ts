import type { FlowDocument } from './document.ts';
import type { FlowProblem } from './problem.ts';
import type { FlowFile } from './schema/file.ts';

type Path = readonly (string | number)[];

/** A part of a flow with the place in the file from which it came. */
export interface Located<T> {
  readonly item: T;
  readonly document: FlowDocument;
  readonly path: Path;
}

/** A file whose shape is right, with its document. */
export interface ReadFile {
  readonly file: FlowFile;
  readonly document: FlowDocument;
}

type ListKey = {
  [K in keyof FlowFile]-?: NonNullable<FlowFile[K]> extends readonly unknown[] ? K : never;
}[keyof FlowFile];
type ItemOf<K extends ListKey> = NonNullable<FlowFile[K]> extends readonly (infer T)[] ? T : never;

/** All items of one list part over all files, in the order of the files. */
export function gather<K extends ListKey>(files: readonly ReadFile[], key: K): Located<ItemOf<K>>[] {
  return files.flatMap(({ file, document }) =>
    ((file[key] ?? []) as ItemOf<K>[]).map((item, index) => ({ item, document, path: [key, index] })),
  );
}

/** A problem at a place inside a located item. */
export function problemAt(
  located: Located<unknown>,
  inside: Path,
  problem: string,
  suggestion?: string,
): FlowProblem {
  const path = [...located.path, ...inside];
  return {
    path: located.document.path,
    ...located.document.positionOf(path),
    at: path.join('.'),
    problem,
    ...(suggestion === undefined ? {} : { suggestion }),
  };
}
