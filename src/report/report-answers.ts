import { isOpen, type Step } from '../answers/path.ts';
import { cleanText } from '../answers/reading/clean-text.ts';
import type { Values } from '../wording/say.ts';
import type { Material } from './material.ts';
import type { Report } from './report.ts';

function stepValues({ assessment }: Material, step: Step): Values {
  const { group, member } = step;
  if (group === undefined || member === undefined) return {};
  const number = assessment.facts.members(group).indexOf(member) + 1;
  return { member: { member: { group, key: member, number } } };
}

/** A few words for a question, with the member it is about: "distance to the roof (tree 2)". */
function labelOf(material: Material, step: Step): string {
  const values = stepValues(material, step);
  const short = material.wording.text(`question/${step.question.id}/short`, values);
  return step.member === undefined
    ? short
    : material.wording.text('report.about-member', { short, ...values });
}

/** All answers on the path as they would be read back, by stop. */
export function answersRead(material: Material): Report['answersRead'] {
  const { assessment, checklist, wording, sheet } = material;
  return checklist.flow.stops.flatMap((stop) => {
    const steps = assessment.path.steps.filter((step) => step.question.stop === stop.id);
    const lines = steps.flatMap((step) => {
      const answer = sheet[step.key];
      if (!answer || isOpen(step, sheet)) return [];
      const typed = step.question.kind === 'text' && answer.status === 'given';
      const text = wording.value({ answer, question: step.question.id });
      return [
        { key: step.key, question: labelOf(material, step), answer: typed ? cleanText(text) : text, typed },
      ];
    });
    return lines.length > 0 ? [{ stop: stop.id, lines }] : [];
  });
}

/** The questions on which it hangs what else is asked: they bring nothing by themselves, and much by what follows. */
function gates({ checklist }: Material): ReadonlySet<string> {
  const { questions } = checklist.flow;
  const read = JSON.stringify(questions.map(({ when, where }) => [when, where])).matchAll(
    /"(?:question|answered)":"([^"]+)"/g,
  );
  const counts = questions.filter((one) => one.counts !== undefined).map(({ id }) => id);
  return new Set([...[...read].map(([, id]) => id ?? ''), ...counts]);
}

/** What is not known, what it is worth to know, and how to look. */
export function reportToFindOut(material: Material): Report['toFindOut'] {
  const { wording, assessment } = material;
  const opening = gates(material);
  return material.toFindOut.map(({ key, step, why, sides, stake }) => {
    const values = stepValues(material, step);
    const someSides = sides.length > 0 && sides.length < assessment.path.sides.length;
    const where = [...(values.member ? [values.member] : []), ...(someSides ? [{ sides }] : [])];
    return {
      key,
      stop: step.question.stop,
      question: wording.text(`question/${step.question.id}/short`, values),
      where: where.length > 0 ? where.map((one) => wording.value(one)).join(', ') : null,
      how: wording.text(`question/${step.question.id}/look`, values),
      why,
      sides: [...sides],
      stake,
      opens: opening.has(step.question.id),
    };
  });
}
