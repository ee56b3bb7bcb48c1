import { terminalReflows } from '../../../src/terminal/ink/screen.ts';
import { loadInteractive } from '../../../src/terminal/load-interactive.ts';
import { chooseSymbols } from '../../../src/terminal/symbols.ts';
import { longScript, scriptedConversation, scriptedPhrase } from '../scripted-conversation.ts';

// A walk of 50 long questions on the real terminal of this process.
const runInteractive = await loadInteractive(process.env);
const end = await runInteractive({
  conversation: scriptedConversation(longScript),
  stdin: process.stdin,
  stdout: process.stdout,
  phrase: scriptedPhrase,
  symbols: chooseSymbols(process.env, process.platform),
  colour: process.env.NO_COLOR === undefined,
  reflows: terminalReflows(process.env),
}).catch((error: Error) => {
  process.stdout.write(`error: ${error.message}\n`);
  process.exitCode = 1;
  return 'failed';
});
process.stdout.write(`end: ${end}\n`);
