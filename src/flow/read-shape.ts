import type * as z from 'zod';
import { describeIssue } from './describe-issue.ts';
import { didYouMean, nearest } from './did-you-mean.ts';
import type { FlowDocument } from './document.ts';
import { knownKeys } from './known-keys.ts';
import type { FlowProblem } from './problem.ts';

type Issue = z.core.$ZodIssue;
interface Placed {
  readonly issue: Issue;
  readonly path: readonly PropertyKey[];
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value: unknown = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

/** The most telling issue of a union: that of the alternative which got furthest. */
function unfold(issue: Issue, path: readonly PropertyKey[]): Placed[] {
  const here = [...path, ...issue.path];
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [{ issue, path: here }];
  const branches = issue.errors.map((errors) => errors.flatMap((inner) => unfold(inner, here)));
  // An alternative of another kind altogether says least.
  const furthest = (found: readonly Placed[]) =>
    Math.max(...found.map((one) => one.path.length + (one.issue.code === 'unrecognized_keys' ? 1 : 0)));
  branches.sort((a, b) => furthest(b) - furthest(a) || a.length - b.length);
  return branches[0] ?? [{ issue, path: here }];
}

const sayPath = (path: readonly PropertyKey[]) => path.map(String).join('.');

/** What only follows from a misspelt key: the right one is missing, or the mapping makes no sense without it. */
function followsFrom({ issue, path }: Placed, all: readonly Placed[], schema: z.ZodType): boolean {
  return all.some((other) => {
    if (other.issue.code !== 'unrecognized_keys') return false;
    if (issue.code === 'custom') return sayPath(other.path) === sayPath(path);
    const missing =
      issue.code === 'invalid_type' || issue.code === 'invalid_value' || issue.code === 'invalid_union';
    const last = String(path.at(-1));
    const known = knownKeys(schema, other.path);
    return (
      missing &&
      sayPath(other.path) === sayPath(path.slice(0, -1)) &&
      other.issue.keys.some((key) => nearest(key, known) === last)
    );
  });
}

function problemsAt({ issue, path }: Placed, document: FlowDocument, schema: z.ZodType): FlowProblem[] {
  const at = sayPath(path);
  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys(schema, path);
    return issue.keys.map((key) => ({
      path: document.path,
      ...document.positionOf([...path, key]),
      at,
      problem: `"${key}" is not known here.`,
      suggestion: didYouMean(key, known) ?? `Known: ${known.join(', ')}.`,
    }));
  }
  const [problem, suggestion] = describeIssue(issue, valueAt(document.value, path));
  const position = document.positionOf(path);
  return [
    { path: document.path, ...position, at, problem, ...(suggestion === undefined ? {} : { suggestion }) },
  ];
}

/** Reads a document by a schema; problems say where and, for a misspelling, what was probably meant. */
export function readShape<T>(
  schema: z.ZodType<T>,
  document: FlowDocument,
): { file?: T; problems: FlowProblem[] } {
  const parsed = schema.safeParse(document.value ?? {});
  if (parsed.success) return { file: parsed.data, problems: [] };
  const found = parsed.error.issues.flatMap((issue) => unfold(issue, []));
  const missing = ({ path }: Placed) => valueAt(document.value, path) === undefined;
  const telling = found.filter(
    (one) => !(followsFrom(one, found, schema) && (one.issue.code === 'custom' || missing(one))),
  );
  return { problems: telling.flatMap((one) => problemsAt(one, document, schema)) };
}
