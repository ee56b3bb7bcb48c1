import { pathOf } from '../answers/path.ts';
import type { Flow } from '../flow/flow.ts';
import { advance, withPending } from './advance.ts';
import type { Part } from './message.ts';
import type { Programme } from './programme.ts';
import type { WalkRecord } from './record.ts';
import { say, type Turned } from './turned.ts';

/** Whom to call: the number of the place, or of every place while it is not known. */
export function emergencyNumbers(flow: Flow, rulebook: string, placeKnown: boolean): string[] {
  const books = placeKnown ? flow.rulebooks.filter((one) => one.id === rulebook) : flow.rulebooks;
  return [...new Set(books.flatMap((one) => one.emergencyNumber.split(' or ')))];
}

/** The order to leave, with whom to call; nothing else is said. */
export function leaveParts(programme: Programme, record: WalkRecord): Part[] {
  const { index, flow } = programme.checklist;
  const place = index.roles.get('place');
  const answer = place && record.sheet[place.id];
  const known = answer?.status === 'given' && answer.value !== flow.walk.generalRulebook;
  const numbers = emergencyNumbers(flow, pathOf(index, record.sheet).rulebook, known);
  return [
    say('emergency.leave', undefined, 'emergency'),
    say('emergency.call', { numbers: { list: numbers, join: 'or' }, count: numbers.length }, 'emergency'),
    say('emergency.kept', undefined, 'emergency'),
  ];
}

/** Stops the walk from wherever it is and says to leave. */
export function stopForEmergency(programme: Programme, record: WalkRecord): Turned {
  const at = record.cursor.key;
  const stopped =
    record.cursor.phase === 'emergency' ? record : advance(programme, record, { type: 'EMERGENCY', at });
  return { record: withPending(stopped, { kind: 'safe' }), parts: leaveParts(programme, record) };
}

/** A person who writes again after an emergency is asked whether they are safe, before anything else. */
export function askSafe(record: WalkRecord): Turned {
  return {
    record: withPending(record, { kind: 'safe' }),
    parts: [say('emergency.safe-now', undefined, 'emergency')],
  };
}

/** Safe again: the walk goes on where it stopped, and the answer that spoke of danger no longer holds. */
export function goOnSafe(programme: Programme, record: WalkRecord): Turned {
  const danger = programme.checklist.index.roles.get('danger');
  const resumed = advance(programme, record, { type: 'RESUME' });
  const answer = danger && resumed.sheet[danger.id];
  const told = answer?.status === 'given' && answer.value === 'yes';
  const cleared =
    danger && told
      ? advance(programme, resumed, {
          type: 'ANSWER',
          key: danger.id,
          answer: { status: 'given', value: 'no' },
        })
      : resumed;
  return { record: cleared, parts: [say('emergency.go-on')] };
}
