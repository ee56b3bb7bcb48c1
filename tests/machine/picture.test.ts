import { describe, expect, it } from 'vitest';
import { stateOf } from '../../src/machine/compile-machine.ts';
import { drawMachine } from '../../src/machine/picture.ts';
import { realProgramme } from '../support/programme.ts';

const { machine, checklist } = realProgramme();
const { flow } = checklist;
const titleOf = (title: (typeof flow.stops)[number]['title']) =>
  typeof title === 'string' ? title : title.resident;
const picture = drawMachine(machine, new Map(flow.stops.map((stop) => [stop.id, titleOf(stop.title)])));
const lines = picture.trimEnd().split('\n');

/** The lines of a Mermaid state diagram that the picture uses; its grammar says `stateDiagram-v2` first. */
const grammar = {
  open: /^ *state "[^"]+" as (\w+) \{$/,
  close: /^ *\}$/,
  named: /^ *state "[^"]+" as (\w+)$/,
  move: /^ *(\[\*\]|\w+) --> (\w+)(?:: [A-Z_]+)?$/,
} as const;
type Kind = keyof typeof grammar;

function parse(line: string): { kind: Kind; names: string[] } | undefined {
  for (const kind of Object.keys(grammar) as Kind[]) {
    const match = grammar[kind].exec(line);
    if (match) return { kind, names: match.slice(1) };
  }
  return undefined;
}

const parsed = lines.slice(1).map((line) => ({ line, part: parse(line) }));

describe('the picture of the machine', () => {
  it('is a state diagram of which every line parses', () => {
    expect(lines[0]).toBe('stateDiagram-v2');
    expect(parsed.filter(({ part }) => part === undefined)).toEqual([]);
  });

  it('closes every block that it opens', () => {
    let depth = 0;
    for (const { part } of parsed) {
      if (part?.kind === 'open') depth++;
      if (part?.kind === 'close') depth--;
      expect(depth).toBeGreaterThanOrEqual(0);
    }
    expect(depth).toBe(0);
  });

  it('leads to every question, to every stop and to every way of ending', () => {
    const reached = new Set(parsed.flatMap(({ part }) => (part?.kind === 'move' ? [part.names[1]] : [])));
    const wanted = [
      ...flow.questions.map((question) => stateOf(question.id)),
      ...flow.stops.map((stop) => `stop_${stop.id}`),
      'readBack',
      'finished',
      'paused',
      'emergency',
    ];
    expect(wanted.filter((state) => !reached.has(state))).toEqual([]);
  });

  it('names no state twice, and moves only between states that it shows', () => {
    const shown = parsed.flatMap(({ part }) =>
      part?.kind === 'open' || part?.kind === 'named' ? [part.names[0]] : [],
    );
    expect(new Set(shown).size).toBe(shown.length);
    const states = new Set([
      ...flow.questions.map((one) => stateOf(one.id)),
      ...flow.groups.map((one) => `each_${one.id}`),
    ]);
    const known = new Set([...shown, ...states, '[*]', 'readBack', 'finished', 'paused', 'emergency', 'end']);
    const strange = parsed.flatMap(({ part }) =>
      part?.kind === 'move' ? part.names.filter((name) => !known.has(name)) : [],
    );
    expect(strange).toEqual([]);
  });
});
