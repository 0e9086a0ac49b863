/** What the two databases differ in; everything above it is one and the same SQL. */
import type { Kysely, RawBuilder, Transaction } from "kysely";
import type { Tables } from "./schema.ts";

export type Tx = Transaction<Tables>;
export type Db = Kysely<Tables>;

export interface Engine {
  readonly kind: "sqlite" | "postgres";
  readonly db: Db;
  readonly leases: Leases;
  /** One consistent look at everything. */
  read<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /** The same for work that asks about many side by side. */
  readMany<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /** All or nothing. */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /** One statement by itself. */
  single<T>(work: (db: Db) => Promise<T>): Promise<T>;
  /**
   * One claim. It need not outlive a power cut, as nothing is done about a claimed row before something else is kept of it; and it is read in
   * the order of its index, however little the database knows about a table that has just grown.
   */
  claim<T>(work: (db: Db) => Promise<T>): Promise<T>;
  /** Leave nothing of what was deleted lying in the database's own log. */
  scrub(): Promise<void>;
  check(how: "quick" | "thorough"): Promise<{ ok: boolean; detail: string }>;
  close(): Promise<void>;
}

export interface Leases {
  /** whether this process may claim at all: one process at a time delivers from a SQLite file */
  allowed(): boolean;
  /** a name never used before, by which a claim is known */
  next(): string;
  /** end of a lease of this length that starts now */
  end(lease_ms: number): number | RawBuilder<number>;
  /** condition on columns `lease` and `lease_until`: nobody holds the row */
  free(): RawBuilder<boolean>;
  /** added to the choice of rows, so that workers do not wait for each other */
  readonly skip_locked: boolean;
}
