/** What moderators set for their groups. It holds for every heater of somebody who talks in that group's rooms, until it ends or is lifted. */
import type { HeaterRule } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { pack, unpack } from "./json.ts";

export async function writePlaceRule(tx: Tx, place_id: string, rule: HeaterRule | null): Promise<void> {
  await tx.deleteFrom("place_rules").where("place_id", "=", place_id).execute();
  if (rule)
    await tx
      .insertInto("place_rules")
      .values({ place_id, said_by: rule.said_by, doc: pack(rule) })
      .execute();
}

/** Rules of the groups in which any of these people has talked. */
export async function rulesAround(db: Db, people: readonly string[]): Promise<HeaterRule[]> {
  const rows = await db
    .selectFrom("place_rules as r")
    .select(["r.place_id", "r.doc"])
    .where((eb) =>
      eb(
        "r.place_id",
        "in",
        eb
          .selectFrom("talks")
          .select("place_id")
          .where("person_id", "in", [...new Set(people)]),
      ),
    )
    .orderBy("r.place_id")
    .execute();
  return rows.map(({ doc }) => unpack<HeaterRule>(doc));
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
