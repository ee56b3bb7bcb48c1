import { say } from '../../conversation/turned.ts';
import { jobsOnFirstPage } from '../debrief/first-page.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { matchIdeas, meant } from '../reading/match.ts';
import { askWhich } from './choose.ts';
import { knownHouse } from './known.ts';
import type { Said } from './said.ts';
import { whereverNeeded } from './say-place.ts';
import type { PracticeState } from './state.ts';
import type { PracticeTurned } from './turned.ts';

/** Begins the first page: the first jobs, one a line, the most important first. */
export function startFirstPage(state: PracticeState): PracticeTurned {
  return {
    state: { ...state, phase: 'firstPage', firstPage: { jobs: [] } },
    parts: [say('practice.page.start', { count: jobsOnFirstPage })],
  };
}

/** Puts a job on the page; the last one brings the trainee back to the walk. */
export function writeJob(state: PracticeState, action: string): PracticeTurned {
  const before = state.firstPage?.jobs ?? [];
  if (before.includes(action)) return { state, parts: [say('practice.page.twice')] };
  const jobs = [...before, action];
  const noted = say('practice.page.noted', {
    number: jobs.length,
    job: { text: `action/${action}/do`, values: whereverNeeded },
  });
  const complete = jobs.length >= jobsOnFirstPage;
  return {
    state: { ...state, firstPage: { jobs }, phase: complete ? 'walking' : 'firstPage' },
    parts: complete ? [noted, say('practice.page.complete')] : [noted],
  };
}

/** Reads a line of the first page. */
export function readJob(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const tokens = said.verb === 'advise' || said.verb === 'find' ? said.rest : said.tokens;
  const { stems, sides } = contentOfTokens(practice.lexicon.reader, tokens);
  const called = new Set(knownHouse(practice, state).assessment.ranked.map((one) => one.proposal.action.id));
  const matches = meant(matchIdeas(practice.lexicon.actions, stems, (id) => (called.has(id) ? 0.1 : 0)));
  const [first] = matches;
  if (!first) return { state, parts: [say('practice.advise.what')] };
  if (matches.length === 1) return writeJob(state, first.id);
  return askWhich(state, { verb: 'advise', ids: matches.map((one) => one.id), sides, text: said.text });
}
