/** What moderators set for their groups. It holds for every heater of somebody who talks in that group's rooms, until it ends or is lifted. */
import type { HeaterRule } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { groupOf } from "./groups.ts";
import { pack, unpack } from "./json.ts";

export async function writePlaceRule(tx: Tx, place_id: string, rule: HeaterRule | null): Promise<void> {
  await tx.deleteFrom("place_rules").where("place_id", "in", await together(tx, [place_id])).execute();
  if (rule)
    await tx
      .insertInto("place_rules")
      .values({ place_id, said_by: rule.said_by, doc: pack(rule) })
      .execute();
}

/** Rules of the groups in which any of these people has talked. */
export async function rulesAround(db: Db, people: readonly string[]): Promise<HeaterRule[]> {
  const talked = await db
    .selectFrom("talks as t")
    .innerJoin("places as p", "p.id", "t.place_id")
    .select(["p.id", "p.kind", "p.group_id"])
    .where("t.person_id", "in", [...new Set(people)])
    .where((eb) => eb.or([eb("p.kind", "=", "group"), eb("p.group_id", "is not", null)]))
    .execute();
  if (talked.length === 0) return [];
  const ids = new Set(talked.map(({ id }) => id));
  const linked = [...new Set(talked.flatMap((place) => (place.group_id === null ? [] : (groupOf(place) ?? []))))];
  if (linked.length > 0) for (const id of await placesOf(db, linked)) ids.add(id);
  const rows = await db.selectFrom("place_rules").select("doc").where("place_id", "in", [...ids]).orderBy("place_id").execute();
  return rows.map(({ doc }) => unpack<HeaterRule>(doc));
}

/** The places of the groups these places belong to, themselves included. */
async function together(db: Db, place_ids: readonly string[]): Promise<string[]> {
  const rows = await db.selectFrom("places").select(["id", "kind", "group_id"]).where("id", "in", place_ids).execute();
  return [...new Set([...place_ids, ...(await placesOf(db, rows.flatMap((row) => groupOf(row) ?? [])))])];
}

async function placesOf(db: Db, groups: readonly string[]): Promise<string[]> {
  if (groups.length === 0) return [];
  const rows = await db
    .selectFrom("places")
    .select("id")
    .where((eb) => eb.or([eb("id", "in", groups), eb("group_id", "in", groups)]))
    .execute();
  return rows.map(({ id }) => id);
}

export const rulesSaidBy = async (db: Db, person_id: string): Promise<Record<string, unknown>[]> =>
  (await db.selectFrom("place_rules").selectAll().where("said_by", "=", person_id).execute()).map(({ doc, ...row }) => ({
    ...row,
    ...unpack<Record<string, unknown>>(doc),
  }));

/** A ban is the group's; who set it is not kept beyond their own records. */
export async function forgetSaidBy(tx: Tx, person_id: string, stands_for: string): Promise<void> {
  for (const { place_id, doc } of await tx.selectFrom("place_rules").selectAll().where("said_by", "=", person_id).execute()) {
    const { words: _, ...rule } = unpack<HeaterRule>(doc);
    await writePlaceRule(tx, place_id, { ...rule, said_by: stands_for });
  }
}
