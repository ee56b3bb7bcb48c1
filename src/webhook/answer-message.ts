import type { Message, Reply } from '../conversation/message.ts';
import { newWalk } from '../conversation/new-walk.ts';
import type { WalkId, WalkRecord } from '../conversation/record.ts';
import { handleMessage, WalkUnknownError } from '../conversation/shell.ts';
import { takeTurn } from '../conversation/turn.ts';
import { seenId } from './keyed-hash.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { createRateLimit, type Limited } from './rate-limit.ts';
import type { Site } from './site.ts';
import { createWalkQueue } from './walk-queue.ts';

export type ChannelName = 'json' | 'sms' | 'telegram';

/** What a channel makes of a request. */
export interface Incoming {
  readonly channel: ChannelName;
  readonly walk: WalkId;
  readonly message: Message;
  /** The channel's own id of the message; without one a repetition cannot be told. */
  readonly messageId: string | undefined;
  readonly reader?: Parameters<typeof newWalk>[3];
  /** Only a walk that is there goes on. */
  readonly onlyKnown?: boolean;
}

/** What became of it; `trouble`: it may or may not have been kept, and can be sent again. */
export type Answered =
  | { readonly kind: 'answered'; readonly record: WalkRecord; readonly reply: Reply }
  | { readonly kind: 'limited'; readonly limited: Exclude<Limited, 'within'>; readonly blank: WalkRecord }
  | { readonly kind: 'trouble'; readonly blank: WalkRecord }
  | { readonly kind: 'unknown' };

/** Answers the messages of every channel. */
export interface Desk {
  readonly site: Site;
  readonly metrics: Metrics;
  readonly answer: (incoming: Incoming) => Promise<Answered>;
  /** Whether one more walk may be started from an address. */
  readonly mayStart: (address: string) => boolean;
}

const storeTroubles = new Set(['StorageError', 'WalkBusyError', 'SqliteError']);
const isStoreTrouble = (error: unknown) => error instanceof Error && storeTroubles.has(error.name);

/** An order to leave needs no store: it is said even when nothing can be kept, and to whoever is over the limit. */
function orderToLeave(site: Site, { walk, message, reader }: Incoming): Answered | undefined {
  const { programme, clock } = site.shell;
  const now = clock();
  const { record, reply } = takeTurn(programme, newWalk(programme, walk, now, reader), message, now);
  return record.cursor.phase === 'emergency' ? { kind: 'answered', record, reply } : undefined;
}

/** Makes the desk of a site: limits, one message of a walk after the other, exactly once, an order to leave always. */
export function createDesk(site: Site): Desk {
  const { shell, settings } = site;
  const metrics = createMetrics();
  const inTurn = createWalkQueue();
  const limit = createRateLimit(settings.messagesPerMinute, shell.clock);
  const startLimit = createRateLimit(settings.startsPerMinute, shell.clock);

  const counted = (channel: ChannelName, answered: Answered): Answered => {
    if (answered.kind !== 'answered') return answered;
    metrics.count('roofdown_turns_total', { channel, phase: answered.reply.phase });
    if (answered.reply.phase === 'emergency') metrics.count('roofdown_emergencies_total', { channel });
    return answered;
  };

  const answer = async (incoming: Incoming): Promise<Answered> => {
    const { channel, walk, message, messageId, reader } = incoming;
    const blank = newWalk(shell.programme, walk, shell.clock(), reader);
    const limited = limit(walk);
    if (limited !== 'within') {
      metrics.count('roofdown_limited_total', { channel });
      return counted(channel, orderToLeave(site, incoming) ?? { kind: 'limited', limited, blank });
    }
    const options = {
      ...(messageId === undefined ? {} : { seen: { channel, id: seenId(walk, messageId) } }),
      ...(reader ? { reader } : {}),
      ...(incoming.onlyKnown ? { onlyKnown: true } : {}),
    };
    try {
      const kept = await inTurn(walk, () => handleMessage(shell, walk, message, options));
      return counted(channel, { kind: 'answered', ...kept });
    } catch (error) {
      if (error instanceof WalkUnknownError)
        return counted(channel, orderToLeave(site, incoming) ?? { kind: 'unknown' });
      if (!isStoreTrouble(error)) throw error;
      metrics.count('roofdown_store_failures_total', { channel });
      site.log({ level: 'error', what: 'turn not kept', channel, ...describeError(error) });
      return counted(channel, orderToLeave(site, incoming) ?? { kind: 'trouble', blank });
    }
  };
  return { site, metrics, answer, mayStart: (address) => startLimit(address) === 'within' };
}

/** What a log may hold of an error: its name, its code and where in our code; never its text. */
export function describeError(error: unknown): Record<string, string> {
  if (!(error instanceof Error)) return { error: typeof error };
  const { code } = error as { code?: unknown };
  const at = error.stack?.split('\n').find((line) => /^ +at /u.test(line));
  return {
    error: error.name,
    ...(typeof code === 'string' ? { code } : {}),
    ...(at === undefined ? {} : { at: at.trim() }),
  };
}
