/**
 * Answers on their way: pending -> leased -> attempted -> sent. A row is attempted before it is sent, so that a process that dies in
 * between leaves word that its fate is unknown. Once sent, its words are dropped and only the key remains, against repeats.
 */
import type { Answer } from "../answer.ts";
import type { ClaimedOutgoing, DueRow, OutgoingKind } from "../records/ports.ts";
import type { Due, Person } from "../records/types.ts";
import type { Engine, Tx } from "./engine.ts";
import { column, pack, unpack } from "./json.ts";

type Lease = Pick<ClaimedOutgoing, "key" | "lease">;
interface OutgoingDoc {
  readonly answer: Answer;
  /** the due row it came from, should it have to be decided again */
  readonly due?: Pick<Due, "key" | "due_at_ms" | "useful_until_ms" | "payload">;
}
const SENT = pack({});

/** The key of what a due row caused: its own, and the instant it stands for. */
export const outgoingKey = (due_key: string, at_ms?: number): string => `${due_key}@${at_ms ?? ""}`;

/** A row decided after its time stands for now, and is useful for as long from now. */
export async function sendLater(
  tx: Tx,
  { key, kind, due_at_ms, useful_until_ms, person_id, place_id, payload }: DueRow,
  answer: Answer,
  now_ms: number,
): Promise<void> {
  const late = now_ms > useful_until_ms;
  const at_ms = late ? now_ms : due_at_ms;
  await insert(
    tx,
    {
      key: outgoingKey(key, at_ms),
      kind,
      due_at_ms: at_ms,
      useful_until_ms: at_ms + (useful_until_ms - due_at_ms),
      person_id,
      place_id,
      doc: { answer, due: { key, due_at_ms, useful_until_ms, payload } },
    },
    now_ms,
  );
}

export async function tellOther(
  tx: Tx,
  { key, person_id, place_id, answer }: { key: string; person_id: string; place_id: string; answer: Answer },
  useful_ms: number,
  now_ms: number,
): Promise<void> {
  await insert(
    tx,
    { key, kind: "tell", due_at_ms: now_ms, useful_until_ms: now_ms + useful_ms, person_id, place_id, doc: { answer } },
    now_ms,
  );
}

interface Made extends Pick<ClaimedOutgoing, "key" | "kind" | "due_at_ms" | "useful_until_ms" | "person_id" | "place_id"> {
  readonly doc: OutgoingDoc;
}
async function insert(tx: Tx, { key, doc, ...row }: Made, now_ms: number): Promise<void> {
  const place = await tx.selectFrom("places").select(["network", "network_id"]).where("id", "=", row.place_id).executeTakeFirst();
  if (!place) return;
  await tx
    .insertInto("outbox")
    .values({
      ...row,
      key: column(key),
      network: place.network,
      network_place_id: place.network_id,
      state: "pending",
      attempts: 0,
      maybe_repeat: 0,
      unknown_since_ms: null,
      again_at_ms: now_ms,
      made_at_ms: now_ms,
      sent_at_ms: null,
      native_id: null,
      last_error: null,
      lease: null,
      lease_until: null,
      doc: pack(doc),
    })
    .onConflict((c) => c.column("key").doNothing())
    .execute();
}

export async function claimOutgoing(
  { single, leases }: Engine,
  networks: readonly string[],
  now_ms: number,
  lease_ms: number,
  most: number,
): Promise<ClaimedOutgoing[]> {
  if (networks.length === 0 || !leases.allowed()) return [];
  const lease = leases.next();
  const rows = await single((db) =>
    db
      .updateTable("outbox")
      .set({ lease, lease_until: leases.end(lease_ms), state: "leased" })
      .where("key", "in", (eb) => {
        const choice = eb
          .selectFrom("outbox")
          .select("key")
          .where("network", "in", networks)
          .where("again_at_ms", "<=", now_ms)
          .where(leases.free())
          .orderBy("again_at_ms")
          .limit(most);
        return leases.skip_locked ? choice.forUpdate().skipLocked() : choice;
      })
      .returning([
        "key",
        "kind",
        "due_at_ms",
        "useful_until_ms",
        "person_id",
        "place_id",
        "network",
        "network_place_id",
        "attempts",
        "maybe_repeat",
        "unknown_since_ms",
        "made_at_ms",
        "doc",
      ])
      .execute(),
  );
  if (rows.length === 0) return [];
  const people = await single((db) =>
    db
      .selectFrom("people")
      .select(["id", "doc"])
      .where("id", "in", [...new Set(rows.map((row) => row.person_id))])
      .execute(),
  );
  const facts = new Map(people.map(({ id, doc }) => [id, unpack<Pick<Person, "facts">>(doc).facts]));
  return rows
    .toSorted((a, b) => a.made_at_ms - b.made_at_ms || a.due_at_ms - b.due_at_ms || (a.key < b.key ? -1 : 1))
    .map(({ kind, maybe_repeat, made_at_ms: _, doc, ...row }) => ({
      ...row,
      lease,
      kind: kind as OutgoingKind,
      maybe_repeat: maybe_repeat === 1,
      facts: facts.get(row.person_id) ?? {},
      answer: unpack<OutgoingDoc>(doc).answer,
    }));
}

export async function markAttempted(
  { single }: Engine,
  { key, lease }: Lease,
  now_ms: number,
  afresh?: { readonly maybe_repeat: boolean },
): Promise<boolean> {
  const { numUpdatedRows } = await single((db) =>
    db
      .updateTable("outbox")
      .where("key", "=", key)
      .where("lease", "=", lease)
      .set((eb) => ({
        state: "attempted",
        attempts: eb("attempts", "+", 1),
        unknown_since_ms: afresh ? now_ms : eb.fn.coalesce("unknown_since_ms", eb.val(now_ms)),
        ...(afresh ? { maybe_repeat: afresh.maybe_repeat ? 1 : 0 } : {}),
      }))
      .executeTakeFirst(),
  );
  return numUpdatedRows > 0n;
}

/** The words go; a worker whose lease has passed on may still report that it sent. */
export async function markSent({ single }: Engine, { key }: Lease, native_id: string | null, now_ms: number): Promise<void> {
  await single((db) =>
    db
      .updateTable("outbox")
      .where("key", "=", key)
      .where("state", "!=", "sent")
      .set({
        state: "sent",
        again_at_ms: null,
        sent_at_ms: now_ms,
        native_id,
        unknown_since_ms: null,
        last_error: null,
        lease: null,
        lease_until: null,
        doc: SENT,
      })
      .execute(),
  );
}

export async function markFailed(
  { single }: Engine,
  { key, lease }: Lease,
  again_at_ms: number,
  why: string,
  unknown_since_ms: number | null,
): Promise<void> {
  await single((db) =>
    db
      .updateTable("outbox")
      .where("key", "=", key)
      .where("lease", "=", lease)
      .set({
        state: unknown_since_ms === null ? "pending" : "attempted",
        again_at_ms,
        unknown_since_ms,
        last_error: why.slice(0, 300),
        lease: null,
        lease_until: null,
      })
      .execute(),
  );
}

export async function decideAgain({ write }: Engine, { key, lease }: Lease, now_ms: number): Promise<boolean> {
  return write(async (tx) => {
    const row = await tx
      .deleteFrom("outbox")
      .where("key", "=", key)
      .where("lease", "=", lease)
      .returning(["kind", "person_id", "place_id", "doc"])
      .executeTakeFirst();
    const due = row && unpack<OutgoingDoc>(row.doc).due;
    if (!row || !due) return false;
    const { payload, ...times } = due;
    await tx
      .insertInto("due")
      .values({
        ...times,
        kind: row.kind,
        person_id: row.person_id,
        place_id: row.place_id,
        again_at_ms: now_ms,
        attempts: 0,
        lease: null,
        lease_until: null,
        doc: pack(payload),
      })
      .onConflict((c) => c.column("key").doNothing())
      .execute();
    return true;
  });
}

export async function dropOutgoing({ single }: Engine, { key, lease }: Lease): Promise<void> {
  await single((db) => db.deleteFrom("outbox").where("key", "=", key).where("lease", "=", lease).execute());
}
