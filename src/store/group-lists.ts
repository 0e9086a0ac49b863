/** The organiser's lists and the members' lines on them. */
import type { GroupEntry, GroupList, ListKind } from "../records/group.ts";
import type { Db, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { pack, unpack } from "./json.ts";
import { namesOf } from "./people.ts";

export async function lists(db: Db, groups: readonly string[]): Promise<GroupList[]> {
  if (groups.length === 0) return [];
  const rows = await db.selectFrom("group_lists").selectAll().where("group_id", "in", groups).orderBy("kind").execute();
  return rows.map(({ doc, kind, ...row }) => ({ ...row, kind: kind as ListKind, facts: unpack<GroupList["facts"]>(doc) }));
}

export async function entries(db: Db, groups: readonly string[]): Promise<GroupEntry[]> {
  if (groups.length === 0) return [];
  const rows = await db.selectFrom("group_entries").selectAll().where("group_id", "in", groups).orderBy("at_ms").orderBy("person_id").execute();
  const names = await namesOf(db, [...new Set(rows.map((row) => row.person_id))]);
  return rows.map(({ doc, kind, ...row }) => {
    const name = names.get(row.person_id);
    return { ...row, kind: kind as ListKind, facts: unpack<GroupEntry["facts"]>(doc), ...(name ? { name } : {}) };
  });
}

/** @throws Stale when somebody changed it meanwhile */
export async function writeList(tx: Tx, { facts, version, ...row }: GroupList): Promise<void> {
  const doc = pack(facts);
  const done =
    version === 0
      ? await tx
          .insertInto("group_lists")
          .values({ ...row, version: 1, doc })
          .onConflict((c) => c.columns(["group_id", "kind"]).doNothing())
          .executeTakeFirst()
          .then(({ numInsertedOrUpdatedRows }) => numInsertedOrUpdatedRows)
      : await tx
          .updateTable("group_lists")
          .set({ doc, version: version + 1 })
          .where("group_id", "=", row.group_id)
          .where("kind", "=", row.kind)
          .where("version", "=", version)
          .executeTakeFirst()
          .then(({ numUpdatedRows }) => numUpdatedRows);
  if (done === 0n) throw new Stale(`the list ${row.kind} changed meanwhile`);
}

/** @throws Stale when somebody changed it meanwhile */
export async function closeList(tx: Tx, group_id: string, kind: ListKind, version: number): Promise<void> {
  const { numDeletedRows } = await tx.deleteFrom("group_lists").where("group_id", "=", group_id).where("kind", "=", kind).where("version", "=", version).executeTakeFirst();
  if (numDeletedRows === 0n) throw new Stale(`the list ${kind} changed meanwhile`);
  await tx.deleteFrom("group_entries").where("group_id", "=", group_id).where("kind", "=", kind).execute();
}

export async function writeEntry(tx: Tx, { facts, ...row }: Omit<GroupEntry, "name">): Promise<void> {
  const now = { doc: pack(facts), at_ms: row.at_ms };
  await tx
    .insertInto("group_entries")
    .values({ ...row, ...now })
    .onConflict((c) => c.columns(["group_id", "kind", "person_id"]).doUpdateSet(now))
    .execute();
}

export async function dropEntry(tx: Tx, group_id: string, kind: ListKind, person_id: string): Promise<void> {
  await tx.deleteFrom("group_entries").where("group_id", "=", group_id).where("kind", "=", kind).where("person_id", "=", person_id).execute();
}
