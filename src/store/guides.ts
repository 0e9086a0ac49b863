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

/** The decision saw this guide (or none): it must still be so. Holds the row until the transaction ends. */
export async function sameGuide(tx: Tx, heater_id: string, seen: Guide | null, lock: boolean): Promise<void> {
  const query = tx.selectFrom("guides").select(["version", "fire_id"]).where("heater_id", "=", heater_id);
  const row = await (lock ? query.forUpdate() : query).executeTakeFirst();
  if (row?.version !== seen?.version || row?.fire_id !== seen?.fire_id)
    throw new Stale(`the guide of heater ${heater_id} went on meanwhile`);
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
