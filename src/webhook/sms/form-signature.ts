import { createHmac } from 'node:crypto';
import { sameText } from '../same-text.ts';

/** The signature of a form post: base64 of HMAC-SHA1 over the public address and every field with its value, sorted. */
export function signForm(token: string, url: string, fields: URLSearchParams): string {
  const sorted = [...fields].sort(([a, x], [b, y]) => (a === b ? (x < y ? -1 : 1) : a < b ? -1 : 1));
  return createHmac('sha1', token)
    .update(url + sorted.map(([name, value]) => name + value).join(''))
    .digest('base64');
}

/** Whether a form post is signed by whoever has the token; compared in constant time. */
export function isSignedForm(
  token: string,
  url: string,
  fields: URLSearchParams,
  signature: string | undefined,
): boolean {
  return signature !== undefined && sameText(signature, signForm(token, url, fields));
}
