import { terminalConversation } from '../../../src/commands/terminal-conversation.ts';
import { wordingFor } from '../../../src/commands/wording-for.ts';
import type { WalkId } from '../../../src/conversation/record.ts';
import { createMemoryStore } from '../../../src/storage/memory/memory-store.ts';
import { terminalReflows } from '../../../src/terminal/ink/screen.ts';
import { loadInteractive } from '../../../src/terminal/load-interactive.ts';
import { chooseSymbols } from '../../../src/terminal/symbols.ts';
import { realProgramme } from '../../support/programme.ts';

// A call of eight minutes on the real terminal of this process; nothing is kept.
const programme = realProgramme();
const clock = () => new Date();
const shell = { programme, store: createMemoryStore(), clock };
const width = () => Math.min(process.stdout.columns, 80);
const reader = { audience: 'volunteer' as const, call: { minutes: 8 } };
const wording = wordingFor(programme.checklist, { sheet: {}, language: 'en', audience: 'volunteer' });
const runInteractive = await loadInteractive(process.env);
const end = await runInteractive({
  conversation: terminalConversation(shell, 'call-1' as WalkId, width, reader),
  stdin: process.stdin,
  stdout: process.stdout,
  phrase: (id, values) => wording.text(id, values),
  symbols: chooseSymbols(process.env, process.platform),
  colour: process.env.NO_COLOR === undefined,
  reflows: terminalReflows(process.env),
  clock,
});
process.stdout.write(`end: ${end}\n`);
