import type { ServerStore, TurnToKeep } from '../../conversation/ports.ts';
import type { WalkId } from '../../conversation/record.ts';
import { writeStoredReply } from '../stored-reply.ts';
import { type LabelOf, summarise } from '../summary.ts';
import type { DeliveryStatements } from './delivery-statements.ts';
import type { HandOverStatements } from './hand-over-statements.ts';
import type { Statements } from './statements.ts';

/** The statements of every table. */
export interface Tables {
  readonly statements: Statements;
  readonly outbox: DeliveryStatements;
  readonly waiting: HandOverStatements;
}

/** Keeps a turn, inside a transaction: all of it, or nothing when it says so. */
export function keepTurn(
  tables: Tables,
  turn: TurnToKeep & { readonly data: string },
  labelOf: LabelOf,
): 'saved' | 'conflict' | 'seen' {
  const { statements, outbox, waiting } = tables;
  const { record, message, announce, takes } = turn;
  if (message && statements.reply(message.channel, message.id) !== undefined) return 'seen';
  if (takes && waiting.waiting(takes.code, takes.now) === undefined) return 'conflict';
  const row = {
    summary: summarise(record, labelOf),
    revision: record.revision,
    data: turn.data,
  };
  const changed = turn.expected === 'new' ? statements.insert(row) : statements.update(row, turn.expected);
  if (changed === 0) return 'conflict';
  if (takes) waiting.takeForGood(takes.code, takes.now);
  if (turn.erase) removeWalk(tables, record.id);
  if (message) {
    const kept = {
      walk: turn.erase ? '' : record.id,
      at: record.updatedAt,
      reply: writeStoredReply(message.reply),
    };
    statements.keepReply(message.channel, message.id, kept);
  }
  if (announce) outbox.add(announce);
  return 'saved';
}

/** Removes what is old, inside a transaction; gives the number of walks removed. */
export function sweep(
  { statements, outbox, waiting }: Tables,
  { walksBefore, messagesBefore, handOversBefore }: Parameters<ServerStore['sweep']>[0],
): number {
  if (handOversBefore !== undefined) waiting.removeBefore(handOversBefore);
  if (messagesBefore !== undefined) {
    statements.removeRepliesBefore(messagesBefore);
    outbox.removeSentBefore(messagesBefore);
  }
  if (walksBefore === undefined) return 0;
  outbox.removeOfWalksBefore(walksBefore);
  waiting.removeOfWalksBefore(walksBefore);
  return statements.removeWalksBefore(walksBefore);
}

/** Removes a walk with everything that belongs to it, inside a transaction. */
export function removeWalk({ statements, outbox, waiting }: Tables, id: WalkId): boolean {
  statements.removeReplies(id);
  outbox.removeOf(id);
  waiting.removeOf(id);
  return statements.removeWalk(id) > 0;
}
