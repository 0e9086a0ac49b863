/**
 * Answers on their way: pending -> leased -> attempted -> sent. A row is attempted before it is sent, so that a process that dies in
 * between leaves word that its fate is unknown. Once sent, its words are dropped and only the key remains, against repeats.
 */
import { type RawBuilder, sql } from "kysely";
import type { Answer } from "../answer.ts";
import type { ClaimedOutgoing, DueRow, OutgoingKind } from "../records/ports.ts";
import type { Due, Person } from "../records/types.ts";
import type { Db, Engine, Tx } from "./engine.ts";
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
export function answerOf({ key, kind, due_at_ms, useful_until_ms, person_id, place_id, payload }: DueRow, answer: Answer, now_ms: number): Made {
  const at_ms = now_ms > useful_until_ms ? now_ms : due_at_ms;
  return {
    key: outgoingKey(key, at_ms),
    kind,
    due_at_ms: at_ms,
    useful_until_ms: at_ms + (useful_until_ms - due_at_ms),
    person_id,
    place_id,
    doc: { answer, due: { key, due_at_ms, useful_until_ms, payload } },
  };
}

type Told = Pick<Made, "key" | "person_id" | "place_id"> & { readonly answer: Answer };
export const tellOther = ({ key, person_id, place_id, answer }: Told, useful_ms: number, now_ms: number): Made => ({
  key,
  kind: "tell",
  due_at_ms: now_ms,
  useful_until_ms: now_ms + useful_ms,
  person_id,
  place_id,
  doc: { answer },
});

export interface Made extends Pick<ClaimedOutgoing, "key" | "kind" | "due_at_ms" | "useful_until_ms" | "person_id" | "place_id"> {
  readonly doc: OutgoingDoc;
}

/** On their way from now on; one to a place that is gone goes nowhere, and one that is on its way already is not sent twice. */
export async function sendLater(tx: Tx, made: readonly Made[], now_ms: number): Promise<void> {
  if (made.length === 0) return;
  const ids = [...new Set(made.map(({ place_id }) => place_id))];
  const found = await tx.selectFrom("places").select(["id", "network", "network_id"]).where("id", "in", ids).execute();
  const places = new Map(found.map((place) => [place.id, place]));
  const rows = made.flatMap(({ key, doc, kind, due_at_ms, useful_until_ms, person_id, place_id }) => {
    const place = places.get(place_id);
    if (!place) return [];
    return {
      key: column(key),
      kind,
      due_at_ms,
      useful_until_ms,
      person_id,
      place_id,
      network: place.network,
      network_place_id: place.network_id,
      state: "pending" as const,
      attempts: 0,
      maybe_repeat: 0,
      again_at_ms: now_ms,
      made_at_ms: now_ms,
      doc: pack(doc),
    };
  });
  if (rows.length === 0) return;
  await tx
    .insertInto("outbox")
    .values(rows)
    .onConflict((c) => c.column("key").doNothing())
    .execute();
}

export async function claimOutgoing(
  { claim, single, leases }: Engine,
  networks: readonly string[],
  now_ms: number,
  lease_ms: number,
  most: number,
): Promise<ClaimedOutgoing[]> {
  if (networks.length === 0 || !leases.allowed()) return [];
  const lease = leases.next();
  const rows = await claim((db) =>
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

export interface Attempt extends Lease {
  readonly now_ms: number;
  readonly afresh?: { readonly maybe_repeat: boolean } | undefined;
}

/** Those asked for at the same time share a transaction; each may be sent only when its own mark is kept. */
export async function markAttempted(engine: Engine, attempts: readonly Attempt[]): Promise<boolean[]> {
  const groups = [...Map.groupBy(attempts, ({ lease, afresh }) => `${afresh?.maybe_repeat} ${lease}`).values()];
  const mark = async (db: Db): Promise<Set<string>> => {
    const marked = new Set<string>();
    for (const [first, ...more] of groups) if (first) for (const key of await markGroup(db, first, [first, ...more])) marked.add(key);
    return marked;
  };
  const marked = await (groups.length === 1 ? engine.single(mark) : engine.write(mark));
  return attempts.map(({ key, lease }) => marked.has(`${lease} ${key}`));
}

/** The window of an attempt counts from the earliest instant at which one of the group may have been sent. */
async function markGroup(db: Db, { lease, afresh }: Attempt, group: readonly Attempt[]): Promise<string[]> {
  const now_ms = Math.min(...group.map((one) => one.now_ms));
  const rows = await db
    .updateTable("outbox")
    .where(
      "key",
      "in",
      group.map(({ key }) => key),
    )
    .where("lease", "=", lease)
    .set((eb) => ({
      state: "attempted",
      attempts: eb("attempts", "+", 1),
      unknown_since_ms: afresh ? now_ms : eb.fn.coalesce("unknown_since_ms", eb.val(now_ms)),
      ...(afresh ? { maybe_repeat: afresh.maybe_repeat ? 1 : 0 } : {}),
    }))
    .returning("key")
    .execute();
  return rows.map(({ key }) => `${lease} ${key}`);
}

export interface SentMark extends Pick<Lease, "key"> {
  readonly native_id: string | null;
  readonly now_ms: number;
}

/** The words go; a worker whose lease has passed on may still report that it sent. */
export async function markSent({ single }: Engine, sent: readonly SentMark[]): Promise<undefined[]> {
  await single((db) =>
    db
      .updateTable("outbox")
      .where(
        "key",
        "in",
        sent.map(({ key }) => key),
      )
      .where("state", "!=", "sent")
      .set({
        state: "sent",
        again_at_ms: null,
        sent_at_ms: Math.max(...sent.map(({ now_ms }) => now_ms)),
        native_id: eachIts(sent),
        unknown_since_ms: null,
        last_error: null,
        lease: null,
        lease_until: null,
        doc: SENT,
      })
      .execute(),
  );
  return sent.map(() => undefined);
}

function eachIts(sent: readonly SentMark[]): RawBuilder<string | null> {
  const named = sent.filter(({ native_id }) => native_id !== null);
  if (named.length === 0) return sql`null`;
  return sql`case key ${sql.join(
    named.map(({ key, native_id }) => sql`when ${key} then ${column(native_id ?? "")}`),
    sql` `,
  )} end`;
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
