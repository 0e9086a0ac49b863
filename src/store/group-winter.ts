/** The group's winter: who takes part from which week on, what is needed to freeze a week, and what was published. */
import type { GroupLook, WinterHeater, WinterMember, WinterWeek } from "../records/group.ts";
import type { Fire } from "../records/types.ts";
import { lastWholeWeek } from "../records/weeks.ts";
import type { Db, Tx } from "./engine.ts";
import { heaterIds, heaters, home } from "./heaters.ts";
import { pack, unpack } from "./json.ts";
import { person } from "./people.ts";

export async function writeWinterMember(tx: Tx, { group_id, person_id, from_week, until_week }: WinterMember): Promise<void> {
  const now = { from_week, until_week: until_week ?? null };
  await tx
    .insertInto("winter_members")
    .values({ group_id, person_id, ...now })
    .onConflict((c) => c.columns(["group_id", "person_id"]).doUpdateSet(now))
    .execute();
}

export async function winterOf(db: Db, person_id: string): Promise<WinterMember[]> {
  const rows = await db.selectFrom("winter_members").selectAll().where("person_id", "=", person_id).execute();
  return rows.map(({ until_week, ...row }) => ({ ...row, ...(until_week === null ? {} : { until_week }) }));
}

export async function latestWeeks(db: Db, groups: readonly string[]): Promise<WinterWeek[]> {
  const found: WinterWeek[] = [];
  for (const group_id of groups) {
    const rows = await db.selectFrom("winter_weeks").selectAll().where("group_id", "=", group_id).orderBy("week", "desc").limit(2).execute();
    found.push(...rows.map(({ doc, ...row }) => ({ ...row, facts: unpack<WinterWeek["facts"]>(doc) })));
  }
  return found;
}

/** Written once; whoever comes second finds it. */
export async function writeWeek(tx: Tx, { group_id, week, facts }: WinterWeek): Promise<void> {
  await tx
    .insertInto("winter_weeks")
    .values({ group_id, week, doc: pack(facts) })
    .onConflict((c) => c.columns(["group_id", "week"]).doNothing())
    .execute();
}

/** The last whole week of those who took part in it. A heater counts once, however many fire it. */
export async function freezing(tx: Tx, group_id: string, now_ms: number): Promise<GroupLook["freezing"]> {
  const { week, from_ms, to_ms } = lastWholeWeek(now_ms);
  const members = await tx
    .selectFrom("winter_members")
    .select("person_id")
    .where("group_id", "=", group_id)
    .where("from_week", "<=", week)
    .where((eb) => eb.or([eb("until_week", "is", null), eb("until_week", ">", week)]))
    // whose room or private place was unlinked is no longer of the group
    .where((eb) =>
      eb(
        "person_id",
        "in",
        eb
          .selectFrom("talks as t")
          .innerJoin("places as p", "p.id", "t.place_id")
          .select("t.person_id")
          .where((of) => of.or([of("p.id", "=", group_id), of("p.group_id", "=", group_id)])),
      ),
    )
    .orderBy("person_id")
    .execute();
  const meant = new Set<string>();
  for (const { person_id } of members) {
    const [heater_id] = await heaterIds(tx, person_id, (await person(tx, person_id)).person.heater_id);
    if (heater_id !== undefined) meant.add(heater_id);
  }
  const found: WinterHeater[] = [];
  for (const { heater } of await heaters(tx, [...meant].sort())) {
    const rows = await tx.selectFrom("fires").select(["lit_at_ms", "doc"]).where("heater_id", "=", heater.id).where("lit_at_ms", ">=", from_ms).where("lit_at_ms", "<", to_ms).orderBy("lit_at_ms").execute();
    const fires = rows.map(({ lit_at_ms, doc }) => ({ lit_at_ms, facts: unpack<Fire["facts"]>(doc) }));
    found.push({ heater: { id: heater.id, upkeep: heater.upkeep }, weather: (await home(tx, heater.owner_id)).home.weather, fires });
  }
  const ends = await tx.selectFrom("winter_members").select("person_id").where("group_id", "=", group_id).where("until_week", "is", null).execute();
  return { group_id, week, heaters: found, members: ends.length };
}
