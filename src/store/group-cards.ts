/** Reckonings shared with a group, and how nothing is left of one that is withdrawn. */
import type { Card } from "../records/group.ts";
import type { Db, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { column, pack, unpack } from "./json.ts";

export async function cards(db: Db, groups: readonly string[], codes: readonly string[]): Promise<Card[]> {
  if (groups.length === 0 || codes.length === 0) return [];
  const rows = await db.selectFrom("cards").selectAll().where("group_id", "in", groups).where("code", "in", codes).execute();
  return rows.map(({ doc, ...row }) => ({ ...row, facts: unpack<Card["facts"]>(doc) }));
}

export async function usedCodes(db: Db, groups: readonly string[]): Promise<Map<string, string[]>> {
  if (groups.length === 0) return new Map();
  const rows = await db.selectFrom("cards").select(["group_id", "code"]).where("group_id", "in", groups).execute();
  return new Map(groups.map((id) => [id, rows.filter((row) => row.group_id === id).map(({ code }) => code)]));
}

export const cardsOf = (db: Db, person_id: string): Promise<Pick<Card, "group_id" | "code">[]> =>
  db.selectFrom("cards").select(["group_id", "code"]).where("person_id", "=", person_id).where("withdrawn_at_ms", "is", null).orderBy("at_ms", "desc").execute();

/** @throws Stale when the code was given to another card meanwhile */
export async function writeCard(tx: Tx, { facts, ...row }: Card): Promise<void> {
  const doc = pack(facts);
  const { numInsertedOrUpdatedRows } = await tx
    .insertInto("cards")
    .values({ ...row, doc })
    .onConflict((c) =>
      c
        .columns(["group_id", "code"])
        .doUpdateSet({ doc })
        .where("cards.person_id", "=", row.person_id)
        .where("cards.withdrawn_at_ms", "is", null),
    )
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows === 0n) throw new Stale(`the code ${row.code} was given meanwhile`);
}

/** keys of messages that show a card begin so; those that say it was withdrawn do not */
export const cardKey = (group_id: string, code: string): string => `card:${group_id}:${code}:`;

/** The card itself, answers kept against repeats that show it, and what is still on its way. That it was there is all that stays. */
export async function withdrawCard(tx: Tx, group_id: string, code: string, now_ms: number, withdrawn_by_forgetting = false): Promise<void> {
  const before = await tx.selectFrom("cards").select("at_ms").where("group_id", "=", group_id).where("code", "=", code).where("withdrawn_at_ms", "is", null).executeTakeFirst();
  if (!before) return;
  await tx
    .updateTable("cards")
    .set({ withdrawn_at_ms: now_ms, doc: pack({}), ...(withdrawn_by_forgetting ? { person_id: null } : {}) })
    .where("group_id", "=", group_id)
    .where("code", "=", code)
    .execute();
  const start = column(cardKey(group_id, code));
  await tx.deleteFrom("outbox").where("key", ">=", start).where("key", "<", `${start}\u{10FFFF}`).where("state", "!=", "sent").execute();
  const talkers = tx
    .selectFrom("talks as t")
    .innerJoin("places as p", "p.id", "t.place_id")
    .select("t.person_id")
    .where((eb) => eb.or([eb("p.id", "=", group_id), eb("p.group_id", "=", group_id)]));
  await tx.deleteFrom("inbox").where("person_id", "in", talkers).where("at_ms", ">=", before.at_ms).where("doc", "like", `%"${code}"%`).execute();
}
