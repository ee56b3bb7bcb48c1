import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Value } from '../../wording/say.ts';
import type { Practice } from '../practice.ts';
import { type KnownHouse, knownHouse } from '../session/known.ts';
import { sayAction, sayFinding, whereverNeeded } from '../session/say-place.ts';
import type { PracticeState } from '../session/state.ts';
import type { AdviceLine, Debrief } from './debrief.ts';
import { sayKappa } from './say-kappa.ts';
import { nextParts } from './say-next.ts';

const heading = (id: string) => say(`practice.debrief.${id}`, undefined, 'heading');
const title = (stop: string): Value => ({ text: `stop/${stop}/title` });

function orderParts({ order, part }: Debrief): Part[] {
  if (part !== undefined) return [];
  const kept = order.passedOver.length === 0 && order.neverVisited.length === 0;
  const passed = order.passedOver.map(({ stop, at, madeUp }) =>
    say(madeUp ? 'practice.debrief.passed-over' : 'practice.debrief.left-out-for', {
      stop: title(stop),
      at: title(at),
      risk: { text: `practice.risk/${stop}` },
    }),
  );
  const named = new Set(order.passedOver.map(({ stop }) => stop));
  const never = order.neverVisited
    .filter((stop) => !named.has(stop))
    .map((stop) =>
      say('practice.debrief.left-out', { stop: title(stop), risk: { text: `practice.risk/${stop}` } }),
    );
  return [
    heading('order'),
    ...(order.danger === undefined ? [] : [say(`practice.debrief.danger/${order.danger}`)]),
    ...(kept ? [say('practice.debrief.order-kept')] : [...passed, ...never]),
    ...(order.adviceEarly ? [say('practice.debrief.advice-early')] : []),
  ];
}

/** Findings of one kind in one line, with all their places. */
function findingLines({ assessment, pairs }: KnownHouse, list: readonly string[], phrase: string): Part[] {
  const kinds = new Map<string, string[]>();
  for (const pair of list) {
    const id = pairs.get(pair)?.finding ?? '';
    kinds.set(id, [...(kinds.get(id) ?? []), pair]);
  }
  return [...kinds].map(([id, some]) => {
    const { text, values } = sayFinding(
      assessment,
      id,
      some.flatMap((pair) => pairs.get(pair)?.place ?? []),
    );
    return say(phrase, { finding: { text, values: values ?? {} } });
  });
}

function findingParts(known: KnownHouse, { findings, kappa }: Debrief): Part[] {
  const lines = (list: readonly string[], name: string) =>
    findingLines(known, list, `practice.debrief.${name}`);
  const agreed = sayKappa(kappa);
  return [
    heading('findings'),
    say('practice.debrief.counts', {
      caught: findings.caught.length,
      all: findings.caught.length + findings.missed.length,
      invented: findings.invented.length,
    }),
    ...lines(findings.missed, 'missed'),
    ...lines(findings.invented, 'invented'),
    ...lines(findings.unseen, 'unseen'),
    ...lines(findings.unsettled, 'unsettled'),
    say(agreed.text, agreed.values),
    say('practice.debrief.kappa-about', undefined, 'quiet'),
  ];
}

function jobValue(practice: Practice, { assessment }: KnownHouse, line: AdviceLine): Value {
  const places = assessment.ranked
    .map((one) => one.proposal)
    .filter((one) => one.action.id === line.action)
    .filter((one) => line.places.length === 0 || line.places.includes(one.place.suffix))
    .map((one) => one.place);
  const per = practice.programme.checklist.flow.actions.find((one) => one.id === line.action)?.per;
  if (places.length === 0) {
    const sides = line.places.map((place) => ({ text: `words/side/${place.slice(1)}` }));
    const known = per === 'side' && sides.length > 0;
    return {
      text: `action/${line.action}/do`,
      values: known ? { ...whereverNeeded, side: { list: sides }, sides: { list: sides } } : whereverNeeded,
    };
  }
  const { text, values } = sayAction(assessment, line.action, places);
  return { text, values: values ?? {} };
}

function adviceParts(practice: Practice, known: KnownHouse, { advice }: Debrief): Part[] {
  const job = (line: AdviceLine) => jobValue(practice, known, line);
  const named = (action: string) => job({ action, places: [] });
  const { right, costlyFirst, notCalledFor, brokenLimits, wrong } = advice;
  const nothing = [right, costlyFirst, notCalledFor, brokenLimits, wrong].every((list) => list.length === 0);
  return [
    heading('advice'),
    ...(nothing ? [say('practice.debrief.no-advice')] : []),
    ...advice.right.map((line) => say('practice.debrief.right', { job: job(line) })),
    ...advice.costlyFirst.map((line) =>
      say('practice.debrief.costly-first', { job: job(line), cheaper: named(line.cheaper) }),
    ),
    ...advice.notCalledFor.map((line) => say('practice.debrief.not-called-for', { job: job(line) })),
    ...advice.brokenLimits.map((line) =>
      say('practice.debrief.broken-limit', {
        job: named(line.action),
        said: { metres: line.saidMetres },
        limit: limitValue(known, line.limit),
      }),
    ),
    ...advice.wrong.map((id) => say(`practice.wrong/${id}`)),
    ...advice.unsaid.map((action) => say('practice.debrief.unsaid', { job: named(action) })),
  ];
}

function limitValue({ assessment }: KnownHouse, id: string): Value {
  const limit = assessment.path.limits.get(id);
  if (!limit) return id;
  const what = { text: `limit/${limit.rulebook}/${id}/what` };
  return typeof limit.value === 'number'
    ? { text: 'practice.limit', values: { what, value: { metres: limit.value } } }
    : what;
}

function cautionParts({ cautions, promises, unsafe, alarm }: Debrief): Part[] {
  return [
    heading('cautions'),
    ...(cautions.forgotten.length === 0
      ? [say(cautions.needed > 0 ? 'practice.debrief.all-cautions' : 'practice.debrief.no-cautions')]
      : cautions.forgotten.map(({ caution, actions }) =>
          say('practice.debrief.forgotten', {
            caution: { text: `practice.caution/${caution}` },
            count: actions.length,
          }),
        )),
    ...promises.map((said) => say('practice.debrief.promise', { said })),
    ...unsafe.map((id) => say('practice.debrief.unsafe', { act: { text: `practice.unsafe/${id}` } })),
    ...(alarm === 'none' ? [] : [say(`practice.debrief.alarm/${alarm}`)]),
  ];
}

function pageParts(practice: Practice, known: KnownHouse, { firstPage }: Debrief): Part[] {
  if (!firstPage) return [];
  const list = (actions: readonly string[]): Value => ({
    list: actions.map((action) => ({
      text: 'practice.page.quoted',
      values: { job: jobValue(practice, known, { action, places: [] }) },
    })),
  });
  return [
    heading('page'),
    say('practice.debrief.page-yours', { jobs: list(firstPage.yours) }),
    say('practice.debrief.page-programs', { jobs: list(firstPage.programs) }),
    say('practice.debrief.page-shared', {
      shared: firstPage.shared.length,
      all: firstPage.programs.length,
      first: firstPage.sameFirst ? 'yes' : 'no',
    }),
  ];
}

/** The whole debrief as it is said: facts about what was done, and no mark of any kind for the trainee. */
export function debriefParts(practice: Practice, state: PracticeState, debrief: Debrief): Part[] {
  const known = knownHouse(practice, state);
  return [
    say('practice.debrief.title', { house: debrief.house }, 'heading'),
    ...orderParts(debrief),
    ...findingParts(known, debrief),
    ...adviceParts(practice, known, debrief),
    ...cautionParts(debrief),
    ...pageParts(practice, known, debrief),
    ...(debrief.hints > 0 ? [say('practice.debrief.hints', { count: debrief.hints }, 'quiet')] : []),
    ...nextParts(practice, known, debrief),
    say('practice.debrief.promise-none', undefined, 'quiet'),
  ];
}
