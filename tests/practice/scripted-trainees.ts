import type { PracticeHouse } from '../../src/practice/house/practice-house.ts';
import { createRandom, drawSome } from '../../src/practice/house/random.ts';
import { knownHouse, stopsOf } from '../../src/practice/session/known.ts';
import { practiceTurn } from '../../src/practice/session/practice-turn.ts';
import { sayAction, sayFinding } from '../../src/practice/session/say-place.ts';
import { newSession, type PracticeState } from '../../src/practice/session/state.ts';
import { realPractice, wordingOf } from './practice-for-tests.ts';

export const trainees = ['perfect', 'hasty', 'inventing', 'outOfOrder'] as const;
export type Trainee = (typeof trainees)[number];

/** What a scripted trainee set out to do, for checking what is said about it. */
export interface Played {
  readonly state: PracticeState;
  readonly visits: readonly string[];
  readonly recorded: readonly string[];
  readonly invented: readonly string[];
  readonly advised: readonly string[];
}

const promise = 'tell them that their house will survive';

/** One session played from the first word to the debrief, in plain sentences. */
export function play(house: PracticeHouse, kind: Trainee): Played {
  const practice = realPractice();
  let state = newSession(house, new Date('2026-06-01T08:00:00Z'));
  const wording = wordingOf(state);
  const known = knownHouse(practice, state);
  const { assessment, pairs } = known;
  const random = createRandom(house.seed * 31 + kind.length);
  const send = (text: string) => {
    state = practiceTurn(practice, state, { kind: 'text', text }).state;
    if (state.pending && state.pending.kind !== 'done')
      throw new Error(`"${text}" left ${JSON.stringify(state.pending)}`);
  };
  const sayPair = (id: string) => {
    const pair = pairs.get(id);
    if (!pair) throw new Error(`no pair ${id}`);
    const { text, values } = sayFinding(assessment, pair.finding, [pair.place]);
    return wording.text(text, values);
  };
  const found = assessment.found.map((one) => one.id);
  const recorded: string[] = [];
  const advised: string[] = [];
  const record = (id: string) => {
    send(`I find: ${sayPair(id)}`);
    recorded.push(id);
  };
  const lookRound = (stop: string) => {
    const steps = assessment.path.steps.filter(
      (step) => step.question.stop === stop && step.question.role !== 'danger',
    );
    for (const question of new Set(steps.map((step) => step.question))) {
      const verb = practice.askOnly.has(question.id) ? 'ask about' : 'look at';
      for (let times = 0; times < (verb === 'look at' ? 1 : 2); times++)
        send(`${verb} ${wording.text(`question/${question.id}/short`)}`);
    }
  };
  const advise = (position: number) => {
    const job = assessment.ranked[position];
    if (!job) return;
    const { text, values } = sayAction(assessment, job.proposal.action.id, [job.proposal.place]);
    send(`advise: ${wording.text(text, values)}`);
    advised.push(job.proposal.id);
    if (kind === 'perfect')
      for (const caution of job.proposal.cautions) send(`caution: ${wording.text(`caution/${caution}`)}`);
  };
  const stops = stopsOf(practice, state).map((stop) => stop.id);
  const visits =
    kind === 'hasty'
      ? stops.filter((_, position) => position % 2 === 0)
      : kind === 'outOfOrder'
        ? shuffled(stops, random)
        : stops;
  const no = [...pairs.values()]
    .filter((pair) => pair.observable && pair.truth === 'no')
    .map((pair) => pair.id);
  const invented = kind === 'inventing' ? drawSome(random, no, 4) : [];
  if (kind !== 'hasty' && kind !== 'inventing') send('ask about danger');
  for (const [position, stop] of visits.entries()) {
    send(`go to ${wording.text(`stop/${stop}/title`)}`);
    if (state.at !== stop) throw new Error(`did not get to ${stop}`);
    if (state.events.at(-1)?.kind === 'alarm' && kind === 'perfect')
      send('tell them to leave now and to call for help');
    if (position === 1 && kind === 'inventing') send('ask about danger');
    if (kind !== 'hasty') lookRound(stop);
    const here = found.filter((id) => pairs.get(id)?.stop === stop);
    for (const [number, id] of here.entries()) if (kind !== 'hasty' || number % 2 === 0) record(id);
  }
  for (const id of invented) record(id);
  const order = [...assessment.ranked.keys()].sort(
    (a, b) => (assessment.ranked[a]?.turn ?? 0) - (assessment.ranked[b]?.turn ?? 0),
  );
  const chosen =
    kind === 'hasty' ? order.toReversed().slice(0, 1) : kind === 'inventing' ? order.toReversed() : order;
  for (const position of chosen) advise(position);
  if (kind === 'inventing') {
    send(promise);
    send('advise them to use quarter inch mesh');
    send('climb on the roof');
    send('tell them nobody can promise that the house will survive');
  }
  send('done');
  send('yes');
  return { state, visits, recorded, invented, advised };
}

function shuffled(list: readonly string[], random: () => number): string[] {
  return list
    .map((item) => ({ item, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

export const promised = promise;
