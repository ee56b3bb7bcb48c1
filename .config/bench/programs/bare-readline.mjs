// The barest prompt: a question on standard output, a line from standard input.
import { createInterface } from 'node:readline';

const lines = createInterface({ input: process.stdin, output: process.stdout });
lines.question('Is the bare question on screen? ', () => lines.close());
