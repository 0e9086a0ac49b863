/** What one person's conversation in one place is about; its version guards everything a message causes. */
import type { Talk } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { pack, unpack } from "./json.ts";

export async function talk(db: Db, person_id: string, place_id: string): Promise<Talk> {
  const row = await db
    .selectFrom("talks")
    .selectAll()
    .where("person_id", "=", person_id)
    .where("place_id", "=", place_id)
    .executeTakeFirst();
  if (!row) return { person_id, place_id, version: 0, updated_at_ms: 0, state: {} };
  return { person_id, place_id, version: row.version, updated_at_ms: row.updated_at_ms, state: unpack<Talk["state"]>(row.doc) };
}

/** Every commit moves the talk on, whether or not its state changes. */
export async function moveOn(tx: Tx, seen: Talk, state: Talk["state"], now_ms: number): Promise<void> {
  const { person_id, place_id, version } = seen;
  const now = { version: version + 1, updated_at_ms: now_ms, doc: pack(state) };
  const { numInsertedOrUpdatedRows } =
    version === 0
      ? await tx
          .insertInto("talks")
          .values({ person_id, place_id, ...now })
          .onConflict((c) => c.columns(["person_id", "place_id"]).doNothing())
          .executeTakeFirst()
      : await tx
          .updateTable("talks")
          .set(now)
          .where("person_id", "=", person_id)
          .where("place_id", "=", place_id)
          .where("version", "=", version)
          .executeTakeFirst()
          .then(({ numUpdatedRows }) => ({ numInsertedOrUpdatedRows: numUpdatedRows }));
  if (numInsertedOrUpdatedRows === 0n) throw new Stale("the talk went on meanwhile");
}
