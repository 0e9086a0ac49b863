/** Instants the store knows: the latest there was, the earliest that comes. */
import type { Engine } from "./engine.ts";

export async function lastInstant({ read }: Engine): Promise<number | null> {
  return read(async (tx) => {
    const found = [
      await tx.selectFrom("clock").select("at_ms").executeTakeFirst(),
      await tx
        .selectFrom("inbox")
        .select(({ fn }) => fn.max<number | null>("at_ms").as("at_ms"))
        .executeTakeFirst(),
      await tx
        .selectFrom("outbox")
        .select(({ fn }) => fn.max<number | null>("made_at_ms").as("at_ms"))
        .executeTakeFirst(),
      await tx
        .selectFrom("outbox")
        .select(({ fn }) => fn.max<number | null>("sent_at_ms").as("at_ms"))
        .executeTakeFirst(),
    ].flatMap((row) => (row?.at_ms == null ? [] : [row.at_ms]));
    return found.length > 0 ? Math.max(...found) : null;
  });
}

/** A clock moved by hand has reached this instant. */
export async function noteInstant({ write }: Engine, at_ms: number): Promise<void> {
  await write(async (tx) => {
    await tx
      .insertInto("clock")
      .values({ id: 1, at_ms })
      .onConflict((c) => c.column("id").doUpdateSet({ at_ms }))
      .execute();
  });
}

export async function nextDue({ read, leases }: Engine, networks: readonly string[]): Promise<number | null> {
  return read(async (tx) => {
    const due = await tx.selectFrom("due").select("again_at_ms").where(leases.free()).orderBy("again_at_ms").limit(1).executeTakeFirst();
    const sending =
      networks.length === 0
        ? undefined
        : await tx
            .selectFrom("outbox")
            .select("again_at_ms")
            .where("network", "in", networks)
            .where("again_at_ms", "is not", null)
            .where(leases.free())
            .orderBy("again_at_ms")
            .limit(1)
            .executeTakeFirst();
    const found = [due?.again_at_ms, sending?.again_at_ms].filter((at_ms) => at_ms != null);
    return found.length > 0 ? Math.min(...found) : null;
  });
}

/** Rows that only guard against repeats. What waits is never touched. */
export async function tidy({ write }: Engine, before_ms: number): Promise<number> {
  return write(async (tx) => {
    const answered = await tx.deleteFrom("inbox").where("at_ms", "<", before_ms).executeTakeFirst();
    const sent = await tx.deleteFrom("outbox").where("sent_at_ms", "<", before_ms).executeTakeFirst();
    await tx.deleteFrom("link_codes").where("ends_at_ms", "<", before_ms).execute();
    return Number(answered.numDeletedRows + sent.numDeletedRows);
  });
}
