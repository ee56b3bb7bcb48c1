import type { EndedSession, TraineeProgress } from './progress.ts';

type Cell = string | number;

const columns = [
  'trainee',
  'started',
  'ended',
  'house',
  'level',
  'part',
  'findings to catch',
  'caught',
  'missed',
  'invented',
  'kappa',
  'kappa low',
  'kappa high',
  'pairs',
  'danger asked',
  'parts passed over',
  'parts left out',
  'advice right',
  'advice too costly first',
  'advice not called for',
  'advice against the rulebook',
  'cautions forgotten',
  'promises',
  'unsafe acts',
  'alarm',
  'hints',
  'missed findings',
  'to practise next',
] as const;

function rowOf(trainee: string, { startedAt, endedAt, debrief }: EndedSession): Cell[] {
  const { findings, order, advice, cautions, kappa } = debrief;
  const value = kappa.kind === 'kappa' ? kappa : undefined;
  const fixed = (number: number | undefined): Cell => (number === undefined ? '' : Number(number.toFixed(4)));
  return [
    trainee,
    startedAt,
    endedAt,
    debrief.house,
    debrief.level,
    debrief.part ?? '',
    findings.caught.length + findings.missed.length,
    findings.caught.length,
    findings.missed.length,
    findings.invented.length,
    fixed(value?.kappa),
    fixed(value?.interval?.low),
    fixed(value?.interval?.high),
    kappa.kind === 'noPairs' ? 0 : kappa.pairs,
    order.danger ?? '',
    order.passedOver.length,
    order.neverVisited.length,
    advice.right.length,
    advice.costlyFirst.length,
    advice.notCalledFor.length,
    advice.brokenLimits.length + advice.wrong.length,
    cautions.forgotten.length,
    debrief.promises.length,
    debrief.unsafe.length,
    debrief.alarm,
    debrief.hints,
    findings.missed.join(' '),
    debrief.next.map((thing) => `${thing.kind}:${thing.about}`).join(' '),
  ];
}

/** A text that a spreadsheet would take for a formula is shown as text. */
const harmless = (text: string) => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

/** One field after RFC 4180: quoted where it holds a comma, a quote or a line break, quotes doubled. */
function field(cell: Cell): string {
  const text = typeof cell === 'number' ? String(cell) : harmless(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The debriefs of all trainees who agreed to it, one line each, after RFC 4180: CRLF, with a header line. */
export function exportCsv(all: readonly TraineeProgress[]): string {
  const rows = all
    .filter((progress) => progress.consent)
    .flatMap((progress) => progress.sessions.map((session) => rowOf(progress.trainee, session)));
  return [columns, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}
