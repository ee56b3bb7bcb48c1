import { unitsOf } from '../conversation/units.ts';
import { optionIds } from '../flow/checks/check-condition.ts';
import type { Question } from '../flow/flow.ts';
import type { Wording } from '../wording/wording.ts';
import { write } from './io.ts';
import { loadProgramme } from './load-programme.ts';
import { readerOf } from './reader-options.ts';
import type { Register } from './register.ts';
import { wordingFor } from './wording-for.ts';

function answerLines(question: Question, wording: Wording): string[] {
  const sides = ['front', 'left', 'back', 'right'].map((side) => wording.text(`words/side/${side}`));
  const boxes = (labels: string[]) => labels.map((label) => `[ ] ${label}`);
  const labels =
    question.kind === 'yesNo'
      ? question.by === 'side'
        ? sides
        : ['yes', 'no'].map((id) => wording.text(`words/yesNo/${id}`))
      : question.kind === 'sides'
        ? sides
        : optionIds(question).map((id) => wording.text(`option/${question.id}/${id}`));
  const picks = (question.picks ?? []).map((pick) => wording.text(`option/${question.id}/${pick.value}`));
  if (question.by === 'side' && question.kind !== 'yesNo') {
    const rows = sides.map((side) => `${side}: ____________`);
    return [...[...labels, ...picks].map((label) => `- ${label}`), rows.join('   ')];
  }
  return labels.length > 0 ? boxes(labels) : [...boxes(picks), '____________'];
}

/** `sheet`: the walk as a page to print and carry outside, in the order of the walk. */
export const registerSheet: Register = (program, io) => {
  program
    .command('sheet')
    .description('print the walk as a sheet to carry outside (Markdown)')
    .option('--units <units>', 'imperial or metric')
    .addHelpText('after', '\nExample:\n  roofdown sheet > sheet.md\n')
    .action(async (options: { units?: string }) => {
      const { checklist } = await loadProgramme();
      const { flow } = checklist;
      const { units } = readerOf(options);
      const wording = wordingFor(checklist, {
        sheet: {},
        language: flow.walk.language,
        audience: 'resident',
        units: unitsOf(checklist, {}, units),
      });
      const lines = [
        `# ${wording.text('walk/title')}`,
        '',
        wording.text('opening.danger'),
        '',
        wording.text('sheet.how'),
        '',
      ];
      for (const stop of flow.stops) {
        lines.push(
          `## ${wording.text(`stop/${stop.id}/title`)}`,
          '',
          wording.text(`stop/${stop.id}/arrive`),
          '',
        );
        for (const question of flow.questions.filter((one) => one.stop === stop.id && one.role !== 'units')) {
          const values = question.of === undefined ? {} : { member: { text: `group/${question.of}/one` } };
          const asked = question.when || question.where ? ` (${wording.text('sheet.if-it-applies')})` : '';
          lines.push(
            `**${wording.text(`question/${question.id}/ask`, { ...values, sides: { sides: [] } })}**${asked}`,
            '',
          );
          lines.push(...answerLines(question, wording).flatMap((line) => [line, '']));
        }
      }
      await write(
        io.stdout,
        `${lines
          .join('\n')
          .replace(/\n{3,}/g, '\n\n')
          .trimEnd()}\n`,
      );
    });
};
