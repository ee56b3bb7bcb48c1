import { runCommand } from './run-command.ts';

/** A conversation as a file: words about it, then what was typed and what the program said, in one fenced block. */
export interface Transcript {
  readonly before: string;
  readonly command: readonly string[];
  readonly typed: readonly string[];
  readonly block: string;
}

const fence = /^([\s\S]*?```text\n)([\s\S]*?)(\n?```\n*)$/;

/** Reads a transcript; the first line of its block is the command, lines after `> ` are what was typed. */
export function readTranscript(text: string): Transcript {
  const match = fence.exec(text);
  if (!match) throw new Error('A transcript ends with one block fenced by ```text and ```.');
  const [, before = '', block = ''] = match;
  const [first = '', ...rest] = block.split('\n');
  if (!first.startsWith('$ roofdown'))
    throw new Error('The block of a transcript starts with "$ roofdown" and a command.');
  const typed = rest.filter((line) => line.startsWith('> ')).map((line) => line.slice(2));
  return { before, command: first.split(' ').slice(2), typed, block };
}

/** The name of the walk in every transcript. */
const walkId = '3f2a51c8-6d0e-4b7a-9c11-5a2e8d94b076';

/** Runs a transcript again: the block as the program says it today. */
export async function runTranscript(transcript: Transcript): Promise<string> {
  const run = await runCommand(transcript.command, transcript.typed, undefined, () => walkId);
  const said = `${run.out}${run.err}`
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n')
    .trim();
  const command = ['$ roofdown', ...transcript.command].join(' ');
  return `${command}\n\n${said}${run.code === 0 ? '' : `\n\n[ends with exit code ${run.code}]`}`;
}

/** The whole file with a new block. */
export function writeTranscript(transcript: Transcript, block: string): string {
  return `${transcript.before}${block}\n\`\`\`\n`;
}
