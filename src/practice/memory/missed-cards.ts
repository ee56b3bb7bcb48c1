import type { Debrief, NextThing } from '../debrief/debrief.ts';
import { isAbout } from '../debrief/next.ts';
import type { Practice } from '../practice.ts';

const kinds = (pairs: readonly string[]) => [...new Set(pairs.map((pair) => pair.split('@')[0] ?? ''))];

type Thing = Pick<NextThing, 'kind' | 'about'>;

function thingsOf(debrief: Debrief): Thing[] {
  const { findings, advice, cautions, order } = debrief;
  const all = (kind: NextThing['kind'], list: readonly string[]): Thing[] =>
    list.map((about) => ({ kind, about }));
  const passed = order.passedOver.map((one) => one.stop);
  return [
    ...all('missed', kinds(findings.missed)),
    ...all('invented', kinds(findings.invented)),
    ...all('wrongAdvice', advice.wrong),
    ...all(
      'limit',
      advice.brokenLimits.map((one) => one.limit),
    ),
    ...all(
      'costlyFirst',
      advice.costlyFirst.map((one) => one.action),
    ),
    ...all(
      'caution',
      cautions.forgotten.map((one) => one.caution),
    ),
    ...all('order', passed.slice(0, 1)),
    ...all('unsafe', debrief.unsafe),
    ...(debrief.promises.length > 0 ? all('promise', ['promise']) : []),
    ...(debrief.alarm === 'ignored' ? all('alarm', ['alarm']) : []),
    ...(order.danger === 'late' || order.danger === 'never' ? all('danger', ['danger']) : []),
  ];
}

/** The cards of all facts that went wrong in a session, in the order of the card file. */
export function missedCards(practice: Practice, debrief: Debrief): string[] {
  const things = thingsOf(debrief);
  return practice.content.cards
    .filter((card) => things.some((thing) => isAbout(card, thing)))
    .map((card) => card.id);
}
