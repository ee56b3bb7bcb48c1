import { describe, expect, it } from 'vitest';
import { makeDebrief } from '../../src/practice/debrief/make-debrief.ts';
import { makeHouse } from '../../src/practice/house/make-house.ts';
import { practiceTurn } from '../../src/practice/session/practice-turn.ts';
import { newSession, type PracticeEvent, recordedPairs } from '../../src/practice/session/state.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { realPractice, wordingOf } from './practice-for-tests.ts';

const practice = realPractice();
const made = makeHouse(practice.maker, 8, 'ordinary');

/** What is left of a session after some lines, and the words of the last reply. */
function sessionOf(...lines: string[]) {
  const { alarmAt: _, ...quiet } = made;
  let state = newSession({ ...quiet, temper: 'plain' }, new Date('2026-06-01T08:00:00Z'));
  let reply = practiceTurn(practice, state, { kind: 'hello' });
  for (const text of lines) {
    reply = practiceTurn(practice, state, { kind: 'text', text });
    state = reply.state;
  }
  const { blocks } = wordReply({ parts: reply.reply.parts }, wordingOf(state));
  return { state, words: blocks.flatMap((block) => block.lines).join('\n') };
}
const of = <K extends PracticeEvent['kind']>(events: readonly PracticeEvent[], kind: K) =>
  events.filter((event): event is Extract<PracticeEvent, { kind: K }> => event.kind === kind);

describe('questions about danger', () => {
  it.each([
    'ask about danger',
    'any danger?',
    'is there any smoke or an evacuation order right now?',
    'is there any smoke around?',
    'is everyone safe here?',
    'have you been told to leave?',
    'do you see any smoke or have you been told to leave?',
    'ask if they have been told to leave',
    'ask about smoke and whether they have been told to leave',
  ])('go to the played resident: "%s"', (text) => {
    const { state } = sessionOf(text);
    expect(state.phase).toBe('walking');
    expect(makeDebrief(practice, state).order.danger).toBe('first');
  });

  it.each([
    'is my house on fire',
    'is the house on fire?',
    'what is burning',
    'I have been told to leave',
    'we are told to leave',
  ])('are an emergency when they may be the trainee\'s own: "%s"', (text) => {
    expect(sessionOf(text).state.phase).toBe('emergency');
  });

  it.each(['is that smoke?', 'is there smoke near me?', 'I smell smoke'])(
    'are met with a question where it is not clear: "%s"',
    (text) => {
      const { state } = sessionOf(text);
      expect(state.phase === 'emergency' || state.pending?.kind === 'emergency').toBe(true);
    },
  );
});

describe('an order to leave given to the played resident', () => {
  it.each(['tell them leave now and call 911', 'tell the resident to leave now'])(
    'is no emergency of the trainee, alarm or not: "%s"',
    (text) => {
      expect(sessionOf('go to the vents', text).state.phase).toBe('walking');
    },
  );

  it('is one where it speaks of the trainee', () => {
    const { state } = sessionOf('tell them to leave, my house is on fire');
    expect(state.phase === 'emergency' || state.pending?.kind === 'emergency').toBe(true);
  });
});

describe('finding the way', () => {
  it('goes on and back in the order of the walk', () => {
    expect(sessionOf('next').state.at).toBe('about');
    expect(sessionOf('next', 'go on').state.at).toBe('roof');
    expect(sessionOf('next', 'next please', 'skip this').state.at).toBe('eaves');
    expect(sessionOf('go to the vents', 'go back').state.at).toBe('eaves');
    expect(sessionOf('go to the vents', 'go back to the roof').state.at).toBe('roof');
    expect(sessionOf('next', 'back').words).toContain('where the walk begins');
  });

  it('says what is left when there is no next part', () => {
    const { state, words } = sessionOf('go to the yard', 'next');
    expect(state.at).toBe('zone1');
    expect(words).toContain('Not visited yet');
  });

  it('reaches every part by its title', () => {
    for (const { id } of practice.programme.checklist.flow.stops) {
      const title = wordingOf({ house: made }).text(`stop/${id}/title`);
      expect(sessionOf(`go to ${title}`).state.at, title).toBe(id);
    }
  });

  it('walks to a part that is looked at by name, and not for a thing of another part', () => {
    const { state, words } = sessionOf('go to the eaves', 'look at roof');
    expect(state.at).toBe('roof');
    expect(words).toContain('Roof covering');
    expect(sessionOf('go to the vents', 'show me the gutters').state.at).toBe('vents');
    expect(sessionOf('check gutters').words).toContain('Go to "Roof" first');
  });

  it('begins with danger in a hint before the first step', () => {
    expect(sessionOf('what should I do').words).toContain('Ask about danger before anything else');
  });
});

describe('questions without "ask"', () => {
  it('look at what is here', () => {
    const { state, words } = sessionOf('go to the roof', 'what is the roof made of');
    expect(words).toContain('Roof covering');
    expect(of(state.events, 'looked').map((event) => event.key)).toContain('roof.covering');
  });

  it('ask the resident for the rest', () => {
    expect(sessionOf('go to the roof', 'how old is the house?').words).toMatch(/resident says: Year built/);
    expect(sessionOf('how far is the neighbor').words).toMatch(/resident says: .*house/);
  });

  it('say once what the resident says of several things alike', () => {
    const { alarmAt: _, ...quiet } = made;
    const state = newSession({ ...quiet, temper: 'unsure' }, new Date('2026-06-01T08:00:00Z'));
    const turned = practiceTurn(practice, state, { kind: 'text', text: 'ask about tree 1' });
    expect(turned.reply.parts).toHaveLength(1);
    expect(of(turned.state.events, 'asked').length).toBeGreaterThan(3);
  });

  it('say so where the house has no such thing', () => {
    const without = makeHouse(practice.maker, 12, 'ordinary');
    const state = newSession({ ...without, temper: 'plain' }, new Date('2026-06-01T08:00:00Z'));
    const { reply } = practiceTurn(practice, state, { kind: 'text', text: 'are there skylights?' });
    expect(reply.parts[0]).toMatchObject({ text: 'practice.says.none-here' });
  });
});

describe('what is said with no word for what is done', () => {
  it.each([
    ['gutters are full of leaves on the left', 'roof.gutter-litter@left'],
    ['the roof has missing shingles', 'roof.missing'],
    ['eaves are open at the back', 'eaves.open@back'],
    ['siding too close to ground at front', 'siding.low@front'],
    ['bark mulch at the front', 'zone0.bark@front'],
    ['i found debris in gutters at the back', 'roof.gutter-litter@back'],
    ['I notice leaves on the roof', 'roof.litter'],
    ['i find quarter inch mesh on the high vents at the front', 'vents.coarse-high@front'],
    ['no mesh on the low vents at the back', 'vents.open-low@back'],
  ])('is a finding where it says one: "%s"', (text, pair) => {
    expect(recordedPairs(sessionOf('go to the fences', text).state)).toEqual([pair]);
  });

  it.each([
    ['clean the gutters', 'clean-gutters'],
    ['remove bark mulch and replace it with gravel', 'take-out-mulch'],
    ['recommend gutter guards', 'gutter-guards'],
    ['i would recommend gutter guards', 'gutter-guards'],
    ['tell them to clean the gutters', 'clean-gutters'],
    ['recommend cutting the tree back', 'arborist'],
  ])('is advice where it begins with the work: "%s"', (text, action) => {
    const { state } = sessionOf('go to the fences', text);
    expect(of(state.events, 'advised').map((event) => event.action)).toEqual([action]);
    expect(recordedPairs(state)).toEqual([]);
  });

  it.each([
    ['cover the dryer vent with mesh', 'dryer-mesh'],
    ['replace the bark with rubber mulch', 'rubber-mulch'],
  ])('is heard as the wrong advice that it is: "%s"', (text, id) => {
    const { state } = sessionOf(text);
    expect(of(state.events, 'wrongAdvice').map((event) => event.id)).toEqual([id]);
    expect(makeDebrief(practice, state).advice.wrong).toEqual([id]);
  });

  it.each(['asdf', 'blah blah', '42'])('is nothing in plain nonsense: "%s"', (text) => {
    const { state, words } = sessionOf('go to the roof', text);
    expect(words).toContain('I did not get that');
    expect(state.events).toHaveLength(1);
  });

  it.each([
    'no leaves on the roof',
    'I find no leaves on the roof',
    'no problems here',
    "I don't see any bark mulch",
  ])('is no finding where it says that there is none: "%s"', (text) => {
    const { state } = sessionOf('go to the fences', text);
    expect(recordedPairs(state)).toEqual([]);
    expect(state.pending).toBeUndefined();
  });

  it('is a finding where what is missing is the finding', () => {
    const { state } = sessionOf('go to the fences', 'no mesh on the high vents at the left');
    expect(recordedPairs(state)).toEqual(['vents.open-high@left']);
  });

  it('is a finding that this house can have rather than one of a shed that it has not', () => {
    expect(sessionOf('go to the roof', 'I see moss').words).not.toContain('no tree, shed or side');
  });

  it.each(['ok', 'yes', 'no'])('goes ahead after a word that answers nothing: "%s"', (text) => {
    expect(sessionOf(text).words).toContain('Go ahead');
  });
});

describe('taking back', () => {
  it('takes the last finding, or the one named, and says which', () => {
    const both = ['I find bark mulch at the front', 'I find firewood at the back'];
    expect(recordedPairs(sessionOf(...both, 'undo').state)).toEqual(['zone0.bark@front']);
    expect(sessionOf(...both, 'take that back').words).toMatch(/Off your list: Firewood/);
    expect(recordedPairs(sessionOf(...both, 'take back the bark').state)).toEqual(['zone0.wood@back']);
  });
});

describe('the debrief', () => {
  it('does not deny advice that was wrong', () => {
    const session = sessionOf('advise rubber mulch instead', 'done', 'yes');
    expect(session.words).not.toContain('You gave no advice');
    expect(sessionOf('done', 'yes').words).toContain('You gave no advice');
  });

  it('ends no line with two full stops', () => {
    const { words } = sessionOf('first page', 'mow the grass', 'done', 'done', 'yes');
    expect(words).toContain('Your first page: "');
    expect(words).not.toMatch(/\."\.|\.\.$/m);
  });
});
