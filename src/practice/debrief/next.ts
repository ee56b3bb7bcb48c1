import type { Practice } from '../practice.ts';
import type { Card } from '../schema/practice-file.ts';
import { knownHouse } from '../session/known.ts';
import type { PracticeState } from '../session/state.ts';
import type { Debrief, NextThing } from './debrief.ts';

type Judged = Omit<Debrief, 'next'>;
type Weighed = NextThing & { readonly weight: number };

const most = 3;

const kindsOf = (pairs: readonly string[]) => [...new Set(pairs.map((pair) => pair.split('@')[0] ?? ''))];

/** How much of all that can be taken off hangs on a finding: the shares of the jobs that answer it. */
function stakeOf(practice: Practice, state: PracticeState, finding: string): number {
  const { ranked, exposure, left } = knownHouse(practice, state).assessment;
  const all = exposure - left;
  const share = ranked
    .filter(({ proposal }) => proposal.findings.some((id) => id.split('@')[0] === finding))
    .reduce((sum, job) => sum + job.share, 0);
  return all > 0 ? share / all : 0;
}

/** What can hurt somebody comes first, then what costs the resident money, then what was overlooked. */
function aboutSafety(practice: Practice, judged: Judged): Weighed[] {
  const { words } = practice.content;
  const unsafe = [...new Set(judged.unsafe)].map((id): Weighed => {
    const source = words.unsafe.find((one) => one.id === id)?.source ?? 'memory';
    return { kind: 'unsafe', about: id, source, weight: 95 };
  });
  return [
    ...(judged.alarm === 'ignored'
      ? [{ kind: 'alarm', about: 'alarm', source: 'leave-advice', weight: 100 } as const]
      : []),
    ...unsafe,
    ...(judged.promises.length > 0
      ? [{ kind: 'promise', about: 'promise', source: 'common-practice', weight: 90 } as const]
      : []),
    ...(judged.order.danger === 'never' || judged.order.danger === 'late'
      ? [{ kind: 'danger', about: 'danger', source: 'leave-advice', weight: 88 } as const]
      : []),
  ];
}

function aboutAdvice(practice: Practice, state: PracticeState, judged: Judged): Weighed[] {
  const { words } = practice.content;
  const { limits } = knownHouse(practice, state).assessment.path;
  const { cautions } = practice.programme.checklist.flow;
  const [forgotten] = judged.cautions.forgotten;
  const [costly] = judged.advice.costlyFirst;
  return [
    ...[...new Set(judged.advice.wrong)].map((id): Weighed => {
      const source = words.wrongAdvice.find((one) => one.id === id)?.source ?? 'common-practice';
      return { kind: 'wrongAdvice', about: id, source, weight: 80 };
    }),
    ...[...new Set(judged.advice.brokenLimits.map((one) => one.limit))].map((id): Weighed => {
      const source = limits.get(id)?.limit.source ?? 'common-practice';
      return { kind: 'limit', about: id, source, weight: 78 };
    }),
    ...(costly
      ? [{ kind: 'costlyFirst', about: costly.action, source: 'common-practice', weight: 50 } as const]
      : []),
    ...(forgotten
      ? [
          {
            kind: 'caution',
            about: forgotten.caution,
            source: cautions.find((one) => one.id === forgotten.caution)?.sources[0] ?? 'common-practice',
            weight: 45,
          } as const,
        ]
      : []),
  ];
}

function aboutFindings(practice: Practice, state: PracticeState, judged: Judged): Weighed[] {
  const sourceOf = (id: string) => practice.facts.get(id)?.finding.sources[0] ?? 'common-practice';
  const [passed] = judged.order.passedOver;
  const [unvisited] = judged.order.neverVisited;
  const stop = passed?.stop ?? unvisited;
  const missed = kindsOf(judged.findings.missed).map((about): Weighed => {
    const weight = 40 + 35 * stakeOf(practice, state, about);
    return { kind: 'missed', about, source: sourceOf(about), weight };
  });
  const invented = kindsOf(judged.findings.invented).map(
    (about): Weighed => ({ kind: 'invented', about, source: sourceOf(about), weight: 42 }),
  );
  const unseen = kindsOf(judged.findings.unseen).map(
    (about): Weighed => ({ kind: 'unseen', about, source: sourceOf(about), weight: 30 }),
  );
  return [
    ...missed,
    ...invented,
    ...unseen,
    ...(stop === undefined
      ? []
      : [{ kind: 'order', about: stop, source: 'common-practice', weight: 60 } as const]),
  ];
}

/** Whether a card is about a thing that went wrong. */
export function isAbout(card: Card, thing: Pick<NextThing, 'kind' | 'about'>): boolean {
  switch (thing.kind) {
    case 'missed':
    case 'invented':
    case 'unseen':
      return card.for.findings.includes(thing.about);
    case 'costlyFirst':
      return card.for.actions.includes(thing.about) || card.for.faults.includes('costly-first');
    case 'caution':
      return card.for.cautions.includes(thing.about);
    case 'limit':
      return 'limit' in card && card.limit === thing.about;
    case 'order':
      return card.for.faults.includes('order');
    case 'wrongAdvice':
    case 'unsafe':
    case 'promise':
    case 'alarm':
    case 'danger':
      return card.for.faults.includes(thing.about);
  }
}

/** Everything that went wrong, the weightiest first. */
export function thingsToPractise(practice: Practice, state: PracticeState, judged: Judged): NextThing[] {
  const all = [
    ...aboutSafety(practice, judged),
    ...aboutAdvice(practice, state, judged),
    ...aboutFindings(practice, state, judged),
  ];
  return all
    .sort((a, b) => b.weight - a.weight || (a.about < b.about ? -1 : 1))
    .map(({ weight: _, ...thing }): NextThing => {
      const where = practice.content.cards.find(
        (card) => card.source === thing.source && isAbout(card, thing),
      )?.where;
      return where === undefined ? thing : { ...thing, where };
    });
}

/** The three things to practise next: one of each kind first, then others. */
export function nextThings(practice: Practice, state: PracticeState, judged: Judged): NextThing[] {
  const all = thingsToPractise(practice, state, judged);
  const firstOfKind = all.filter(
    (one, position) => all.findIndex((other) => other.kind === one.kind) === position,
  );
  const others = all.filter((one) => !firstOfKind.includes(one));
  const ordered = [...firstOfKind, ...others];
  return ordered
    .filter((one, position) => ordered.findIndex((other) => other.about === one.about) === position)
    .slice(0, most);
}
