/** Who is the builder of which heater, by the owner's consent, and the invitations that lead there. */
import type { BuilderInvitation } from "../records/ports.ts";
import type { BuilderLink, BuiltHeater, HeaterRule } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { latestFires } from "./fires.ts";
import { heaters } from "./heaters.ts";
import { pack, unpack } from "./json.ts";
import { namesOf } from "./people.ts";

type LinkDoc = Pick<BuilderLink, "owner_id" | "owner_place_id" | "accepted" | "first_fires">;
type Row = { heater_id: string; person_id: string; place_id: string; since_ms: number; doc: string };

/** Heaters a builder looks after; more than a builder has in hand at once. */
const MOST_BUILT = 200;

async function links(db: Db, rows: readonly Row[]): Promise<BuilderLink[]> {
  if (rows.length === 0) return [];
  const opened = rows.map(({ doc, since_ms, ...row }) => ({ ...row, since_ms: Number(since_ms), ...unpack<LinkDoc>(doc) }));
  const names = await namesOf(db, [...new Set(opened.flatMap(({ person_id, owner_id }) => [person_id, owner_id]))]);
  return opened.map((link) => {
    const [name, owner_name] = [names.get(link.person_id), names.get(link.owner_id)];
    return { ...link, ...(name ? { name } : {}), ...(owner_name ? { owner_name } : {}) };
  });
}

export const buildersOf = async (db: Db, heater_id: string): Promise<BuilderLink[]> =>
  links(db, await db.selectFrom("builders").selectAll().where("heater_id", "=", heater_id).orderBy("since_ms").execute());

/** The heaters of owners who accepted this person, with their versions; first fires only where they are shown. */
export async function builtBy(db: Db, person_id: string): Promise<{ built: BuiltHeater; version: number }[]> {
  const rows = await db.selectFrom("builders").selectAll().where("person_id", "=", person_id).orderBy("since_ms").limit(MOST_BUILT).execute();
  const accepted = (await links(db, rows)).filter((link) => link.accepted);
  const found = await heaters(db, accepted.map(({ heater_id }) => heater_id));
  return Promise.all(
    found.flatMap(({ heater, version }) => {
      const link = accepted.find(({ heater_id }) => heater_id === heater.id);
      return link ? [{ link, heater, version }] : [];
    }).map(async ({ link, heater, version }) => ({ version, built: { link, heater, fires: link.first_fires ? await latestFires(db, heater.id) : [] } })),
  );
}

export async function writeInvitation(tx: Tx, person_id: string, row: { code: string; heater_id: string; place_id: string; ends_at_ms: number }): Promise<void> {
  await tx.deleteFrom("builder_invitations").where("heater_id", "=", row.heater_id).execute();
  const { code, heater_id, place_id, ends_at_ms } = row;
  await tx.insertInto("builder_invitations").values({ code, heater_id, place_id, ends_at_ms, person_id }).onConflict((c) => c.column("code").doNothing()).execute();
}

export async function invitation(db: Db, code: string, now_ms: number): Promise<BuilderInvitation | null> {
  const row = await db
    .selectFrom("builder_invitations as i")
    .innerJoin("heaters as h", "h.id", "i.heater_id")
    .select(["i.heater_id", "i.person_id", "i.place_id", "h.owner_id"])
    .where("i.code", "=", code)
    .where("i.ends_at_ms", ">", now_ms)
    .executeTakeFirst();
  if (!row || row.owner_id !== row.person_id) return null;
  const name = (await namesOf(db, [row.owner_id])).get(row.owner_id);
  return { heater_id: row.heater_id, owner_id: row.owner_id, owner_place_id: row.place_id, ...(name ? { owner_name: name } : {}) };
}

/** A link that was asked for uses its invitation up. */
export async function writeBuilder(tx: Tx, { heater_id, person_id, place_id, since_ms, owner_id, owner_place_id, accepted, first_fires }: BuilderLink): Promise<void> {
  const doc = pack({ owner_id, owner_place_id, accepted, first_fires } satisfies LinkDoc);
  await tx.deleteFrom("builder_invitations").where("heater_id", "=", heater_id).execute();
  await tx
    .insertInto("builders")
    .values({ heater_id, person_id, place_id, since_ms, doc })
    .onConflict((c) => c.columns(["heater_id", "person_id"]).doUpdateSet({ doc, place_id }))
    .execute();
}

export const endBuilder = async (tx: Tx, heater_id: string, person_id: string): Promise<void> => {
  await tx.deleteFrom("builders").where("heater_id", "=", heater_id).where("person_id", "=", person_id).execute();
};

export const buildersRowsOf = (db: Db, person_id: string) =>
  db
    .selectFrom("builders")
    .selectAll()
    .where((eb) => eb.or([eb("person_id", "=", person_id), eb("heater_id", "in", eb.selectFrom("heaters").select("id").where("owner_id", "=", person_id))]))
    .execute();

/** A builder's figures keep the heater safe when the builder is forgotten; name, words and telephone go. */
export async function forgetBuilder(tx: Tx, person_id: string, stands_for: string): Promise<void> {
  const rows = await tx.selectFrom("builders").select("heater_id").where("person_id", "=", person_id).execute();
  const unnamed = (rules: readonly HeaterRule[] | undefined): HeaterRule[] =>
    (rules ?? []).map((rule) => {
      if (rule.said_by !== person_id) return rule;
      const { words: _, call: __, close_down: ___, builder: ____, ...kept } = rule;
      return { ...kept, said_by: stands_for };
    });
  for (const { heater } of await heaters(tx, rows.map(({ heater_id }) => heater_id))) {
    const { facts, upkeep, rules, rules_before } = heater;
    const doc = pack({ facts, upkeep, rules: unnamed(rules), ...(rules_before ? { rules_before: unnamed(rules_before) } : {}) });
    await tx.updateTable("heaters").set((eb) => ({ doc, version: eb("version", "+", 1) })).where("id", "=", heater.id).execute();
  }
  await tx.deleteFrom("builders").where("person_id", "=", person_id).execute();
  await tx.deleteFrom("builder_invitations").where("person_id", "=", person_id).execute();
}
