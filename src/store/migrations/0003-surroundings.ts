/** What surrounds the fire: a group's burn bans, and the pictures people keep of their heater. */
import type { Kysely } from "kysely";
import type { Kinds } from "./index.ts";

export async function up({ schema }: Kysely<unknown>, { key, bytes }: Kinds): Promise<void> {
  await schema
    .createTable("place_rules")
    .addColumn("place_id", key, (c) => c.primaryKey().references("places.id").onDelete("cascade"))
    .addColumn("said_by", key, (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();

  await schema
    .createTable("album")
    .addColumn("id", key, (c) => c.primaryKey())
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("heater_id", key, (c) => c.references("heaters.id").onDelete("cascade"))
    .addColumn("at_ms", "bigint", (c) => c.notNull())
    .addColumn("bytes", bytes, (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("album_person").on("album").columns(["person_id", "at_ms"]).execute();
  await schema.createIndex("album_heater").on("album").columns(["heater_id", "at_ms"]).execute();
}
