/** Heaters, who fires them, and the home of an owner. */
import type { Heater, Home } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { pack, unpack } from "./json.ts";

type HeaterDoc = Pick<Heater, "facts" | "upkeep" | "rules" | "rules_before">;
type HomeDoc = Omit<Home, "owner_id">;

/** Ids of the heaters somebody fires: the one they chose first, then their own, then those they share, each in the order of joining. */
export async function heaterIds(db: Db, person_id: string, meant: string | undefined): Promise<string[]> {
  const rows = await db
    .selectFrom("heater_members as m")
    .innerJoin("heaters as h", "h.id", "m.heater_id")
    .select(["h.id", "h.owner_id", "m.joined_at_ms"])
    .where("m.person_id", "=", person_id)
    .execute();
  const rank = (row: (typeof rows)[number]): number => (row.id === meant ? 0 : row.owner_id === person_id ? 1 : 2);
  return rows.toSorted((a, b) => rank(a) - rank(b) || a.joined_at_ms - b.joined_at_ms || (a.id < b.id ? -1 : 1)).map(({ id }) => id);
}

/** @returns in the order of the ids, each with its version */
export async function heaters(db: Db, ids: readonly string[]): Promise<{ heater: Heater; version: number }[]> {
  if (ids.length === 0) return [];
  const rows = await db.selectFrom("heaters").selectAll().where("id", "in", ids).execute();
  const members = await db
    .selectFrom("heater_members")
    .selectAll()
    .where("heater_id", "in", ids)
    .orderBy("joined_at_ms")
    .orderBy("person_id")
    .execute();
  return ids.flatMap((id) => {
    const row = rows.find((one) => one.id === id);
    if (!row) return [];
    const member_ids = members.filter((one) => one.heater_id === id).map(({ person_id }) => person_id);
    return [{ version: row.version, heater: { id, owner_id: row.owner_id, member_ids, ...unpack<HeaterDoc>(row.doc) } }];
  });
}

export async function home(db: Db, owner_id: string): Promise<{ home: Home; version: number }> {
  const row = await db.selectFrom("homes").selectAll().where("owner_id", "=", owner_id).executeTakeFirst();
  if (!row) return { version: 0, home: { owner_id, house: {}, wood: [], alarms: {}, weather: [] } };
  return { version: row.version, home: { owner_id, ...unpack<HomeDoc>(row.doc) } };
}

/** @param version as the snapshot saw it; undefined for a heater it did not hold, which is then a new one */
export async function writeHeater(tx: Tx, heater: Heater, version: number | undefined, now_ms: number): Promise<void> {
  const { id, owner_id, facts, upkeep, rules, rules_before } = heater;
  const doc = pack({ facts, upkeep, rules, ...(rules_before ? { rules_before } : {}) } satisfies HeaterDoc);
  if (version === undefined) {
    const { numInsertedOrUpdatedRows } = await tx
      .insertInto("heaters")
      .values({ id, owner_id, version: 1, doc })
      .onConflict((c) => c.column("id").doNothing())
      .executeTakeFirst();
    if (numInsertedOrUpdatedRows === 0n) throw new Stale(`heater ${id} was made meanwhile`);
  } else {
    const { numUpdatedRows } = await tx
      .updateTable("heaters")
      .set({ owner_id, doc, version: version + 1 })
      .where("id", "=", id)
      .where("version", "=", version)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) throw new Stale(`heater ${id} changed meanwhile`);
  }
  const members = [...new Set([owner_id, ...heater.member_ids])];
  await tx.deleteFrom("heater_members").where("heater_id", "=", id).where("person_id", "not in", members).execute();
  await tx
    .insertInto("heater_members")
    .values(members.map((person_id) => ({ heater_id: id, person_id, joined_at_ms: now_ms })))
    .onConflict((c) => c.columns(["heater_id", "person_id"]).doNothing())
    .execute();
}

/** @throws RangeError when there is no such heater */
export async function joinHeater(tx: Tx, heater_id: string, person_id: string, now_ms: number): Promise<void> {
  const { numUpdatedRows } = await tx
    .updateTable("heaters")
    .set((eb) => ({ version: eb("version", "+", 1) }))
    .where("id", "=", heater_id)
    .executeTakeFirst();
  if (numUpdatedRows === 0n) throw new RangeError(`there is no heater ${heater_id} to join`);
  await tx
    .insertInto("heater_members")
    .values({ heater_id, person_id, joined_at_ms: now_ms })
    .onConflict((c) => c.columns(["heater_id", "person_id"]).doNothing())
    .execute();
}

/** @param version as the snapshot saw it, 0 when it held none; undefined for another's home */
export async function writeHome(tx: Tx, { owner_id, ...doc }: Home, version: number | undefined): Promise<void> {
  const values = { owner_id, version: (version ?? 0) + 1, doc: pack(doc satisfies HomeDoc) };
  const { numInsertedOrUpdatedRows } = await tx
    .insertInto("homes")
    .values(values)
    .onConflict((c) => {
      const update = c.column("owner_id").doUpdateSet((eb) => ({ doc: values.doc, version: eb("homes.version", "+", 1) }));
      return version === undefined ? update : update.where("homes.version", "=", version);
    })
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows === 0n) throw new Stale(`the home of ${owner_id} changed meanwhile`);
}
