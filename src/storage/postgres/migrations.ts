/** A step that brings the tables from one version to the next; never changed once it was released. */
export interface PostgresMigration {
  readonly number: number;
  readonly name: string;
  /** Each may run again after it was cut short, also where tables are not made in transactions. */
  readonly statements: readonly string[];
}

/** All steps in order, numbered from 1 without gaps. Columns are TEXT and INTEGER only; data is JSON as text. */
export const postgresMigrations: readonly PostgresMigration[] = [
  {
    number: 1,
    name: 'walks, messages and deliveries',
    statements: [
      `CREATE TABLE IF NOT EXISTS walks (
        id TEXT PRIMARY KEY,
        revision INTEGER NOT NULL,
        started_at TEXT NOT NULL,
        updated_at TEXT NOT NULL,
        phase TEXT NOT NULL,
        answered INTEGER NOT NULL,
        label TEXT,
        data TEXT NOT NULL
      )`,
      'CREATE INDEX IF NOT EXISTS walks_by_time ON walks (updated_at)',
      `CREATE TABLE IF NOT EXISTS messages (
        channel TEXT NOT NULL,
        message_id TEXT NOT NULL,
        walk_id TEXT NOT NULL,
        reply TEXT NOT NULL,
        kept_at TEXT NOT NULL,
        PRIMARY KEY (channel, message_id)
      )`,
      'CREATE INDEX IF NOT EXISTS messages_by_walk ON messages (walk_id)',
      'CREATE INDEX IF NOT EXISTS messages_by_time ON messages (kept_at)',
      `CREATE TABLE IF NOT EXISTS deliveries (
        id TEXT PRIMARY KEY,
        walk_id TEXT NOT NULL,
        revision INTEGER NOT NULL,
        at TEXT NOT NULL,
        state TEXT NOT NULL,
        attempts INTEGER NOT NULL,
        due_at TEXT NOT NULL,
        problem TEXT
      )`,
      'CREATE INDEX IF NOT EXISTS deliveries_by_state ON deliveries (state, due_at)',
      'CREATE INDEX IF NOT EXISTS deliveries_by_walk ON deliveries (walk_id)',
    ],
  },
  {
    number: 2,
    name: 'hand-overs',
    statements: [
      `CREATE TABLE IF NOT EXISTS hand_overs (
        code TEXT PRIMARY KEY,
        walk_id TEXT NOT NULL,
        until TEXT NOT NULL,
        sealed TEXT NOT NULL,
        taken_by TEXT
      )`,
      'CREATE INDEX IF NOT EXISTS hand_overs_by_walk ON hand_overs (walk_id)',
      'CREATE INDEX IF NOT EXISTS hand_overs_by_time ON hand_overs (until)',
    ],
  },
];
