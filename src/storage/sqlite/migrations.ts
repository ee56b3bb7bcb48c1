/** A step that brings the tables from one version to the next; never changed once it was released. */
export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly sql: string;
}

/** All steps in order, numbered from 1 without gaps. Columns are TEXT and INTEGER only; data is JSON as text. */
export const migrations: readonly Migration[] = [
  {
    number: 1,
    name: 'walks and messages',
    sql: `
      CREATE TABLE walks (
        id TEXT PRIMARY KEY,
        revision INTEGER NOT NULL,
        started_at TEXT NOT NULL,
        updated_at TEXT NOT NULL,
        phase TEXT NOT NULL,
        answered INTEGER NOT NULL,
        label TEXT,
        data TEXT NOT NULL
      );
      CREATE INDEX walks_by_time ON walks (updated_at);
      CREATE TABLE messages (
        channel TEXT NOT NULL,
        message_id TEXT NOT NULL,
        walk_id TEXT NOT NULL,
        reply TEXT NOT NULL,
        kept_at TEXT NOT NULL,
        PRIMARY KEY (channel, message_id)
      );
      CREATE INDEX messages_by_walk ON messages (walk_id);
    `,
  },
  {
    number: 2,
    name: 'deliveries',
    sql: `
      CREATE TABLE deliveries (
        id TEXT PRIMARY KEY,
        walk_id TEXT NOT NULL,
        revision INTEGER NOT NULL,
        at TEXT NOT NULL,
        state TEXT NOT NULL,
        attempts INTEGER NOT NULL,
        due_at TEXT NOT NULL,
        problem TEXT
      );
      CREATE INDEX deliveries_by_state ON deliveries (state, due_at);
      CREATE INDEX deliveries_by_walk ON deliveries (walk_id);
      CREATE INDEX messages_by_time ON messages (kept_at);
    `,
  },
  {
    number: 3,
    name: 'hand-overs',
    sql: `
      CREATE TABLE hand_overs (
        code TEXT PRIMARY KEY,
        walk_id TEXT NOT NULL,
        until TEXT NOT NULL,
        sealed TEXT NOT NULL,
        taken_by TEXT
      );
      CREATE INDEX hand_overs_by_walk ON hand_overs (walk_id);
      CREATE INDEX hand_overs_by_time ON hand_overs (until);
    `,
  },
];
