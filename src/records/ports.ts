/** What the rest of Gleed asks of a store. `store/` implements it twice, for SQLite and PostgreSQL; one contract suite holds for both. */
import type { Answer } from "../answer.ts";
import type { Identity, Message, Place } from "../message.ts";
import type { Decided, Due, Snapshot } from "./types.ts";

/** Wall and monotonic time, and nothing else reads either. */
export interface Clock {
  /** epoch milliseconds */
  now(): number;
  /** milliseconds since some start, never going back */
  monotonic(): number;
}

export type Commit =
  | { readonly outcome: "committed" }
  /** somebody else's message changed the talk or the guide meanwhile: load again and decide again */
  | { readonly outcome: "stale" };

export interface InboxRow {
  readonly message_key: string;
  readonly answer: Answer | null;
}

export interface Outgoing {
  /** made of what caused it and when it was due; the network's deduplication hangs on it */
  readonly key: string;
  readonly kind: string;
  readonly due_at_ms: number;
  readonly useful_until_ms: number;
  readonly person_id: string;
  readonly place_id: string;
  readonly network: string;
  readonly network_place_id: string;
  readonly answer: Answer;
  readonly attempts: number;
  /** true when an earlier attempt's fate is unknown */
  readonly maybe_repeat: boolean;
}

export interface DueRow extends Due {
  readonly attempts: number;
}

export interface Store {
  /** Find or make person, identity and place. Ids come from the caller so that the same event makes the same rows. */
  enter(identity: Identity, place: Place, now_ms: number): Promise<{ person_id: string; place_id: string }>;
  load(person_id: string, place_id: string, now_ms: number): Promise<Snapshot>;

  /** The answer already given to this message, or null when it is new. */
  inbox(message_key: string): Promise<InboxRow | null>;
  /** All a message causes, in one transaction, guarded by the talk's and the guide's version. */
  commit(cause: Cause, snapshot: Snapshot, decided: Decided<Answer>, now_ms: number): Promise<Commit>;

  /** Claim due rows for `lease_ms` by the database's own time. */
  claimDue(now_ms: number, lease_ms: number, most: number): Promise<readonly DueRow[]>;
  /** A due row whose work came to nothing (stale, person gone). */
  dropDue(key: string): Promise<void>;
  /** the earliest instant at which something falls due, or null */
  nextDue(): Promise<number | null>;

  claimOutgoing(networks: readonly string[], now_ms: number, lease_ms: number, most: number): Promise<readonly Outgoing[]>;
  markAttempted(key: string): Promise<void>;
  markSent(key: string, native_id: string | null, now_ms: number): Promise<void>;
  /** back to pending after a failure, not before `again_at_ms` */
  markFailed(key: string, again_at_ms: number, error: string): Promise<void>;
  dropOutgoing(key: string, reason: string): Promise<void>;

  /** latest instant ever stored: a clock that stands still or goes back never starts before it */
  lastInstant(): Promise<number | null>;
  personByIdentity(network: string, network_id: string): Promise<string | null>;
  exportPerson(person_id: string): Promise<Record<string, unknown>>;
  check(): Promise<{ ok: boolean; detail: string }>;
  close(): Promise<void>;
}

/** What a commit answers to: a message from outside, or a row that fell due. */
export type Cause =
  | { readonly cause: "message"; readonly message: Message; readonly message_key: string }
  | { readonly cause: "due"; readonly row: DueRow };
