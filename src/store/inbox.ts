/** Messages that were answered, under the network's own event id: a second delivery finds the answer. */
import type { Answer } from "../answer.ts";
import type { InboxRow } from "../records/ports.ts";
import type { Db, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { column, pack, unpack } from "./json.ts";

export async function answered(db: Db, message_key: string): Promise<InboxRow | null> {
  const row = await db.selectFrom("inbox").select("doc").where("message_key", "=", column(message_key)).executeTakeFirst();
  return row ? { message_key, answer: unpack<Answer>(row.doc) } : null;
}

export async function keepAnswer(tx: Tx, message_key: string, person_id: string | null, answer: Answer, now_ms: number): Promise<void> {
  const { numInsertedOrUpdatedRows } = await tx
    .insertInto("inbox")
    .values({ message_key: column(message_key), person_id, at_ms: now_ms, doc: pack(answer) })
    .onConflict((c) => c.column("message_key").doNothing())
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows === 0n) throw new Stale(`message ${message_key} was answered meanwhile`);
}
