import type * as z from 'zod';
import { didYouMean } from './did-you-mean.ts';

type Issue = z.core.$ZodIssue;

const kindNames: Readonly<Record<string, string>> = {
  string: 'text',
  object: 'a mapping',
  record: 'a mapping',
  array: 'a list',
  number: 'a number',
  int: 'a whole number',
  boolean: 'yes or no (true or false)',
};

function kindOf(value: unknown): string {
  if (value === null) return 'nothing';
  return kindNames[Array.isArray(value) ? 'array' : typeof value] ?? typeof value;
}

const quoted = (values: readonly unknown[]) => values.map((value) => `"${String(value)}"`).join(', ');

function tooSmall(issue: Extract<Issue, { code: 'too_small' }>): string {
  if (issue.origin === 'string')
    return issue.minimum === 1 ? 'is empty.' : `needs at least ${issue.minimum} characters.`;
  if (issue.origin === 'array')
    return `needs at least ${issue.minimum} ${issue.minimum === 1 ? 'entry' : 'entries'}.`;
  return `must be ${issue.inclusive ? 'at least' : 'above'} ${issue.minimum}.`;
}

/** What is wrong with a value, in words for the person who wrote it, and what was probably meant. */
export function describeIssue(issue: Issue, value: unknown): readonly [problem: string, suggestion?: string] {
  switch (issue.code) {
    case 'invalid_value': {
      const values = issue.values.map(String);
      if (value === undefined) return [`is missing: one of ${quoted(values)}.`];
      const suggestion = typeof value === 'string' ? didYouMean(value, values) : undefined;
      const problem = `"${String(value)}" is not one of ${quoted(values)}.`;
      return suggestion === undefined ? [problem] : [problem, suggestion];
    }
    case 'invalid_type': {
      const expected = kindNames[issue.expected] ?? issue.expected;
      return [
        value === undefined
          ? `is missing: ${expected} expected.`
          : `${expected} is expected here, not ${kindOf(value)}.`,
      ];
    }
    case 'invalid_union':
      return [value === undefined ? 'is missing.' : `${kindOf(value)} does not fit here.`];
    case 'too_small':
      return [tooSmall(issue)];
    case 'too_big':
      return [`must be at most ${issue.maximum}.`];
    case 'invalid_format':
    case 'invalid_key':
      return [`"${String(value)}" is not right here: ${issue.message}.`];
    default:
      return [`${issue.message}.`];
  }
}
