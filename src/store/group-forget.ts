/** Somebody who is forgotten leaves no reckoning, no line and no part in a winter behind; what a group goes on with passes to another member. */
import type { Tx } from "./engine.ts";
import { cardsOf, withdrawCard } from "./group-cards.ts";

export async function forgetInGroups(tx: Tx, person_id: string, stands_for: string, now_ms: number): Promise<void> {
  for (const { group_id, code } of await cardsOf(tx, person_id)) await withdrawCard(tx, group_id, code, now_ms, true);
  await tx.updateTable("cards").set({ person_id: null }).where("person_id", "=", person_id).execute();
  await tx.updateTable("group_lists").set({ opened_by: stands_for }).where("opened_by", "=", person_id).execute();
  await tx.deleteFrom("group_entries").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("winter_members").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("link_codes").where("made_by", "=", person_id).execute();
  await passOn(tx, person_id);
}

/** The week's digest, agreed days, and word that a card was withdrawn are the group's, whoever's name they stood under. */
async function passOn(tx: Tx, person_id: string): Promise<void> {
  const due = await tx.selectFrom("due").select(["key", "place_id"]).where("person_id", "=", person_id).where("kind", "in", ["group-week", "group-day"]).execute();
  for (const { key, place_id } of due) {
    const heir = await another(tx, person_id, place_id);
    if (heir) await tx.updateTable("due").set({ person_id: heir, lease: null, lease_until: null }).where("key", "=", key).execute();
  }
  const waiting = await tx
    .selectFrom("outbox")
    .select(["key", "place_id", "kind"])
    .where("person_id", "=", person_id)
    .where("state", "!=", "sent")
    .where((eb) => eb.or([eb("kind", "in", ["group-week", "group-day"]), eb("key", "like", "card-gone:%"), eb("key", "like", "winter:%")]))
    .execute();
  for (const { key, place_id } of waiting) {
    const heir = await another(tx, person_id, place_id);
    if (heir) await tx.updateTable("outbox").set({ person_id: heir }).where("key", "=", key).execute();
  }
}

/** Somebody else who talks in this place, or in another of its group. */
async function another(tx: Tx, person_id: string, place_id: string): Promise<string | null> {
  const here = await tx.selectFrom("places").select(["id", "group_id"]).where("id", "=", place_id).executeTakeFirst();
  const group_id = here?.group_id ?? place_id;
  const found = await tx
    .selectFrom("talks as t")
    .innerJoin("places as p", "p.id", "t.place_id")
    .select("t.person_id")
    .where("t.person_id", "!=", person_id)
    .where((eb) => eb.or([eb("p.id", "=", place_id), eb("p.id", "=", group_id), eb("p.group_id", "=", group_id)]))
    .orderBy((eb) => eb.case().when("p.id", "=", place_id).then(0).else(1).end())
    .orderBy("t.person_id")
    .executeTakeFirst();
  return found?.person_id ?? null;
}
