import { createHash, randomUUID } from 'node:crypto';
import * as z from 'zod';
import type { HandOvers, LeftWalk } from '../../conversation/hand-over/hand-over.ts';
import { type Parcel, parcelOf, parcelsLeft } from '../../conversation/hand-over/parcel.ts';
import type { HandOverTerms } from '../../conversation/hand-over/terms.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { dataFolderPath } from '../../storage/data-folder.ts';
import { machineName } from '../../storage/machine-name.ts';
import { readStoredRecord } from '../../storage/stored-record.ts';
import { readCode } from '../../webhook/hand-over/code.ts';
import type { CommandIo } from '../io.ts';
import { ProgramError } from '../program-error.ts';
import { type ServiceAddress, type ServiceRequest, sendToService, serviceAddress } from './request.ts';

const Terms = z.object({ hours: z.number(), reach: z.string().nullable() });
const Left = z.object({ ...Terms.shape, code: z.string() });
const Taken = z.object({ walk: z.looseObject({ id: z.string() }) });

/** The chat service as a terminal sees it: walks are left there and taken from there. */
export interface ChatService extends HandOvers {
  /** The walk under a code. Throws a ProgramError that says why there is none. */
  readonly take: (code: string) => Promise<WalkRecord>;
}

interface Service {
  readonly io: CommandIo;
  readonly address: ServiceAddress;
}

function send({ io, address }: Service, request: Omit<ServiceRequest, 'id'>, id?: string) {
  const named = id ?? `msg_${(io.newId ?? randomUUID)()}`;
  return sendToService(io, address, { ...request, id: named });
}

async function leave(service: Service, parcel: Parcel): Promise<LeftWalk> {
  const answer = await send(service, { method: 'POST', path: '/hand-overs', body: JSON.stringify(parcel) });
  if (answer.kind !== 'ok') return { kind: 'failed', why: answer.why };
  const left = Left.safeParse(answer.body);
  if (!left.success)
    return { kind: 'failed', why: 'The chat service answered with something else than a code.' };
  const { code, hours, reach } = left.data;
  const { origin } = service.address;
  return { kind: 'left', code, hours, address: origin, ...(reach === null ? {} : { reach }) };
}

async function renew(service: Service, record: WalkRecord): Promise<boolean> {
  for (const parcel of parcelsLeft(record)) {
    const request = { method: 'PUT', path: '/hand-overs', body: JSON.stringify(parcel) } as const;
    if ((await send(service, request)).kind !== 'ok') return false;
  }
  return true;
}

async function withdraw(service: Service, walk: WalkId): Promise<boolean> {
  const path = `/hand-overs?walk=${encodeURIComponent(walk)}`;
  return (await send(service, { method: 'DELETE', path })).kind === 'ok';
}

async function take(service: Service, code: string): Promise<WalkRecord> {
  const { io } = service;
  const name = machineName(dataFolderPath({ env: io.env, home: io.home }));
  // The same on this machine each time, so that an answer that got lost can be asked for again.
  const id = createHash('sha256')
    .update(`${name} ${code.replace(/\D/gu, '')}`)
    .digest('base64url');
  const request = { method: 'POST', path: '/hand-overs/take', body: JSON.stringify({ code }) } as const;
  const answer = await send(service, request, `msg_${id}`);
  if (answer.kind === 'away') throw new ProgramError(`${answer.why} Try again within ten minutes.`, 1);
  if (answer.kind === 'refused') throw new ProgramError(answer.why);
  const taken = Taken.safeParse(answer.body);
  const walk = taken.success ? taken.data.walk : undefined;
  const read = walk && readStoredRecord(JSON.stringify(walk), walk.id as WalkId);
  if (read?.kind === 'read') return read.value;
  throw new ProgramError('The chat service gave something else than a walk.', 1);
}

/** The terms of the service; nothing while it is away. One that refuses is a mistake in the settings. */
async function askTerms(service: Service, away: (why: string) => Promise<void>): Promise<HandOverTerms> {
  const answer = await send(service, { method: 'GET', path: '/hand-overs' });
  if (answer.kind === 'away') {
    await away(answer.why);
    return {};
  }
  const { origin } = service.address;
  if (answer.kind === 'refused')
    throw new ProgramError(
      answer.status === 401
        ? `The chat service at ${origin} does not let this call in. ${answer.why} ROOFDOWN_SECRET must be the same here and there.`
        : `At ${origin} is no chat service that takes calls over. ${answer.why}`,
    );
  const terms = Terms.safeParse(answer.body);
  if (!terms.success) return {};
  const { hours, reach } = terms.data;
  return { hours, ...(reach === null ? {} : { reach }) };
}

/**
 * The chat service at an address, asked for its terms before a caller is on the line. Where it is away, `away` says so:
 * it may be back by the end of the call.
 */
export async function openChatService(
  io: CommandIo,
  server: string,
  away: (why: string) => Promise<void>,
): Promise<ChatService> {
  const service = { io, address: serviceAddress(io, server) };
  const terms = await askTerms(service, away);
  return {
    terms: () => terms,
    leave: (record, to) => leave(service, parcelOf(record, to)),
    renew: (record) => renew(service, record),
    withdraw: (walk) => withdraw(service, walk),
    find: async (text) => (readCode(text)?.kind === 'code' ? { kind: 'elsewhere' } : undefined),
    take: (code) => take(service, code),
  };
}
