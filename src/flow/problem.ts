/** One thing that is wrong in a flow file: where, what, and what to do. */
export interface FlowProblem {
  readonly path: string;
  readonly line: number;
  readonly column: number;
  /** The place inside the file, such as `questions.2.when`. */
  readonly at: string;
  readonly problem: string;
  readonly suggestion?: string;
}

/** `flows/home/stops/roof.yaml:12:7 questions.0.kind: … Did you mean "choice"?` */
export function sayProblem(problem: FlowProblem): string {
  const where = `${problem.path}:${problem.line}:${problem.column}`;
  const inside = problem.at === '' ? '' : ` ${problem.at}:`;
  const suggestion = problem.suggestion === undefined ? '' : ` ${problem.suggestion}`;
  return `${where}${inside} ${problem.problem}${suggestion}`;
}
