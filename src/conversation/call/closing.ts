import { isOpen } from '../../answers/path.ts';
import { assess } from '../../assess/assess.ts';
import type { RankedGroup } from '../../ranking/rank.ts';
import { placeValues } from '../../report/place-text.ts';
import type { Value } from '../../wording/say.ts';
import type { Part } from '../message.ts';
import type { Programme } from '../programme.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';
import { withoutNumber } from './call-back.ts';

/** How many jobs are read out. */
const readOut = 3;

/** Said in every call, so not read again with a job. */
const saidAnyway = 'leave-first';

function jobValue(assessment: ReturnType<typeof assess>, group: RankedGroup): Value {
  const actions = [...new Set(group.jobs.map((job) => job.proposal.action))];
  const each = actions.map((action): Value => {
    const places = group.jobs
      .filter((job) => job.proposal.action === action)
      .map((job) => job.proposal.place);
    return { text: `action/${action.id}/do`, values: placeValues({ assessment }, places) };
  });
  const [only] = each;
  return each.length === 1 && only !== undefined ? only : { list: each };
}

/** The first caution of each of these jobs, each once, in the order of the flow. */
function cautionsOf(programme: Programme, groups: readonly RankedGroup[]): string[] {
  const { flow } = programme.checklist;
  const firsts = new Set(
    groups.flatMap((group) => {
      const ids = new Set(group.jobs.flatMap((job) => job.proposal.cautions));
      return flow.cautions.find((one) => ids.has(one.id) && one.id !== saidAnyway)?.id ?? [];
    }),
  );
  return flow.cautions.flatMap(({ id }) => (firsts.has(id) ? [id] : []));
}

/** Above this share of questions without an answer, that nothing was found says nothing. Judgement. */
const mostUnknown = 0.2;

/** What is said where no job is on the list: that all is well only where most is known. */
function nothingPart({ path }: ReturnType<typeof assess>, { sheet }: WalkRecord): Part {
  const unknown = path.steps.filter((step) => isOpen(step, sheet) || sheet[step.key]?.status === 'notSure');
  const little = unknown.length > mostUnknown * path.steps.length;
  return say(little ? 'call.closing.too-little' : 'call.closing.nothing');
}

/** What ends a call: what to read out, whom to refer to, after what the channel makes of the house. */
export function closingParts(programme: Programme, record: WalkRecord): Part[] {
  const assessment = assess(programme.checklist, record.sheet);
  const first = assessment.groups.filter((group) => group.share > 0).slice(0, readOut);
  const jobs = first.map((group, position) =>
    say('call.closing.job', { number: position + 1, job: jobValue(assessment, group) }),
  );
  const cautions = cautionsOf(programme, first).map((id) =>
    say('call.closing.caution', { caution: { text: `caution/${id}` } }, 'warning'),
  );
  const notes = record.notes.map((note) => note.text);
  return [
    { kind: 'report' },
    say('call.closing.title', undefined, 'heading'),
    ...(first.length > 0
      ? [say('call.closing.read'), ...jobs, ...cautions]
      : [nothingPart(assessment, record)]),
    say('call.closing.promise'),
    say('call.closing.refer', { authority: { text: `rulebook/${assessment.path.rulebook}/authority` } }),
    ...(notes.length > 0 ? [say('call.closing.notes', { notes: { list: notes } }, 'quiet')] : []),
  ];
}

/** Closes a call: the number to call back goes, and what waits for the caller is brought up to date. */
export function closeCall(programme: Programme, record: WalkRecord): Turned {
  const parts = closingParts(programme, record);
  if (!record.call) return { record, parts };
  const { left, ...call } = withoutNumber(record.call);
  // A colleague needs the number: it stays with what waits for them, and goes with it.
  const { colleague, ...kept } = left ?? {};
  const renewed = kept.caller === undefined ? {} : { left: kept };
  const number = colleague === undefined ? 'call.closing.number-gone' : 'hand-over.number-waits';
  const gone = record.call.callBack === undefined ? [] : [say(number, undefined, 'quiet')];
  return {
    record: { ...record, call: { ...call, ...renewed } },
    parts: [...parts, ...gone],
    ...(kept.caller === undefined ? {} : { handsOver: 'renew' as const }),
  };
}
