import type { Flow, Question } from '../../src/flow/flow.ts';
import { realProgramme } from '../../tests/support/programme.ts';

const materials = ['wood', 'stone', 'metal', 'other'] as const;
const count = 60;

/** The same sixty choices for every library. */
export const sixtyQuestions = Array.from({ length: count }, (_, at) => ({
  id: `part.q${at + 1}`,
  ask: `What is part ${at + 1} made of?`,
  options: materials,
}));

/** What is answered to them, in turn. */
export const sixtyAnswers = sixtyQuestions.map((_, at) => materials[at % materials.length] ?? '');

/** They as a flow, with the real words of the language; nothing is found or ranked. */
export function sixtyQuestionFlow(): Flow {
  const real = realProgramme().checklist.flow;
  const [stop] = real.stops;
  if (!stop) throw new Error('The real walk has no stops.');
  const questions = sixtyQuestions.map(
    ({ id, ask, options }): Question => ({
      id,
      stop: stop.id,
      kind: 'choice',
      ask,
      look: 'Look at it.',
      good: 'Stone.',
      why: 'Some of it burns.',
      call: { say: ask, listen: 'A word.', cannotTell: 'Leave it.' },
      options: options.map((option) => ({ id: option, label: option, words: [] })),
      seconds: 5,
      cautions: [],
      renamedFrom: [],
    }),
  );
  return {
    ...real,
    stops: [stop],
    groups: [],
    questions,
    findings: [],
    elements: [],
    sets: {},
    waysIn: [],
    actions: [],
    upkeep: [],
    fingerprint: 'sixty',
  };
}
