/** The log of a heater's fires. */
import type { Fire, FireStretch, Heater, Snapshot } from "../records/types.ts";
import type { Db, Tx } from "./engine.ts";
import { pack, unpack } from "./json.ts";

const LATEST = 60;

export async function latestFires(db: Db, heater_id: string): Promise<Fire[]> {
  const rows = await db
    .selectFrom("fires")
    .selectAll()
    .where("heater_id", "=", heater_id)
    .orderBy("lit_at_ms", "desc")
    .orderBy("id")
    .limit(LATEST)
    .execute();
  return rows.map(asFire);
}

const SEASON = 2000;

export async function firesSince(db: Db, heater_id: string, from_ms: number): Promise<Fire[]> {
  const rows = await db
    .selectFrom("fires")
    .selectAll()
    .where("heater_id", "=", heater_id)
    .where("lit_at_ms", ">=", from_ms)
    .orderBy("lit_at_ms", "desc")
    .orderBy("id")
    .limit(SEASON)
    .execute();
  return rows.map(asFire);
}

export const asFire = ({
  load_kg: _,
  doc,
  ...row
}: {
  id: string;
  heater_id: string;
  person_id: string;
  lit_at_ms: number;
  load_kg: number | null;
  doc: string;
}): Fire => ({ ...row, facts: unpack<Fire["facts"]>(doc) });

/** Since the sweep: from the start (UTC) of the day the flue was swept; everything when that day is not known. */
export async function totals(db: Db, heater: Heater): Promise<Snapshot["totals"]> {
  const swept_ms = heater.upkeep.swept_on ? Date.parse(heater.upkeep.swept_on) : Number.MIN_SAFE_INTEGER;
  const row = await db
    .selectFrom("fires")
    .where("heater_id", "=", heater.id)
    .select(({ fn, eb }) => [
      fn.countAll<number>().as("fires"),
      fn.coalesce(fn.sum<number>("load_kg"), eb.lit(0)).as("load_kg"),
      fn.countAll<number>().filterWhere("lit_at_ms", ">=", swept_ms).as("since_sweep_fires"),
      fn.coalesce(fn.sum<number>("load_kg").filterWhere("lit_at_ms", ">=", swept_ms), eb.lit(0)).as("since_sweep_kg"),
    ])
    .executeTakeFirstOrThrow();
  return row;
}

const STRETCH_GAP_MS = 30 * 86_400_000;
const STRETCHES_BACK_MS = 4 * 366 * 86_400_000;

/** When the heater was in use. Days are enough: of a fire only its time is read, and nothing at all where `latest` holds every fire. */
export async function stretches(db: Db, heater_id: string, latest: readonly Fire[]): Promise<FireStretch[]> {
  const last_ms = latest[0]?.lit_at_ms;
  if (last_ms === undefined) return [];
  const from_ms = last_ms - STRETCHES_BACK_MS;
  const known_ms = latest.map(({ lit_at_ms }) => lit_at_ms).reverse();
  const times_ms = latest.length < LATEST ? known_ms.filter((lit_at_ms) => lit_at_ms >= from_ms) : await litSince(db, heater_id, from_ms);
  const found: { first_ms: number; last_ms: number; fires: number }[] = [];
  for (const lit_at_ms of times_ms) {
    const open = found.at(-1);
    if (open && lit_at_ms - open.last_ms < STRETCH_GAP_MS) {
      open.last_ms = lit_at_ms;
      open.fires += 1;
    } else found.push({ first_ms: lit_at_ms, last_ms: lit_at_ms, fires: 1 });
  }
  return found;
}

/** The first one first. */
async function litSince(db: Db, heater_id: string, from_ms: number): Promise<number[]> {
  const rows = await db
    .selectFrom("fires")
    .select("lit_at_ms")
    .where("heater_id", "=", heater_id)
    .where("lit_at_ms", ">=", from_ms)
    .orderBy("lit_at_ms")
    .execute();
  return rows.map(({ lit_at_ms }) => lit_at_ms);
}

export async function writeFire(tx: Tx, { id, heater_id, person_id, lit_at_ms, facts }: Fire): Promise<void> {
  const now = { lit_at_ms, load_kg: facts.load_kg ?? null, doc: pack(facts) };
  await tx
    .insertInto("fires")
    .values({ id, heater_id, person_id, ...now })
    .onConflict((c) => c.column("id").doUpdateSet(now))
    .execute();
}

export async function deleteFire(tx: Tx, id: string): Promise<void> {
  await tx.deleteFrom("fires").where("id", "=", id).execute();
}
