/**
 * One file, one connection, one process that delivers.
 *
 * WAL with synchronous FULL: a committed message survives a power cut. The connection waits only a few milliseconds for a lock; longer
 * waits are taken between turns of the event loop (retry.ts). What is deleted is overwritten (secure_delete).
 */
import { mkdirSync } from "node:fs";
import { dirname, extname } from "node:path";
import { Worker } from "node:worker_threads";
import Database from "better-sqlite3";
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  sql,
  type TransactionSettings,
} from "kysely";
import type { Engine, Leases } from "./engine.ts";
import { asStoreError, isBusy } from "./errors.ts";
import { patiently } from "./retry.ts";
import type { Tables } from "./schema.ts";

export interface SqliteOptions {
  /** names this life of the process: leases of an earlier one are void */
  readonly boot: string;
  readonly monotonic: () => number;
  readonly check_limit_ms: number;
}

const LOCK_WAIT_MS = 5;

export function openSqlite(file: string, options: SqliteOptions): Engine {
  const in_memory = file === ":memory:";
  if (!in_memory) mkdirSync(dirname(file), { recursive: true });
  const database = new Database(file, { timeout: LOCK_WAIT_MS });
  try {
    for (const pragma of ["journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON", "secure_delete = ON", "temp_store = MEMORY"]) {
      database.pragma(pragma);
    }
  } catch (error) {
    database.close();
    throw error;
  }

  const db = new Kysely<Tables>({ dialect: new FileDialect({ database: remembering(database) }) });
  const turn = in_memory ? ALWAYS : deliveryTurn(`${file}-delivering`);
  const patient = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await patiently(work, isBusy);
    } catch (error) {
      throw asStoreError(error);
    }
  };

  return {
    kind: "sqlite",
    db,
    leases: leases(options, turn.mine),
    read: (work) => patient(() => db.transaction().setAccessMode("read only").execute(work)),
    readMany: (work) => patient(() => db.transaction().setAccessMode("read only").execute(work)),
    write: (work) => patient(() => db.transaction().execute(work)),
    single: (work) => patient(() => work(db)),
    claim: (work) => patient(() => work(db)),
    scrub: () =>
      patient(async () => {
        const [done] = database.pragma("wal_checkpoint(TRUNCATE)") as { busy: number }[];
        if (done?.busy) throw Object.assign(new Error("somebody still reads"), { code: "SQLITE_BUSY" });
      }),
    async check(how) {
      const found = how === "thorough" && !in_memory ? await integrity(file, options.check_limit_ms) : await answers(patient, db);
      const delivers = turn.mine() ? "" : "; another process delivers from this file";
      return { ok: found === "ok", detail: `SQLite ${file}: ${found}${delivers}` };
    },
    async close() {
      await db.destroy();
      turn.end();
    },
  };
}

/** A lease lives as long as this process at most: its name starts with the boot, its end is by the monotonic clock. */
function leases({ boot, monotonic }: SqliteOptions, mine: () => boolean): Leases {
  let count = 0;
  return {
    allowed: mine,
    next: () => `${boot}/${++count}`,
    end: (lease_ms) => monotonic() + lease_ms,
    free: () => sql<boolean>`(lease is null or lease < ${`${boot}/`} or lease > ${`${boot}/~`} or lease_until <= ${monotonic()})`,
    skip_locked: false,
  };
}

class FileDialect extends SqliteDialect {
  readonly #database;
  constructor(config: { database: Remembering }) {
    super(config);
    this.#database = config.database;
  }
  override createDriver() {
    return new FileDriver({ database: this.#database });
  }
  override createAdapter() {
    return new FileAdapter();
  }
}

class FileDriver extends SqliteDriver {
  readonly #database;
  constructor(config: { database: Remembering }) {
    super(config);
    this.#database = config.database;
  }

  /** A transaction that may write takes the write lock first: it never finds out half way that it cannot. */
  override async beginTransaction(connection: DatabaseConnection, settings?: TransactionSettings): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw(settings?.accessMode === "read only" ? "begin" : "begin immediate"));
  }

  /** SQLite has undone the transaction by itself after a full disk or a failing one: then the first error is the one that counts. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction()) await super.rollbackTransaction(connection);
  }
}

class FileAdapter extends SqliteAdapter {
  /** it is, in SQLite: a migration that is cut off leaves nothing behind */
  override get supportsTransactionalDdl() {
    return true;
  }
}

type Remembering = ReturnType<typeof remembering>;

/** Preparing costs more than running: keep prepared statements. */
function remembering(database: Database.Database) {
  const prepared = new Map<string, Database.Statement<unknown[]>>();
  return {
    close: () => void database.close(),
    inTransaction: () => database.inTransaction,
    prepare(text: string) {
      let statement = prepared.get(text);
      if (!statement) {
        statement = database.prepare<unknown[]>(text);
        if (prepared.size < 500) prepared.set(text, statement);
      }
      return statement;
    },
  };
}

const ALWAYS = { mine: () => true, end: () => {} };

/** Held by one process at a time, given back by the operating system however the process ends. */
function deliveryTurn(file: string) {
  const lock = new Database(file, { timeout: 0 });
  let held = false;
  return {
    mine(): boolean {
      if (held) return true;
      try {
        lock.exec("begin exclusive");
        held = true;
      } catch (error) {
        if (!isBusy(error)) throw error;
      }
      return held;
    },
    end: () => void lock.close(),
  };
}

async function answers(patient: <T>(work: () => Promise<T>) => Promise<T>, db: Kysely<Tables>): Promise<string> {
  try {
    await patient(() => db.selectFrom("people").select("id").limit(1).execute());
    return "ok";
  } catch (error) {
    return String(error);
  }
}

/** Reads the whole file, in a thread of its own. */
async function integrity(file: string, limit_ms: number): Promise<string> {
  const worker = new Worker(new URL(`./integrity${extname(import.meta.url)}`, import.meta.url), { workerData: { file } });
  const limit = setTimeout(() => void worker.terminate(), limit_ms);
  try {
    return await new Promise((resolve, reject) => {
      worker.once("message", resolve);
      worker.once("error", reject);
      worker.once("exit", () => resolve(`not finished within ${limit_ms / 1000} s`));
    });
  } catch (error) {
    return asStoreError(error).message;
  } finally {
    clearTimeout(limit);
  }
}
