/**
 * The one file of the Matrix adapter: identity and keys, what has come in, what has been sent. Readable by its owner alone, held by one
 * process, every change on the disk before anything is built on it. An older copy must never be put back: the keys move on with each
 * message. After a loss, a new device and the recovery key are the way.
 */
import { closeSync, mkdirSync, openSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";

export type File = Database.Database;

/** Version of the tables below; a file of a newer one is refused. */
const VERSION = 1;

const TABLES = `
  CREATE TABLE idb_schema (db TEXT PRIMARY KEY, schema TEXT NOT NULL) STRICT;
  CREATE TABLE idb_record (
    db TEXT NOT NULL, store TEXT NOT NULL, key TEXT NOT NULL, value BLOB NOT NULL,
    PRIMARY KEY (db, store, key)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE account (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
  CREATE TABLE inbox (
    event_id TEXT PRIMARY KEY, room_id TEXT NOT NULL, seq INTEGER NOT NULL, event TEXT, came_at_ms INTEGER NOT NULL, done INTEGER NOT NULL
  ) STRICT;
  CREATE INDEX inbox_pending ON inbox (seq) WHERE done = 0;
  CREATE TABLE room (
    room_id TEXT PRIMARY KEY, mark TEXT, gap INTEGER NOT NULL DEFAULT 0, prefix TEXT
  ) STRICT;
  CREATE TABLE sent (txn TEXT PRIMARY KEY, event_id TEXT NOT NULL, room_id TEXT NOT NULL, at_ms INTEGER NOT NULL) STRICT;
  CREATE TABLE shown (event_id TEXT PRIMARY KEY, room_id TEXT NOT NULL, person TEXT NOT NULL, choices TEXT NOT NULL, at_ms INTEGER NOT NULL) STRICT;
  CREATE TABLE talk (room_id TEXT NOT NULL, person TEXT NOT NULL, state TEXT NOT NULL, PRIMARY KEY (room_id, person)) STRICT;
  CREATE TABLE live (room_id TEXT NOT NULL, live TEXT NOT NULL, event_ids TEXT NOT NULL, PRIMARY KEY (room_id, live)) STRICT;
`;

/** @throws when another process holds the file, when it is of a newer version, or when it cannot be read or written */
export function openFile(path: string): File {
  if (path !== ":memory:") {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    closeSync(openSync(path, "a", 0o600));
  }
  const file = new Database(path, { timeout: 1_000 });
  file.pragma("locking_mode = EXCLUSIVE");
  file.pragma("journal_mode = WAL");
  file.pragma("synchronous = FULL");
  const version = file.pragma("user_version", { simple: true }) as number;
  if (version > VERSION) throw new Error(`the Matrix store is of version ${version}, newer than this Gleed knows (${VERSION})`);
  file
    .transaction(() => {
      if (version === 0) file.exec(TABLES);
      file.pragma(`user_version = ${VERSION}`);
    })
    .immediate();
  return file;
}
