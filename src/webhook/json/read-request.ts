import type * as z from 'zod';
import { isLoopback } from '../loopback.ts';
import { HttpProblem } from '../problem.ts';
import type { Site } from '../site.ts';
import { verify } from '../standard-webhooks.ts';

const why = {
  missing: 'Send webhook-id, webhook-timestamp and webhook-signature.',
  time: 'webhook-timestamp must be within five minutes of the time here, in seconds.',
  signature: 'webhook-signature must be made over the body exactly as it is sent.',
} as const;

/** A request whose signature holds. */
export interface SignedRequest {
  readonly messageId: string | undefined;
  readonly body: string;
}

/**
 * Reads the raw body once and verifies it before anything else is done with it. A request without a body is signed
 * over its method and path instead, so that a signature seen for one address opens no other.
 */
export async function readSigned({ settings, shell }: Site, request: Request): Promise<SignedRequest> {
  const body = await request.text();
  const header = (name: string) => request.headers.get(name) ?? undefined;
  const id = header('webhook-id');
  const url = new URL(request.url);
  if (settings.jsonKey === undefined) {
    // A web page whose name was made to mean this machine comes with its own name.
    if (!isLoopback(url.hostname)) throw new HttpProblem('wrong-host');
    return { messageId: id?.slice(0, 256), body };
  }
  const signed = body === '' ? `${request.method} ${url.pathname}${url.search}` : body;
  const headers = { id, timestamp: header('webhook-timestamp'), signature: header('webhook-signature') };
  const verified = verify(settings.jsonKey, headers, signed, shell.clock());
  if ('problem' in verified) throw new HttpProblem('not-signed', why[verified.problem]);
  return { messageId: verified.id, body };
}

/** Reads a JSON body by its schema; faults are named by their path, never with what was sent. */
export function parseBody<T>(request: Request, body: string, schema: z.ZodType<T>): T {
  const type = request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase();
  if (body !== '' && type !== 'application/json')
    throw new HttpProblem('wrong-media-type', 'Send content-type: application/json.');
  const parsed = schema.safeParse(body === '' ? {} : parseJson(body));
  if (parsed.success) return parsed.data;
  const issues = parsed.error.issues
    .slice(0, 3)
    .map(({ path, code }) => `${path.join('.') || 'body'}: ${code}`);
  throw new HttpProblem('not-valid', `${issues.join('; ')}. See /openapi.json.`);
}

function parseJson(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    throw new HttpProblem('not-valid', 'The body is not JSON.');
  }
}
