/** The one way to a store: a file, `:memory:`, or a PostgreSQL URL. */
import { randomUUID } from "node:crypto";
import type { Store } from "../records/ports.ts";
import { invitation } from "./builders.ts";
import { commit, commitMany } from "./commit.ts";
import { claimDue, dropDue, postponeDue } from "./due.ts";
import type { Engine } from "./engine.ts";
import { asStoreError, isBusy } from "./errors.ts";
import { exportPerson } from "./export.ts";
import { photoOf } from "./album.ts";
import { firesSince } from "./fires.ts";
import { gather } from "./gather.ts";
import { heaterIds } from "./heaters.ts";
import { answered } from "./inbox.ts";
import { lastInstant, nextDue, noteInstant, tidy } from "./instants.ts";
import { migrate } from "./migrations/index.ts";
import {
  type Attempt,
  claimOutgoing,
  decideAgain,
  dropOutgoing,
  markAttempted,
  markFailed,
  markSent,
  type SentMark,
} from "./outbox.ts";
import { enter, person, personByIdentity } from "./people.ts";
import { openPostgres } from "./postgres.ts";
import { patiently } from "./retry.ts";
import { load, loadMany } from "./snapshot.ts";
import { openSqlite } from "./sqlite.ts";

export interface StoreOptions {
  /** names this life of the process; no two lives share one */
  readonly boot?: string;
  /** milliseconds that never go back, by which leases on a file end */
  readonly monotonic?: () => number;
  /** PostgreSQL connections at most */
  readonly connections?: number;
  /** how long `check` may take */
  readonly check_limit_ms?: number;
  /** a connection broke while nobody was using it */
  readonly broken?: (error: Error) => void;
}

/**
 * Opens the store and brings its tables up to date, under a lock.
 * @param location path of a file (its folder is made when missing), `:memory:`, or a `postgres://` URL
 * @throws StoreError
 */
export async function openStore(location: string, options: StoreOptions = {}): Promise<Store> {
  return storeOn(await openEngine(location, options));
}

export async function openEngine(location: string, options: StoreOptions = {}): Promise<Engine> {
  const { boot = randomUUID(), monotonic = () => performance.now(), connections = 8, check_limit_ms = 5_000, broken } = options;
  let engine: Engine | undefined;
  try {
    engine = isPostgres(location)
      ? openPostgres(location, { boot, connections, check_limit_ms, ...(broken ? { broken } : {}) })
      : openSqlite(location, { boot, monotonic, check_limit_ms });
    const opened = engine;
    await patiently(() => migrate(opened), isBusy);
    return engine;
  } catch (error) {
    await engine?.close().catch(() => {});
    throw asStoreError(error);
  }
}

export const isPostgres = (location: string): boolean => /^postgres(ql)?:\/\//.test(location);

export function storeOn(engine: Engine): Store {
  const attempted = gather((attempts: readonly Attempt[]) => markAttempted(engine, attempts));
  const sent = gather((marks: readonly SentMark[]) => markSent(engine, marks));
  return {
    enter: (identity, place, now_ms) => enter(engine, identity, place, now_ms),
    load: (person_id, place_id, now_ms, heater_id, group) => load(engine, { person_id, place_id, heater_id, group }, now_ms),
    loadMany: (wanted, now_ms) => loadMany(engine, wanted, now_ms),
    inbox: (message_key) => engine.single((db) => answered(db, message_key)),
    commit: (cause, snapshot, decided, now_ms) => commit(engine, [{ cause, snapshot, decided }], now_ms),
    commitMany: (given, now_ms) => commitMany(engine, given, now_ms),
    claimDue: (now_ms, lease_ms, most) => claimDue(engine, now_ms, lease_ms, most),
    dropDue: (row) => dropDue(engine, row),
    postponeDue: (row, again_at_ms) => postponeDue(engine, row, again_at_ms),
    nextDue: (networks = []) => nextDue(engine, networks),
    claimOutgoing: (networks, now_ms, lease_ms, most) => claimOutgoing(engine, networks, now_ms, lease_ms, most),
    markAttempted: ({ key, lease }, now_ms, afresh) => attempted({ key, lease, now_ms, afresh }),
    markSent: ({ key }, native_id, now_ms) => sent({ key, native_id, now_ms }),
    markFailed: (row, again_at_ms, why, unknown_since_ms) => markFailed(engine, row, again_at_ms, why, unknown_since_ms),
    decideAgain: (row, now_ms) => decideAgain(engine, row, now_ms),
    dropOutgoing: (row) => dropOutgoing(engine, row),
    lastInstant: () => lastInstant(engine),
    noteInstant: (at_ms) => noteInstant(engine, at_ms),
    personByIdentity: (network, network_id) => engine.single((db) => personByIdentity(db, network, network_id)),
    heatersOf: (person_id) => engine.read(async (tx) => heaterIds(tx, person_id, (await person(tx, person_id)).person.heater_id)),
    builderInvitation: (code, now_ms) => engine.single((db) => invitation(db, code, now_ms)),
    photo: (picture_id, person_id) => engine.single((db) => photoOf(db, picture_id, person_id)),
    firesSince: (heater_id, from_ms) => engine.single((db) => firesSince(db, heater_id, from_ms)),
    exportPerson: (person_id) => exportPerson(engine, person_id),
    tidy: (before_ms) => tidy(engine, before_ms),
    check: (how = "quick") => engine.check(how),
    close: () => engine.close(),
  };
}
