/**
 * Append-only: a migration that was once released is never changed, and a new one sorts after all others. Each runs in one transaction
 * together with the note that it ran, under a lock, so that one that is cut off leaves nothing behind and runs again.
 */
import { type Kysely, type RawBuilder, sql } from "kysely";
import { type Migration, Migrator } from "kysely/migration";
import type { Engine } from "../engine.ts";
import * as first from "./0001-first.ts";
import * as clock from "./0002-clock.ts";
import * as surroundings from "./0003-surroundings.ts";
import * as group from "./0004-group.ts";
import * as builders from "./0005-builders.ts";

/** column types that the two databases spell differently */
export interface Kinds {
  /** text that sorts and compares byte by byte */
  readonly key: "text" | RawBuilder<unknown>;
  readonly real: "real" | "double precision";
  readonly bytes: "blob" | "bytea";
}
const KINDS: Readonly<Record<Engine["kind"], Kinds>> = {
  sqlite: { key: "text", real: "real", bytes: "blob" },
  postgres: { key: sql`text collate "C"`, real: "double precision", bytes: "bytea" },
};

export const MIGRATIONS = { "0001-first": first, "0002-clock": clock, "0003-surroundings": surroundings, "0004-group": group, "0005-builders": builders } as const;

/** @param to the last one to run; all of them when it is not given */
export async function migrate({ kind, db }: Pick<Engine, "kind" | "db">, to?: keyof typeof MIGRATIONS): Promise<void> {
  const migrations = Object.entries(MIGRATIONS).map(([name, { up }]): [string, Migration] => [
    name,
    { up: (tx) => up(tx as Kysely<unknown>, KINDS[kind]) },
  ]);
  const migrator = new Migrator({ db, provider: { getMigrations: async () => Object.fromEntries(migrations) } });
  const { error } = await (to ? migrator.migrateTo(to) : migrator.migrateToLatest());
  if (error) throw error;
}
