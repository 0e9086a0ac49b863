/**
 * Each migration, from the version before it with records inside: the process ends before any of its statements (and before the commit), in
 * process: from then on it does nothing any more, and its connection is gone. Opened again, the store is brought up to date: the same tables
 * as if nothing had happened, and every record as it was. Real processes are killed in migration.test.ts.
 */
import Database from "better-sqlite3";
import { type Kysely, sql } from "kysely";
import pg from "pg";
import { describe, expect, test } from "vitest";
import type { Engine } from "../../../src/store/engine.ts";
import { MIGRATIONS, migrate } from "../../../src/store/migrations/index.ts";
import { openPostgres } from "../../../src/store/postgres.ts";
import { openSqlite } from "../../../src/store/sqlite.ts";
import { FILE, type Kind, POSTGRES } from "../../store/locations.ts";

type Version = keyof typeof MIGRATIONS;
const VERSIONS = Object.keys(MIGRATIONS) as Version[];
/** every statement in continuous integration, some of each migration otherwise */
const MOST = process.env.GLEED_TEST_FULL ? Number.POSITIVE_INFINITY : 4;

for (const kind of [FILE, POSTGRES]) {
  const run = kind.missing ? describe.skip : describe;
  run(`${kind.name}${kind.missing ? ` (${kind.missing})` : ""}`, () => {
    test.each(VERSIONS.map((to, n) => [to, VERSIONS[n - 1]] as const))("%s", { timeout: 240_000 }, async (to, from) => {
      const whole = await endingAt(kind, from, to, Number.POSITIVE_INFINITY);
      expect(whole.statements).toBeGreaterThan(3);
      const every = Math.max(1, Math.ceil(whole.statements / MOST));
      for (let nth = 1; nth <= whole.statements; nth += every) {
        const { ended, tables, records } = await endingAt(kind, from, to, nth);
        expect({ ended, tables, records }, `ended before statement ${nth} of ${whole.statements}`).toEqual({
          ended: true,
          tables: whole.tables,
          records: whole.records,
        });
      }
    });
  });
}

interface Found {
  readonly ended: boolean;
  readonly statements: number;
  readonly tables: unknown;
  readonly records: unknown;
}

async function endingAt(kind: Kind, from: Version | undefined, to: Version, nth: number): Promise<Found> {
  const at = await kind.fresh();
  try {
    if (from) {
      const before = open(at.location);
      await migrate(before, from);
      await records(before).write();
      await before.close();
    }
    const process = mortal(nth);
    const dying = open(at.location);
    const error = await migrate(dying, to).then(
      () => null,
      (one: unknown) => one,
    );
    const statements = process.leave();
    await dying.close().catch(() => {});
    if (error && !process.over()) throw error;
    const after = open(at.location);
    await migrate(after, to);
    const found = { ended: process.over(), statements, tables: await tablesOf(after), records: from ? await records(after).read() : [] };
    await after.close();
    return found;
  } finally {
    await at.remove();
  }
}

function open(location: string): Engine {
  return location.startsWith("postgres")
    ? openPostgres(location, { boot: "test", connections: 2, check_limit_ms: 1000 })
    : openSqlite(location, { boot: "test", monotonic: () => 0, check_limit_ms: 1000 });
}

class Ended extends Error {}

/** Counts every statement of both drivers; the n-th and all after it never reach the database, whose connection is cut. */
function mortal(nth: number) {
  let statements = 0;
  let over = false;
  const step = (): void => {
    if (++statements >= nth) over = true;
    if (over) throw new Ended();
  };
  const { prepare } = Database.prototype;
  Database.prototype.prepare = function (this: Database.Database, text: string) {
    const statement = prepare.call(this, text) as Database.Statement & Record<"run" | "all", (...all: unknown[]) => unknown>;
    for (const name of ["run", "all"] as const) {
      const call = statement[name].bind(statement);
      statement[name] = ((...all: unknown[]) => {
        step();
        return call(...all);
      }) as never;
    }
    return statement;
  } as typeof prepare;
  const { query } = pg.Client.prototype;
  pg.Client.prototype.query = function (this: pg.Client & { connection?: { stream: { destroy(): void } } }, ...all: unknown[]) {
    try {
      step();
    } catch (error) {
      this.connection?.stream.destroy();
      return Promise.reject(error);
    }
    return (query as (...given: unknown[]) => unknown).apply(this, all);
  } as typeof query;
  return {
    over: () => over,
    leave(): number {
      Database.prototype.prepare = prepare;
      pg.Client.prototype.query = query;
      return statements;
    },
  };
}

/** Somebody with a place, a heater and a reminder, as the first version already knew them. */
function records({ db }: Engine) {
  const one = db as unknown as Kysely<Record<string, Record<string, unknown>>>;
  const rows: [string, Record<string, unknown>][] = [
    ["people", { id: "p", created_at_ms: 5, version: 3, doc: '{"name":"Ana","facts":{}}' }],
    ["places", { id: "q", network: "lines", network_id: "ana", kind: "private", person_id: "p", doc: "{}" }],
    ["heaters", { id: "h", owner_id: "p", version: 2, doc: '{"facts":{"kind":"bell"},"upkeep":{},"rules":[]}' }],
    ["fires", { id: "f", heater_id: "h", person_id: "p", lit_at_ms: 7, load_kg: 9.5, doc: '{"load_kg":9.5}' }],
    ["reminders", { id: "r", person_id: "p", place_id: "q", due_at_ms: 9, done_at_ms: null, doc: '{"what":"sweep"}' }],
  ];
  return {
    async write(): Promise<void> {
      for (const [table, row] of rows) await one.insertInto(table).values(row).execute();
    },
    async read(): Promise<unknown> {
      const found: unknown[] = [];
      for (const [table, row] of rows) found.push(await one.selectFrom(table).select(Object.keys(row)).execute());
      expect(found).toEqual(rows.map(([, row]) => [row]));
      return found;
    },
  };
}

/** Tables, columns, indexes, and which migrations ran. */
async function tablesOf({ kind, db }: Engine): Promise<unknown> {
  const ran = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(db);
  const shape =
    kind === "sqlite"
      ? sql`select type, name, tbl_name, sql from sqlite_master where name not like 'kysely%' order by type, name`
      : sql`select table_name as a, column_name as b, data_type || collation_name || is_nullable as c from information_schema.columns where table_schema = 'public'
            union all select tablename, indexname, indexdef from pg_indexes where schemaname = 'public' order by 1, 2, 3`;
  return { ran: ran.rows.map(({ name }) => name), shape: (await shape.execute(db)).rows };
}
