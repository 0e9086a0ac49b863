/** The latest instant a clock that is moved by hand has reached, so that a new start does not begin before it. */
import type { Kysely } from "kysely";

export async function up({ schema }: Kysely<unknown>): Promise<void> {
  await schema
    .createTable("clock")
    .addColumn("id", "bigint", (c) => c.primaryKey())
    .addColumn("at_ms", "bigint", (c) => c.notNull())
    .execute();
}
