/** What a group keeps together: places linked by a code, shared reckonings, the winter's bands, the organiser's lists. */
import type { Kysely } from "kysely";
import type { Kinds } from "./index.ts";

export async function up({ schema }: Kysely<unknown>, { key }: Kinds): Promise<void> {
  await schema.createIndex("places_group").on("places").column("group_id").execute();

  await schema
    .createTable("link_codes")
    .addColumn("code", key, (c) => c.primaryKey())
    .addColumn("group_id", key, (c) => c.notNull())
    .addColumn("place_id", key, (c) => c.notNull().references("places.id").onDelete("cascade"))
    .addColumn("made_by", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("ends_at_ms", "bigint", (c) => c.notNull())
    .execute();

  await schema
    .createTable("cards")
    .addColumn("group_id", key, (c) => c.notNull())
    .addColumn("code", key, (c) => c.notNull())
    .addColumn("person_id", key)
    .addColumn("at_ms", "bigint", (c) => c.notNull())
    .addColumn("withdrawn_at_ms", "bigint")
    .addColumn("doc", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("cards_key", ["group_id", "code"])
    .execute();
  await schema.createIndex("cards_person").on("cards").column("person_id").execute();

  await schema
    .createTable("winter_members")
    .addColumn("group_id", key, (c) => c.notNull())
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("from_week", key, (c) => c.notNull())
    .addColumn("until_week", key)
    .addPrimaryKeyConstraint("winter_members_key", ["group_id", "person_id"])
    .execute();
  await schema.createIndex("winter_members_person").on("winter_members").column("person_id").execute();

  await schema
    .createTable("winter_weeks")
    .addColumn("group_id", key, (c) => c.notNull())
    .addColumn("week", key, (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("winter_weeks_key", ["group_id", "week"])
    .execute();

  await schema
    .createTable("group_lists")
    .addColumn("group_id", key, (c) => c.notNull())
    .addColumn("kind", key, (c) => c.notNull())
    .addColumn("version", "bigint", (c) => c.notNull())
    .addColumn("opened_by", key, (c) => c.notNull())
    .addColumn("at_ms", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("group_lists_key", ["group_id", "kind"])
    .execute();

  await schema
    .createTable("group_entries")
    .addColumn("group_id", key, (c) => c.notNull())
    .addColumn("kind", key, (c) => c.notNull())
    .addColumn("person_id", key, (c) => c.notNull().references("people.id").onDelete("cascade"))
    .addColumn("at_ms", "bigint", (c) => c.notNull())
    .addColumn("doc", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("group_entries_key", ["group_id", "kind", "person_id"])
    .execute();
  await schema.createIndex("group_entries_person").on("group_entries").column("person_id").execute();
}
