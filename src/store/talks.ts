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

export interface Move {
  readonly seen: Talk;
  readonly state: Talk["state"];
}

/** Every commit moves the talk on, whether or not its state changes. */
export async function moveOn(tx: Tx, moves: readonly Move[], now_ms: number): Promise<void> {
  const { numInsertedOrUpdatedRows } = await tx
    .insertInto("talks")
    .values(
      moves.map(({ seen: { person_id, place_id, version }, state }) => ({
        person_id,
        place_id,
        version: version + 1,
        updated_at_ms: now_ms,
        doc: pack(state),
      })),
    )
    .onConflict((c) =>
      c
        .columns(["person_id", "place_id"])
        .doUpdateSet((eb) => ({ version: eb.ref("excluded.version"), updated_at_ms: now_ms, doc: eb.ref("excluded.doc") }))
        .where("talks.version", "=", (eb) => eb("excluded.version", "-", 1)),
    )
    .executeTakeFirstOrThrow();
  if (Number(numInsertedOrUpdatedRows) < moves.length) throw new Stale("the talk went on meanwhile");
}
