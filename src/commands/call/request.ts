import * as z from 'zod';
import { isLoopback } from '../../webhook/loopback.ts';
import { headersFor, readSecret } from '../../webhook/standard-webhooks.ts';
import type { CommandIo } from '../io.ts';
import { ProgramError } from '../program-error.ts';

/** How long the chat service may take, all tries together: a caller waits. */
const patienceMilliseconds = 8_000;

/** How often a request is sent that got no answer; its id makes it one request. */
const tries = 3;

const Problem = z.object({ title: z.string(), detail: z.string().exactOptional() });

/** Where the chat service is, and what signs the requests to it. */
export interface ServiceAddress {
  readonly origin: string;
  readonly key: Uint8Array | undefined;
}

/** What the service answered, or why it did not; `why` is a sentence for the volunteer. */
export type ServiceAnswer =
  | { readonly kind: 'ok'; readonly body: unknown }
  | { readonly kind: 'refused'; readonly status: number; readonly why: string }
  | { readonly kind: 'away'; readonly why: string };

/** One request to the service. */
export interface ServiceRequest {
  readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE';
  readonly path: string;
  readonly body?: string;
  /** The same for every time it is sent. */
  readonly id: string;
}

/** The address from the command line and the secret from the environment. Throws a ProgramError that says what to give. */
export function serviceAddress(io: CommandIo, server: string): ServiceAddress {
  const url = URL.canParse(server) ? new URL(server) : undefined;
  const open = url && (url.protocol === 'https:' || (url.protocol === 'http:' && isLoopback(url.hostname)));
  if (!url || !open || url.pathname !== '/' || url.search !== '')
    throw new ProgramError(
      `--server ${server} cannot be used. Give the https address of the chat service, such as https://walks.example.org.`,
    );
  const secret = io.env['ROOFDOWN_SECRET'];
  const key = secret ? readSecret(secret) : undefined;
  if (secret && !key)
    throw new ProgramError('ROOFDOWN_SECRET must be whsec_ and base64 of at least 24 bytes.');
  return { origin: url.origin, key };
}

async function answerOf(response: Response, { origin }: ServiceAddress): Promise<ServiceAnswer> {
  const text = await response.text();
  const body: unknown = parse(text);
  if (response.ok) return { kind: 'ok', body };
  const { status } = response;
  if (status >= 500 || status === 429)
    return { kind: 'away', why: `The chat service at ${origin} cannot do it just now (status ${status}).` };
  const problem = Problem.safeParse(body);
  const said = problem.success ? [problem.data.title, problem.data.detail ?? ''].join(' ').trim() : '';
  return { kind: 'refused', status, why: said === '' ? `It answered with status ${status}.` : said };
}

function parse(text: string): unknown {
  try {
    return text === '' ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The network's own name for what went wrong, where it has one that can be looked up. */
function causeOf(error: unknown): string {
  const { cause, name } = error as Error & { cause?: { code?: string } };
  if (name === 'TimeoutError') return ' (no answer in time)';
  return /^E[A-Z]+$/u.test(cause?.code ?? '') ? ` (${cause?.code})` : '';
}

/** Sends a request, and again while no answer comes. */
export async function sendToService(
  io: CommandIo,
  address: ServiceAddress,
  request: ServiceRequest,
): Promise<ServiceAnswer> {
  const { method, path, body, id } = request;
  const signal = AbortSignal.timeout(patienceMilliseconds);
  let answer: ServiceAnswer = { kind: 'away', why: '' };
  for (let attempt = 0; attempt < tries && answer.kind === 'away' && !signal.aborted; attempt++) {
    try {
      const response = await fetch(address.origin + path, {
        method,
        headers: {
          ...(body === undefined ? {} : { 'content-type': 'application/json' }),
          ...headersFor(address.key, id, io.clock(), body ?? `${method} ${path}`),
        },
        ...(body === undefined ? {} : { body }),
        redirect: 'manual',
        signal,
      });
      answer = await answerOf(response, address);
    } catch (error) {
      const why = `The chat service at ${address.origin} cannot be reached${causeOf(error)}.`;
      answer = { kind: 'away', why };
    }
  }
  return answer;
}
