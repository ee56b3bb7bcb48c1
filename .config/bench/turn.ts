// A whole warm turn: read, place, step, reply, save as JSON; against a hand-written reducer that reads and saves the
// same, and against dialogue libraries on a conversation of sixty questions. Run it with: npm run bench turn
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { resolve } from 'node:path';
import { pathOf } from '../../src/answers/path.ts';
import { newWalk } from '../../src/conversation/new-walk.ts';
import { buildProgramme, type Programme } from '../../src/conversation/programme.ts';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';
import { takeTurn } from '../../src/conversation/turn.ts';
import { unitsOf } from '../../src/conversation/units.ts';
import { catalogueOf } from '../../src/wording/catalogue.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { createWording } from '../../src/wording/wording.ts';
import { realProgramme } from '../../tests/support/programme.ts';
import { seededRandom } from '../../tests/support/random-answers.ts';
import { sayAnswer } from '../../tests/support/random-talk.ts';
import { inTurns, sayRatio } from './measure.ts';
import { reducerFor } from './reducer.ts';
import { sixtyAnswers, sixtyQuestionFlow, sixtyQuestions } from './sixty-questions.ts';

const now = new Date('2026-06-12T16:00:00Z');
const start = (programme: Programme) =>
  JSON.stringify(takeTurn(programme, newWalk(programme, 'bench' as WalkId, now), { kind: 'hello' }, now).record);

/** A walk through stored JSON, turn by turn; milliseconds of all turns together. */
function walkOurs(programme: Programme, answers: readonly string[], say?: (record: WalkRecord, reply: ReturnType<typeof takeTurn>['reply']) => void): number {
  let stored = start(programme);
  const started = performance.now();
  for (const text of answers) {
    const { record, reply } = takeTurn(programme, JSON.parse(stored), { kind: 'text', text }, now);
    say?.(record, reply);
    stored = JSON.stringify(record);
  }
  const milliseconds = performance.now() - started;
  if (JSON.parse(stored).cursor.phase !== 'readBack') throw new Error('The walk did not come to its end.');
  return milliseconds;
}

function walkReducer(reduce: (stored: string, text: string) => string, answers: readonly string[]): number {
  let stored = JSON.stringify({ sheet: {}, next: 0 });
  const started = performance.now();
  for (const text of answers) stored = reduce(stored, text);
  const milliseconds = performance.now() - started;
  if (JSON.parse(stored).next !== answers.length) throw new Error('The reducer did not take every answer.');
  return milliseconds;
}

/** The texts of a walk round a house, each of which answers the question then asked; with the questions. */
function realWalk(programme: Programme, seed: number) {
  const random = seededRandom(seed);
  let turned = takeTurn(programme, newWalk(programme, 'bench' as WalkId, now), { kind: 'hello' }, now);
  const answers: string[] = [];
  const asked = [];
  while (turned.reply.ask) {
    const { ask } = turned.reply;
    const question = programme.checklist.index.questions.get(ask.question);
    const text = ask.sides.length > 0 ? 'not sure' : sayAnswer(programme, ask, random);
    if (question) asked.push(question);
    answers.push(ask.question === 'trees.count' || ask.question === 'outbuildings.count' ? 'none' : text);
    turned = takeTurn(programme, turned.record, { kind: 'text', text: answers.at(-1) ?? '' }, now);
  }
  return { answers, asked };
}

/** Says each reply in words, as a channel does. */
function speaker(programme: Programme) {
  const { flow, index } = programme.checklist;
  const texts = { catalogue: catalogueOf(flow), questions: index.questions };
  return ({ sheet, audience, language }: WalkRecord, reply: ReturnType<typeof takeTurn>['reply']) => {
    const { limits } = pathOf(index, sheet);
    const units = unitsOf(programme.checklist, sheet);
    wordReply(reply, createWording(texts, { language, audience, units, limits }));
  };
}

interface Peer {
  readonly walkOnce: (questions: unknown, answers: readonly string[]) => Promise<{ milliseconds: number; kept: number }>;
}

/** Installs the peers where they are not there yet, as their lock file says; nothing of theirs is run at installing. */
function installPeers(): void {
  const from = resolve('.config/bench/peers');
  mkdirSync('.bench', { recursive: true });
  const same = (name: string) => existsSync(`.bench/${name}`) && readFileSync(`.bench/${name}`, 'utf8') === readFileSync(`${from}/${name}`, 'utf8');
  if (existsSync('.bench/node_modules') && same('package.json')) return;
  for (const name of ['package.json', 'package-lock.json']) copyFileSync(`${from}/${name}`, `.bench/${name}`);
  const { status } = spawnSync('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund'], { cwd: '.bench', stdio: 'inherit' });
  if (status !== 0) throw new Error('The peers could not be installed: see above.');
}

async function peer(name: string): Promise<() => Promise<number>> {
  const { walkOnce } = (await import(pathToFileURL(resolve(`.config/bench/peers/${name}.mjs`)).href)) as Peer;
  const questions = sixtyQuestions.map((one) => ({ ...one, id: one.id.replace('.', '-'), options: [...one.options] }));
  return async () => {
    const { milliseconds, kept } = await walkOnce(questions, sixtyAnswers);
    if (kept !== sixtyAnswers.length) throw new Error(`${name} kept ${kept} of ${sixtyAnswers.length} answers.`);
    return milliseconds;
  };
}

const perTurn = (milliseconds: number, turns: number) => `${((milliseconds / turns) * 1000).toFixed(0)} us a turn`;

const real = realProgramme();
const { answers, asked } = realWalk(real, 4);
const reduceReal = reducerFor(real, asked);
const sixty = buildProgramme(sixtyQuestionFlow());
const reduceSixty = reducerFor(sixty, sixty.checklist.flow.questions);

const own = await inTurns(
  {
    turn: () => walkOurs(real, answers),
    worded: () => walkOurs(real, answers, speaker(real)),
    reducer: () => walkReducer(reduceReal, answers),
    sixty: () => walkOurs(sixty, sixtyAnswers),
    sixtyReducer: () => walkReducer(reduceSixty, sixtyAnswers),
  },
  { warm: 15, rounds: 31 },
);
console.log(`The real walk, ${answers.length} turns: ${perTurn(own.turn, answers.length)}, with the reply in words ${perTurn(own.worded, answers.length)}; reducer ${perTurn(own.reducer, answers.length)}`);
console.log(`Sixty questions: ${perTurn(own.sixty, 60)}; reducer ${perTurn(own.sixtyReducer, 60)}`);
const overReducer = own.turn / own.reducer;
sayRatio('a turn of the real walk over a hand-written reducer', overReducer, 'at most 5', overReducer <= 5);

installPeers();
const speak = speaker(sixty);
const others = await inTurns(
  {
    ours: () => walkOurs(sixty, sixtyAnswers, speak),
    wordless: () => walkOurs(sixty, sixtyAnswers),
    botbuilder: await peer('botbuilder'),
    grammy: await peer('grammy'),
  },
  { warm: 12, rounds: 15 },
);
// A round of it takes seconds: fewer are enough for a ratio of that size.
const slow = await inTurns({ survey: await peer('survey') }, { warm: 1, rounds: 3 });
const against = { ...others, ...slow };
for (const [name, milliseconds] of Object.entries(against)) console.log(`Sixty questions, replies in words, ${name}: ${perTurn(milliseconds, 60)}`);
const times = (name: keyof typeof against) => against[name] / against.ours;
sayRatio('botbuilder-dialogs over ours', times('botbuilder'), 'over 1', times('botbuilder') > 1);
sayRatio('@grammyjs/conversations over ours', times('grammy'), 'at least 10', times('grammy') >= 10);
sayRatio('survey-core over ours', times('survey'), 'at least 10', times('survey') >= 10);
const wordless = against.grammy / against.wordless;
console.log(`Without the reply in words ${perTurn(against.wordless, 60)}: @grammyjs/conversations takes ${wordless.toFixed(1)} times as long.`);
