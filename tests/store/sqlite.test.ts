/** What only the file store has to stand: locks, damage, a full disk, other processes, and bytes that must be gone. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Store } from "../../src/records/ports.ts";
import { StoreBroken, StoreBusy, StoreFull, StoreUnreachable } from "../../src/store/errors.ts";
import { openEngine, openStore, storeOn } from "../../src/store/open.ts";
import { FILE, type Location } from "./locations.ts";
import {
  causeOf,
  DAY,
  decided,
  dueOf,
  fireOf,
  heaterOf,
  MINUTE,
  message,
  NOW,
  say,
  saying,
  snapshotOf,
  writeFire,
  writeHeater,
} from "./made.ts";

let at: Location;
let store: Store;
beforeEach(async () => {
  at = await FILE.fresh();
  store = await openStore(at.location);
});
afterEach(async () => {
  await store.close();
  await at.remove();
});

test("the file keeps what was promised: journal, durability, references, overwriting", async () => {
  const engine = await openEngine(at.location);
  const { sql } = await import("kysely");
  const pragma = async (name: string) =>
    Object.values((await sql.raw<Record<string, unknown>>(`pragma ${name}`).execute(engine.db)).rows[0] ?? {})[0];
  expect(await pragma("journal_mode")).toBe("wal");
  expect(await pragma("synchronous")).toBe(2);
  expect(await pragma("foreign_keys")).toBe(1);
  expect(await pragma("secure_delete")).toBe(1);
  await engine.close();
});

describe("a file locked by another process", () => {
  /** how long nothing else in this process could run: the longest time, and the time that one in twenty exceeded */
  async function pauses(work: Promise<unknown>): Promise<{ longest_ms: number; usual_ms: number }> {
    const found: number[] = [];
    let last = performance.now();
    const beat = setInterval(() => {
      found.push(performance.now() - last);
      last = performance.now();
    }, 1);
    await work.catch(() => {});
    clearInterval(beat);
    found.sort((a, b) => a - b);
    return { longest_ms: found.at(-1) ?? 0, usual_ms: found[Math.floor(found.length * 0.95)] ?? 0 };
  }

  test("is waited for without blocking anybody, and given up as busy", { timeout: 20_000 }, async () => {
    const before = await snapshotOf(store, "ana");
    const other = new Database(at.location);
    other.exec("begin immediate");
    const commit = store.commit(causeOf(message("ana", "1")), before, decided(), NOW);
    const { longest_ms, usual_ms } = await pauses(commit);
    // generous, for a machine that is busy with other things; waiting inside SQLite would show as seconds
    expect(longest_ms).toBeLessThan(500);
    expect(usual_ms).toBeLessThan(20);
    await expect(commit).rejects.toThrow(StoreBusy);
    expect((await snapshotOf(store, "ana")).talk.version).toBe(0);
    other.exec("commit");
    other.close();
    expect(await store.commit(causeOf(message("ana", "1")), before, decided(), NOW)).toEqual({ outcome: "committed" });
  });

  test("given back in time, the commit goes through", async () => {
    const before = await snapshotOf(store, "ana");
    const other = new Database(at.location);
    other.exec("begin immediate");
    setTimeout(() => other.exec("commit"), 100);
    expect(await store.commit(causeOf(message("ana", "1")), before, decided(), NOW)).toEqual({ outcome: "committed" });
    other.close();
  });
});

describe("damage", () => {
  test("a file that is no database is left alone and named broken", async () => {
    const file = join(dirname(at.location), "letter.db");
    writeFileSync(file, "Dear reader, this is a letter and no database at all. ".repeat(50));
    await expect(openStore(file)).rejects.toThrow(StoreBroken);
    expect(readFileSync(file, "utf8")).toMatch(/^Dear reader/);
  });

  test("a damaged page is found by the check, in a thread of its own", async () => {
    await say(store, "ana", (s) => ({ writes: [writeHeater(heaterOf(s))] }));
    await say(store, "ana", (s) => ({ writes: Array.from({ length: 300 }, (_, day) => writeFire(fireOf(s, NOW - day * DAY, 10))) }));
    expect(await store.check("thorough")).toEqual({ ok: true, detail: `SQLite ${at.location}: ok` });
    await store.close();
    const bytes = readFileSync(at.location);
    const page = Math.floor(bytes.indexOf('lit_at":') / 4096);
    bytes.fill(0xa5, page * 4096, page * 4096 + 600);
    writeFileSync(at.location, bytes);
    store = await openStore(at.location);
    expect(await store.check("thorough")).toMatchObject({ ok: false });
  });

  test("a folder in the way, or one that cannot be made, is unreachable", async () => {
    const folder = join(dirname(at.location), "folder.db");
    mkdirSync(folder);
    await expect(openStore(folder)).rejects.toThrow(StoreUnreachable);
    await expect(openStore(join(at.location, "below", "a", "file.db"))).rejects.toThrow(StoreUnreachable);
  });

  test("tables of a newer version are refused and left as they are", async () => {
    const other = new Database(at.location);
    other.exec("insert into kysely_migration (name, timestamp) values ('9999-later', '2099-01-01T00:00:00Z')");
    other.close();
    await expect(openStore(at.location)).rejects.toThrow(StoreBroken);
  });

  test("a full disk: nothing is written, reading goes on, and writing too once there is room", async () => {
    const engine = await openEngine(at.location);
    const full = storeOn(engine);
    const before = await snapshotOf(full, "ana");
    const { sql } = await import("kysely");
    const {
      rows: [pages],
    } = await sql<{ page_count: number }>`pragma page_count`.execute(engine.db);
    await sql.raw(`pragma max_page_count = ${(pages?.page_count ?? 0) + 2}`).execute(engine.db);
    const big = decided({ writes: [{ write: "talk", state: { words: "x".repeat(100_000) } }] });
    await expect(full.commit(causeOf(message("ana", "1")), before, big, NOW)).rejects.toThrow(StoreFull);
    expect(await snapshotOf(full, "ana")).toEqual(before);
    await sql`pragma max_page_count = 1000000`.execute(engine.db);
    expect(await full.commit(causeOf(message("ana", "1")), before, big, NOW)).toEqual({ outcome: "committed" });
    await engine.close();
  });
});

describe("leases", () => {
  test("end by the monotonic clock, whatever the wall says", async () => {
    let tick = 0;
    await store.close();
    store = await openStore(at.location, { monotonic: () => tick });
    await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW)] }));
    const claim = async (now_ms: number) => (await store.claimDue(now_ms, MINUTE, 10)).length;
    expect(await claim(NOW)).toBe(1);
    expect(await claim(NOW + 365 * DAY)).toBe(0);
    tick = MINUTE - 1;
    expect(await claim(NOW)).toBe(0);
    tick = MINUTE;
    expect(await claim(NOW)).toBe(1);
  });

  test("of an earlier life of the process are void", async () => {
    await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW)] }));
    const [row] = await store.claimDue(NOW, 3600 * MINUTE, 10);
    await store.close();
    store = await openStore(at.location);
    expect(await store.nextDue()).toBe(NOW);
    expect(await store.claimDue(NOW, MINUTE, 10)).toMatchObject([{ key: "k", attempts: 2 }]);
    if (!row) throw new Error("not claimed");
    expect(await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW)).toEqual({ outcome: "gone" });
  });

  test("are had by one process at a time; a second one talks, and delivers when the first has gone", async () => {
    await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW), dueOf(s, "k2", NOW)] }));
    expect(await store.claimDue(NOW, MINUTE, 1)).toHaveLength(1);
    const second = await openStore(at.location);
    await say(second, "ben", () => ({}));
    expect(await second.claimDue(NOW, MINUTE, 10)).toEqual([]);
    expect((await second.check()).detail).toMatch(/another process delivers/);
    await store.close();
    expect(await second.claimDue(NOW, MINUTE, 10)).toHaveLength(2);
    await second.close();
    store = await openStore(at.location);
  });
});

test("after forgetting, no byte of a person's words is left in any file", { timeout: 30_000 }, async () => {
  const MARK = "zq7-unmistakable";
  const people = ["ana", "ben", "cleo", "dora"];
  for (const person of people) {
    await say(store, person, (s) => ({ writes: [writeHeater(heaterOf(s, { facts: { name: `${MARK} ${person}` } }))] }));
  }
  // documents of many sizes, written over and grown, so that pages split, merge and overflow
  for (let day = 0; day < 60; day++) {
    for (const person of people) {
      const words = `${MARK} ${person} ${day} ${"long words ".repeat((day * 37) % 600)}`;
      await say(store, person, (s) => ({
        answer: saying(words),
        writes: [
          { write: "talk", state: { words } },
          writeFire(
            fireOf(s, NOW - day * DAY, 10, {
              id: `${person} ${day}`,
              facts: { lit_at: "2026-01-01T00:00:00Z", note: words.slice(0, 900) },
            }),
          ),
          {
            write: "reminder",
            reminder: { id: `${person} ${day % 7}`, person_id: s.person.id, place_id: s.place.id, what: words, due_at_ms: NOW },
          },
          { write: "home", home: { ...s.home, wood: [{ name: words.slice(0, 80) }] } },
        ],
        due: [dueOf(s, `${person}-${day % 5}`, NOW + day, { payload: { words } })],
        also_tell: [{ key: `${person}/${day}`, person_id: s.person.id, place_id: s.place.id, answer: saying(words) }],
      }));
    }
  }
  const left = () =>
    readdirSync(dirname(at.location)).flatMap((name) => {
      const bytes = readFileSync(join(dirname(at.location), name)).toString("latin1");
      return people
        .filter((person) => bytes.includes(`${MARK} ${person}`) || bytes.includes(`"${person}"`))
        .map((person) => `${person} in ${name}`);
    });
  expect(left().length).toBeGreaterThan(3);
  for (const gone of ["ana", "cleo"]) {
    await say(store, "ben", forgetting(await snapshotOf(store, gone)));
    const after = left().filter((found) => found.startsWith(gone));
    expect(after).toEqual([]);
  }
  expect((await snapshotOf(store, "ben")).fires).toHaveLength(60);
  expect(left().some((found) => found.startsWith("dora"))).toBe(true);
  expect(await store.check("thorough")).toMatchObject({ ok: true });
});

const forgetting =
  ({ person }: { person: { id: string } }) =>
  () => ({ writes: [{ write: "forget-person" as const, person_id: person.id }] });
