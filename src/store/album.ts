/** Pictures of heaters, dated. Bytes stand in a column of their own, so that a list of them loads none. */
import type { AlbumEntry } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { pack, unpack } from "./json.ts";

type AlbumDoc = Pick<AlbumEntry, "what" | "media_type" | "words" | "spot" | "width_mm">;
/** An album holds so many of one person; the oldest goes when another comes. */
const MOST = 60;

export async function keepPicture(tx: Tx, { id, person_id, heater_id, at_ms, ...doc }: AlbumEntry, bytes: Uint8Array): Promise<void> {
  await tx
    .insertInto("album")
    .values({ id, person_id, heater_id, at_ms, bytes: Buffer.from(bytes), doc: pack(doc satisfies AlbumDoc) })
    .onConflict((c) => c.column("id").doNothing())
    .execute();
  const rows = await tx.selectFrom("album").select("id").where("person_id", "=", person_id).orderBy("at_ms", "desc").orderBy("id").execute();
  const oldest = rows.slice(MOST).map((row) => row.id);
  if (oldest.length > 0) await tx.deleteFrom("album").where("id", "in", oldest).execute();
}

export async function notePictureWidth(tx: Tx, id: string, person_id: string, width_mm: number): Promise<void> {
  const row = await tx.selectFrom("album").select("doc").where("id", "=", id).where("person_id", "=", person_id).executeTakeFirst();
  if (row) await tx.updateTable("album").set({ doc: pack({ ...unpack<AlbumDoc>(row.doc), width_mm } satisfies AlbumDoc) }).where("id", "=", id).execute();
}

export async function deletePicture(tx: Tx, id: string, person_id: string): Promise<void> {
  await tx.deleteFrom("album").where("id", "=", id).where("person_id", "=", person_id).execute();
}

/** Pictures of the heater by whoever fires it, and the person's own of no heater yet. */
export async function albumOf(db: Db, person_id: string, heater_id: string | null): Promise<AlbumEntry[]> {
  const rows = await db
    .selectFrom("album")
    .select(["id", "person_id", "heater_id", "at_ms", "doc"])
    .where((eb) => {
      const own = eb.and([eb("person_id", "=", person_id), eb("heater_id", "is", null)]);
      return heater_id === null ? own : eb.or([own, eb("heater_id", "=", heater_id)]);
    })
    .orderBy("at_ms", "desc")
    .orderBy("id")
    .limit(MOST)
    .execute();
  return rows.map(({ doc, ...row }) => ({ ...row, ...unpack<AlbumDoc>(doc) }));
}

/** The picture itself, for whoever took it or fires its heater now; null for anybody else, and once it is deleted. */
export async function photoOf(db: Db, id: string, person_id: string): Promise<{ readonly media_type: string; readonly bytes: Uint8Array } | null> {
  const fired = db.selectFrom("heater_members").select("heater_id").where("person_id", "=", person_id);
  const row = await db
    .selectFrom("album")
    .select(["bytes", "doc"])
    .where("id", "=", id)
    .where((eb) => eb.or([eb("person_id", "=", person_id), eb("heater_id", "in", fired)]))
    .executeTakeFirst();
  return row ? { media_type: unpack<AlbumDoc>(row.doc).media_type, bytes: new Uint8Array(row.bytes) } : null;
}

/** Everything a person put in, with the pictures themselves, for their copy. */
export async function picturesOf(db: Db, person_id: string): Promise<Record<string, unknown>[]> {
  const rows = await db.selectFrom("album").selectAll().where("person_id", "=", person_id).orderBy("at_ms").execute();
  return rows.map(({ doc, bytes, ...row }) => ({ ...row, ...unpack<AlbumDoc>(doc), base64: Buffer.from(bytes).toString("base64") }));
}

/** Pictures are the words of whoever took them: they go with that person, also where others fire the same heater. */
export async function forgetPictures(tx: Tx, person_id: string): Promise<void> {
  await tx.deleteFrom("album").where("person_id", "=", person_id).execute();
}
