/** What a message or a due row needs of groups, in the same consistent look as the rest of the snapshot. */
import type { Group, GroupLook, GroupWanted } from "../records/group.ts";
import type { Tx } from "./engine.ts";
import { cards, cardsOf, usedCodes } from "./group-cards.ts";
import { entries, lists } from "./group-lists.ts";
import { freezing, latestWeeks, winterOf } from "./group-winter.ts";
import { linksOf } from "./groups.ts";
import { namesOf } from "./people.ts";

export async function groupLook(tx: Tx, person_id: string, groups: readonly Group[], wanted: GroupWanted, network: string, now_ms: number): Promise<GroupLook> {
  const ids = groups.map(({ id }) => id);
  const { codes = [], links = [], owner, winter_of } = wanted;
  return {
    cards: await cards(tx, ids, codes),
    used: await usedCodes(tx, ids),
    own: await cardsOf(tx, person_id),
    lists: await lists(tx, ids),
    entries: await entries(tx, ids),
    winter: await winterOf(tx, person_id),
    weeks: await latestWeeks(tx, ids),
    private_place: await privatePlace(tx, person_id, network),
    owners: owner === undefined ? [] : await ownersCalled(tx, ids, owner),
    links: await linksOf(tx, links),
    ...(winter_of === undefined ? {} : { freezing: await freezing(tx, winter_of, now_ms) }),
  };
}

async function privatePlace(tx: Tx, person_id: string, network: string): Promise<string | null> {
  const found = await tx.selectFrom("places").select("id").where("person_id", "=", person_id).where("kind", "=", "private").where("network", "=", network).orderBy("id").executeTakeFirst();
  return found?.id ?? null;
}

/** People of these groups by the name their network gave them, with the heater they own. */
async function ownersCalled(tx: Tx, groups: readonly string[], called: string): Promise<GroupLook["owners"]> {
  if (groups.length === 0) return [];
  const rows = await tx
    .selectFrom("talks as t")
    .innerJoin("places as p", "p.id", "t.place_id")
    .innerJoin("heaters as h", "h.owner_id", "t.person_id")
    .select(["t.person_id", "h.id"])
    .where((eb) => eb.or([eb("p.id", "in", groups), eb("p.group_id", "in", groups)]))
    .execute();
  const names = await namesOf(tx, [...new Set(rows.map(({ person_id }) => person_id))]);
  const found: GroupLook["owners"][number][] = [];
  for (const [person_id, name] of names) {
    if (name.toLowerCase() !== called.toLowerCase()) continue;
    const place = await tx.selectFrom("places").select("id").where("person_id", "=", person_id).where("kind", "=", "private").orderBy("id").executeTakeFirst();
    const heater_id = rows.find((row) => row.person_id === person_id)?.id ?? "";
    const members = await tx.selectFrom("heater_members").select("person_id").where("heater_id", "=", heater_id).execute();
    if (place) found.push({ person_id, name, place_id: place.id, member_ids: members.map((one) => one.person_id) });
  }
  return found;
}
