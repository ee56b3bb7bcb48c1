import { describe, expect, it } from 'vitest';
import { makeDebrief } from '../../src/practice/debrief/make-debrief.ts';
import { makeHouse } from '../../src/practice/house/make-house.ts';
import type { PracticeHouse } from '../../src/practice/house/practice-house.ts';
import type { Temper } from '../../src/practice/schema/practice-file.ts';
import { type PracticeReply, practiceTurn } from '../../src/practice/session/practice-turn.ts';
import { newSession, type PracticeState, recordedPairs } from '../../src/practice/session/state.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { realPractice, wordingOf } from './practice-for-tests.ts';

const practice = realPractice();
const made = makeHouse(practice.maker, 8, 'ordinary');

interface Talk {
  state: PracticeState;
  reply: PracticeReply;
  readonly say: (text: string) => string;
}

/** A session that is talked to in plain words; each word back is one text. */
function talk(change: Partial<PracticeHouse> = {}, part?: string): Talk {
  const { alarmAt: _, ...quiet } = made;
  const state = newSession({ ...quiet, temper: 'plain', ...change }, new Date('2026-06-01T08:00:00Z'), part);
  const first = practiceTurn(practice, state, { kind: 'hello' });
  const self: Talk = {
    ...first,
    say: (text) => {
      const turned = practiceTurn(practice, self.state, { kind: 'text', text });
      self.state = turned.state;
      self.reply = turned.reply;
      const { blocks } = wordReply({ parts: turned.reply.parts }, wordingOf(self.state));
      return blocks.flatMap((block) => block.lines).join('\n');
    },
  };
  return self;
}

const phrases = (reply: PracticeReply) =>
  reply.parts.flatMap((part) => (part.kind === 'say' ? [part.text] : []));

describe("the trainee's own emergency", () => {
  it.each([
    'I see flames behind my house',
    'there is a fire in the kitchen',
    'we were told to evacuate',
    'I find flames on the roof',
  ])('stops everything: "%s"', (text) => {
    const session = talk();
    session.say('go to the roof');
    session.say(text);
    expect(session.state.phase).toBe('emergency');
    expect(phrases(session.reply)).toContain('emergency.leave');
  });

  it('stops everything while an alarm is played, with or without the key', () => {
    const session = talk({ alarmAt: 'eaves' });
    session.say('go to the eaves');
    expect(phrases(session.reply)).toContain('practice.alarm.played');
    session.say('there is a fire in my own kitchen');
    expect(session.state.phase).toBe('emergency');
    const key = practiceTurn(practice, talk({ alarmAt: 'eaves' }).state, { kind: 'emergency' });
    expect(key.state.phase).toBe('emergency');
  });

  it('asks whether they are safe before anything else, and then goes on where it stopped', () => {
    const session = talk();
    session.say('go to the roof');
    session.say('I see flames behind my house');
    session.say('go to the vents');
    expect(session.state.phase).toBe('emergency');
    session.say('yes');
    expect(session.state).toMatchObject({ phase: 'walking', at: 'roof' });
  });

  it('meets doubt with one short question', () => {
    const session = talk();
    session.say('the sky is smoky');
    expect(session.state.pending?.kind).toBe('emergency');
    session.say('no');
    expect(session.state).toMatchObject({ phase: 'walking' });
    session.say('the sky is smoky');
    session.say('well, perhaps');
    expect(session.state.phase).toBe('emergency');
  });

  it.each([
    'caution about burning debris',
    'ask whether there is smoke or an order to leave',
    'I find firewood at the back',
    'advise them to move the firewood away',
    'caution about sparks on hot dry days',
    'look at the fire pit',
  ])('is not taken from words of the trade: "%s"', (text) => {
    const session = talk();
    session.say('go to the first five feet');
    session.say(text);
    expect(session.state.phase).toBe('walking');
    expect(session.state.pending?.kind).not.toBe('emergency');
  });
});

describe('a played alarm', () => {
  it.each([
    'tell them to leave now',
    'tell them: get out and call 911',
    'leave now!',
    'advise them to leave at once',
  ])('is answered by "%s"', (text) => {
    const session = talk({ alarmAt: 'eaves' });
    session.say('go to the eaves');
    session.say(text);
    expect(session.state.phase).toBe('walking');
    expect(makeDebrief(practice, session.state).alarm).toBe('answered');
  });

  it.each(['look at the soffit', 'tell them not to leave', 'hint'])('is ignored by "%s"', (text) => {
    const session = talk({ alarmAt: 'eaves' });
    session.say('go to the eaves');
    session.say(text);
    expect(makeDebrief(practice, session.state).alarm).toBe('ignored');
  });

  it('is played once, and ignored where the session ends with it', () => {
    const session = talk({ alarmAt: 'eaves' });
    session.say('go to the eaves');
    expect(makeDebrief(practice, session.state).alarm).toBe('ignored');
    session.say('tell them to leave now');
    session.say('go to the roof');
    session.say('go to the eaves');
    expect(phrases(session.reply)).not.toContain('practice.alarm.played');
  });
});

describe('what is seen and what is said', () => {
  it('is limited to the stop, the sides and what is there', () => {
    const session = talk();
    expect(session.say('look at it')).toContain('First go somewhere');
    expect(session.say('look at the gutters')).toContain('Go to "Roof" first');
    session.say('go to the roof');
    expect(session.say('look at the foundation vents on the left')).toContain('another part');
    session.say('look at the gutters on the left');
    expect(session.state.events).toContainEqual({ kind: 'looked', key: 'roof.gutters', sides: ['left'] });
  });

  it('cannot be seen where only the resident can tell', () => {
    const session = talk();
    session.say('go to about the house');
    expect(session.say('look at the year built')).toContain('Ask the resident');
  });

  const asked = (temper: Temper, times: number, about: string) => {
    const session = talk({ temper });
    session.say('go to the roof');
    for (let time = 1; time < times; time++) session.say(`ask about ${about}`);
    session.say(`ask about ${about}`);
    return session;
  };

  it.each([
    ['plain', 1, 'the roof covering', true],
    ['pushes-back', 1, 'the roof covering', false],
    ['pushes-back', 2, 'the roof covering', true],
    ['unsure', 2, 'the roof covering', false],
    ['unsure', 1, 'the year built', false],
    ['unsure', 2, 'the year built', true],
    ['exaggerates', 1, 'the roof covering', false],
    ['exaggerates', 1, 'the year built', true],
  ] as const)(
    'a resident who is %s, asked %i times about %s, tells the truth: %s',
    (temper, times, about, told) => {
      expect(asked(temper, times, about).state.events.at(-1)).toMatchObject({ kind: 'asked', told });
    },
  );

  it('an exaggeration is not the truth, and the same each time', () => {
    const claim = (session: Talk) => session.reply.parts[0];
    const once = asked('exaggerates', 1, 'the roof covering');
    expect(claim(once)).toEqual(claim(asked('exaggerates', 2, 'the roof covering')));
    const truth = made.sheet['roof.covering'];
    const said = claim(once);
    const answer = said?.kind === 'say' ? said.values?.['answer'] : undefined;
    expect(answer).not.toMatchObject({ answer: truth });
  });
});

describe('findings, advice and cautions', () => {
  it('ask which one is meant, and where', () => {
    const session = talk();
    session.say('I find coarse mesh');
    expect(session.state.pending?.kind).toBe('choice');
    const which = session.reply.choices.map((choice) => choice.id);
    expect(which).toContain('vents.coarse-high');
    session.say(String(which.indexOf('vents.coarse-high') + 1));
    expect(session.state.pending?.kind).toBe('place');
    session.say('left and back');
    expect(recordedPairs(session.state)).toEqual(['vents.coarse-high@left', 'vents.coarse-high@back']);
  });

  it('can be taken back', () => {
    const session = talk();
    session.say('I find bark mulch at the front and left');
    session.say('take back bark mulch at the front');
    expect(recordedPairs(session.state)).toEqual(['zone0.bark@left']);
    session.say('take back bark');
    expect(recordedPairs(session.state)).toEqual([]);
    expect(session.say('take back bark')).toContain('No such finding');
  });

  it('let a question go when something else is said', () => {
    const session = talk();
    session.say('I find coarse mesh');
    session.say('go to the eaves');
    expect(session.state.pending).toBeUndefined();
    expect(session.state.at).toBe('eaves');
  });

  it.each([
    ['tell them their house will survive', 1],
    ['advise clearing the gutters, then the home will be safe', 1],
    ['you will be safe, I promise', 1],
    ['tell them nobody can promise that the house survives', 0],
    ['tell them no list guarantees that the house will survive', 0],
    ['tell them the insurer will pay', 1],
  ])('a promise is heard: "%s" (%i)', (text, count) => {
    const session = talk();
    session.say(text);
    expect(makeDebrief(practice, session.state).promises).toHaveLength(count);
  });

  it.each([
    ['advise moving the firewood 10 feet away', 'firewoodAway'],
    ['advise moving the firewood 30 feet away', undefined],
    ['advise mowing the grass to 8 inches', 'grassMax'],
    ['advise quarter-inch metal mesh for the high vents', 'meshMax'],
    ['advise eighth-inch metal mesh for the high vents', undefined],
  ])('a measure against the rulebook is heard: "%s"', (text, limit) => {
    const session = talk();
    session.say(text);
    if (session.state.pending) session.say('1');
    expect(makeDebrief(practice, session.state).advice.brokenLimits.map((one) => one.limit)).toEqual(
      limit ? [limit] : [],
    );
  });

  it.each(practice.content.words.wrongAdvice.map((one) => [one.id, one.words[0] ?? '']))(
    'advice that no rulebook allows is heard: %s',
    (id, words) => {
      const session = talk();
      session.say(`advise them to ${words}`);
      expect(session.state.events.at(-1)).toEqual({ kind: 'wrongAdvice', id });
      const not = talk();
      not.say(`advise them never to ${words}`);
      expect(not.state.events.some((event) => event.kind === 'wrongAdvice')).toBe(false);
    },
  );

  it.each(practice.content.words.unsafe.map((one) => [one.id, one.words[0] ?? '']))(
    'an unsafe act is stopped: %s',
    (id, words) => {
      const session = talk();
      session.say(words);
      expect(session.state.events.at(-1)).toEqual({ kind: 'unsafe', id });
    },
  );

  it('takes several cautions in one breath', () => {
    const session = talk();
    session.say('caution about ladders, power lines and nesting birds');
    expect(makeDebrief(practice, session.state).cautions.given).toEqual([
      'ladder',
      'power-line',
      'nesting-birds',
    ]);
  });
});

describe('the rest of a session', () => {
  it('gives hints on request, counts them, and leads on', () => {
    const session = talk();
    expect(session.say('hint')).toContain('Next on the walk is "About the house"');
    session.say('go to the roof');
    expect(session.say('hint')).toContain('Not looked at or asked about here yet: Roof covering');
    expect(makeDebrief(practice, session.state).hints).toBe(2);
  });

  it('practises one part alone, judged by that part', () => {
    const session = talk({}, 'vents');
    expect(session.state.at).toBe('vents');
    expect(session.say('go to the roof')).toContain('nothing to do');
    const { findings, order } = makeDebrief(practice, session.state);
    expect(order.danger).toBeUndefined();
    expect(order.neverVisited).toEqual([]);
    expect(findings.missed.every((pair) => pair.startsWith('vents.'))).toBe(true);
  });

  it("takes a supervisor's own key before its own", () => {
    const key = ['vents.coarse-high@left', 'zone0.bark@front'];
    const session = talk({ key });
    session.say('I find coarse mesh in the high vents at the left');
    session.say('I find bark mulch at the back');
    const { findings } = makeDebrief(practice, session.state);
    expect(findings).toMatchObject({ caught: ['vents.coarse-high@left'], missed: ['zone0.bark@front'] });
    expect(findings.invented).toEqual(['zone0.bark@back']);
  });

  it('compares the first page with the first jobs of the program', () => {
    const session = talk();
    session.say('first page');
    expect(session.state.phase).toBe('firstPage');
    for (const text of [
      'cut the dry grass in the yard',
      'rake the dead leaves along the wall',
      'clean the gutters',
    ]) {
      session.say(text);
      if (session.state.pending) session.say('1');
    }
    expect(session.state.phase).toBe('walking');
    const { firstPage } = makeDebrief(practice, session.state);
    expect(firstPage?.yours).toHaveLength(3);
    expect(firstPage?.programs).toHaveLength(3);
    expect(firstPage?.yours).toEqual(expect.arrayContaining([...(firstPage?.shared ?? [])]));
  });

  it('ends only when asked twice, and then stays as it is', () => {
    const session = talk();
    session.say('done');
    session.say('no');
    expect(session.state.phase).toBe('walking');
    session.say('done');
    expect(session.say('yes')).toContain('Debrief');
    session.say('I find bark mulch at the back');
    expect(session.state.events).toEqual([]);
  });

  it('is plain data: a session written down and read back goes on the same', () => {
    const session = talk();
    session.say('go to the roof');
    session.say('I find coarse mesh');
    const copy = JSON.parse(JSON.stringify(session.state)) as PracticeState;
    const message = { kind: 'text', text: '1' } as const;
    expect(practiceTurn(practice, copy, message)).toEqual(practiceTurn(practice, session.state, message));
  });

  it('says every debrief without a mark of any kind for the trainee', () => {
    const session = talk();
    session.say('go to the vents');
    session.say('done');
    const text = session.say('yes').toLowerCase();
    for (const word of [
      'score',
      'grade',
      'badge',
      'points',
      'out of 100',
      'passed the test',
      'level reached',
    ])
      expect(text).not.toContain(word);
    expect(text).not.toMatch(/undefined|\{|\}/);
  });
});
