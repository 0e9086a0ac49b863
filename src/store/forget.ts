/**
 * Forgetting somebody: every row of theirs goes. A heater they alone fired goes with its fires; one they shared passes to whoever has
 * fired it longest after them, with its fires (others need the hours since the last one) but without their name and their words.
 */
import type { Fire, Guide, Heater, Home } from "../records/types.ts";
import { forgetPictures } from "./album.ts";
import { forgetBuilder } from "./builders.ts";
import type { Tx } from "./engine.ts";
import { forgetInGroups } from "./group-forget.ts";
import { heaterIds, heaters, home } from "./heaters.ts";
import { pack, unpack } from "./json.ts";
import { namesOf } from "./people.ts";
import { forgetSaidBy } from "./place-rules.ts";

/** stands in a shared log for somebody who was forgotten */
export const FORGOTTEN = "forgotten";

export async function forget(tx: Tx, person_id: string, now_ms: number): Promise<void> {
  const name = (await namesOf(tx, [person_id])).get(person_id);
  const theirs = await heaters(tx, await heaterIds(tx, person_id, undefined));
  const owned = await home(tx, person_id);

  for (const { heater } of theirs) {
    const [heir] = heater.member_ids.filter((id) => id !== person_id);
    if (heir === undefined) await tx.deleteFrom("heaters").where("id", "=", heater.id).execute();
    else await passOn(tx, heater, person_id, heir, name, owned.version > 0 ? owned.home : null);
  }
  // a heater they own without firing it any more
  await tx.deleteFrom("heaters").where("owner_id", "=", person_id).execute();

  const others = theirs.flatMap(({ heater }) => heater.member_ids).filter((id) => id !== person_id);
  if (name && others.length > 0) await forgetNameIn(tx, others, name);

  await forgetBuilder(tx, person_id, FORGOTTEN);
  await forgetPictures(tx, person_id);
  await forgetSaidBy(tx, person_id, FORGOTTEN);
  await forgetInGroups(tx, person_id, FORGOTTEN, now_ms);
  await tx.deleteFrom("inbox").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("outbox").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("due").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("reminders").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("guides").where("watch_id", "=", person_id).execute();
  await tx.deleteFrom("fires").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("talks").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("homes").where("owner_id", "=", person_id).execute();
  await tx.deleteFrom("heater_members").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("identities").where("person_id", "=", person_id).execute();
  await tx
    .deleteFrom("places")
    .where("person_id", "=", person_id)
    .where(({ not, exists, selectFrom }) =>
      not(exists(selectFrom("talks").select("talks.place_id").whereRef("talks.place_id", "=", "places.id"))),
    )
    .execute();
  await tx.updateTable("places").set({ person_id: null }).where("person_id", "=", person_id).execute();
  await tx.deleteFrom("people").where("id", "=", person_id).execute();
}

async function passOn(
  tx: Tx,
  heater: Heater,
  from: string,
  heir: string,
  name: string | undefined,
  home_of_owner: Home | null,
): Promise<void> {
  const owned = heater.owner_id === from;
  const { facts, upkeep, rules } = withoutName(heater, from, name);
  await tx
    .updateTable("heaters")
    .set((eb) => ({ owner_id: owned ? heir : heater.owner_id, version: eb("version", "+", 1), doc: pack({ facts, upkeep, rules }) }))
    .where("id", "=", heater.id)
    .execute();
  // what the owner agreed to with a builder was the owner's to agree to
  if (owned) for (const table of ["builders", "builder_invitations"] as const) await tx.deleteFrom(table).where("heater_id", "=", heater.id).execute();
  if (owned && home_of_owner) await passHome(tx, home_of_owner, heir);

  const fires = await tx
    .selectFrom("fires")
    .select(["id", "doc"])
    .where("heater_id", "=", heater.id)
    .where("person_id", "=", from)
    .execute();
  for (const { id, doc } of fires) {
    const { note: _, ...kept } = unpack<Fire["facts"]>(doc);
    await tx
      .updateTable("fires")
      .set({ person_id: FORGOTTEN, doc: pack(kept) })
      .where("id", "=", id)
      .execute();
  }
  await passWatch(tx, heater.id, from, owned ? heir : heater.owner_id);
}

/** A fire that burns now keeps its guide: check-ins go on to the heir where they have a place of their own. */
async function passWatch(tx: Tx, heater_id: string, from: string, to: string): Promise<void> {
  const watched = await tx
    .selectFrom("guides")
    .selectAll()
    .where("heater_id", "=", heater_id)
    .where("watch_id", "=", from)
    .executeTakeFirst();
  const place =
    watched &&
    (await tx
      .selectFrom("talks as t")
      .innerJoin("places as p", "p.id", "t.place_id")
      .select("p.id")
      .where("t.person_id", "=", to)
      .where("p.kind", "=", "private")
      .orderBy("t.updated_at_ms", "desc")
      .executeTakeFirst());
  if (!watched || !place) return;
  const { version, doc }: { version: number; doc: string } = watched;
  await tx
    .updateTable("guides")
    .set({ watch_id: to, place_id: place.id, version: version + 1, doc: pack(unpack<Guide["state"]>(doc)) })
    .where("heater_id", "=", heater_id)
    .execute();
  const to_heir = { person_id: to, place_id: place.id, lease: null, lease_until: null };
  await tx.updateTable("due").set(to_heir).where("person_id", "=", from).where("kind", "=", "guide-check-in").execute();
}

function withoutName(
  { facts, upkeep, rules }: Heater,
  person_id: string,
  name: string | undefined,
): Pick<Heater, "facts" | "upkeep" | "rules"> {
  const { name: called, ...kept } = facts;
  return {
    upkeep,
    facts: called && !mentions(called, name) ? facts : kept,
    rules: rules.map((rule) => (rule.said_by === person_id || mentions(rule.said_by, name) ? { ...rule, said_by: FORGOTTEN } : rule)),
  };
}

/** What the heater's answers need of the house, without the words somebody wrote. */
async function passHome(tx: Tx, { house, alarms, wood }: Home, heir: string): Promise<void> {
  const alarm = (one: Home["alarms"]["co"]) => one && { present: one.present, tested_on: one.tested_on, ends_on: one.ends_on };
  const doc = pack({
    house,
    weather: [],
    alarms: { co: alarm(alarms.co), smoke: alarm(alarms.smoke) },
    wood: wood.map(({ name: _, species: __, ...kept }) => kept),
  } satisfies Omit<Home, "owner_id">);
  await tx
    .insertInto("homes")
    .values({ owner_id: heir, version: 1, doc })
    .onConflict((c) => c.column("owner_id").doNothing())
    .execute();
}

/** Answers given to the others of a heater, kept against repeats only, may name them. */
async function forgetNameIn(tx: Tx, people: readonly string[], name: string): Promise<void> {
  const rows = await tx.selectFrom("inbox").select(["message_key", "doc"]).where("person_id", "in", people).execute();
  const keys = rows.filter(({ doc }) => mentions(doc, name)).map(({ message_key }) => message_key);
  for (const key of keys) await tx.deleteFrom("inbox").where("message_key", "=", key).execute();
}

const mentions = (words: string, name: string | undefined): boolean => !!name && words.toLowerCase().includes(name.toLowerCase());
