import type { Step } from '../../answers/path.ts';
import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { knownHouse, stopsOf } from './known.ts';
import { sayFinding, whereverNeeded } from './say-place.ts';
import { type PracticeState, recordedPairs } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

/** Whether a step was looked at, or truly told, at all its sides. */
export function isKnown(state: PracticeState, step: Step): boolean {
  const events = state.events.filter(
    (event) => (event.kind === 'looked' || (event.kind === 'asked' && event.told)) && event.key === step.key,
  );
  if (!step.sides) return events.length > 0;
  if (events.some((event) => event.kind === 'asked')) return true;
  const seen = new Set(events.flatMap((event) => (event.kind === 'looked' ? event.sides : [])));
  return step.sides.every((side) => seen.has(side));
}

const named = 3;

/** A hint: what at this stop nobody has looked at yet and how one looks at the first of it, or where to go next. */
export function hint(practice: Practice, state: PracticeState): PracticeTurned {
  const stops = stopsOf(practice, state);
  const visited = new Set(state.events.flatMap((event) => (event.kind === 'went' ? [event.stop] : [])));
  const next = stops.find((stop) => !visited.has(stop.id));
  const { steps } = knownHouse(practice, state).assessment.path;
  const open = steps.filter((step) => step.question.stop === state.at && !isKnown(state, step));
  const questions = [...new Map(open.map((step) => [step.question.id, step.question])).values()];
  const [first] = questions;
  const counted = withEvents(state, [{ kind: 'hint', stop: state.at ?? '' }]);
  if (!first) {
    const begun = state.at !== undefined || state.events.length > 0;
    if (!begun && next)
      return {
        state: counted,
        parts: [say('practice.hint.begin', { stop: { text: `stop/${next.id}/title` } })],
      };
    const part = next
      ? say('practice.hint.next', { stop: { text: `stop/${next.id}/title` } })
      : say('practice.hint.all-seen');
    return { state: counted, parts: [part] };
  }
  const things = questions.slice(0, named).map((one) => ({ text: `question/${one.id}/short` }));
  return {
    state: counted,
    parts: [
      say('practice.hint.not-seen', { things: { list: things } }),
      say('practice.hint.look', { look: { text: `question/${first.id}/look` } }),
    ],
  };
}

/** Where the trainee is and which stops are left. */
export function where(practice: Practice, state: PracticeState): PracticeTurned {
  const visited = new Set(state.events.flatMap((event) => (event.kind === 'went' ? [event.stop] : [])));
  const title = (id: string) => ({ text: `stop/${id}/title` });
  const left = stopsOf(practice, state).filter((stop) => !visited.has(stop.id));
  const here = state.at === undefined ? [] : [say('practice.where.here', { stop: title(state.at) })];
  const ahead = left.map((stop) => title(stop.id));
  const rest =
    ahead.length > 0 ? say('practice.where.left', { stops: { list: ahead } }) : say('practice.where.all');
  return { state, parts: [...here, rest] };
}

/** The findings recorded so far, each kind in one line. */
export function listFindings(practice: Practice, state: PracticeState): PracticeTurned {
  const { assessment, pairs } = knownHouse(practice, state);
  const kinds = new Map<string, string[]>();
  for (const pair of recordedPairs(state)) {
    const id = pair.split('@')[0] ?? '';
    kinds.set(id, [...(kinds.get(id) ?? []), pair]);
  }
  if (kinds.size === 0) return { state, parts: [say('practice.findings.none')] };
  const lines = [...kinds].map(([id, list]): Part => {
    const places = list.flatMap((pair) => pairs.get(pair)?.place ?? []);
    const { text, values } = sayFinding(assessment, id, places);
    return say('practice.findings.line', { finding: { text, values: values ?? {} } });
  });
  return { state, parts: [say('practice.findings.intro'), ...lines] };
}

/** The advice given so far. */
export function listAdvice(state: PracticeState): PracticeTurned {
  const jobs = state.events.flatMap((event) => (event.kind === 'advised' ? [event.action] : []));
  const lines = [...new Set(jobs)].map((job) =>
    say('practice.findings.line', { finding: { text: `action/${job}/do`, values: whereverNeeded } }),
  );
  if (lines.length === 0) return { state, parts: [say('practice.advice.none')] };
  return { state, parts: [say('practice.advice.intro'), ...lines] };
}
