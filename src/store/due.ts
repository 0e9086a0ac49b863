/** What falls due later. A row is claimed by one atomic statement, and leaves the table in the transaction that answers it. */
import type { DueRow } from "../records/ports.ts";
import type { Due, DueKind } from "../records/types.ts";
import type { Engine, Tx } from "./engine.ts";
import { Gone } from "./errors.ts";
import { column, pack, unpack } from "./json.ts";
import { outgoingKey } from "./outbox.ts";

type Lease = Pick<DueRow, "key" | "lease">;

export async function claimDue({ claim, leases }: Engine, now_ms: number, lease_ms: number, most: number): Promise<DueRow[]> {
  if (!leases.allowed()) return [];
  const lease = leases.next();
  const rows = await claim((db) =>
    db
      .updateTable("due")
      .set((eb) => ({ lease, lease_until: leases.end(lease_ms), attempts: eb("attempts", "+", 1) }))
      .where("key", "in", (eb) => {
        const choice = eb
          .selectFrom("due")
          .select("key")
          .where("again_at_ms", "<=", now_ms)
          .where(leases.free())
          .orderBy("again_at_ms")
          .limit(most);
        return leases.skip_locked ? choice.forUpdate().skipLocked() : choice;
      })
      .returning(["key", "kind", "due_at_ms", "useful_until_ms", "person_id", "place_id", "attempts", "doc"])
      .execute(),
  );
  return rows
    .map(({ kind, doc, ...row }) => ({ ...row, kind: kind as DueKind, lease, payload: unpack<Due["payload"]>(doc) }))
    .toSorted((a, b) => a.due_at_ms - b.due_at_ms || (a.key < b.key ? -1 : 1));
}

/** @throws Gone when one of the rows is no longer ours to work on */
export async function takeDue(tx: Tx, rows: readonly Lease[]): Promise<void> {
  for (const [lease, ours] of Map.groupBy(rows, (row) => row.lease)) {
    const keys = ours.map(({ key }) => key);
    const { numDeletedRows } = await tx.deleteFrom("due").where("key", "in", keys).where("lease", "=", lease).executeTakeFirst();
    if (Number(numDeletedRows) < keys.length) throw new Gone(`one of the due rows ${keys.join(", ")} is gone`);
  }
}

export async function dropDue({ single }: Engine, { key, lease }: Lease): Promise<void> {
  await single((db) => db.deleteFrom("due").where("key", "=", key).where("lease", "=", lease).execute());
}

export async function postponeDue({ single }: Engine, { key, lease }: Lease, again_at_ms: number): Promise<void> {
  await single((db) =>
    db.updateTable("due").set({ again_at_ms, lease: null, lease_until: null }).where("key", "=", key).where("lease", "=", lease).execute(),
  );
}

/** One row a key, the last one given: asking again moves it, and a worker that was just at it comes back to nothing. */
export async function writeDue(tx: Tx, due: readonly Due[]): Promise<void> {
  const rows = new Map(
    due.map(({ key: words, kind, due_at_ms, useful_until_ms, person_id, place_id, payload }) => {
      const key = column(words);
      const times = { due_at_ms, useful_until_ms, again_at_ms: due_at_ms };
      return [key, { key, kind, ...times, person_id, place_id, attempts: 0, lease: null, lease_until: null, doc: pack(payload) }];
    }),
  );
  if (rows.size === 0) return;
  await tx
    .insertInto("due")
    .values([...rows.values()])
    .onConflict((c) =>
      c.column("key").doUpdateSet((eb) => ({
        kind: eb.ref("excluded.kind"),
        due_at_ms: eb.ref("excluded.due_at_ms"),
        useful_until_ms: eb.ref("excluded.useful_until_ms"),
        person_id: eb.ref("excluded.person_id"),
        place_id: eb.ref("excluded.place_id"),
        again_at_ms: eb.ref("excluded.again_at_ms"),
        attempts: 0,
        lease: null,
        lease_until: null,
        doc: eb.ref("excluded.doc"),
      })),
    )
    .execute();
}

/** @param keys whole keys, or beginnings that end in `*`; what they caused and was not yet sent goes too */
export async function cancel(tx: Tx, keys: readonly string[]): Promise<void> {
  for (const wanted of keys) {
    const key = column(wanted);
    const start = key.endsWith("*") ? key.slice(0, -1) : null;
    const rows = tx.deleteFrom("due");
    await (start === null ? rows.where("key", "=", key) : rows.where("key", ">=", start).where("key", "<", after(start))).execute();
    const made = start ?? outgoingKey(key);
    await tx
      .deleteFrom("outbox")
      .where("key", ">=", made)
      .where("key", "<", after(made))
      .where("kind", "!=", "tell")
      .where("state", "in", ["pending", "leased"])
      .where("unknown_since_ms", "is", null)
      .execute();
  }
}

/** Keys compare byte by byte in both stores: no text that begins with `start` sorts after the last code point there is. */
const after = (start: string): string => `${start}\u{10FFFF}`;
