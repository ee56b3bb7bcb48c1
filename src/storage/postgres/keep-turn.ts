import type { PoolClient } from 'pg';
import type { TurnToKeep } from '../../conversation/ports.ts';
import { writeStoredReply } from '../stored-reply.ts';
import { type LabelOf, summarise } from '../summary.ts';
import { Undo } from './transaction.ts';

/** A turn with its record as text. */
export type TurnWithData = TurnToKeep & { readonly data: string };

type Kept = 'saved' | 'conflict' | 'seen';

const insertWalk = {
  name: 'insert-walk',
  text:
    'INSERT INTO walks (id, revision, started_at, updated_at, phase, answered, label, data) ' +
    'VALUES ($1, $2, $3, $4, $5, $6, $7, $8) ON CONFLICT (id) DO NOTHING',
};
const updateWalk = {
  name: 'update-walk',
  text:
    'UPDATE walks SET revision = $2, started_at = $3, updated_at = $4, phase = $5, answered = $6, label = $7, data = $8 ' +
    'WHERE id = $1 AND revision = $9',
};
const eraseWalk = { name: 'erase-walk', text: 'DELETE FROM walks WHERE id = $1 AND revision = $2' };
const insertMessage = {
  name: 'insert-message',
  text:
    'INSERT INTO messages (channel, message_id, walk_id, reply, kept_at) VALUES ($1, $2, $3, $4, $5) ' +
    'ON CONFLICT (channel, message_id) DO NOTHING',
};
const insertDelivery = {
  name: 'insert-delivery',
  text:
    'INSERT INTO deliveries (id, walk_id, revision, at, state, attempts, due_at, problem) ' +
    "VALUES ($1, $2, $3, $4, 'waiting', 0, $4, NULL) ON CONFLICT (id) DO NOTHING",
};

const takeWaiting = {
  name: 'take-waiting',
  text:
    "UPDATE hand_overs SET taken_by = '', sealed = '' " +
    'WHERE code = $1 AND until > $2 AND taken_by IS NULL',
};

/** Text columns hold no zero character; it is in no label that a person means. */
const withoutZero = (text: string | undefined) => text?.replaceAll('\0', '') ?? null;

async function writeWalk(
  client: PoolClient,
  { record, expected, erase, data }: TurnWithData,
  labelOf: LabelOf,
) {
  if (erase && expected !== 'new') return client.query({ ...eraseWalk, values: [record.id, expected] });
  const { id, startedAt, updatedAt, phase, answered, label } = summarise(record, labelOf);
  const values = [id, record.revision, startedAt, updatedAt, phase, answered, withoutZero(label), data];
  return expected === 'new'
    ? client.query({ ...insertWalk, values })
    : client.query({ ...updateWalk, values: [...values, expected] });
}

/** Removes what belongs to a walk beside its row. */
export async function removeBelongings(client: PoolClient, id: string): Promise<void> {
  await client.query('DELETE FROM messages WHERE walk_id = $1', [id]);
  await client.query('DELETE FROM deliveries WHERE walk_id = $1', [id]);
  await client.query('DELETE FROM hand_overs WHERE walk_id = $1', [id]);
}

/**
 * Keeps a turn, inside a transaction: the message first, since a second server with the same message waits there,
 * then the walk over the revision that was loaded. Throws Undo with what came between.
 */
export async function keepTurn(client: PoolClient, turn: TurnWithData, labelOf: LabelOf): Promise<Kept> {
  const { record, message, announce, erase, takes } = turn;
  if (erase) await removeBelongings(client, record.id);
  if (message) {
    const walk = erase ? '' : record.id;
    const values = [message.channel, message.id, walk, writeStoredReply(message.reply), record.updatedAt];
    const { rowCount } = await client.query({ ...insertMessage, values });
    if (rowCount === 0) throw new Undo<Kept>('seen');
  }
  const { rowCount } = await writeWalk(client, turn, labelOf);
  if (rowCount === 0) throw new Undo<Kept>('conflict');
  if (takes) {
    const taken = await client.query({ ...takeWaiting, values: [takes.code, takes.now] });
    if (taken.rowCount === 0) throw new Undo<Kept>('conflict');
  }
  if (announce) {
    const { id, walk, revision, at } = announce;
    await client.query({ ...insertDelivery, values: [id, walk, revision, at] });
  }
  return 'saved';
}
