/** A server, several workers: rows are claimed with SKIP LOCKED, leases end by the server's clock. */
import { Kysely, PostgresDialect, sql } from "kysely";
import pg from "pg";
import { asOne } from "./alike.ts";
import type { Engine, Leases } from "./engine.ts";
import { asStoreError, isBusy } from "./errors.ts";
import { patiently } from "./retry.ts";
import type { Tables } from "./schema.ts";

export interface PostgresOptions {
  readonly boot: string;
  readonly connections: number;
  readonly check_limit_ms: number;
  readonly broken?: (error: Error) => void;
}

/** bigint and numeric come as text by default; ours are counts and milliseconds, far below 2^53 */
const NUMBERS = new Set([20, 1700]);
const types = {
  getTypeParser: ((oid: number, format?: "text" | "binary") =>
    NUMBERS.has(oid) ? Number : pg.types.getTypeParser(oid, format as "text")) as typeof pg.types.getTypeParser,
};

export function openPostgres(url: string, options: PostgresOptions): Engine {
  const connect = (max: number, settings: string): Kysely<Tables> => {
    const pool = new pg.Pool({
      connectionString: url,
      types,
      max,
      ...(settings ? { options: settings } : {}),
      application_name: "gleed",
      connectionTimeoutMillis: 3_000,
      statement_timeout: 10_000,
      query_timeout: 12_000,
      lock_timeout: 1_500,
      idle_in_transaction_session_timeout: 15_000,
      keepAlive: true,
    });
    // a connection that dies while idle is replaced by the pool; without a listener it would end the process
    pool.on("error", (error) => options.broken?.(error));
    return new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
  };
  const db = connect(options.connections, "");
  const claims = connect(1, "-c synchronous_commit=off -c enable_bitmapscan=off -c enable_sort=off");
  const patient = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await patiently(work, isBusy, [20, 100]);
    } catch (error) {
      throw asStoreError(error);
    }
  };

  const look = () => db.transaction().setIsolationLevel("repeatable read").setAccessMode("read only");

  return {
    kind: "postgres",
    db,
    leases: leases(options.boot),
    read: (work) => patient(() => look().execute(work)),
    readMany: (work) => patient(() => look().execute((tx) => work(asOne(tx)))),
    write: (work) => patient(() => db.transaction().execute(work)),
    single: (work) => patient(() => work(db)),
    claim: (work) => patient(() => work(claims)),
    // what was deleted stays in the server's files until it vacuums: see the notes on hosting
    scrub: async () => {},
    // PostgreSQL minds its own pages (data checksums, amcheck): here both ways ask the same
    async check() {
      try {
        const answered = await Promise.race([sql<{ version: string }>`select version()`.execute(db), late(options.check_limit_ms)]);
        return { ok: true, detail: answered.rows[0]?.version ?? "PostgreSQL" };
      } catch (error) {
        return { ok: false, detail: asStoreError(error).message };
      }
    },
    close: async () => {
      await Promise.all([claims.destroy(), db.destroy()]);
    },
  };
}

const server_now_ms = sql<number>`(extract(epoch from clock_timestamp()) * 1000)::double precision`;

function leases(boot: string): Leases {
  let count = 0;
  return {
    allowed: () => true,
    next: () => `${boot}/${++count}`,
    end: (lease_ms) => sql<number>`${server_now_ms} + ${lease_ms}`,
    free: () => sql<boolean>`(lease is null or lease_until <= ${server_now_ms})`,
    skip_locked: true,
  };
}

function late(limit_ms: number): Promise<never> {
  return new Promise((_, reject) => {
    setTimeout(() => reject(new Error(`no answer within ${limit_ms / 1000} s`)), limit_ms).unref();
  });
}
