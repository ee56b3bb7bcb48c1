import type { Flow } from './flow.ts';
import { gather, type Located, type ReadFile } from './located.ts';
import type { FlowFile } from './schema/file.ts';
import type { Rulebook } from './schema/rulebook.ts';
import type { Words } from './schema/words.ts';

type One<K extends keyof FlowFile> = Located<NonNullable<FlowFile[K]>>;

/** All parts of a flow with their places, before the references between them are checked. */
export interface FlowParts {
  readonly walks: One<'walk'>[];
  readonly groups: ReturnType<typeof gather<'groups'>>;
  readonly questions: Located<Flow['questions'][number]>[];
  readonly findings: ReturnType<typeof gather<'findings'>>;
  readonly elements: ReturnType<typeof gather<'elements'>>;
  readonly sets: Located<{ id: string; members: string[] }>[];
  readonly waysIn: ReturnType<typeof gather<'waysIn'>>;
  readonly actions: ReturnType<typeof gather<'actions'>>;
  readonly cautions: ReturnType<typeof gather<'cautions'>>;
  readonly costs: ReturnType<typeof gather<'costs'>>;
  readonly upkeep: ReturnType<typeof gather<'upkeep'>>;
  readonly sources: ReturnType<typeof gather<'sources'>>;
  readonly rulebooks: Located<Rulebook>[];
  readonly words: Located<Words>[];
  readonly calls: One<'call'>[];
  readonly shortCalls: One<'shortCall'>[];
  readonly phrases: Located<{ id: string; text: NonNullable<FlowFile['phrases']>[string] }>[];
}

function single<K extends 'walk' | 'rulebook' | 'words' | 'call' | 'shortCall'>(
  files: readonly ReadFile[],
  key: K,
): One<K>[] {
  return files.flatMap(({ file, document }) => {
    const item = file[key];
    return item === undefined ? [] : [{ item: item as NonNullable<FlowFile[K]>, document, path: [key] }];
  });
}

function keyed<K extends 'sets' | 'phrases'>(files: readonly ReadFile[], key: K) {
  return files.flatMap(({ file, document }) =>
    Object.entries(file[key] ?? {}).map(([id, value]) => ({ id, value, document, path: [key, id] })),
  );
}

/** Gathers the parts of all files. Questions come in the order of the stops, within a stop as written. */
export function gatherParts(files: readonly ReadFile[]): FlowParts {
  const walks = single(files, 'walk');
  const order = walks[0]?.item.stops.map((stop) => stop.id) ?? [];
  const questions = files
    .flatMap(({ file, document }) =>
      (file.questions ?? []).map((item, index) => ({
        item: { ...item, stop: file.stop ?? '' },
        document,
        path: ['questions', index] as const,
      })),
    )
    .sort((a, b) => order.indexOf(a.item.stop) - order.indexOf(b.item.stop));
  return {
    walks,
    questions,
    groups: gather(files, 'groups'),
    findings: gather(files, 'findings'),
    elements: gather(files, 'elements'),
    sets: keyed(files, 'sets').map(({ id, value, ...at }) => ({
      ...at,
      item: { id, members: value as string[] },
    })),
    waysIn: gather(files, 'waysIn'),
    actions: gather(files, 'actions'),
    cautions: gather(files, 'cautions'),
    costs: gather(files, 'costs'),
    upkeep: gather(files, 'upkeep'),
    sources: gather(files, 'sources'),
    rulebooks: single(files, 'rulebook'),
    words: single(files, 'words'),
    calls: single(files, 'call'),
    shortCalls: single(files, 'shortCall'),
    phrases: keyed(files, 'phrases').map(({ id, value, ...at }) => ({
      ...at,
      item: { id, text: value as NonNullable<FlowFile['phrases']>[string] },
    })),
  };
}
