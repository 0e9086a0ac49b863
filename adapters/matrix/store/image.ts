/**
 * IndexedDB in memory, written through to the file: a transaction is on the disk before its caller sees it complete. Leans on four
 * internals of the library, held by a test: its map of databases, each one's map of stores and list of transactions, and each store's
 * three ways to change.
 */
import { deserialize, serialize } from "node:v8";
import { IDBFactory } from "fake-indexeddb";
import type { File } from "./file.ts";
import { type Key, keyOf, keyText } from "./keys.ts";

/** What the adapter hands on: the library's factory, as `globalThis.indexedDB` and to the SDK. */
export type Factory = InstanceType<typeof IDBFactory>;
interface Opened {
  createObjectStore(name: string, options: object): { createIndex(name: string, keyPath: string | string[], options: object): unknown };
  close(): void;
}

interface RawRecord {
  readonly key: Key;
  readonly value: unknown;
}
interface RawIndex {
  readonly name: string;
  readonly keyPath: string | string[];
  readonly multiEntry: boolean;
  readonly unique: boolean;
}
export interface RawStore {
  readonly name: string;
  readonly keyPath: string | string[] | null;
  readonly autoIncrement: boolean;
  readonly rawIndexes: Map<string, RawIndex>;
  readonly keyGenerator: { num: number } | null;
  readonly records: { values(range?: unknown): Iterable<RawRecord>; get(key: unknown): RawRecord | undefined };
  storeRecord(record: { key: Key }, noOverwrite: boolean, rollback?: unknown): Key;
  deleteRecord(key: unknown, rollback?: unknown): void;
  clear(rollback?: unknown): void;
}
export interface RawTransaction {
  readonly mode: "readonly" | "readwrite" | "versionchange";
  readonly _rollbackLog: unknown;
  addEventListener(type: "complete", listener: (event: { stopImmediatePropagation(): void }) => void): void;
}
export interface RawDatabase {
  readonly name: string;
  readonly version: number;
  rawObjectStores: Map<string, RawStore>;
  transactions: RawTransaction[];
}

interface Schema {
  readonly version: number;
  readonly stores: readonly {
    readonly name: string;
    readonly keyPath: string | string[] | null;
    readonly autoIncrement: boolean;
    readonly next: number;
    readonly indexes: readonly RawIndex[];
  }[];
}

/** What one transaction touched: stores emptied as a whole, and keys by store. */
interface Touched {
  readonly emptied: Set<RawStore>;
  readonly keys: Map<RawStore, Map<string, Key>>;
}

/**
 * @param onBroken called when a change could not be written; that transaction never completes, and the process must end, since memory
 *   is ahead of the disk
 */
export async function openImage(file: File, onBroken: (error: unknown) => void): Promise<Factory> {
  const factory = new IDBFactory();
  const disk = writer(file);
  let loading = true;
  const hooks: Hooks = {
    committed(db, { mode }, touched) {
      if (loading) return;
      if (mode === "versionchange") disk.whole(db);
      else if (touched) disk.touched(db, touched);
    },
    dropped: (name) => disk.drop(name),
    onBroken,
  };
  const inner = factory as unknown as { _databases: Map<string, RawDatabase> };
  if (!(inner._databases instanceof Map)) throw new Error("fake-indexeddb keeps its databases in another way than this store knows");
  inner._databases = new WatchedDatabases(hooks);
  await load(file, factory, inner._databases);
  loading = false;
  return factory;
}

interface Hooks {
  committed(db: RawDatabase, transaction: RawTransaction, touched: Touched | undefined): void;
  dropped(name: string): void;
  onBroken(error: unknown): void;
}

class WatchedDatabases extends Map<string, RawDatabase> {
  readonly #hooks: Hooks;
  constructor(hooks: Hooks) {
    super();
    this.#hooks = hooks;
  }
  override set(name: string, db: RawDatabase): this {
    watch(db, this.#hooks);
    return super.set(name, db);
  }
  override delete(name: string): boolean {
    this.#hooks.dropped(name);
    return super.delete(name);
  }
}

function watch(db: RawDatabase, hooks: Hooks): void {
  /** what is to be rolled back is listed by transaction and handed to every change, and so tells whose it is */
  const touched = new WeakMap<object, Touched>();
  const of = (rollback: unknown): Touched | null => {
    if (typeof rollback !== "object" || rollback === null) return null;
    const found = touched.get(rollback) ?? { emptied: new Set(), keys: new Map() };
    touched.set(rollback, found);
    return found;
  };
  const note = (rollback: unknown, store: RawStore, key: Key): void => {
    const mine = of(rollback);
    if (!mine) return;
    const keys = mine.keys.get(store) ?? new Map<string, Key>();
    keys.set(keyText(key), key);
    mine.keys.set(store, keys);
  };

  class Stores extends Map<string, RawStore> {
    override set(name: string, store: RawStore): this {
      if (!Object.hasOwn(store, "storeRecord")) watchStore(store);
      return super.set(name, store);
    }
  }
  function watchStore(store: RawStore): void {
    const { storeRecord, deleteRecord, clear } = store;
    store.storeRecord = (record, noOverwrite, rollback) => {
      const key = storeRecord.call(store, record, noOverwrite, rollback);
      note(rollback, store, key);
      return key;
    };
    store.deleteRecord = (key, rollback) => {
      if (rollback) for (const record of isRange(key) ? store.records.values(key) : []) note(rollback, store, record.key);
      if (rollback && !isRange(key)) note(rollback, store, key as Key);
      deleteRecord.call(store, key, rollback);
    };
    store.clear = (rollback) => {
      of(rollback)?.emptied.add(store);
      clear.call(store, rollback);
    };
  }
  db.rawObjectStores = new Stores();

  const { transactions } = db;
  transactions.push = (...added: RawTransaction[]): number => {
    for (const transaction of added) {
      if (transaction.mode === "readonly") continue;
      transaction.addEventListener("complete", (event) => {
        try {
          hooks.committed(db, transaction, touched.get(transaction._rollbackLog as object));
        } catch (error) {
          event.stopImmediatePropagation();
          hooks.onBroken(error);
        }
      });
    }
    return Array.prototype.push.apply(transactions, added);
  };
}

const isRange = (key: unknown): boolean => typeof key === "object" && key !== null && "lowerOpen" in key;

function writer(file: File) {
  const put = file.prepare("INSERT INTO idb_record (db, store, key, value) VALUES (?, ?, ?, ?) ON CONFLICT DO UPDATE SET value = excluded.value");
  const remove = file.prepare("DELETE FROM idb_record WHERE db = ? AND store = ? AND key = ?");
  const empty = file.prepare("DELETE FROM idb_record WHERE db = ? AND store = ?");
  const emptyAll = file.prepare("DELETE FROM idb_record WHERE db = ?");
  const putSchema = file.prepare("INSERT INTO idb_schema (db, schema) VALUES (?, ?) ON CONFLICT DO UPDATE SET schema = excluded.schema");
  const dropSchema = file.prepare("DELETE FROM idb_schema WHERE db = ?");
  return {
    touched: file.transaction((db: RawDatabase, { emptied, keys }: Touched) => {
      for (const store of emptied) empty.run(db.name, store.name);
      for (const [store, changed] of keys) {
        for (const [text, key] of changed) {
          const record = store.records.get(key);
          if (record) put.run(db.name, store.name, text, serialize(record.value));
          else remove.run(db.name, store.name, text);
        }
      }
      // numbers given out must not be given out again after a restart
      if ([...keys.keys()].some((store) => store.keyGenerator)) putSchema.run(db.name, JSON.stringify(schemaOf(db)));
    }),
    whole: file.transaction((db: RawDatabase) => {
      putSchema.run(db.name, JSON.stringify(schemaOf(db)));
      emptyAll.run(db.name);
      for (const store of db.rawObjectStores.values()) {
        for (const { key, value } of store.records.values()) put.run(db.name, store.name, keyText(key), serialize(value));
      }
    }),
    drop: file.transaction((name: string) => {
      emptyAll.run(name);
      dropSchema.run(name);
    }),
  };
}

const schemaOf = (db: RawDatabase): Schema => ({
  version: db.version,
  stores: [...db.rawObjectStores.values()].map(({ name, keyPath, autoIncrement, keyGenerator, rawIndexes }) => ({
    name,
    keyPath,
    autoIncrement,
    next: keyGenerator?.num ?? 0,
    indexes: [...rawIndexes.values()].map((index) => ({
      name: index.name,
      keyPath: index.keyPath,
      multiEntry: index.multiEntry,
      unique: index.unique,
    })),
  })),
});

async function load(file: File, factory: Factory, databases: ReadonlyMap<string, RawDatabase>): Promise<void> {
  const schemas = file.prepare("SELECT db, schema FROM idb_schema").all() as { db: string; schema: string }[];
  const records = file.prepare("SELECT key, value FROM idb_record WHERE db = ? AND store = ?");
  for (const { db: name, schema: text } of schemas) {
    const schema = JSON.parse(text) as Schema;
    const open = factory.open(name, schema.version);
    open.onupgradeneeded = () => {
      for (const { name: store, keyPath, autoIncrement, indexes } of schema.stores) {
        const made = open.result.createObjectStore(store, { keyPath, autoIncrement });
        for (const index of indexes) made.createIndex(index.name, index.keyPath, { multiEntry: index.multiEntry, unique: index.unique });
      }
    };
    const db = await new Promise<Opened>((resolve, reject) => {
      open.onsuccess = () => resolve(open.result);
      open.onerror = () => reject(open.error);
    });
    const raw = databases.get(name);
    for (const { name: store, next } of schema.stores) {
      const into = raw?.rawObjectStores.get(store);
      if (!into) throw new Error(`the store ${store} of ${name} could not be made`);
      for (const { key, value } of records.iterate(name, store) as Iterable<{ key: string; value: Buffer }>) {
        into.storeRecord({ key: keyOf(key), value: deserialize(value) } as { key: Key }, true);
      }
      if (into.keyGenerator) into.keyGenerator.num = Math.max(into.keyGenerator.num, next);
    }
    db.close();
  }
}
