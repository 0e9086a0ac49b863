/** Rows that fell due: claimed, decided as things stand now, and their answers put on their way. */
import type { Answer } from "../answer.ts";
import { type Clock, type DueRow, type Store, UnknownPerson } from "../records/ports.ts";
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
  readonly store: Pick<Store, "claimDue" | "load" | "commit" | "dropDue" | "postponeDue">;
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
  const { store, lease_ms = 60_000, batch = 100, abreast = 4 } = deps;
  let taken = 0;
  for (;;) {
    const rows = await store.claimDue(now_ms, lease_ms, batch);
    await inGroups(
      rows,
      (row) => row.person_id,
      abreast,
      (row) => decideRow(deps, row),
    );
    taken += rows.length;
    if (rows.length < batch) return taken;
  }
}

async function decideRow({ store, clock, decideDue, random, log }: DueDeps, row: DueRow): Promise<void> {
  const { key, kind } = row;
  let why = "";
  for (let tries = 0; tries < TRIES; tries++) {
    const now_ms = clock.now();
    let snapshot: Snapshot;
    try {
      snapshot = await store.load(row.person_id, row.place_id, now_ms, heaterOf(row));
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

/** A check-in of a second heater is decided with that heater at hand. */
const heaterOf = ({ payload }: DueRow): string | undefined => (typeof payload.heater_id === "string" ? payload.heater_id : undefined);
