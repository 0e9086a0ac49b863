/** Everything from one store into another that is empty: SQLite to PostgreSQL, back, or into a file as a copy to keep. */
import { sql, type Kysely, type Transaction } from "kysely";
import { openEngine } from "../store/open.ts";
import type { Engine } from "../store/engine.ts";
import type { Tables } from "../store/schema.ts";

/** Each after those it points to. A test holds the list against the tables there are. */
export const TABLES = [
  "clock", "people", "identities", "places", "heaters", "heater_members", "homes", "fires", "talks", "guides", "reminders", "place_rules", "builder_invitations", "builders", "link_codes", "cards", "winter_members", "winter_weeks", "group_lists", "group_entries", "album", "inbox", "due", "outbox",
] as const satisfies readonly (keyof Tables)[];

/** What stands in the way of a move, as a sentence for whoever asked for it. */
export class CannotMove extends Error {}

export interface Moved {
  readonly rows: Readonly<Record<string, number>>;
}

const BATCH = 400;

/**
 * The source is read in one consistent look and left as it is; the target is written in one transaction, or not at all.
 * @throws CannotMove, StoreError
 */
export async function move(from: string, to: string): Promise<Moved> {
  if (from === to) throw new CannotMove("source and target are the same database; name another one.");
  const source = await openEngine(from);
  try {
    if (source.kind === "sqlite" && !source.leases.allowed()) throw new CannotMove("a running Gleed delivers from the source; stop it first, or its messages would go out twice.");
    const target = await openEngine(to);
    try {
      return await copy(source, target);
    } finally {
      await target.close();
    }
  } finally {
    await source.close();
  }
}

/** As `move`, for a copy that nobody delivers from: the source may be in use. */
export async function copyTo(from: string, to: string): Promise<Moved> {
  const source = await openEngine(from);
  const target = await openEngine(to);
  try {
    return await copy(source, target);
  } finally {
    await source.close();
    await target.close();
  }
}

async function copy(source: Engine, target: Engine): Promise<Moved> {
  return source.read((read) =>
    target.write(async (write) => {
      const { people } = await write.selectFrom("people").select(({ fn }) => fn.countAll<number>().as("people")).executeTakeFirstOrThrow();
      if (Number(people) > 0) throw new CannotMove(`the target already holds ${people} people; it must be empty.`);
      await write.deleteFrom("clock").execute();
      const rows: Record<string, number> = {};
      for (const table of TABLES) rows[table] = await copyTable(read, write, table);
      for (const table of TABLES) {
        const there = await count(write, table);
        if (there !== rows[table]) throw new CannotMove(`of ${rows[table]} rows of ${table} only ${there} arrived; nothing was kept.`);
      }
      return { rows };
    }),
  );
}

const count = async (db: Kysely<Tables>, table: keyof Tables): Promise<number> =>
  Number((await db.selectFrom(table).select(({ fn }) => fn.countAll<number>().as("rows")).executeTakeFirstOrThrow()).rows);

/** Page by page along the key, so that a store of any size fits into memory. */
async function copyTable(read: Transaction<Tables>, write: Transaction<Tables>, table: keyof Tables): Promise<number> {
  const keys = KEYS[table];
  let done = 0;
  for (;;) {
    const page = await sql<Record<string, unknown>>`select * from ${sql.table(table)} order by ${sql.join(keys.map((key) => sql.ref(key)))} limit ${sql.lit(BATCH)} offset ${sql.lit(done)}`.execute(read);
    if (page.rows.length === 0) return done;
    await write.insertInto(table).values(page.rows.map(unleased) as never).execute();
    done += page.rows.length;
    if (page.rows.length < BATCH) return done;
  }
}

const KEYS: Readonly<Record<keyof Tables, readonly string[]>> = {
  clock: ["id"], people: ["id"], identities: ["network", "network_id"], places: ["id"], heaters: ["id"], heater_members: ["heater_id", "person_id"], homes: ["owner_id"],
  fires: ["id"], talks: ["person_id", "place_id"], guides: ["heater_id"], reminders: ["id"], place_rules: ["place_id"], builder_invitations: ["code"], builders: ["heater_id", "person_id"], link_codes: ["code"], cards: ["group_id", "code"], winter_members: ["group_id", "person_id"], winter_weeks: ["group_id", "week"], group_lists: ["group_id", "kind"],
  group_entries: ["group_id", "kind", "person_id"], album: ["id"], inbox: ["message_key"], due: ["key"], outbox: ["key"],
};

/** A lease belongs to a process and its database's time: nobody holds anything in the new one. */
function unleased(row: Record<string, unknown>): Record<string, unknown> {
  if (!("lease" in row)) return row;
  return { ...row, lease: null, lease_until: null, ...(row.state === "leased" ? { state: "pending" } : {}) };
}
