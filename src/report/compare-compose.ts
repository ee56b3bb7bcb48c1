import type { Values } from '../wording/say.ts';
import type { Wording } from '../wording/wording.ts';
import type { ComparisonTold } from './compare-data.ts';
import type { Block, ReportDocument, Spans } from './document.ts';
import { inline } from './inline.ts';
import { heading, list, paragraph } from './page.ts';

/** So many ways in of a kind are told; the rest is counted. */
const toldWays = 8;

interface Told {
  readonly title: 'compare.title' | 'compare.what-if.title';
  readonly comparison: ComparisonTold;
  /** Jobs marked as done, with their days. */
  readonly done: readonly { readonly do: string; readonly date: string }[];
}

type Say = (id: string, values?: Values) => Spans;

function ways(say: Say, id: string, told: ComparisonTold['closed']): Block[] {
  if (told.length === 0) return [];
  const more = told.length - toldWays;
  return [
    paragraph(say(id, { count: told.length })),
    ...list([
      ...told.slice(0, toldWays).map((one) => inline(one.text)),
      ...(more > 0 ? [say('compare.more', { count: more })] : []),
    ]),
  ];
}

function listNow(say: Say, { list: lines, gone }: ComparisonTold): Block[] {
  const rows = lines.map((one) => [
    inline(one.do),
    inline(String(one.now)),
    one.before === null ? say('compare.list.new') : inline(String(one.before)),
  ]);
  const head = ['job', 'now', 'before'].map((id) => say(`compare.list.${id}`));
  return [
    heading(2, say('compare.list')),
    ...(rows.length > 0 ? [{ kind: 'grid', head, rows } as const] : [paragraph(say('compare.list.empty'))]),
    ...(gone.length > 0 ? [heading(2, say('compare.gone')), ...list(gone.map((one) => inline(one.do)))] : []),
  ];
}

/** Two states of a house as a document: what changed among the ways in, then the list as it is now. */
export function composeComparison({ title, comparison, done }: Told, wording: Wording): ReportDocument {
  const say: Say = (id, values) => inline(wording.text(id, values));
  const { closed, opened, lessened, grown, unchanged, left } = comparison;
  return {
    title: say(title),
    language: wording.reader.language,
    blocks: [
      heading(1, say(title)),
      ...(title === 'compare.what-if.title' ? [paragraph(say('compare.what-if.kept'), 'quiet')] : []),
      paragraph(say('compare.left', { after: Math.round(left * 100) })),
      ...(done.length > 0
        ? [
            heading(2, say('compare.done')),
            ...list(done.map((one) => say('compare.done.line', { do: one.do, date: one.date }))),
          ]
        : []),
      ...(closed.length > 0
        ? ways(say, 'compare.closed', closed)
        : [paragraph(say('compare.closed', { count: 0 }))]),
      ...ways(say, 'compare.lessened', lessened),
      ...ways(say, 'compare.opened', opened),
      ...ways(say, 'compare.grown', grown),
      paragraph(say('compare.unchanged', { count: unchanged })),
      ...listNow(say, comparison),
    ],
  };
}
