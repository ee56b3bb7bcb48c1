import type { z } from 'zod';
import { didYouMean } from './did-you-mean.ts';
import type { FlowDocument } from './document.ts';
import type { FlowProblem } from './problem.ts';
import { FlowFile } from './schema/file.ts';

type Issue = z.core.$ZodIssue;

/** The keys a schema knows at a path: read from the JSON Schema, so that it never falls behind. */
function quoted(values: readonly unknown[]): string {
  return values.map((value) => `"${String(value)}"`).join(', ');
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value: unknown = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

function knownKeys(schema: z.ZodType, path: readonly PropertyKey[]): string[] {
  let at: unknown = schema;
  for (const key of path) at = inside(unwrap(at), key);
  const shape = (unwrap(at) as { def?: { shape?: object } })?.def?.shape;
  return shape ? Object.keys(shape) : [];
}

function unwrap(schema: unknown): unknown {
  let at = schema as { def?: { innerType?: unknown; type?: string } } | undefined;
  while (at?.def?.innerType) at = at.def.innerType as typeof at;
  return at;
}

function inside(schema: unknown, key: PropertyKey): unknown {
  const def = (
    schema as { def?: { shape?: Record<PropertyKey, unknown>; element?: unknown; valueType?: unknown } }
  )?.def;
  return def?.shape?.[key] ?? def?.element ?? def?.valueType;
}

/** The most telling issue of a union: that of the alternative which got furthest. */
function unfold(issue: Issue, path: readonly PropertyKey[]): { issue: Issue; path: PropertyKey[] }[] {
  const here = [...path, ...issue.path];
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [{ issue, path: here }];
  const branches = issue.errors.map((errors) => errors.flatMap((inner) => unfold(inner, here)));
  const depth = (found: { path: PropertyKey[] }[]) => Math.max(0, ...found.map((one) => one.path.length));
  branches.sort((a, b) => depth(b) - depth(a) || a.length - b.length);
  return branches[0] ?? [{ issue, path: here }];
}

function describe(issue: Issue, value: unknown, known: readonly string[]): [string, string | undefined] {
  if (issue.code === 'unrecognized_keys') {
    const [key = ''] = issue.keys;
    return [
      `${quoted(issue.keys)} is not known here`,
      didYouMean(key, known) ?? (known.length ? `Known: ${known.join(', ')}.` : undefined),
    ];
  }
  if (issue.code === 'invalid_value') {
    const values = issue.values.map(String);
    const found = value === undefined ? 'is missing' : `"${String(value)}" is not one of`;
    const text = value === undefined ? `is missing: one of ${quoted(values)}` : `${found} ${quoted(values)}`;
    return [text, typeof value === 'string' ? didYouMean(value, values) : undefined];
  }
  if (issue.code === 'invalid_type' && value === undefined)
    return [`is missing: ${issue.expected} expected`, undefined];
  return [issue.message, undefined];
}

/** Checks the shape of one file; problems say where and, for a misspelling, what was probably meant. */
export function readFlowFile(document: FlowDocument): { file?: FlowFile; problems: FlowProblem[] } {
  const parsed = FlowFile.safeParse(document.value ?? {});
  if (parsed.success) return { file: parsed.data, problems: [] };
  const problems = parsed.error.issues
    .flatMap((issue) => unfold(issue, []))
    .map(({ issue, path }): FlowProblem => {
      const wrongKey = issue.code === 'unrecognized_keys' ? issue.keys[0] : undefined;
      const position = document.positionOf(wrongKey === undefined ? path : [...path, wrongKey]);
      const [problem, suggestion] = describe(issue, valueAt(document.value, path), knownKeys(FlowFile, path));
      const at = path.map(String).join('.');
      return {
        path: document.path,
        ...position,
        at,
        problem,
        ...(suggestion === undefined ? {} : { suggestion }),
      };
    });
  return { problems };
}
