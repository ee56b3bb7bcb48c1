import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Value } from '../../wording/say.ts';
import type { Practice } from '../practice.ts';
import type { KnownHouse } from '../session/known.ts';
import { somewhere, whereverNeeded } from '../session/say-place.ts';
import type { Debrief, NextThing } from './debrief.ts';

/** A publication as it is named in a line: title, author and year, how well it is known. */
export function sourceValue(practice: Practice, id: string): Value {
  const source = practice.programme.checklist.flow.sources.find((one) => one.id === id);
  if (!source) return id;
  const by = source.year === undefined ? source.by : `${source.by}, ${source.year}`;
  return {
    text: 'practice.source',
    values: { title: source.title, by, known: { text: `practice.known/${source.status}` } },
  };
}

function aboutValue({ assessment }: KnownHouse, thing: NextThing): Value {
  switch (thing.kind) {
    case 'missed':
    case 'invented':
    case 'unseen':
      return { text: `finding/${thing.about}/say`, values: somewhere };
    case 'costlyFirst':
      return { text: `action/${thing.about}/do`, values: whereverNeeded };
    case 'caution':
      return { text: `practice.caution/${thing.about}` };
    case 'limit': {
      const limit = assessment.path.limits.get(thing.about);
      return limit ? { text: `limit/${limit.rulebook}/${thing.about}/what` } : thing.about;
    }
    case 'order':
      return { text: `stop/${thing.about}/title` };
    case 'wrongAdvice':
      return { text: `practice.wrong/${thing.about}` };
    case 'unsafe':
      return { text: `practice.unsafe/${thing.about}` };
    case 'promise':
    case 'alarm':
    case 'danger':
      return '';
  }
}

/** The three things to practise next, each with where to read about it. */
export function nextParts(practice: Practice, known: KnownHouse, debrief: Debrief): Part[] {
  if (debrief.next.length === 0) return [say('practice.next.nothing')];
  const lines = debrief.next.map((thing, position): Part => {
    const source = sourceValue(practice, thing.source);
    const read: Value =
      thing.where === undefined
        ? { text: 'practice.next.read', values: { source } }
        : { text: 'practice.next.read-at', values: { source, where: thing.where } };
    return say(`practice.next/${thing.kind}`, {
      number: position + 1,
      about: aboutValue(known, thing),
      read,
    });
  });
  return [say('practice.debrief.next', undefined, 'heading'), ...lines];
}
