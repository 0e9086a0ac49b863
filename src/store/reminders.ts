/** What people asked to be reminded of; when it falls due is a due row. */
import type { Reminder } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { pack, unpack } from "./json.ts";

const MOST = 200;

type ReminderDoc = Pick<Reminder, "what" | "rule" | "task" | "told_at_ms" | "missed_at_ms">;

/** @param room_id the group's room that is spoken in: what is set for it is everybody's there */
export async function openReminders(db: Db, person_id: string, room_id?: string): Promise<Reminder[]> {
  const open = db.selectFrom("reminders").selectAll().where("done_at_ms", "is", null).orderBy("due_at_ms").limit(MOST);
  const own = await open.where("person_id", "=", person_id).execute();
  const others = room_id === undefined ? [] : await open.where("place_id", "=", room_id).where("person_id", "!=", person_id).execute();
  const rows = others.length === 0 ? own : [...own, ...others].toSorted((a, b) => a.due_at_ms - b.due_at_ms);
  return rows.map(({ doc, done_at_ms, ...row }) => ({
    ...row,
    ...unpack<ReminderDoc>(doc),
    ...(done_at_ms === null ? {} : { done_at_ms }),
  }));
}

/** Of several under one id the last one counts. */
export async function writeReminders(tx: Tx, reminders: readonly Reminder[]): Promise<void> {
  const rows = new Map(
    reminders.map(({ id, person_id, place_id, due_at_ms, done_at_ms, ...doc }) => [
      id,
      { id, person_id, place_id, due_at_ms, done_at_ms: done_at_ms ?? null, doc: pack(doc satisfies ReminderDoc) },
    ]),
  );
  if (rows.size === 0) return;
  await tx
    .insertInto("reminders")
    .values([...rows.values()])
    .onConflict((c) =>
      c.column("id").doUpdateSet((eb) => ({
        place_id: eb.ref("excluded.place_id"),
        due_at_ms: eb.ref("excluded.due_at_ms"),
        done_at_ms: eb.ref("excluded.done_at_ms"),
        doc: eb.ref("excluded.doc"),
      })),
    )
    .execute();
}
