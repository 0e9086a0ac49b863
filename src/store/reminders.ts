/** What people asked to be reminded of; when it falls due is a due row. */
import type { Reminder } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { pack, unpack } from "./json.ts";

const MOST = 200;

export async function openReminders(db: Db, person_id: string): Promise<Reminder[]> {
  const rows = await db
    .selectFrom("reminders")
    .selectAll()
    .where("person_id", "=", person_id)
    .where("done_at_ms", "is", null)
    .orderBy("due_at_ms")
    .limit(MOST)
    .execute();
  return rows.map(({ doc, done_at_ms, ...row }) => ({
    ...row,
    ...unpack<Pick<Reminder, "what" | "rule">>(doc),
    ...(done_at_ms === null ? {} : { done_at_ms }),
  }));
}

export async function writeReminder(tx: Tx, { id, person_id, place_id, what, due_at_ms, rule, done_at_ms }: Reminder): Promise<void> {
  const now = { due_at_ms, done_at_ms: done_at_ms ?? null, place_id, doc: pack({ what, rule }) };
  await tx
    .insertInto("reminders")
    .values({ id, person_id, ...now })
    .onConflict((c) => c.column("id").doUpdateSet(now))
    .execute();
}
