/** Fills a database with owners who all have what one owner has: heater, house, wood, fires, a talk and what falls due for them. */
import Database from "better-sqlite3";
import pg from "pg";
import { silent } from "../../src/delivery/log.ts";
import { openCore } from "../../src/core/core.ts";
import { placeId, personId } from "../../src/store/ids.ts";

export const ownerOf = (i: number): string => `owner-${i}`;
export const groupOf = (i: number): string => `village-${i}`;
const PRIVATE = (person: string): string => `private:${person}`;

type Row = Readonly<Record<string, unknown>>;
const TABLES = ["people", "identities", "places", "heaters", "heater_members", "homes", "fires", "talks", "due"] as const;
const TOGETHER = 400;

interface Rows {
  read(table: string): Promise<Row[]>;
  add(table: string, rows: readonly Row[]): Promise<void>;
  done(): Promise<void>;
}

function sqlite(file: string): Rows {
  const db = new Database(file);
  db.pragma("synchronous = off");
  return {
    read: async (table) => db.prepare(`select * from ${table}`).all() as Row[],
    add: async (table, rows) => {
      const columns = Object.keys(rows[0] ?? {});
      const put = db.prepare(`insert or ignore into ${table} (${columns.join(", ")}) values (${columns.map((name) => `@${name}`).join(", ")})`);
      db.transaction(() => { for (const row of rows) put.run(row); })();
    },
    done: async () => {
      db.exec("analyze");
      db.pragma("wal_checkpoint(truncate)");
      db.close();
    },
  };
}

async function postgres(url: string): Promise<Rows> {
  const db = new pg.Client({ connectionString: url });
  await db.connect();
  return {
    read: async (table) => (await db.query(`select row_to_json(t) as row from ${table} t`)).rows.map(({ row }: { row: Row }) => row),
    add: async (table, rows) => { await db.query(`insert into ${table} select * from json_populate_recordset(null::${table}, $1) on conflict do nothing`, [JSON.stringify(rows)]); },
    done: async () => {
      await db.query("analyze");
      await db.end();
    },
  };
}

/** @param database an empty one */
export async function fill(database: string, owners: number, groups: number, now_ms: number): Promise<void> {
  const core = await openCore({ database, settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: {}, log: silent, ticking: false, outlets: [] });
  const day = (days: number): string => new Date(now_ms - days * 86_400_000).toISOString();
  await core.receive({
    adapter: "lines", native_id: "first", received_at_ms: now_ms, identity: { network: "lines", id: ownerOf(0), name: ownerOf(0) },
    place: { network: "lines", id: PRIVATE(ownerOf(0)), kind: "private", encrypted: null },
    records: {
      country: "FI", timezone: "Europe/Helsinki", latitude: 60.2, longitude: 24.9, asleep: { from: "22:30", to: "06:30" },
      heater: { kind: "contraflow", max_load_kg: 16, max_load_source: "sheet", masonry_kg: 2400, wall_mm: 180, shut_off_damper: true, gas_exit: "top" },
      house: { heat_loss_W_per_K: 190, wanted_C: 21 },
      wood: [{ name: "shed", species: "birch", moisture_pct_wet: 17, measured_on: day(20).slice(0, 10), volume_m3_stacked: 6 }],
      alarms: { co: { present: true, room: "living room", tested_on: day(12).slice(0, 10), ends_on: "2031-06-01" } },
      fires: [1, 2, 3, 4, 5, 6].map((days) => ({ lit_at: day(days), load_kg: 10 + (days % 3), moisture_pct_wet: 17, air: "open", outside_C: -4 })),
      weather: { low_C: -9, high_C: -3 },
    },
  });
  await core.close();

  const rows = /^postgres/.test(database) ? await postgres(database) : sqlite(database);
  const first = { person: personId("lines", ownerOf(0)), place: placeId("lines", PRIVATE(ownerOf(0))) };
  const heater = String((await rows.read("heaters"))[0]?.id);
  const patterns = await Promise.all(TABLES.map(async (table) => [table, JSON.stringify(await rows.read(table))] as const));
  for (const [table, pattern] of patterns) {
    if (pattern === "[]") continue;
    for (let from = 1; from < owners; from += TOGETHER) {
      const made: Row[] = [];
      for (let i = from; i < Math.min(owners, from + TOGETHER); i++) {
        const mine = pattern
          .replaceAll(first.person, personId("lines", ownerOf(i))).replaceAll(first.place, placeId("lines", PRIVATE(ownerOf(i))))
          .replaceAll(heater, `heater-load-${i}`).replaceAll(`"${ownerOf(0)}"`, `"${ownerOf(i)}"`).replaceAll(`\\"${ownerOf(0)}\\"`, `\\"${ownerOf(i)}\\"`)
          .replaceAll(PRIVATE(ownerOf(0)), PRIVATE(ownerOf(i)));
        made.push(...(JSON.parse(mine) as Row[]));
      }
      await rows.add(table, made);
    }
  }
  const places = (await rows.read("places")).slice(0, 1);
  for (let i = 0; i < groups; i++) {
    await rows.add("places", places.map((row) => ({ ...row, id: placeId("lines", groupOf(i)), network_id: groupOf(i), kind: "group", person_id: null })));
  }
  await rows.done();
}
