import type { Practice } from '../practice.ts';
import type { PracticeState } from '../session/state.ts';
import { adviceGiven, cautionsGiven } from './advice.ts';
import type { Debrief } from './debrief.ts';
import { findingsFound } from './findings.ts';
import { compareFirstPage } from './first-page.ts';
import { nextThings } from './next.ts';
import { orderKept } from './order.ts';

/** An alarm that is still open when the session ends was not answered. */
function alarmOutcome(state: PracticeState): Debrief['alarm'] {
  const outcomes = state.events.flatMap((event) => (event.kind === 'alarm' ? [event.outcome] : []));
  if (outcomes.length === 0) return 'none';
  return outcomes.includes('answered') && !outcomes.includes('ignored') ? 'answered' : 'ignored';
}

/** Judges a session against the key of its house. */
export function makeDebrief(practice: Practice, state: PracticeState): Debrief {
  const firstPage = compareFirstPage(practice, state);
  const judged = {
    house: state.house.name,
    level: state.house.level,
    ...(state.part === undefined ? {} : { part: state.part }),
    order: orderKept(practice, state),
    ...findingsFound(practice, state),
    advice: adviceGiven(practice, state),
    cautions: cautionsGiven(practice, state),
    promises: state.events.flatMap((event) => (event.kind === 'promised' ? [event.said] : [])),
    unsafe: state.events.flatMap((event) => (event.kind === 'unsafe' ? [event.id] : [])),
    alarm: alarmOutcome(state),
    hints: state.events.filter((event) => event.kind === 'hint').length,
    ...(firstPage ? { firstPage } : {}),
  };
  return { ...judged, next: nextThings(practice, state, judged) };
}
