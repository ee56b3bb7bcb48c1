import { optionIds } from '../flow/checks/check-condition.ts';
import type { Question } from '../flow/flow.ts';
import { write } from './io.ts';
import { loadProgramme } from './load-programme.ts';
import type { Register } from './register.ts';
import { wordingFor } from './wording-for.ts';

function entry(question: Question, text: (id: string) => string) {
  const options = optionIds(question);
  return {
    id: question.id,
    stop: question.stop,
    kind: question.kind,
    by: question.by ?? null,
    of: question.of ?? null,
    ask: text(`question/${question.id}/ask`),
    options: options.length > 0 ? options : null,
    unit: question.kind === 'length' ? (question.bare ?? null) : question.kind === 'slope' ? '%' : null,
    unsafeEnd: question.unsafeEnd ?? null,
    when: question.when ?? null,
    where: question.where ?? null,
  };
}

/** `questions`: every question of the walk, as a table or as JSON. */
export const registerQuestions: Register = (program, io) => {
  program
    .command('questions')
    .description('list every question: id, stop, kind, options, unit and condition')
    .option('--json', 'as JSON')
    .addHelpText('after', '\nExample:\n  roofdown questions --json\n')
    .action(async (options: { json?: boolean }) => {
      const { checklist } = await loadProgramme();
      const { text } = wordingFor(checklist, {
        sheet: {},
        language: checklist.flow.walk.language,
        audience: 'resident',
      });
      const entries = checklist.flow.questions.map((question) => entry(question, text));
      const lines = entries.map(
        (one) =>
          `${one.id}  [${one.kind}${one.by ? ' by side' : ''}${one.of ? ` of ${one.of}` : ''}]  ${one.ask}`,
      );
      await write(
        io.stdout,
        options.json ? `${JSON.stringify(entries, null, 2)}\n` : `${lines.join('\n')}\n`,
      );
    });
};
