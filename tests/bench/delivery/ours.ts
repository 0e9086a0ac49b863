/** Delivery itself, on a store filled with owners, their heaters, and what is due. */
import { type Kysely, sql } from "kysely";
import { deliver, type DeliverDeps } from "../../../src/delivery/deliver.ts";
import { silent } from "../../../src/delivery/log.ts";
import type { Store } from "../../../src/records/ports.ts";
import type { Snapshot } from "../../../src/records/types.ts";
import type { Engine } from "../../../src/store/engine.ts";
import { openEngine, storeOn } from "../../../src/store/open.ts";
import { decided, fireOf, heaterOf, NOW, say, saying, writeFire, writeHeater } from "../../store/made.ts";

export const BATCH = 50;
const OWNERS = 500;
const FIRES = 3;

export interface Filled {
  readonly engine: Engine;
  readonly store: Store;
  readonly owners: readonly Snapshot[];
}

export async function opened(location: string): Promise<Filled> {
  const engine = await openEngine(location);
  const store = storeOn(engine);
  const owners: Snapshot[] = [];
  for (let n = 0; n < OWNERS; n++) {
    const heater = await say(store, `owner ${n}`, (s) => ({ writes: [writeHeater(heaterOf(s))] }));
    owners.push(heater);
    const fires = Array.from({ length: FIRES }, (_, i) => writeFire(fireOf(heater, NOW - (i + 1) * 86_400_000, 10, { id: `fire ${n}/${i}` })));
    await say(store, `owner ${n}`, () => ({ writes: fires }));
  }
  return { engine, store, owners };
}

/** @param table `due`: to be looked at and decided; `outbox`: answers that wait to be sent */
export async function fill({ engine, owners }: Filled, table: "due" | "outbox", rows: number): Promise<void> {
  const times = { kind: "reminder", due_at_ms: NOW, again_at_ms: NOW, useful_until_ms: NOW + 86_400_000 };
  const answer = JSON.stringify({ answer: saying("weigh the wood") });
  for (let from = 0; from < rows; from += 500) {
    const some = Array.from({ length: Math.min(500, rows - from) }, (_, i) => {
      const { person, place } = owners[(from + i) % owners.length] as Snapshot;
      return { key: `k${from + i}`, ...times, person_id: person.id, place_id: place.id, attempts: 0, place };
    });
    await engine.write((tx) =>
      table === "due"
        ? tx.insertInto("due").values(some.map(({ place: _, ...row }) => ({ ...row, doc: "{}" }))).execute()
        : tx
            .insertInto("outbox")
            .values(some.map(({ place, ...row }) => ({ ...row, network: place.network, network_place_id: place.network_id, state: "pending" as const, maybe_repeat: 0, made_at_ms: NOW, doc: answer })))
            .execute(),
    );
  }
}

export async function empty({ engine }: Filled): Promise<void> {
  for (const table of ["due", "outbox"] as const) await engine.db.deleteFrom(table).execute();
  if (engine.kind === "postgres") for (const table of ["due", "outbox", "talks"]) await sql.raw(`vacuum ${table}`).execute(engine.db);
}

export function deliveryOn(store: Store, sent: () => void, now_ms = NOW + 1000): DeliverDeps {
  return {
    store, log: silent, batch: BATCH, random: () => 0.5, windows_ms: { lines: 60_000 },
    clock: { now: () => now_ms, monotonic: () => performance.now() },
    decideDue: (_snapshot, row) => decided({ answer: saying(row.key) }),
    reader: { locale: "en", system: "metric", timezone: "UTC" },
    outlets: [
      {
        network: "lines",
        async send() {
          sent();
          return { sent: true, native_id: "event" };
        },
      },
    ],
  };
}

/** @returns milliseconds until every row is sent, and its mark is kept */
export async function drain({ store, engine }: Filled, rows: number): Promise<number> {
  let sent = 0;
  const deps = deliveryOn(store, () => void sent++);
  const started = performance.now();
  await deliver(deps);
  const ms = performance.now() - started;
  const { done } = await engine.db.selectFrom("outbox").select(({ fn }) => fn.countAll<number>().as("done")).where("state", "=", "sent").executeTakeFirstOrThrow();
  if (sent !== rows || Number(done) !== rows) throw new Error(`${sent} sent and ${done} marked of ${rows}`);
  return ms;
}

const CHUNK = 50_000;

/** Due rows number `from` to `to`, each for much later. */
export async function laterRows({ engine, owners }: Filled, from: number, to: number): Promise<void> {
  const [{ person, place }] = owners as [Snapshot];
  const at = `${NOW + 86_400_000} + n.i * 7`;
  const db = engine.db as unknown as Kysely<unknown>;
  await db.connection().execute(async (one) => {
    // the references are sound, and checking a million of them is not what is measured
    if (engine.kind === "postgres") await sql`set session_replication_role = replica`.execute(one);
    for (let start = from; start < to; start += CHUNK) {
      await sql
        .raw(
          `insert into due (key, kind, due_at_ms, again_at_ms, useful_until_ms, person_id, place_id, attempts, doc)
           with recursive n(i) as (select ${start} union all select i + 1 from n where i < ${Math.min(start + CHUNK, to) - 1})
           select 'later:' || n.i, 'reminder', ${at}, ${at}, ${at} + 86400000, '${person.id}', '${place.id}', 0, '{}' from n`,
        )
        .execute(one);
    }
    if (engine.kind === "postgres") await sql`set session_replication_role = origin`.execute(one);
    await sql`analyze`.execute(one);
  });
}
