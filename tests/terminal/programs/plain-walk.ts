import { runPlain } from '../../../src/terminal/plain/run-plain.ts';
import { longScript, scriptedConversation, scriptedPhrase } from '../scripted-conversation.ts';

// The same walk in lines, with Ctrl-C as a signal.
const interrupt = new AbortController();
process.once('SIGINT', () => interrupt.abort());
const end = await runPlain({
  conversation: scriptedConversation(longScript),
  input: process.stdin,
  output: process.stdout,
  phrase: scriptedPhrase,
  columns: () => process.stdout.columns,
  echo: !process.stdin.isTTY,
  interrupted: interrupt.signal,
});
process.stdout.write(`end: ${end}\n`);
