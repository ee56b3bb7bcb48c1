import { createHmac } from 'node:crypto';
import { sameText } from './same-text.ts';

/** How far the time of a signed request may be from ours, in seconds. */
export const toleranceSeconds = 5 * 60;

/** Reads a secret of the form `whsec_<base64>`; nothing when it is not one or is shorter than 24 bytes. */
export function readSecret(secret: string): Uint8Array | undefined {
  const text = /^whsec_([A-Za-z0-9+/]+={0,2})$/u.exec(secret)?.[1];
  const key = text === undefined ? undefined : Buffer.from(text, 'base64');
  return key !== undefined && key.length >= 24 ? key : undefined;
}

/** The signature of the Standard Webhooks specification 1.0.0, symmetric: HMAC-SHA256 of `id.timestamp.body`. */
export function sign(key: Uint8Array, id: string, timestamp: number, body: string): string {
  return `v1,${createHmac('sha256', key).update(`${id}.${timestamp}.${body}`).digest('base64')}`;
}

/** The headers of a request that is signed now; unsigned without a key. */
export function headersFor(
  key: Uint8Array | undefined,
  id: string,
  now: Date,
  signed: string,
): Record<string, string> {
  const timestamp = Math.floor(now.getTime() / 1000);
  return {
    'webhook-id': id,
    'webhook-timestamp': String(timestamp),
    ...(key ? { 'webhook-signature': sign(key, id, timestamp, signed) } : {}),
  };
}

/** The three headers of a signed request. */
export interface SignedHeaders {
  readonly id: string | undefined;
  readonly timestamp: string | undefined;
  /** One or several signatures between spaces, as during a change of keys. */
  readonly signature: string | undefined;
}

export type Verified = { readonly id: string } | { readonly problem: 'missing' | 'time' | 'signature' };

/** Verifies a signed request over its raw body, in constant time and within the window of time. */
export function verify(key: Uint8Array, headers: SignedHeaders, body: string, now: Date): Verified {
  const { id, timestamp, signature } = headers;
  if (!id || !timestamp || !signature || id.length > 256) return { problem: 'missing' };
  if (!/^\d{1,12}$/u.test(timestamp)) return { problem: 'time' };
  const seconds = Number(timestamp);
  if (Math.abs(now.getTime() / 1000 - seconds) > toleranceSeconds) return { problem: 'time' };
  const expected = sign(key, id, seconds, body);
  // All are compared, so that the time does not tell which one held.
  const held = signature
    .split(' ')
    .slice(0, 8)
    .filter((one) => sameText(one, expected));
  return held.length > 0 ? { id } : { problem: 'signature' };
}
