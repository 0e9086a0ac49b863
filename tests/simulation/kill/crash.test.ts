/**
 * Lives that end in process, by an error after which nothing of that life does anything any more: quick, so there are many. A network
 * that also fails by itself: accepts without a word, refuses, asks to wait.
 */
import { expect, test } from "vitest";
import { steppedClock } from "../../../src/delivery/clock.ts";
import { type DeliverDeps, deliver } from "../../../src/delivery/deliver.ts";
import type { Outlet } from "../../../src/delivery/outlet.ts";
import type { Due } from "../../../src/records/types.ts";
import { StoreBusy } from "../../../src/store/errors.ts";
import { openStore } from "../../../src/store/open.ts";
import { NOW } from "../../store/made.ts";
import { type Random, random as seeded } from "../random.ts";
import { BOUNDARIES, mortalOutlet, mortalStore } from "./life.ts";
import { NETWORKS, Network, WINDOWS_MS } from "./network.ts";
import { decideDue, dropsOf, judge, pause, plant, wordsOf } from "./world.ts";

const CRASHES = Number(process.env.GLEED_CRASHES ?? 600);
const SEED = Number(process.env.GLEED_SEED ?? 20261125);

class Crash extends Error {}

test(`${CRASHES} ends of the process between two steps: nothing lost, nothing double, nothing stale`, {
  timeout: 60_000 + CRASHES * 40,
}, async () => {
  const random = seeded(SEED);
  const clock = steppedClock(NOW);
  let tick = 0;
  const store = await openStore(":memory:", { monotonic: () => tick });
  const network = new Network();
  const planted: Due[] = [];
  const died = new Map<string, number>();
  const dropped = new Set<string>();
  let crashes = 0;

  /** @param end the boundary at which this life ends when it passes it for the n-th time; null for one that ends by itself */
  async function live(end: string | null, nth: number, faults: boolean): Promise<void> {
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
      log: dropsOf((key) => dropped.add(key)),
      lease_ms: 1000,
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
    tick += 1001;
    clock.by(pause(random));
  }

  for (let round = 0; crashes < CRASHES; round++) {
    planted.push(...(await plant(store, `round-${round}`, random.from(1, 3), random, clock.now())));
    for (let lives = random.from(1, 4); lives > 0; lives--) await live(random.of(BOUNDARIES), random.from(1, 3), random.chance(0.5));
  }
  for (let lives = 0; lives < 12; lives++) await live(null, 0, false);

  const { lost, double, stale, repeats, rows, left } = judge(planted, network.shown, dropped);
  expect({ lost, double, stale }, `seed ${SEED}`).toEqual({ lost: [], double: [], stale: [] });
  expect(await store.nextDue(NETWORKS)).toBeNull();
  // the test has bitten: every step was an end, and some ends outlasted the window
  const rare = CRASHES < 5_000 ? /lookUp|decideAgain|dropOutgoing/ : /^$/;
  for (const name of BOUNDARIES.filter((one) => !rare.test(one))) expect(died.get(name) ?? 0, name).toBeGreaterThan(0);
  expect(repeats).toBeGreaterThan(0);
  expect(rows).toBeGreaterThan(CRASHES / 4);
  if (process.env.GLEED_CRASHES) console.log({ crashes, rows, shown: network.shown.length, repeats, left, died: Object.fromEntries(died) });
  await store.close();
});

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
