import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import { pino } from 'pino';
import type { ServerStore } from '../../conversation/ports.ts';
import type { Programme } from '../../conversation/programme.ts';
import { describeError } from '../../webhook/answer-message.ts';
import { createWebhook, type Webhook } from '../../webhook/create-webhook.ts';
import { deliverDue } from '../../webhook/deliver/deliver-due.ts';
import type { LogLine, Site } from '../../webhook/site.ts';
import type { CommandIo } from '../io.ts';
import { loadProgramme } from '../load-programme.ts';
import { ProgramError } from '../program-error.ts';
import { buildSite } from './build-site.ts';
import { openServerStore } from './open-server-store.ts';
import { readServeSettings, type ServeSettings } from './read-settings.ts';
import { runRegularly } from './run-regularly.ts';
import { sendRequest } from './send-request.ts';

const hour = 3_600_000;
const day = 24 * hour;

/** How long the reply to a message is kept for a repetition. */
const repliesKeptDays = 14;

function createLog(level: ServeSettings['ROOFDOWN_LOG_LEVEL'], io: CommandIo): (line: LogLine) => void {
  const log = pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
    },
    io.stdout,
  );
  return ({ level: at, what, ...fields }) => log[at](fields, what);
}

/** Sends finished walks and removes what was kept long enough, until it is stopped. */
function startRounds(site: Site, settings: ServeSettings, webhook: Webhook) {
  const failed = (error: unknown) =>
    site.log({ level: 'error', what: 'round failed', ...describeError(error) });
  const { ROOFDOWN_DELIVER_TO: url, ROOFDOWN_DELIVER_SECRET: key, ROOFDOWN_KEEP_DAYS: keepDays } = settings;
  const { store, clock } = site.shell;
  const sweep = runRegularly(
    hour,
    async () => {
      const before = (days: number) => new Date(clock().getTime() - days * day).toISOString();
      const walks = await store.sweep({
        messagesBefore: before(repliesKeptDays),
        handOversBefore: clock().toISOString(),
        ...(keepDays > 0 ? { walksBefore: before(keepDays) } : {}),
      });
      site.log({ level: 'info', what: 'swept', walks });
    },
    failed,
  );
  if (url === undefined || key === undefined) return [sweep];
  const to = { url, key, send: sendRequest };
  return [sweep, runRegularly(1000, async () => void (await deliverDue(site, to, webhook.metrics)), failed)];
}

/** Listens, or says plainly why that address cannot be had. */
function listen(server: Server, settings: ServeSettings): Promise<AddressInfo> {
  const { ROOFDOWN_HOST: host, ROOFDOWN_PORT: port } = settings;
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const why =
        error.code === 'EADDRINUSE' ? 'another program listens there' : (error.code ?? error.message);
      const what = `Cannot listen on ${host}:${port} (${why}). Set ROOFDOWN_HOST and ROOFDOWN_PORT.`;
      reject(new ProgramError(what, 1));
    });
    server.listen(port, host, () => resolve(server.address() as AddressInfo));
  });
}

/** How often connections that have nothing to do any more are closed while the server ends. */
const closeIdleMilliseconds = 50;

/** Takes no new connection, lets turns in flight end, and closes what is left when the time is over. */
function drain(server: Server, seconds: number): Promise<void> {
  return new Promise((resolve) => {
    const end = setTimeout(() => server.closeAllConnections(), seconds * 1000);
    const idle = setInterval(() => server.closeIdleConnections(), closeIdleMilliseconds);
    server.close(() => {
      clearTimeout(end);
      clearInterval(idle);
      resolve();
    });
  });
}

/** A server that listens. */
export interface RunningServer {
  readonly address: AddressInfo;
  /** Finishes turns in flight, then closes the store. */
  readonly stop: () => Promise<void>;
}

/** A server for the webhook that waits for no slow sender for long. */
function serverOf(webhook: Webhook): Server {
  const listener = getRequestListener((request, env) => {
    const remoteAddress = 'incoming' in env ? env.incoming.socket?.remoteAddress : undefined;
    return webhook.fetch(request, remoteAddress === undefined ? {} : { remoteAddress });
  });
  return createServer({ headersTimeout: 10_000, requestTimeout: 30_000 }, listener);
}

/** Starts the server of these settings. Rejects with a ProgramError when they cannot be used. */
export async function startServer(
  io: CommandIo,
  load: () => Promise<Programme> = loadProgramme,
): Promise<RunningServer> {
  const settings = readServeSettings(io.env);
  const programme = await load();
  const log = createLog(settings.ROOFDOWN_LOG_LEVEL, io);
  const store = await openServerStore(settings, io, programme.checklist);
  try {
    return await runOn(store, { settings, programme, log, clock: io.clock });
  } catch (error) {
    await store.close();
    throw error;
  }
}

interface ServerParts {
  readonly settings: ServeSettings;
  readonly programme: Programme;
  readonly log: (line: LogLine) => void;
  readonly clock: () => Date;
}

async function runOn(store: ServerStore, { settings, ...parts }: ServerParts): Promise<RunningServer> {
  const { log } = parts;
  let ready = true;
  const site = buildSite(settings, { ...parts, store, ready: () => ready });
  const webhook = createWebhook(site);
  const server = serverOf(webhook);
  const address = await listen(server, settings);
  const rounds = startRounds(site, settings, webhook);
  const kind = settings.ROOFDOWN_DATABASE_URL === undefined ? 'sqlite' : 'postgres';
  const phones = settings.ROOFDOWN_SMS_TOKEN !== undefined || settings.ROOFDOWN_TELEGRAM_SECRET !== undefined;
  // A caller with a code has to be told where to send it.
  if (phones && settings.ROOFDOWN_REACH === undefined)
    log({ level: 'warn', what: 'ROOFDOWN_REACH is not set' });
  log({ level: 'info', what: 'listening', host: address.address, port: address.port, store: kind });
  return {
    address,
    stop: async () => {
      ready = false;
      log({ level: 'info', what: 'stopping', inFlight: webhook.metrics.inFlight.value });
      await drain(server, settings.ROOFDOWN_DRAIN_SECONDS);
      for (const round of rounds) await round.stop();
      await store.close();
      log({ level: 'info', what: 'stopped' });
    },
  };
}
