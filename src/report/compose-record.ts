import { composeComputations } from './compose-computations.ts';
import type { Block, Spans } from './document.ts';
import { inline } from './inline.ts';
import { capital, type Extent, fields, heading, list, type Page, paragraph, typed } from './page.ts';

function cautions({ report, say }: Page): Block[] {
  return [
    heading(2, say('cautions')),
    paragraph(say('cautions.intro')),
    ...report.cautions.map(
      (one): Block => ({ kind: 'caution', name: inline(capital(one.short)), spans: inline(one.text) }),
    ),
  ];
}

/** A heading of the third level for each stop that has something. */
function byStop<T extends { readonly stop: string }>(
  { report }: Page,
  all: readonly T[],
  blocks: (here: T[]) => Block[],
): Block[] {
  return report.stops.flatMap((stop) => {
    const here = all.filter((one) => one.stop === stop.id);
    return here.length > 0 ? [heading(3, inline(stop.title)), ...blocks(here)] : [];
  });
}

function findings(page: Page): Block[] {
  const { report, say } = page;
  if (report.findingLines.length === 0) return [];
  return [
    heading(2, say('findings')),
    ...byStop(page, report.findingLines, (here) => list(here.map((one) => inline(`${one.text} ${one.why}`)))),
  ];
}

function answers(page: Page): Block[] {
  const { report, say } = page;
  const value = (line: { answer: string; typed: boolean }) =>
    line.typed ? typed(line.answer) : inline(line.answer);
  return [
    heading(2, say('answers')),
    ...byStop(page, report.answersRead, (here) =>
      here.flatMap((stop) =>
        fields(stop.lines.map((line) => ({ name: inline(line.question), value: value(line) }))),
      ),
    ),
    ...(report.notes.length > 0 ? [heading(3, say('notes')), ...list(report.notes.map(typed))] : []),
  ];
}

function rules({ report, say }: Page): Block[] {
  const { notes, authority, title } = report.rulebook;
  return [
    heading(2, say('rules')),
    paragraph(say('rules.intro', { rulebook: title, authority })),
    ...(report.jobs.some((job) => job.rules.some((rule) => rule.own !== null))
      ? [paragraph(say('rules.rounded'))]
      : []),
    ...list(notes.map((note) => inline(note.text))),
  ];
}

function sources({ report, say, words }: Page): Block[] {
  const text = (words: string): Spans => [{ kind: 'text', text: words }];
  const used = [...new Set(report.sources.map((one) => one.status))];
  return [
    heading(2, say('sources')),
    paragraph(say('sources.intro')),
    ...fields(
      used.map((status) => ({ name: say(`status.${status}`), value: say(`status-means.${status}`) })),
    ),
    {
      kind: 'table',
      head: [say('source.title'), say('source.by'), say('source.known'), say('source.note')],
      rows: report.sources.map((one) => [
        one.url === null ? text(one.title) : [{ kind: 'link', href: one.url, spans: text(one.title) }],
        text(one.year === null ? one.by : `${one.by}, ${one.year}`),
        text(words(`status.${one.status}`)),
        text(one.note ?? ''),
      ]),
    },
  ];
}

/** Where the rest of the report is: it is kept with the walk. */
function elsewhere({ report, say }: Page): Block[] {
  const { id } = report.walk;
  return id === null ? [] : [heading(2, say('whole')), paragraph(say('whole.how', { id: id.slice(0, 8) }))];
}

/** What the list rests on: cautions in full, findings, answers, rules, sources; and what is not promised. */
export function composeRecord(page: Page, extent: Extent): Block[] {
  const { report, say } = page;
  const rest =
    extent === 'whole'
      ? [...findings(page), ...composeComputations(page), ...answers(page), ...rules(page), ...sources(page)]
      : elsewhere(page);
  return [
    ...cautions(page),
    ...rest,
    heading(2, say('last')),
    paragraph(say('last.code', { authority: report.rulebook.authority })),
    paragraph(say('last.promise')),
  ];
}
