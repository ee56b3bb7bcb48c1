import { sayProblem } from '../flow/problem.ts';
import { compareSheets } from '../practice/agreement/compare-sheets.ts';
import { agreementParts } from '../practice/agreement/say-agreement.ts';
import { layoutWidth, wrapText } from '../terminal/wrap-text.ts';
import { wordReply } from '../wording/word-reply.ts';
import { write } from './io.ts';
import { loadPractice, practiceWording } from './practice/load-practice.ts';
import { readHouseFiles } from './practice/read-house-file.ts';
import type { Register } from './register.ts';

/** A line in rows, those after the first set under its text. */
function wrapLine(line: string, width: number): readonly string[] {
  const first = /^(?:- | +)?/.exec(line)?.[0] ?? '';
  return wrapText(line.slice(first.length), width, { first, rest: ' '.repeat(first.length) });
}

/** `agree`: where two walks of the same house differ, and how far they agree by stop. */
export const registerAgree: Register = (program, io) => {
  program
    .command('agree')
    .description('two assessors, one house: where their answers and findings differ, with kappa by stop')
    .argument('<first>', 'the answer file of one walk')
    .argument('<second>', 'the answer file of the other')
    .option('--json', 'as JSON')
    .addHelpText('after', '\nExample:\n  roofdown agree mine.yaml yours.yaml\n')
    .action(async (first: string, second: string, options: { json?: boolean }) => {
      const practice = await loadPractice();
      const { checklist } = practice.programme;
      const files = readHouseFiles(checklist.index, [first, second]);
      const [one = {}, other = {}] = files.map((file) => file.sheet);
      const warnings = files.flatMap((file) => file.warnings);
      await write(io.stderr, warnings.map((warning) => `${sayProblem(warning)}\n`).join(''));
      const agreement = compareSheets(checklist, one, other);
      if (options.json) {
        await write(io.stdout, `${JSON.stringify(agreement, null, 2)}\n`);
        return;
      }
      const { blocks } = wordReply({ parts: agreementParts(agreement) }, practiceWording(practice, one));
      const width = layoutWidth(io.stdout.columns);
      const lines = blocks.flatMap((block) => [
        ...(block.tone === 'heading' ? [''] : []),
        ...block.lines.flatMap((line) => wrapLine(line, width)),
      ]);
      await write(io.stdout, `${lines.join('\n').trim()}\n`);
    });
};
