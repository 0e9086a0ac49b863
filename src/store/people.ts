/** People, their accounts on networks, and the places they talk in. */
import type { Identity, Place } from "../message.ts";
import { UnknownPerson } from "../records/ports.ts";
import type { Person, PlaceRow } from "../records/types.ts";
import type { Db, Engine, Tx } from "./engine.ts";
import { Stale } from "./errors.ts";
import { personId, placeId } from "./ids.ts";
import { column, pack, unpack } from "./json.ts";

type PersonDoc = Omit<Person, "id" | "created_at_ms">;
interface PlaceDoc {
  readonly name?: string;
  readonly encrypted?: boolean | null;
}
interface IdentityDoc {
  readonly name?: string;
}

export async function enter(
  engine: Engine,
  identity: Identity,
  place: Place,
  now_ms: number,
): Promise<{ person_id: string; place_id: string }> {
  const known = await engine.single((db) => find(db, identity, place));
  if (known.person_id && known.place_id && known.fresh) return { person_id: known.person_id, place_id: known.place_id };
  return engine.write(async (tx) => {
    const person_id = await enterPerson(tx, identity, now_ms);
    return { person_id, place_id: await enterPlace(tx, place, person_id) };
  });
}

/** `fresh`: nothing about them has changed since */
async function find(db: Db, identity: Identity, place: Place) {
  const found = await identityRow(db, identity.network, identity.id);
  const there = await db
    .selectFrom("places")
    .select(["id", "kind", "doc"])
    .where("id", "=", placeId(place.network, place.id))
    .executeTakeFirst();
  const fresh = found?.doc === identityDoc(identity) && there?.doc === placeDoc(place) && there.kind === place.kind;
  return { person_id: found?.person_id, place_id: there?.id, fresh };
}

async function enterPerson(tx: Tx, identity: Identity, now_ms: number): Promise<string> {
  const doc = identityDoc(identity);
  const found = await identityRow(tx, identity.network, identity.id);
  if (!found) {
    const id = personId(identity.network, identity.id);
    await tx
      .insertInto("people")
      .values({ id, created_at_ms: now_ms, version: 1, doc: pack({ name: identity.name, facts: {} } satisfies PersonDoc) })
      .onConflict((c) => c.column("id").doNothing())
      .execute();
    await tx
      .insertInto("identities")
      .values({ network: column(identity.network), network_id: column(identity.id), person_id: id, doc })
      .onConflict((c) => c.columns(["network", "network_id"]).doNothing())
      .execute();
    return id;
  }
  if (found.doc !== doc) {
    await tx
      .updateTable("identities")
      .set({ doc })
      .where("network", "=", column(identity.network))
      .where("network_id", "=", column(identity.id))
      .execute();
    const row = await tx.selectFrom("people").select(["version", "doc"]).where("id", "=", found.person_id).executeTakeFirstOrThrow();
    const person = unpack<PersonDoc>(row.doc);
    await tx
      .updateTable("people")
      .set({ version: row.version + 1, doc: pack({ ...person, name: identity.name ?? person.name }) })
      .where("id", "=", found.person_id)
      .execute();
  }
  return found.person_id;
}

async function enterPlace(tx: Tx, place: Place, person_id: string): Promise<string> {
  const id = placeId(place.network, place.id);
  const now = { kind: place.kind, person_id: place.kind === "private" ? person_id : null, doc: placeDoc(place) };
  await tx
    .insertInto("places")
    .values({ id, network: column(place.network), network_id: column(place.id), group_id: null, ...now })
    .onConflict((c) => c.column("id").doUpdateSet(now))
    .execute();
  return id;
}

const identityRow = (db: Db, network: string, id: string) =>
  db
    .selectFrom("identities")
    .select(["person_id", "doc"])
    .where("network", "=", column(network))
    .where("network_id", "=", column(id))
    .executeTakeFirst();
const identityDoc = ({ name }: Identity): string => pack({ name } satisfies IdentityDoc);
const placeDoc = ({ name, encrypted }: Place): string => pack({ name, encrypted } satisfies PlaceDoc);

export async function person(db: Db, id: string): Promise<{ person: Person; version: number }> {
  const row = await db.selectFrom("people").selectAll().where("id", "=", id).executeTakeFirst();
  if (!row) throw new UnknownPerson(`no person ${id} among the records`);
  return { version: row.version, person: { id, created_at_ms: row.created_at_ms, ...unpack<PersonDoc>(row.doc) } };
}

export async function personByIdentity(db: Db, network: string, network_id: string): Promise<Person | null> {
  const found = await identityRow(db, network, network_id);
  return found ? (await person(db, found.person_id)).person : null;
}

export async function namesOf(db: Db, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await db.selectFrom("people").select(["id", "doc"]).where("id", "in", ids).execute();
  return new Map(
    rows.flatMap(({ id, doc }) => {
      const { name } = unpack<PersonDoc>(doc);
      return name ? [[id, name] as const] : [];
    }),
  );
}

export async function place(db: Db, id: string): Promise<PlaceRow> {
  const row = await db.selectFrom("places").selectAll().where("id", "=", id).executeTakeFirst();
  if (!row) throw new UnknownPerson(`no place ${id} among the records`);
  const { name } = unpack<PlaceDoc>(row.doc);
  const { network, network_id, kind, group_id } = row;
  return { id, network, network_id, kind, ...(name ? { name } : {}), ...(group_id ? { group_id } : {}) };
}

/** @param version as the snapshot saw it; undefined for somebody the snapshot did not hold */
export async function writePerson(tx: Tx, { id, created_at_ms: _, ...doc }: Person, version: number | undefined): Promise<void> {
  const update = tx
    .updateTable("people")
    .set((eb) => ({ doc: pack(doc satisfies PersonDoc), version: eb("version", "+", 1) }))
    .where("id", "=", id);
  const { numUpdatedRows } = await (version === undefined ? update : update.where("version", "=", version)).executeTakeFirst();
  if (numUpdatedRows === 0n) throw new Stale(`person ${id} changed meanwhile`);
}
