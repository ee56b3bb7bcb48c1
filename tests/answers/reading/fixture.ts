import { resolve } from 'node:path';
import type { PlainAnswer } from '../../../src/answers/answer.ts';
import { readMessage } from '../../../src/answers/reading/read-message.ts';
import type { Reading, ReadingContext } from '../../../src/answers/reading/reading.ts';
import { readFlows } from '../../../src/files/read-flows.ts';
import type { Flow, Question } from '../../../src/flow/flow.ts';
import { readFlowFile } from '../../../src/flow/read-file.ts';
import { Question as QuestionSchema } from '../../../src/flow/schema/question.ts';
import type { Words } from '../../../src/flow/schema/words.ts';

/** Every flow file that has the right shape; whether they fit together is for other tests. */
const files = readFlows(resolve('flows'), resolve('.')).documents.flatMap(
  (document) => readFlowFile(document).file ?? [],
);

function found<T>(what: string, value: T | undefined): T {
  if (value === undefined) throw new Error(`The flow files hold no ${what}.`);
  return value;
}

/** The words of the real flow. */
export const words: Words = found('words', files.flatMap((file) => file.words ?? [])[0]);
/** The stops of the real flow. */
export const stops: Flow['stops'] = found('walk', files.flatMap((file) => file.walk ?? [])[0]).stops;
/** The groups of the real flow. */
export const groups: Flow['groups'] = files.flatMap((file) => file.groups ?? []);
/** The questions of the real flow. */
export const realQuestions: readonly Question[] = files.flatMap((file) =>
  (file.questions ?? []).map((question) => ({ ...question, stop: file.stop ?? '' })),
);

const call = { say: 'Say it.', listen: 'Listen.', cannotTell: 'Leave it.' };

function question(stop: string, id: string, ask: string, more: Record<string, unknown>): Question {
  const common = { look: 'Look.', good: 'Good.', why: 'It matters.', call };
  return { ...QuestionSchema.parse({ id, ask, ...common, ...more }), stop };
}

const roofOptions = [
  { id: 'shingle', label: 'Asphalt or composition shingle', words: ['asphalt', 'comp', 'shingles'] },
  { id: 'wood', label: 'Wood shakes or wood shingles', words: ['wood', 'shake', 'shakes', 'cedar'] },
  { id: 'tile', label: 'Clay or concrete tile', words: ['tile', 'clay', 'terracotta'] },
  { id: 'metal', label: 'Metal', words: ['steel', 'tin', 'standing seam'] },
];
const aboveOptions = [
  { id: 'chimney', label: 'A chimney', words: ['flue', 'stove pipe'] },
  { id: 'skylight', label: 'A skylight or roof window', words: ['skylights', 'dome'] },
  { id: 'panels', label: 'Solar panels', words: ['solar', 'pv'] },
  { id: 'cooler', label: 'An evaporative cooler', words: ['swamp cooler'] },
  { id: 'none', label: 'None of these', words: ['just vents'], alone: true },
];
const wallOptions = [
  { id: 'stone', label: 'Stucco, brick or stone', words: ['stucco', 'brick', 'stone'] },
  { id: 'wood', label: 'Wood boards', words: ['wood', 'cedar'] },
  { id: 'vinyl', label: 'Vinyl', words: ['plastic'] },
];
const groundOptions = [
  { id: 'hard', label: 'Concrete or paving', words: ['concrete', 'paving', 'patio'] },
  { id: 'gravel', label: 'Gravel or rock', words: ['gravel', 'rock', 'stones'] },
  { id: 'bark', label: 'Bark or wood chips', words: ['bark', 'mulch', 'chips'] },
  { id: 'grass', label: 'Lawn', words: ['grass', 'lawn'] },
  { id: 'none', label: 'None of these', alone: true },
];
const gapPicks = [
  { value: '0 in', label: 'no gap', words: ['tight', 'sealed'] },
  { value: '1/4 in', label: 'a pencil', words: ['pencil'] },
  { value: '3/4 in', label: 'a finger', words: ['finger', 'thumb'] },
];
const ft = { imperial: 'ft', metric: 'm' };
const inch = { imperial: 'in', metric: 'mm' };

/** A small set of questions, one of each kind. */
export const questions: readonly Question[] = [
  question('about', 'about.danger', 'Is there smoke, flame or an order to leave right now?', {
    kind: 'yesNo',
    role: 'danger',
    good: 'No smoke, no flames, no danger.',
  }),
  question('about', 'about.year-built', 'In about which year was it built?', {
    kind: 'number',
    role: 'yearBuilt',
    min: 1600,
    max: 2100,
  }),
  question('about', 'about.slope', 'How steep is the ground?', {
    kind: 'slope',
    max: 200,
    picks: [
      { value: 0, label: 'flat', words: ['level'] },
      { value: 10, label: 'gentle' },
      { value: 30, label: 'steep' },
    ],
  }),
  question('about', 'about.next-house', 'How far is the next house on each side?', {
    kind: 'length',
    by: 'side',
    unsafeEnd: 'low',
    bare: ft,
    picks: [{ value: '300 ft', label: 'none in sight' }],
  }),
  question('about', 'about.lines', 'Are there overhead lines?', { kind: 'yesNo', short: 'overhead lines' }),
  question('about', 'about.insurer', 'What does your insurer ask?', { kind: 'text' }),
  question('roof', 'roof.covering', 'What is the roof covered with?', {
    kind: 'choice',
    options: roofOptions,
    short: 'roof covering',
  }),
  question('roof', 'roof.above', 'What rises above the roof?', { kind: 'several', options: aboveOptions }),
  question('roof', 'roof.gutter-litter', 'On which sides do leaves lie in the gutter?', {
    kind: 'yesNo',
    by: 'side',
    short: 'gutter litter',
  }),
  question('eaves', 'eaves.gap', 'How wide is the widest gap?', {
    kind: 'length',
    unsafeEnd: 'high',
    bare: inch,
    min: '0 in',
    max: '24 in',
    picks: gapPicks,
  }),
  question('openings', 'openings.doors', 'How are the outside doors?', {
    kind: 'several',
    options: [
      { id: 'solid', label: 'All solid and tight', words: ['solid', 'none', 'no problems'], alone: true },
      { id: 'hollow', label: 'A hollow or thin door', words: ['hollow', 'thin'] },
      { id: 'flap', label: 'A pet flap or other flap', words: ['flap', 'dog door'] },
    ],
  }),
  question('openings', 'openings.power', 'Can everyone open the garage door by hand?', {
    kind: 'yesNo',
    words: { yes: ['everyone', 'has a battery'], no: ['only me', 'too heavy'] },
  }),
  question('zone0', 'zone0.attached', 'Which of these are fixed to the house?', {
    kind: 'several',
    options: [
      { id: 'deck', label: 'A deck or raised porch', words: ['deck', 'porch', 'covered porch'] },
      { id: 'cover', label: 'A patio cover', words: ['pergola', 'porch roof', 'covered porch'] },
      { id: 'none', label: 'None of these', words: ['nothing', 'no'], alone: true },
    ],
  }),
  question('siding', 'siding.kind', 'What are the walls made of, on each side?', {
    kind: 'choice',
    by: 'side',
    options: wallOptions,
    short: 'siding',
  }),
  question('siding', 'siding.burns', 'What is the wall above clad with?', {
    kind: 'choice',
    options: [
      { id: 'burns', label: 'Wood or something else that burns', words: ['wood', 'burns'] },
      { id: 'sound', label: 'Something sound', words: ['does not burn'] },
    ],
  }),
  question('zone0', 'zone0.ground', 'What covers the ground, on each side?', {
    kind: 'several',
    by: 'side',
    options: groundOptions,
  }),
  question('trees', 'trees.count', 'How many trees stand near?', {
    kind: 'count',
    counts: 'trees',
    short: 'number of trees',
  }),
  question('trees', 'trees.kind', 'What kind of tree is it?', {
    kind: 'choice',
    of: 'trees',
    options: [
      { id: 'resinous', label: 'Needles or oil, such as pine or fir', words: ['pine', 'fir', 'juniper'] },
      {
        id: 'broadleaf',
        label: 'Broad leaves, such as oak or maple',
        words: ['oak', 'maple', 'apple', 'fruit tree'],
      },
    ],
  }),
  question('trees', 'trees.side', 'On which side does this tree stand?', { kind: 'sides', of: 'trees' }),
  question('trees', 'trees.height', 'How tall is this tree?', {
    kind: 'length',
    of: 'trees',
    unsafeEnd: 'high',
    bare: ft,
    min: '3 ft',
    max: '350 ft',
    short: 'tree height',
  }),
];

/** The context of a question of the fixture, or of none. */
export function contextOf(id: string | undefined, more: Partial<ReadingContext> = {}): ReadingContext {
  const asked =
    id === undefined
      ? undefined
      : found(
          `question ${id}`,
          questions.find((one) => one.id === id),
        );
  const sides = ['front', 'left', 'back', 'right'] as const;
  return { question: asked, words, stops, questions, groups, sides, units: 'imperial', members: [], ...more };
}

function sayPlain(answer: PlainAnswer): string {
  if (answer.status !== 'given') return answer.status === 'notSure' ? '?' : 'skip';
  const { value, how } = answer;
  const text =
    typeof value === 'number'
      ? String(Math.round(value * 1e4) / 1e4)
      : typeof value === 'string'
        ? value
        : value.join('+') || '()';
  return how === undefined ? text : `${text}~${how}`;
}

function sayNote(reading: Extract<Reading, { kind: 'answer' }>): string {
  const { assumedUnit, range, guessed, missing, notAsked, cutTo } = reading.note ?? {};
  const round = (value: number) => Math.round(value * 1e4) / 1e4;
  const notes = [
    ...(assumedUnit === undefined ? [] : [` in ${assumedUnit}`]),
    ...(range === undefined
      ? []
      : [` of ${round(range.low)}..${range.high === undefined ? '' : round(range.high)}`]),
    ...(guessed === undefined ? [] : [' misspelt']),
    ...(missing === undefined ? [] : [` without ${missing.join(' ')}`]),
    ...(notAsked === undefined ? [] : [` not asked ${notAsked.join(' ')}`]),
    ...(cutTo === undefined ? [] : [` cut to ${cutTo}`]),
  ];
  return notes.map((note) => `;${note}`).join('');
}

/** A reading in a few words, for tables. */
export function sayReading(reading: Reading): string {
  switch (reading.kind) {
    case 'answer': {
      const { answer } = reading;
      if (answer.status !== 'bySide') return sayPlain(answer) + sayNote(reading);
      const order = ['front', 'left', 'back', 'right'] as const;
      const sides = order.flatMap((side) =>
        answer.sides[side] ? [`${side} ${sayPlain(answer.sides[side])}`] : [],
      );
      return sides.join(', ') + sayNote(reading);
    }
    case 'emergency':
      return reading.sure ? 'EMERGENCY' : 'emergency?';
    case 'command':
      return `> ${reading.command}`;
    case 'jump':
      return `> go ${reading.stop}`;
    case 'change':
      return `> change ${reading.question ?? reading.stop ?? ''}`.trim();
    case 'remove':
      return `> remove ${reading.member ?? reading.group ?? ''}`.trim();
    case 'notUnderstood':
      return `! ${[reading.problem.code, ...(reading.nearest ?? [])].join(' ')}`;
    default:
      return reading satisfies never;
  }
}

/** Reads a text against a question of the fixture, in a few words. */
export const say = (id: string | undefined, text: string, more: Partial<ReadingContext> = {}): string =>
  sayReading(readMessage(text, contextOf(id, more)));
