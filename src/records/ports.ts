/**
 * What the rest of Gleed asks of a store. `store/` implements it twice, for SQLite and PostgreSQL; one contract suite holds for both.
 *
 * - due row: something that falls due later and is decided only then
 * - outgoing row: an answer on its way to a person: pending -> leased -> attempted -> sent
 * - claim: taking rows to work on, for a while; a claim that ended early (the process died) lets them be claimed again
 * - lease: the proof of a claim; whoever comes back with one that has passed on changes nothing
 */
import type { Answer } from "../answer.ts";
import type { Identity, Message, Place } from "../message.ts";
import type { GroupWanted } from "./group.ts";
import type { Decided, Due, DueKind, Fire, Person, Snapshot } from "./types.ts";

/** Wall and monotonic time, and nothing else reads either. */
export interface Clock {
  /** epoch milliseconds */
  now(): number;
  /** milliseconds since some start, never going back */
  monotonic(): number;
  /** instants up to this one were written by an earlier life whose clock ran ahead: how long ago they were is not known */
  readonly unsure_until_ms?: number;
}

export type Commit =
  | { readonly outcome: "committed" }
  /** somebody else changed the talk, the guide or a record meanwhile: load again and decide again */
  | { readonly outcome: "stale"; readonly why: string }
  /** the due row was cancelled, moved or claimed by another worker: nothing is left to do */
  | { readonly outcome: "gone" };

export interface InboxRow {
  readonly message_key: string;
  readonly answer: Answer;
}

export interface Outgoing {
  /** made of what caused it and when it was due; the network's deduplication hangs on it */
  readonly key: string;
  readonly kind: OutgoingKind;
  readonly due_at_ms: number;
  readonly useful_until_ms: number;
  readonly person_id: string;
  readonly place_id: string;
  readonly network: string;
  readonly network_place_id: string;
  readonly answer: Answer;
  /** how often sending was tried before */
  readonly attempts: number;
  /** true when it is sent again although an earlier attempt may have arrived and the network no longer drops repeats: say so */
  readonly maybe_repeat: boolean;
}
/** An owner's invitation to the builder of a heater. */
export interface BuilderInvitation {
  readonly heater_id: string;
  readonly owner_id: string;
  readonly owner_place_id: string;
  readonly owner_name?: string;
}
/** `tell`: a message to somebody else that a decision caused */
export type OutgoingKind = DueKind | "tell";

export interface ClaimedOutgoing extends Outgoing {
  readonly lease: string;
  /** instant of the first attempt of which nobody knows whether it arrived; null when there is none */
  readonly unknown_since_ms: number | null;
  /** the reader's own settings (language, units, zone) */
  readonly facts: Person["facts"];
}

export interface DueRow extends Due {
  readonly attempts: number;
  readonly lease: string;
}
type Lease<Row extends { readonly key: string; readonly lease: string }> = Pick<Row, "key" | "lease">;

/**
 * Every method may throw a `StoreError` (see store/errors.ts): busy, unreachable, full or broken. None blocks the thread for longer than a
 * few milliseconds; a locked database is waited for between turns of the event loop.
 */
export interface Store {
  /** Find or make person, identity and place. Ids are made of network and network id, so that the same event makes the same rows. */
  enter(identity: Identity, place: Place, now_ms: number): Promise<{ person_id: string; place_id: string }>;
  /**
   * @param heater_id the heater that is meant, when the cause names one; else the person's own choice, their own heater, a shared one
   * @param group what the cause needs of groups beside which there are
   * @throws UnknownPerson when the person or the place is gone
   */
  load(person_id: string, place_id: string, now_ms: number, heater_id?: string, group?: GroupWanted): Promise<Snapshot>;

  /** As `load`, for several at once: null where the person or the place is gone. */
  loadMany(wanted: readonly Wanted[], now_ms: number): Promise<readonly (Snapshot | null)[]>;

  /** The answer already given to this message, or null when it is new. */
  inbox(message_key: string): Promise<InboxRow | null>;
  /**
   * All a message or a due row causes, in one transaction, guarded by the versions of everything the snapshot held that may be changed.
   * The answer to a message goes into the inbox; the answer to a due row into the outbox, where no answer (null) sends nothing.
   */
  commit(cause: Cause, snapshot: Snapshot, decided: Decided<Answer | null>, now_ms: number): Promise<Commit>;
  /** As `commit`, for different people: together in one transaction where nothing is in the way, each by itself otherwise. */
  commitMany(given: readonly Committing[], now_ms: number): Promise<readonly Commit[]>;

  /** Claim due rows for `lease_ms` by the store's own time, earliest first. */
  claimDue(now_ms: number, lease_ms: number, most: number): Promise<readonly DueRow[]>;
  /** A due row whose work came to nothing (not wanted any more, person gone). */
  dropDue(row: Lease<DueRow>): Promise<void>;
  /** Working on a due row failed: not before `again_at_ms`. */
  postponeDue(row: Lease<DueRow>, again_at_ms: number): Promise<void>;
  /** The earliest instant at which something can be claimed: a due row, or an outgoing one of these networks. */
  nextDue(networks?: readonly string[]): Promise<number | null>;

  claimOutgoing(networks: readonly string[], now_ms: number, lease_ms: number, most: number): Promise<readonly ClaimedOutgoing[]>;
  /**
   * The last step before sending, kept when it resolves (calls at the same time share a write to the disk); false when the row was cancelled or claimed by another meanwhile: then do not send.
   * @param afresh the network no longer knows the earlier attempt: its window starts now; `maybe_repeat` is kept with the row
   */
  markAttempted(row: Lease<ClaimedOutgoing>, now_ms: number, afresh?: { readonly maybe_repeat: boolean }): Promise<boolean>;
  markSent(row: Lease<ClaimedOutgoing>, native_id: string | null, now_ms: number): Promise<void>;
  /** Back to pending, not before `again_at_ms`; `unknown_since_ms` as after this attempt. */
  markFailed(row: Lease<ClaimedOutgoing>, again_at_ms: number, why: string, unknown_since_ms: number | null): Promise<void>;
  /** Too late as it is: back among the due rows, to be decided again as things stand. False when it had no due row (kind `tell`). */
  decideAgain(row: Lease<ClaimedOutgoing>, now_ms: number): Promise<boolean>;
  dropOutgoing(row: Lease<ClaimedOutgoing>, why: string): Promise<void>;

  /** latest instant ever stored: a clock that stands still or goes back never starts before it */
  lastInstant(): Promise<number | null>;
  /** a clock moved by hand has reached this instant */
  noteInstant(at_ms: number): Promise<void>;
  personByIdentity(network: string, network_id: string): Promise<Person | null>;
  /** ids of the heaters somebody fires, the meant one first */
  heatersOf(person_id: string): Promise<readonly string[]>;
  /** what a code stands for that an owner gave to a builder; null when it is unknown, used up or over */
  builderInvitation(code: string, now_ms: number): Promise<BuilderInvitation | null>;
  /** fires of a heater lit at or after an instant, newest first (at most 2000): a whole season's, for its report */
  firesSince(heater_id: string, from_ms: number): Promise<readonly Fire[]>;
  /** a picture of the album, for whoever took it or fires its heater now; null for anybody else, and once it is deleted */
  photo(picture_id: string, person_id: string): Promise<{ readonly media_type: string; readonly bytes: Uint8Array } | null>;
  /** everything kept about a person */
  exportPerson(person_id: string): Promise<Record<string, unknown>>;
  /** Forget what only guards against repeats and is older than `before_ms`: answered messages, sent rows. */
  tidy(before_ms: number): Promise<number>;
  /** `quick`: does it answer; `thorough`: is every page whole, which may take long but holds up nobody */
  check(how?: "quick" | "thorough"): Promise<{ ok: boolean; detail: string }>;
  close(): Promise<void>;
}

/** Whose snapshot is looked for, see `load`. */
export interface Wanted {
  readonly person_id: string;
  readonly place_id: string;
  readonly heater_id?: string | undefined;
  readonly group?: GroupWanted | undefined;
}

export interface Committing {
  readonly cause: Cause;
  readonly snapshot: Snapshot;
  readonly decided: Decided<Answer | null>;
}

/** What a commit answers to: a message from outside, or a row that fell due. */
export type Cause =
  | { readonly cause: "message"; readonly message: Message; readonly message_key: string }
  | { readonly cause: "due"; readonly row: DueRow };

/** The person or the place is not (any longer) among the records. */
export class UnknownPerson extends Error {}
