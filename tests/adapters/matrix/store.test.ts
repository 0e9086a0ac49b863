import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import "fake-indexeddb/auto";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { openFile } from "../../../adapters/matrix/store/file.ts";
import { type Factory, openImage, type RawDatabase } from "../../../adapters/matrix/store/image.ts";
import { keyOf, keyText } from "../../../adapters/matrix/store/keys.ts";
import { type RawEvent, rows } from "../../../adapters/matrix/store/rows.ts";

interface Request<T> {
  result: T;
  error: unknown;
  onsuccess: (() => void) | null;
  onerror: (() => void) | null;
  onupgradeneeded?: (() => void) | null;
}
const settled = <T>(request: Request<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
/** the DOM's types are not loaded here */
type Any = any;
const open = async (factory: Factory, upgrade?: (db: Any) => void, version = 1): Promise<Any> => {
  const request = factory.open("db", version) as unknown as Request<Any>;
  request.onupgradeneeded = () => upgrade?.(request.result);
  return settled(request);
};
const stores = (db: Any): void => {
  db.createObjectStore("plain");
  db.createObjectStore("pathed", { keyPath: "id" }).createIndex("by", "by");
  db.createObjectStore("counted", { autoIncrement: true });
};
const complete = (transaction: Any): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("aborted"));
  });
const fail = (error: unknown): void => {
  throw error;
};
async function contents(factory: Factory): Promise<unknown> {
  const db = await open(factory);
  const all: Record<string, unknown> = {};
  for (const name of ["plain", "pathed", "counted"]) {
    const store = db.transaction(name).objectStore(name);
    all[name] = [await settled(store.getAllKeys()), await settled(store.getAll())];
  }
  db.close();
  return all;
}

let folder: string;
let path: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "gleed-store-"));
  path = join(folder, "below", "matrix.sqlite");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe("IndexedDB written through", () => {
  test("the internals of the library on which it leans are there, in the version that is pinned", async () => {
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.resolve("fake-indexeddb")), "utf8")) as { version: string };
    expect(version).toBe("6.2.8");
    const factory = await openImage(openFile(path), fail);
    await open(factory, stores);
    const raw = (factory as unknown as { _databases: Map<string, RawDatabase> })._databases.get("db");
    expect(raw).toMatchObject({ name: "db", version: 1, transactions: expect.any(Array), rawObjectStores: expect.any(Map) });
    const store = raw?.rawObjectStores.get("pathed");
    for (const name of ["storeRecord", "deleteRecord", "clear"] as const) expect(store?.[name]).toBeTypeOf("function");
    expect(store?.rawIndexes.get("by")).toMatchObject({ name: "by", keyPath: "by", multiEntry: false, unique: false });
    expect(raw?.rawObjectStores.get("counted")?.keyGenerator).toMatchObject({ num: 0 });
    const transaction = (await open(factory)).transaction("plain", "readwrite");
    expect(transaction).toMatchObject({ mode: "readwrite", _rollbackLog: expect.any(Array) });
  });

  test("whatever was done before the end is there again: stores, indexes, numbers, every kind of change", async () => {
    let file = openFile(path);
    let factory = await openImage(file, fail);
    let db = await open(factory, stores);
    const work = db.transaction(["plain", "pathed", "counted"], "readwrite");
    const [plain, pathed, counted] = ["plain", "pathed", "counted"].map((name) => work.objectStore(name));
    for (let n = 0; n < 10; n++) plain.put({ n, bytes: new Uint8Array([n]) }, ["a", n]);
    plain.delete((globalThis as Any).IDBKeyRange.bound(["a", 3], ["a", 5]));
    pathed.put({ id: "x", by: 1, when: new Date(5) });
    pathed.put({ id: "y", by: 2, map: new Map([["k", 1n]]) });
    counted.add("one");
    counted.add("two");
    await complete(work);
    const more = db.transaction(["counted", "pathed"], "readwrite");
    more.objectStore("counted").delete(2);
    more.objectStore("pathed").openCursor().onsuccess = (event: Any) => {
      const cursor = event.target.result;
      if (cursor) {
        cursor.update({ ...cursor.value, touched: true });
        cursor.continue();
      }
    };
    await complete(more);
    const before = await contents(factory);
    db.close();
    file.close();

    file = openFile(path);
    factory = await openImage(file, fail);
    expect(await contents(factory)).toEqual(before);
    db = await open(factory);
    const index = db.transaction("pathed").objectStore("pathed").index("by");
    expect(await settled(index.get(2))).toMatchObject({ id: "y", touched: true });
    // a number given out and deleted is not given out again
    const last = db.transaction("counted", "readwrite");
    const number = settled(last.objectStore("counted").add("three"));
    await complete(last);
    expect(await number).toBe(3);
    file.close();
  });

  test("what was rolled back is not written; what was written is there before the caller hears of it", async () => {
    const file = openFile(path);
    const factory = await openImage(file, fail);
    const db = await open(factory, stores);
    const gone = db.transaction("plain", "readwrite");
    gone.objectStore("plain").put(1, "gone");
    gone.abort();
    const count = file.prepare("SELECT COUNT(*) FROM idb_record").pluck();
    const kept = db.transaction("plain", "readwrite");
    kept.objectStore("plain").put(2, "kept");
    let seen: unknown;
    kept.oncomplete = () => {
      seen = count.get();
    };
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(seen).toBe(1);
  });

  test("random work: the file always holds what memory holds", async () => {
    const key = fc.oneof(fc.integer({ min: 0, max: 5 }), fc.constantFrom("a", "b", "ä", "\u{1F525}"), fc.tuple(fc.constantFrom("p", "q"), fc.integer({ min: 0, max: 2 })));
    const step = fc.oneof(
      fc.record({ do: fc.constant("put" as const), key, value: fc.jsonValue() }),
      fc.record({ do: fc.constant("delete" as const), key }),
      fc.record({ do: fc.constant("clear" as const) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(fc.record({ steps: fc.array(step, { maxLength: 6 }), aborts: fc.boolean() }), { maxLength: 6 }), async (transactions) => {
        const file = openFile(":memory:");
        const factory = await openImage(file, fail);
        const db = await open(factory, stores);
        for (const { steps, aborts } of transactions) {
          const work = db.transaction("plain", "readwrite");
          const store = work.objectStore("plain");
          for (const one of steps) {
            if (one.do === "put") store.put(one.value, one.key);
            else if (one.do === "delete") store.delete(one.key);
            else store.clear();
          }
          if (aborts) work.abort();
          await complete(work).catch(() => {});
        }
        const again = await openImage(file, fail);
        expect(await contents(again)).toEqual(await contents(factory));
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  test("a disk that takes no more: the transaction never completes, and it is said once", async () => {
    const file = openFile(path);
    const broken: unknown[] = [];
    const factory = await openImage(file, (error) => broken.push(error));
    const db = await open(factory, stores);
    file.pragma(`max_page_count = ${file.pragma("page_count", { simple: true })}`);
    const work = db.transaction("plain", "readwrite");
    for (let n = 0; n < 50; n++) work.objectStore("plain").put("x".repeat(5_000), n);
    let completed = false;
    work.oncomplete = () => {
      completed = true;
    };
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(completed).toBe(false);
    expect(broken).toHaveLength(1);
    expect(String(broken[0])).toMatch(/full/);
    expect(file.prepare("SELECT COUNT(*) FROM idb_record").pluck().get()).toBe(0);
  });

  test("keys come back as they were, and the same key has one text", () => {
    for (const key of ["", "a", 0, -1.5, new Date(7), ["a", [1, "b"]]]) expect(keyOf(keyText(key as never))).toEqual(key);
    expect(keyOf(keyText(new Uint8Array([1, 2])))).toEqual(new Uint8Array([1, 2]).buffer);
    const wide = `${"\u{1F525}x"}`.slice(2);
    expect(keyText(wide)).toBe(keyText("x"));
    expect(keyText("1")).not.toBe(keyText(1));
    for (const end of [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) expect(keyOf(keyText(end))).toBe(end);
  });
});

describe("the file", () => {
  test("is readable by its owner alone, and held by one process", () => {
    const file = openFile(path);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(() => openFile(path)).toThrow(/locked/);
    file.close();
    openFile(path).close();
  });

  test("of a newer version is refused", () => {
    const file = openFile(path);
    file.pragma("user_version = 99");
    file.close();
    expect(() => openFile(path)).toThrow(/version 99/);
  });
});

describe("what came in", () => {
  const NOW = 1_000_000_000_000;
  const event = (id: string, at_ms = NOW): RawEvent => ({ event_id: id, room_id: "!r", sender: "@a:x", type: "m.room.message", origin_server_ts: at_ms, content: { body: id } });

  test("is taken once, worked in order, and forgotten but for its id", () => {
    const kept = rows(openFile(":memory:"));
    kept.newRoom("!r");
    expect(kept.arrived(event("$2", NOW - 1), true, NOW)).toBe(1);
    expect(kept.arrived(event("$2", NOW - 1), true, NOW)).toBeNull();
    kept.filled("!r", [event("$1", NOW - 5)], "$2", NOW);
    expect(kept.pending().map((one) => one.event.event_id)).toEqual(["$1", "$2"]);
    kept.done("$1");
    expect(kept.pending().map((one) => one.event.event_id)).toEqual(["$2"]);
    expect(kept.arrived(event("$1", NOW - 5), true, NOW)).toBeNull();
  });

  test("moves the mark on only while nothing before it is missing", () => {
    const kept = rows(openFile(":memory:"));
    kept.newRoom("!r");
    kept.arrived(event("$1"), true, NOW);
    expect(kept.room("!r")).toMatchObject({ mark: null, gap: true });
    kept.filled("!r", [], "$1", NOW);
    kept.arrived(event("$2"), true, NOW);
    expect(kept.room("!r")).toMatchObject({ mark: "$2", gap: false });
    kept.openGap("!r");
    kept.arrived(event("$9"), true, NOW);
    expect(kept.room("!r")).toMatchObject({ mark: "$2", gap: true });
    expect(kept.gaps()).toEqual(["!r"]);
  });

  test("from long ago is left alone: whether it was worked is no longer known", () => {
    const kept = rows(openFile(":memory:"));
    kept.newRoom("!r");
    expect(kept.arrived(event("$old", NOW - 40 * 86_400_000), true, NOW)).toBeNull();
    kept.arrived(event("$1", NOW - 20 * 86_400_000), true, NOW);
    kept.done("$1");
    kept.tidy(NOW + 15 * 86_400_000);
    expect(kept.arrived(event("$1", NOW - 20 * 86_400_000), true, NOW + 15 * 86_400_000)).toBeNull();
    expect(kept.pending()).toEqual([]);
  });
});
