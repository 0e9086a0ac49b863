/** The fire that is being walked through now: at most one a heater, so that nobody lights a second one beside it. */
import type { Guide } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { pack, unpack } from "./json.ts";

export async function guide(db: Db, heater_id: string): Promise<Guide | null> {
  const row = await db.selectFrom("guides").selectAll().where("heater_id", "=", heater_id).executeTakeFirst();
  if (!row) return null;
  const { doc, ...columns } = row;
  return { ...columns, state: unpack<Guide["state"]>(doc) };
}

export interface Seen {
  readonly heater_id: string;
  readonly guide: Guide | null;
}

/** The decisions saw these guides (or none): it must still be so. Holds the rows until the transaction ends. */
export async function sameGuides(tx: Tx, seen: readonly Seen[], lock: boolean): Promise<void> {
  if (seen.length === 0) return;
  const heaters = [...new Set(seen.map(({ heater_id }) => heater_id))].sort();
  const query = tx.selectFrom("guides").select(["heater_id", "version", "fire_id"]).where("heater_id", "in", heaters);
  const rows = new Map((await (lock ? query.forUpdate() : query).execute()).map((row) => [row.heater_id, row]));
  for (const { heater_id, guide } of seen) {
    const row = rows.get(heater_id);
    if (row?.version !== guide?.version || row?.fire_id !== guide?.fire_id)
      throw new Stale(`the guide of heater ${heater_id} went on meanwhile`);
  }
}

export async function writeGuide(tx: Tx, { heater_id, fire_id, watch_id, place_id, state }: Guide, seen: Guide | null): Promise<void> {
  const now = { fire_id, watch_id, place_id, doc: pack(state) };
  if (!seen) {
    const { numInsertedOrUpdatedRows } = await tx
      .insertInto("guides")
      .values({ heater_id, version: 1, ...now })
      .onConflict((c) => c.column("heater_id").doNothing())
      .executeTakeFirst();
    if (numInsertedOrUpdatedRows === 0n) throw new Stale(`another guide of heater ${heater_id} began meanwhile`);
    return;
  }
  const { numUpdatedRows } = await tx
    .updateTable("guides")
    .set({ ...now, version: seen.version + 1 })
    .where("heater_id", "=", heater_id)
    .where("fire_id", "=", seen.fire_id)
    .where("version", "=", seen.version)
    .executeTakeFirst();
  if (numUpdatedRows === 0n) throw new Stale(`the guide of heater ${heater_id} went on meanwhile`);
}

export async function endGuide(tx: Tx, heater_id: string, seen: Guide | null): Promise<void> {
  if (!seen) return;
  const { numDeletedRows } = await tx
    .deleteFrom("guides")
    .where("heater_id", "=", heater_id)
    .where("fire_id", "=", seen.fire_id)
    .where("version", "=", seen.version)
    .executeTakeFirst();
  if (numDeletedRows === 0n) throw new Stale(`the guide of heater ${heater_id} went on meanwhile`);
}
