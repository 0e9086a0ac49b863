/** People, places, heaters, fires, talks and everything on its way. */
import { type Kysely, sql } from "kysely";
import type { Kinds } from "./index.ts";

export async function up(db: Kysely<unknown>, { key, real }: Kinds): Promise<void> {
  const { schema } = db;

  await schema
    .createTable("people")
    .addColumn("id", key, (c) => c.primaryKey())
    .addColumn("created_at_ms", "bigint", (c) => c.notNull())
    .addColumn("version", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();

  await schema
    .createTable("identities")
    .addColumn("network", key, (c) => c.notNull())
    .addColumn("network_id", key, (c) => c.notNull())
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("doc", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("identities_key", ["network", "network_id"])
    .execute();
  await schema.createIndex("identities_person").on("identities").column("person_id").execute();

  await schema
    .createTable("places")
    .addColumn("id", key, (c) => c.primaryKey())
    .addColumn("network", key, (c) => c.notNull())
    .addColumn("network_id", key, (c) => c.notNull())
    .addColumn("kind", key, (c) => c.notNull())
    .addColumn("person_id", key)
    .addColumn("group_id", key)
    .addColumn("doc", "text", (c) => c.notNull())
    .addUniqueConstraint("places_network_id", ["network", "network_id"])
    .execute();
  await schema.createIndex("places_person").on("places").column("person_id").execute();

  await schema
    .createTable("heaters")
    .addColumn("id", key, (c) => c.primaryKey())
    .addColumn("owner_id", key, (c) => c.notNull().references("people.id"))
    .addColumn("version", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("heaters_owner").on("heaters").column("owner_id").execute();

  await schema
    .createTable("heater_members")
    .addColumn("heater_id", key, (c) => c.notNull().references("heaters.id").onDelete("cascade"))
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("joined_at_ms", "bigint", (c) => c.notNull())
    .addPrimaryKeyConstraint("heater_members_key", ["heater_id", "person_id"])
    .execute();
  await schema.createIndex("heater_members_person").on("heater_members").column("person_id").execute();

  await schema
    .createTable("homes")
    .addColumn("owner_id", key, (c) => c.primaryKey().references("people.id").onDelete("cascade"))
    .addColumn("version", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();

  await schema
    .createTable("fires")
    .addColumn("id", key, (c) => c.primaryKey())
    .addColumn("heater_id", key, (c) => c.notNull().references("heaters.id").onDelete("cascade"))
    .addColumn("person_id", key, (c) => c.notNull())
    .addColumn("lit_at_ms", "bigint", (c) => c.notNull())
    .addColumn("load_kg", real)
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("fires_of_heater").on("fires").columns(["heater_id", "lit_at_ms", "load_kg"]).execute();
  await schema.createIndex("fires_person").on("fires").column("person_id").execute();

  await schema
    .createTable("talks")
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("place_id", key, (c) => c.notNull().references("places.id").onDelete("cascade"))
    .addColumn("version", "bigint", (c) => c.notNull())
    .addColumn("updated_at_ms", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("talks_key", ["person_id", "place_id"])
    .execute();
  await schema.createIndex("talks_place").on("talks").column("place_id").execute();

  await schema
    .createTable("guides")
    .addColumn("heater_id", key, (c) => c.primaryKey().references("heaters.id").onDelete("cascade"))
    .addColumn("fire_id", key, (c) => c.notNull())
    .addColumn("version", "bigint", (c) => c.notNull())
    .addColumn("watch_id", key, (c) => c.notNull().references("people.id"))
    .addColumn("place_id", key, (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("guides_watch").on("guides").column("watch_id").execute();

  await schema
    .createTable("reminders")
    .addColumn("id", key, (c) => c.primaryKey())
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("place_id", key, (c) => c.notNull().references("places.id").onDelete("cascade"))
    .addColumn("due_at_ms", "bigint", (c) => c.notNull())
    .addColumn("done_at_ms", "bigint")
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("reminders_open").on("reminders").columns(["person_id", "done_at_ms", "due_at_ms"]).execute();
  await schema.createIndex("reminders_place").on("reminders").column("place_id").execute();

  await schema
    .createTable("inbox")
    .addColumn("message_key", key, (c) => c.primaryKey())
    .addColumn("person_id", key, (c) => c.references("people.id").onDelete("cascade"))
    .addColumn("at_ms", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("inbox_person").on("inbox").column("person_id").execute();
  await schema.createIndex("inbox_at").on("inbox").column("at_ms").execute();

  await schema
    .createTable("due")
    .addColumn("key", key, (c) => c.primaryKey())
    .addColumn("kind", key, (c) => c.notNull())
    .addColumn("due_at_ms", "bigint", (c) => c.notNull())
    .addColumn("again_at_ms", "bigint", (c) => c.notNull())
    .addColumn("useful_until_ms", "bigint", (c) => c.notNull())
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("place_id", key, (c) => c.notNull().references("places.id").onDelete("cascade"))
    .addColumn("attempts", "bigint", (c) => c.notNull().defaultTo(sql.lit(0)))
    .addColumn("lease", key)
    .addColumn("lease_until", real)
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("due_again").on("due").column("again_at_ms").execute();
  await schema.createIndex("due_person").on("due").column("person_id").execute();
  await schema.createIndex("due_place").on("due").column("place_id").execute();

  await schema
    .createTable("outbox")
    .addColumn("key", key, (c) => c.primaryKey())
    .addColumn("kind", key, (c) => c.notNull())
    .addColumn("due_at_ms", "bigint", (c) => c.notNull())
    .addColumn("again_at_ms", "bigint")
    .addColumn("useful_until_ms", "bigint", (c) => c.notNull())
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("place_id", key, (c) => c.notNull().references("places.id").onDelete("cascade"))
    .addColumn("network", key, (c) => c.notNull())
    .addColumn("network_place_id", key, (c) => c.notNull())
    .addColumn("state", key, (c) => c.notNull())
    .addColumn("attempts", "bigint", (c) => c.notNull().defaultTo(sql.lit(0)))
    .addColumn("maybe_repeat", "bigint", (c) => c.notNull().defaultTo(sql.lit(0)))
    .addColumn("unknown_since_ms", "bigint")
    .addColumn("made_at_ms", "bigint", (c) => c.notNull())
    .addColumn("sent_at_ms", "bigint")
    .addColumn("native_id", key)
    .addColumn("last_error", "text")
    .addColumn("lease", key)
    .addColumn("lease_until", real)
    .addColumn("doc", "text", (c) => c.notNull())
    .execute();
  await schema.createIndex("outbox_waiting").on("outbox").columns(["again_at_ms", "network"]).execute();
  await schema.createIndex("outbox_person").on("outbox").column("person_id").execute();
  await schema.createIndex("outbox_place").on("outbox").column("place_id").execute();
  await schema.createIndex("outbox_sent").on("outbox").column("sent_at_ms").execute();
  await schema.createIndex("outbox_made").on("outbox").column("made_at_ms").execute();
}
