import type { FlowDocument } from './document.ts';
import type { FlowProblem } from './problem.ts';
import { readShape } from './read-shape.ts';
import { FlowFile } from './schema/file.ts';

/** Checks the shape of one file; problems say where and, for a misspelling, what was probably meant. */
export function readFlowFile(document: FlowDocument): { file?: FlowFile; problems: FlowProblem[] } {
  return readShape(FlowFile, document);
}
