import { sideNames } from '../flow/schema/base.ts';
import type { Block, Field } from './document.ts';
import { inline } from './inline.ts';
import { fields, heading, list, type Page, paragraph } from './page.ts';
import type { Computation } from './schema-computations.ts';

const groups = ['vents', 'plants', 'heat', 'zones', 'supplies'] as const;

/** What it was worked out from; values that every use takes stay in the data. */
function fromText({ words }: Page, one: Computation): string {
  const named = [
    ...one.inputs
      .filter(({ from }) => from !== 'usual')
      .map(({ what, said, from }) => ({ what, said, from })),
    ...one.assumptions.map(({ what, said, status }) => ({ what, said, from: `known.${status}` })),
  ];
  const items = named.map(({ from, ...value }) => words(`computed.input.${from}`, value));
  return items.length > 0 ? words('computed.basis', { inputs: [...new Set(items)].join('; ') }) : '';
}

function knownText({ report, words }: Page, { sources, status }: Computation): string {
  if (status === null) return '';
  const titles = sources.flatMap((id) => report.sources.find((one) => one.id === id)?.title ?? []);
  return words('computed.known', {
    status: words(`status.${status}`),
    sources: titles.join('; '),
  });
}

/** The values of a result end with a full stop before what they came from. */
const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** Equal results at several places as one field. */
function fieldsOf(page: Page, here: readonly Computation[]): (Field | undefined)[] {
  const told = new Map<string, Computation[]>();
  for (const one of here) {
    const shown = [sentence(one.text), fromText(page, one), knownText(page, one)]
      .filter((text) => text !== '')
      .join(' ');
    const key = `${one.title}\n${shown}`;
    told.set(key, [...(told.get(key) ?? []), one]);
  }
  return [...told].map(([key, list]): Field => {
    const [title = '', shown = ''] = key.split('\n');
    const places = list.flatMap(({ where }) => where ?? []);
    const round = sideNames.every((side) => list.some(({ id }) => id.endsWith(`@${side}`)));
    const where = round ? page.words('place.all-sides') : page.wording.value({ list: places });
    const name = places.length > 0 ? page.words('computed.name', { title, where }) : title;
    return { name: inline(name), value: inline(shown) };
  });
}

function groupBlocks(page: Page, group: Computation['group']): Block[] {
  const here = page.report.computations.filter((one) => one.group === group && one.outcome !== 'missing');
  if (here.length === 0) return [];
  const notes = [...new Set(here.flatMap((one) => one.notes))];
  return [
    heading(3, page.say(`computed.group.${group}`)),
    ...fields(fieldsOf(page, here)),
    ...list(notes.map(inline)),
  ];
}

/** What waits for an answer, once for each question. */
function missing(page: Page): Block[] {
  const here = page.report.computations.filter((one) => one.outcome === 'missing');
  if (here.length === 0) return [];
  const lines = [...new Set(here.map(({ title, text }) => page.words('computed.waits', { title, text })))];
  return [heading(3, page.say('computed.not')), ...list(lines.map(inline))];
}

/** What was worked out: results by subject, each with what it came from and how well it is known. */
export function composeComputations(page: Page): Block[] {
  if (page.report.computations.length === 0) return [];
  return [
    heading(2, page.say('computations')),
    paragraph(page.say('computations.intro')),
    ...groups.flatMap((group) => groupBlocks(page, group)),
    ...missing(page),
  ];
}
