/** Moving a database, backup, restore and the check, on both stores. */
import { mkdtempSync, openSync, readFileSync, rmSync, writeSync, closeSync, existsSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { backup, check, restore } from "../../src/hosting/backup.ts";
import { CannotMove, move, TABLES } from "../../src/hosting/move.ts";
import { openEngine } from "../../src/store/open.ts";
import { FILE, POSTGRES, type Location } from "../store/locations.ts";
import { openTalk } from "../support/talk.ts";

let folder: string;
let open: Location[];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "gleed-host-"));
  open = [];
});
afterEach(async () => {
  for (const one of open) await one.remove();
  rmSync(folder, { recursive: true, force: true });
});
async function fresh(kind: typeof FILE): Promise<string> {
  const location = await kind.fresh();
  open.push(location);
  return location.location;
}

/** A household with everything a table can hold. */
async function household(database: string): Promise<void> {
  const talk = await openTalk({ database, now: "2026-11-25T16:00:00Z" });
  await talk.records("ana", {
    country: "FI", timezone: "Europe/Helsinki", latitude: 60.2, longitude: 24.9, heater: { kind: "bell", max_load_kg: 14, max_load_source: "sheet", gas_exit: "top" }, upkeep: { swept_on: "2026-09-01" },
    fires: Array.from({ length: 900 }, (_, i) => ({ lit_at: new Date(Date.parse("2024-10-01T16:00:00Z") + i * 20 * 3_600_000).toISOString(), load_kg: 8 + (i % 7) * 0.37, note: i % 50 === 0 ? "ääni 🔥 \\ \"quoted\"" : undefined })),
  });
  await talk.records("ben", { fires_heater_of: "ana" });
  await talk.say("ana", "remind me every first Sunday at 9 to weigh the basket");
  await talk.say("ana", "the glass went black", "private", { picture: { name: "glass.png", media_type: "image/png", bytes: Uint8Array.from([137, 80, 78, 71, 0, 255, 1, 2]) } });
  await talk.say("ben", "walk me through a fire");
  await talk.choose("ben", "guide:lit-now");
  await talk.advance("P1D");
  await talk.close();
}

async function everything(database: string): Promise<Record<string, unknown[]>> {
  const engine = await openEngine(database);
  const all: Record<string, unknown[]> = {};
  for (const table of TABLES) {
    const { rows } = await sql<Record<string, unknown>>`select * from ${sql.table(table)}`.execute(engine.db);
    all[table] = rows.map(({ lease: _, lease_until: __, ...row }) => ({ ...row, ...("bytes" in row ? { bytes: Buffer.from(row.bytes as Uint8Array).toString("hex") } : {}), ...(row.state === "leased" ? { state: "pending" } : {}) }))
      .map((row) => JSON.stringify(row)).sort();
  }
  await engine.close();
  return all;
}

describe("the list of tables", () => {
  it("is every table there is", async () => {
    const engine = await openEngine(":memory:");
    const tables = (await engine.db.introspection.getTables()).map(({ name }) => name);
    await engine.close();
    expect([...TABLES].sort()).toEqual(tables.sort());
  });
});

const PAIRS = [
  { name: "SQLite to PostgreSQL and back", between: POSTGRES },
  { name: "SQLite to SQLite and back", between: FILE },
];
describe.each(PAIRS)("move: $name", ({ between }) => {
  it.skipIf(between.missing)("every row of every table arrives, both ways, and Gleed goes on there", async () => {
    const from = await fresh(FILE);
    await household(from);
    const before = await everything(from);
    const there = await fresh(between);
    const { rows } = await move(from, there);
    expect(rows.fires).toBeGreaterThanOrEqual(900);
    expect(await everything(there)).toEqual(before);
    const back = await fresh(FILE);
    await move(there, back);
    expect(await everything(back)).toEqual(before);
    const talk = await openTalk({ database: there, now: "2026-11-27T16:00:00Z" });
    expect((await talk.advance("P20D")).some(({ headline }) => headline === "weigh the basket")).toBe(true);
    await talk.close();
  });
  it.skipIf(between.missing)("refuses a target that holds people, and leaves it as it is", async () => {
    const [from, to] = [await fresh(FILE), await fresh(between)];
    await household(from);
    const talk = await openTalk({ database: to });
    await talk.say("cem", "hello");
    await talk.close();
    const before = await everything(to);
    await expect(move(from, to)).rejects.toThrow(/already holds/);
    expect(await everything(to)).toEqual(before);
  });
});

describe("move", () => {
  it("refuses while a running Gleed delivers from the file", async () => {
    const from = await fresh(FILE);
    const running = await openTalk({ database: from });
    await running.say("ana", "hello");
    await running.advance("PT1M");
    await expect(move(from, join(folder, "new.sqlite"))).rejects.toThrow(/stop it first/);
    await running.close();
  });
});

describe("backup and restore", () => {
  it("copies while Gleed runs, checks the copy, and brings it back", async () => {
    const database = await fresh(FILE);
    await household(database);
    const running = await openTalk({ database, now: "2026-11-27T16:00:00Z" });
    const file = join(folder, "copy.sqlite");
    await backup(database, file);
    const copied = await everything(file);
    await running.say("dora", "hello");
    await running.close();
    expect(copied.people?.length).toBe(2);
    await expect(backup(database, file)).rejects.toThrow(CannotMove);
    await restore(file, database);
    expect(await everything(database)).toEqual(copied);
    expect(existsSync(`${database}.before-restore`)).toBe(true);
  });
  it.skipIf(POSTGRES.missing)("copies a PostgreSQL into a file and brings it back", async () => {
    const database = await fresh(POSTGRES);
    await household(database);
    const before = await everything(database);
    const file = join(folder, "copy.sqlite");
    await backup(database, file);
    expect(await everything(file)).toEqual(before);
    const other = await fresh(POSTGRES);
    await restore(file, other);
    expect(await everything(other)).toEqual(before);
  });
  it("finds a damaged page, and does not restore it", async () => {
    const database = await fresh(FILE);
    await household(database);
    const file = join(folder, "copy.sqlite");
    await backup(database, file);
    expect((await check(file)).ok).toBe(true);
    const { length } = readFileSync(file);
    const handle = openSync(file, "r+");
    for (let at = 40_960; at < length; at += 16_384) writeSync(handle, Buffer.alloc(512, 0x5a), 0, 512, at);
    closeSync(handle);
    expect((await check(file)).ok).toBe(false);
    await expect(restore(file, join(folder, "back.sqlite"))).rejects.toThrow(/not whole/);
    expect(existsSync(join(folder, "back.sqlite"))).toBe(false);
  });
  it("says what is missing", async () => {
    expect(await check(join(folder, "none.sqlite"))).toEqual({ ok: false, detail: expect.stringContaining("no database") });
    await expect(backup(join(folder, "none.sqlite"), join(folder, "x.sqlite"))).rejects.toThrow(/no database/);
    await expect(restore(join(folder, "none.sqlite"), join(folder, "x.sqlite"))).rejects.toThrow(/no file/);
  });
});
