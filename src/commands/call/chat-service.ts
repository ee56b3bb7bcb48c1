import { randomUUID } from 'node:crypto';
import * as z from 'zod';
import type { HandOvers, LeftWalk } from '../../conversation/hand-over/hand-over.ts';
import type { HandOverTerms } from '../../conversation/hand-over/terms.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { readStoredRecord } from '../../storage/stored-record.ts';
import { isLoopback } from '../../webhook/loopback.ts';
import { readSecret, sign } from '../../webhook/standard-webhooks.ts';
import type { CommandIo } from '../io.ts';
import { ProgramError } from '../program-error.ts';

/** How long the chat service may take: a caller waits. */
const patienceMilliseconds = 8_000;

/** How often a request is sent that got no answer; its id makes it one request. */
const tries = 3;

const Terms = z.object({ hours: z.number(), reach: z.string().nullable() });
const Left = z.object({ ...Terms.shape, code: z.string() });
const Taken = z.object({ walk: z.looseObject({ id: z.string() }) });
const Problem = z.object({ title: z.string(), detail: z.string().exactOptional() });

/** The chat service as a terminal sees it: walks are left there and taken from there. */
export interface ChatService extends HandOvers {
  /** The walk under a code. Throws a ProgramError that says why there is none. */
  readonly take: (code: string) => Promise<WalkRecord>;
}

interface Address {
  readonly origin: string;
  readonly key: Uint8Array | undefined;
}

/** What the service answered, or why it did not. */
type Answer =
  | { readonly kind: 'ok'; readonly body: unknown }
  | { readonly kind: 'refused'; readonly status: number; readonly why: string }
  | { readonly kind: 'away'; readonly why: string };

function addressOf(io: CommandIo, server: string): Address {
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

function headersOf({ key }: Address, id: string, now: Date, signed: string): Record<string, string> {
  const timestamp = Math.floor(now.getTime() / 1000);
  return {
    'content-type': 'application/json',
    'webhook-id': id,
    'webhook-timestamp': String(timestamp),
    ...(key ? { 'webhook-signature': sign(key, id, timestamp, signed) } : {}),
  };
}

async function refusal(response: Response): Promise<Answer> {
  const body = Problem.safeParse(await response.json().catch(() => undefined));
  const said = body.success ? [body.data.title, body.data.detail ?? ''].join(' ').trim() : '';
  const why = said === '' ? `It answered with status ${response.status}.` : said;
  return { kind: 'refused', status: response.status, why };
}

/** One request, sent again while no answer comes. */
async function request(
  io: CommandIo,
  address: Address,
  method: 'GET' | 'POST',
  path: string,
  body?: string,
): Promise<Answer> {
  const id = `msg_${(io.newId ?? randomUUID)()}`;
  let why = '';
  for (let attempt = 0; attempt < tries; attempt++) {
    try {
      const response = await fetch(address.origin + path, {
        method,
        headers: headersOf(address, id, io.clock(), body ?? `${method} ${path}`),
        ...(body === undefined ? {} : { body }),
        redirect: 'manual',
        signal: AbortSignal.timeout(patienceMilliseconds),
      });
      return response.ok ? { kind: 'ok', body: await response.json() } : await refusal(response);
    } catch (error) {
      const { cause, name } = error as Error & { cause?: { code?: string } };
      why = cause?.code ?? name;
    }
  }
  return { kind: 'away', why: `The chat service at ${address.origin} cannot be reached (${why}).` };
}

async function leave(io: CommandIo, address: Address, record: WalkRecord): Promise<LeftWalk> {
  const answer = await request(io, address, 'POST', '/hand-overs', JSON.stringify({ walk: record }));
  if (answer.kind !== 'ok') return { kind: 'failed', why: answer.why };
  const left = Left.safeParse(answer.body);
  if (!left.success)
    return { kind: 'failed', why: 'The chat service answered with something else than a code.' };
  const { code, hours, reach } = left.data;
  return { kind: 'left', code, hours, address: address.origin, ...(reach === null ? {} : { reach }) };
}

async function take(io: CommandIo, address: Address, code: string): Promise<WalkRecord> {
  const answer = await request(io, address, 'POST', '/hand-overs/take', JSON.stringify({ code }));
  if (answer.kind !== 'ok') throw new ProgramError(answer.why, answer.kind === 'away' ? 1 : 2);
  const taken = Taken.safeParse(answer.body);
  const walk = taken.success ? taken.data.walk : undefined;
  const read = walk && readStoredRecord(JSON.stringify(walk), walk.id as WalkId);
  if (read?.kind === 'read') return read.value;
  throw new ProgramError('The chat service gave something else than a walk.', 1);
}

/**
 * The chat service at an address, asked for its terms. One that refuses is a mistake in the settings, told before a
 * caller is on the line; one that is away may be back by the end of the call, and `away` says so.
 */
export async function openChatService(
  io: CommandIo,
  server: string,
  away: (why: string) => Promise<void>,
): Promise<ChatService> {
  const address = addressOf(io, server);
  const answer = await request(io, address, 'GET', '/hand-overs');
  if (answer.kind === 'refused')
    throw new ProgramError(
      `The chat service at ${address.origin} does not let this call in. ${answer.why} ` +
        'ROOFDOWN_SECRET must be the same here and there.',
    );
  if (answer.kind === 'away') await away(answer.why);
  const terms = answer.kind === 'ok' ? Terms.safeParse(answer.body).data : undefined;
  const known: HandOverTerms = terms
    ? { hours: terms.hours, ...(terms.reach === null ? {} : { reach: terms.reach }) }
    : {};
  return {
    terms: () => known,
    leave: (record) => leave(io, address, record),
    find: async () => undefined,
    take: (code) => take(io, address, code),
  };
}
