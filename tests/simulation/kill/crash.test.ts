/**
 * Lives that end in process, by an error after which nothing of that life does anything any more: quick, so there are many. A network
 * that also fails by itself: accepts without a word, refuses, asks to wait. On PostgreSQL two workers live at the same time.
 * GLEED_CRASHES says how many ends, GLEED_CRASHES_POSTGRES how many there (a fifth when it does not).
 */
import pg from "pg";
import { describe, expect, test } from "vitest";
import { steppedClock } from "../../../src/delivery/clock.ts";
import { type DeliverDeps, deliver } from "../../../src/delivery/deliver.ts";
import { silent } from "../../../src/delivery/log.ts";
import type { Outlet } from "../../../src/delivery/outlet.ts";
import type { Store } from "../../../src/records/ports.ts";
import type { Due } from "../../../src/records/types.ts";
import { StoreBusy } from "../../../src/store/errors.ts";
import { openStore } from "../../../src/store/open.ts";
import { type Kind, MEMORY, POSTGRES } from "../../store/locations.ts";
import { NOW } from "../../store/made.ts";
import { type Random, random as seeded } from "../random.ts";
import { BOUNDARIES, mortalOutlet, mortalStore } from "./life.ts";
import { NETWORKS, Network, WINDOWS_MS } from "./network.ts";
import { decideDue, judge, pause, plant, wordsOf } from "./world.ts";

const CRASHES = Number(process.env.GLEED_CRASHES ?? 600);
const CRASHES_POSTGRES = Number(process.env.GLEED_CRASHES_POSTGRES ?? Math.ceil(CRASHES / 5));
const SEED = Number(process.env.GLEED_SEED ?? 20261125);

class Crash extends Error {}

for (const [kind, workers, crashes] of [
  [MEMORY, 1, CRASHES],
  [POSTGRES, 2, CRASHES_POSTGRES],
] as const) {
  const run = kind.missing ? describe.skip : describe;
  run(`${kind.name}${kind.missing ? ` (${kind.missing})` : ""}, ${workers} at work`, () => {
    const words = `${crashes} ends of the process between two steps: nothing lost, nothing double, nothing stale`;
    test(words, { timeout: 60_000 + crashes * 400 }, () => ends(kind, workers, crashes));
  });
}

/** PostgreSQL's leases end by its own clock, so they are as short as a life there */
const LEASE_MS = { memory: 1000, server: 15 };

async function ends(kind: Kind, workers: number, wanted: number): Promise<void> {
  const random = seeded(SEED);
  const clock = steppedClock(NOW);
  let tick = 0;
  const at = await kind.fresh();
  if (kind === POSTGRES) await withoutWaitingForTheDisk(at.location);
  const stores: Store[] = [];
  for (let n = 0; n < workers; n++) stores.push(await openStore(at.location, { monotonic: () => tick, connections: 2 }));
  const [store] = stores as [Store];
  const lease_ms = kind === POSTGRES ? LEASE_MS.server : LEASE_MS.memory;
  const network = new Network();
  const planted: Due[] = [];
  const died = new Map<string, number>();
  let crashes = 0;

  /** @param end the boundary at which this life ends when it passes it for the n-th time; null for one that ends by itself */
  async function live(store: Store, end: string | null, nth: number, faults: boolean): Promise<void> {
    const transient = random.chance(0.3);
    let passes = 0;
    let over = false;
    const step = (name: string): void => {
      if (!over && (name !== end || ++passes !== nth)) return;
      if (!over) died.set(name, (died.get(name) ?? 0) + 1);
      // the store was busy for once, and the life goes on
      if (transient && !over) throw new StoreBusy(name);
      over = true;
      throw new Crash(name);
    };
    const deps: DeliverDeps = {
      store: mortalStore(store, step),
      clock,
      decideDue,
      random: random.next,
      log: silent,
      lease_ms,
      send_limit_ms: 2000,
      windows_ms: WINDOWS_MS,
      reader: { locale: "en", system: "metric", timezone: "UTC" },
      outlets: NETWORKS.map((name) => mortalOutlet(outletOf(name, network, clock.now, faults ? random : null), step)),
    };
    try {
      await deliver(deps);
    } catch (error) {
      if (!(error instanceof Crash || error instanceof StoreBusy)) throw error;
      crashes++;
    }
  }
  async function together(life: (one: Store) => Promise<void>): Promise<void> {
    const lives = await Promise.allSettled(stores.map(life));
    const failed = lives.find((one) => one.status === "rejected");
    if (failed) throw failed.reason;
    tick += 1001;
    clock.by(pause(random));
  }

  for (let round = 0; crashes < wanted; round++) {
    planted.push(...(await plant(store, `round-${round}`, random.from(1, 3), random, clock.now())));
    for (let lives = random.from(1, 4); lives > 0; lives--)
      await together((one) => live(one, random.of(BOUNDARIES), random.from(1, 3), random.chance(0.5)));
  }
  for (let lives = 0; lives < 40 && (lives < 12 || (await store.nextDue(NETWORKS)) !== null); lives++) {
    await together((one) => live(one, null, 0, false));
    if (kind === POSTGRES) await new Promise((wait) => setTimeout(wait, LEASE_MS.server));
  }

  const { lost, double, stale, repeats, rows } = judge(planted, network.shown);
  expect({ lost, double, stale }, `seed ${SEED}`).toEqual({ lost: [], double: [], stale: [] });
  expect(await store.nextDue(NETWORKS)).toBeNull();
  // the test has bitten: every step was an end, and some ends outlasted the window
  const rare = /lookUp|decideAgain/;
  for (const name of BOUNDARIES.filter((one) => wanted >= 5_000 || (workers === 1 && !rare.test(one))))
    expect(died.get(name) ?? 0, name).toBeGreaterThan(0);
  expect(repeats).toBeGreaterThan(0);
  expect(rows).toBeGreaterThan(wanted / 4);
  if (process.env.GLEED_CRASHES) console.log(kind.name, { crashes, rows, shown: network.shown.length, repeats, died: Object.fromEntries(died) });
  for (const one of stores) await one.close();
  await at.remove();
}

/** A process that ends takes nothing from the disk: only a power cut would, and that is not what is tried here. */
async function withoutWaitingForTheDisk(location: string): Promise<void> {
  const client = new pg.Client({ connectionString: location });
  await client.connect();
  await client.query(`alter database "${new URL(location).pathname.slice(1)}" set synchronous_commit = off`);
  await client.end();
}

function outletOf(name: string, network: Network, now: () => number, faults: Random | null): Outlet {
  return {
    network: name,
    async send(outgoing) {
      const fault = faults?.from(1, 8) ?? 0;
      if (fault === 1) throw new Error("connection reset before anything was sent");
      if (fault === 2) return { sent: false, retry: true, after_ms: 500, why: "too many" };
      const native_id = network.send(outgoing.key, wordsOf(outgoing), outgoing.maybe_repeat, now());
      if (fault === 3) throw new Error("connection reset after it was accepted");
      return { sent: true, native_id };
    },
    ...(name === "knowing"
      ? {
          async lookUp({ key }) {
            const native_id = network.lookUp(key);
            return native_id === null ? { sent: false, retry: true, why: "never arrived" } : { sent: true, native_id };
          },
        }
      : {}),
  };
}
