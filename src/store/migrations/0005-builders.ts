/** Heater builders: invitations on their way, and who is the builder of what. */
import type { Kysely } from "kysely";
import type { Kinds } from "./index.ts";

export async function up({ schema }: Kysely<unknown>, { key }: Kinds): Promise<void> {
  await schema
    .createTable("builder_invitations")
    .addColumn("code", key, (c) => c.primaryKey())
    .addColumn("heater_id", key, (c) => c.notNull().references("heaters.id").onDelete("cascade"))
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("place_id", key, (c) => c.notNull().references("places.id").onDelete("cascade"))
    .addColumn("ends_at_ms", "bigint", (c) => c.notNull())
    .execute();
  await schema.createIndex("builder_invitations_heater").on("builder_invitations").column("heater_id").execute();

  await schema
    .createTable("builders")
    .addColumn("heater_id", key, (c) => c.notNull().references("heaters.id").onDelete("cascade"))
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("place_id", key, (c) => c.notNull().references("places.id").onDelete("cascade"))
    .addColumn("since_ms", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("builders_key", ["heater_id", "person_id"])
    .execute();
  await schema.createIndex("builders_person").on("builders").column("person_id").execute();
}
