/** Groups: which places belong together, who talks in them, and the one-time codes by which a place is linked. */
import type { Group, LinkCode } from "../records/group.ts";
import type { PlaceRow } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { unpack } from "./json.ts";

interface Row {
  readonly id: string;
  readonly network: string;
  readonly network_id: string;
  readonly kind: "private" | "group";
  readonly person_id: string | null;
  readonly group_id: string | null;
  readonly doc: string;
}

/** A room is a group by itself until it is linked; a private place belongs to none until then. */
export const groupOf = ({ id, kind, group_id }: Pick<Row, "id" | "kind" | "group_id">): string | null => group_id ?? (kind === "group" ? id : null);

function placeRow({ id, network, network_id, kind, person_id, group_id, doc }: Row): PlaceRow {
  const { name } = unpack<{ name?: string }>(doc);
  return { id, network, network_id, kind, ...(name ? { name } : {}), ...(group_id ? { group_id } : {}), ...(person_id ? { person_id } : {}) };
}

/** The groups in whose places somebody has talked; the one of `here` first, though nothing was said there before. */
export async function groupsOf(db: Db, person_id: string, here: PlaceRow): Promise<Group[]> {
  const talked = await db
    .selectFrom("talks as t")
    .innerJoin("places as p", "p.id", "t.place_id")
    .select(["p.id", "p.kind", "p.group_id"])
    .where("t.person_id", "=", person_id)
    .where((eb) => eb.or([eb("p.kind", "=", "group"), eb("p.group_id", "is not", null)]))
    .execute();
  const first = groupOf({ id: here.id, kind: here.kind, group_id: here.group_id ?? null });
  const ids = [...new Set([first, ...talked.map(groupOf)].filter((id) => id !== null))];
  return groups(db, ids);
}

/** @returns in the order of the ids */
export async function groups(db: Db, ids: readonly string[]): Promise<Group[]> {
  if (ids.length === 0) return [];
  const rows = await db
    .selectFrom("places")
    .select(["id", "network", "network_id", "kind", "person_id", "group_id", "doc"])
    .where((eb) => eb.or([eb("id", "in", ids), eb("group_id", "in", ids)]))
    .orderBy("id")
    .execute();
  return ids.flatMap((id) => {
    const places = rows.filter((row) => groupOf(row) === id).map(placeRow);
    const root = places.find((place) => place.id === id);
    const name = (root?.kind === "group" ? root.name : undefined) ?? places.find((place) => place.kind === "group" && place.name)?.name;
    return places.length > 0 ? [{ id, places, ...(name ? { name } : {}) }] : [];
  });
}

export async function writeLinkCode(tx: Tx, link: LinkCode): Promise<void> {
  await tx.deleteFrom("link_codes").where("place_id", "=", link.place_id).execute();
  await tx.insertInto("link_codes").values(link).execute();
}

/** Codes asked for, with the groups they lead to. */
export async function linksOf(db: Db, codes: readonly string[]): Promise<(LinkCode & { group: Group })[]> {
  if (codes.length === 0) return [];
  const rows = await db.selectFrom("link_codes").selectAll().where("code", "in", codes).execute();
  const found = await groups(db, [...new Set(rows.map((row) => row.group_id))]);
  return rows.flatMap((row) => {
    const group = found.find(({ id }) => id === row.group_id);
    return group ? [{ ...row, group }] : [];
  });
}

/**
 * The code is used up. What the place kept as a group by itself ends: its members agreed to that group and not to this one.
 * @throws Stale when somebody else used it meanwhile
 */
export async function linkPlace(tx: Tx, code: string, place_id: string, group_id: string): Promise<void> {
  const { numDeletedRows } = await tx.deleteFrom("link_codes").where("code", "=", code).executeTakeFirst();
  if (numDeletedRows === 0n) throw new Stale("the code was used meanwhile");
  for (const table of ["cards", "winter_members", "winter_weeks", "group_lists", "group_entries"] as const) await tx.deleteFrom(table).where("group_id", "=", place_id).execute();
  await tx.updateTable("places").set({ group_id }).where("id", "in", [place_id, group_id]).execute();
}

export async function unlinkPlace(tx: Tx, place_id: string): Promise<void> {
  await tx.updateTable("places").set({ group_id: null }).where("id", "=", place_id).execute();
}
