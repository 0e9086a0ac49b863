/** Rows that fell due: claimed, decided as things stand now, and their answers put on their way. */
import { setImmediate as immediate } from "node:timers/promises";
import type { Answer } from "../answer.ts";
import { type Clock, type Committing, type DueRow, type Store, UnknownPerson, type Wanted } from "../records/ports.ts";
import type { GroupWanted } from "../records/group.ts";
import type { Decided, Snapshot } from "../records/types.ts";
import { fullJitter } from "./backoff.ts";
import { inGroups } from "./groups.ts";
import type { Log } from "./log.ts";

/**
 * Null: not wanted any more. An answer of null: nothing to say now, but keep the writes and new due rows (quiet hours, say).
 * The row tells when it was due and until when its words are useful; `now_ms` may lie long after both.
 */
export type DecideDue = (snapshot: Snapshot, row: DueRow, now_ms: number) => Decided<Answer | null> | null;

export interface DueDeps {
  readonly store: Pick<Store, "claimDue" | "load" | "loadMany" | "commit" | "commitMany" | "dropDue" | "postponeDue">;
  readonly clock: Pick<Clock, "now">;
  readonly decideDue: DecideDue;
  readonly random: () => number;
  readonly log: Log;
  readonly lease_ms?: number;
  readonly batch?: number;
  /** people worked on at the same time */
  readonly abreast?: number;
}

const TRIES = 8;
const LONGEST_WAIT_MS = 10 * 60_000;
/** a row that cannot be decided is kept so long after its time, in case a newer Gleed can */
const KEPT_MS = 7 * 86_400_000;

/** @returns how many rows were taken up */
export async function runDue(deps: DueDeps, now_ms: number): Promise<number> {
  const { store, lease_ms = 60_000, batch = 100 } = deps;
  let taken = 0;
  for (;;) {
    const rows = await store.claimDue(now_ms, lease_ms, batch);
    for (const wave of waves(rows)) await decideTogether(deps, wave);
    taken += rows.length;
    if (rows.length < batch) return taken;
    // messages that came in meanwhile have their turn
    await immediate();
  }
}

/** The rows of one person come one after another, those of different people together. */
function waves(rows: readonly DueRow[]): DueRow[][] {
  const of_person = [...Map.groupBy(rows, (row) => row.person_id).values()];
  const most = Math.max(0, ...of_person.map(({ length }) => length));
  return Array.from({ length: most }, (_, n) => of_person.flatMap((list) => list[n] ?? []));
}

/** @param wave rows of different people */
async function decideTogether(deps: DueDeps, wave: readonly DueRow[]): Promise<void> {
  const { store, clock, decideDue, abreast = 4 } = deps;
  const alone: DueRow[] = [];
  if (wave.length === 1) alone.push(...wave);
  else {
    const now_ms = clock.now();
    const snapshots = await store.loadMany(wave.map(wantedFor), now_ms);
    const given: (Committing & { readonly row: DueRow })[] = [];
    for (const [n, row] of wave.entries()) {
      const decided = tried(() => (snapshots[n] ? decideDue(snapshots[n], row, now_ms) : null));
      if (snapshots[n] && decided) given.push({ row, cause: { cause: "due", row }, snapshot: snapshots[n], decided });
      else alone.push(row);
    }
    const commits = await store.commitMany(given, now_ms);
    alone.push(...given.flatMap(({ row }, n) => (commits[n]?.outcome === "stale" ? row : [])));
  }
  await inGroups(
    alone,
    ({ person_id }) => person_id,
    abreast,
    (row) => decideRow(deps, row),
  );
}

/** What cannot be decided, or comes to nothing, is looked at by itself. */
function tried<T>(work: () => T): T | null {
  try {
    return work();
  } catch {
    return null;
  }
}

const wantedFor = (row: DueRow): Wanted => ({ person_id: row.person_id, place_id: row.place_id, heater_id: heaterOf(row), group: groupOf(row) });

async function decideRow({ store, clock, decideDue, random, log }: DueDeps, row: DueRow): Promise<void> {
  const { key, kind } = row;
  let why = "";
  for (let tries = 0; tries < TRIES; tries++) {
    const now_ms = clock.now();
    let snapshot: Snapshot;
    try {
      snapshot = await store.load(row.person_id, row.place_id, now_ms, heaterOf(row), groupOf(row));
    } catch (error) {
      if (!(error instanceof UnknownPerson)) throw error;
      log.info({ key, kind }, "due row dropped: the person is not among the records");
      return store.dropDue(row);
    }
    let decided: Decided<Answer | null> | null;
    try {
      decided = decideDue(snapshot, row, now_ms);
    } catch (error) {
      why = String(error);
      break;
    }
    if (!decided) return store.dropDue(row);
    const commit = await store.commit({ cause: "due", row }, snapshot, decided, now_ms);
    if (commit.outcome !== "stale") return;
    why = commit.why;
  }
  const now_ms = clock.now();
  log.error({ key, kind, why, attempts: row.attempts }, "due row could not be decided");
  if (now_ms > row.useful_until_ms + KEPT_MS) return store.dropDue(row);
  return store.postponeDue(row, now_ms + fullJitter(row.attempts, random, LONGEST_WAIT_MS));
}

/** What a group keeps, for a row that is a group's. */
const groupOf = ({ payload }: DueRow): GroupWanted | undefined => payload.group as GroupWanted | undefined;
/** A check-in of a second heater is decided with that heater at hand. */
const heaterOf = ({ payload }: DueRow): string | undefined => (typeof payload.heater_id === "string" ? payload.heater_id : undefined);
