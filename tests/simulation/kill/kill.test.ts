/**
 * Real processes killed by SIGKILL between every two steps of claiming, deciding, sending and marking, and while the network is just
 * accepting a message; on PostgreSQL two workers at a time. GLEED_KILLS says how many kills a store (continuous integration: 300).
 */
import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Due } from "../../../src/records/types.ts";
import { openStore } from "../../../src/store/open.ts";
import { FILE, type Kind, POSTGRES } from "../../store/locations.ts";
import { NOW } from "../../store/made.ts";
import { random as seeded } from "../random.ts";
import { BOUNDARIES } from "./life.ts";
import { NETWORKS, Network } from "./network.ts";
import type { Call, Orders, Reply } from "./worker.ts";
import { judge, pause, plant } from "./world.ts";

const KILLS = Number(process.env.GLEED_KILLS ?? 6);
const SEED = Number(process.env.GLEED_SEED ?? 20261125);
const WORKER = fileURLToPath(new URL("./worker.ts", import.meta.url));
/** the parent kills while it takes a message in, and answers nothing */
const UNHEARD = "while sending";

for (const [kind, workers] of [
  [FILE, 1],
  [POSTGRES, 2],
] as const) {
  const run = kind.missing ? describe.skip : describe;
  run(`${kind.name}${kind.missing ? ` (${kind.missing})` : ""}, ${workers} at work`, () => {
    test(`${KILLS} kills: nothing lost, nothing double, nothing stale`, { timeout: 60_000 + KILLS * 3_000 }, () => kills(kind, workers));
  });
}

async function kills(kind: Kind, workers: number): Promise<void> {
  const random = seeded(SEED);
  const network = new Network();
  const planted: Due[] = [];
  const dropped = new Set<string>();
  const died = new Map<string, number>();
  const at = await kind.fresh();
  const store = await openStore(at.location);
  let now_ms = NOW;
  let killed = 0;

  async function live(end: string | null): Promise<void> {
    const orders: Orders = { location: at.location, now_ms, end, nth: random.from(1, 2), seed: random.from(1, 1e9) };
    const child = fork(WORKER, [JSON.stringify(orders)], { stdio: ["ignore", "inherit", "inherit", "ipc"] });
    child.on("message", (call: Call) => listen(child, call, end === UNHEARD));
    const [code, signal] = (await once(child, "exit")) as [number | null, string | null];
    if (signal === "SIGKILL") {
      killed++;
      died.set(end ?? "", (died.get(end ?? "") ?? 0) + 1);
    } else if (code !== 0) throw new Error(`a worker ended with ${code ?? signal}`);
  }

  function listen(child: ChildProcess, call: Call, unheard: boolean): void {
    if (call.call === "dropped") return void dropped.add(call.key);
    const native_id = call.call === "send" ? network.send(call.key, call.words, call.maybe_repeat, call.at_ms) : network.lookUp(call.key);
    if (unheard && call.call === "send") child.kill("SIGKILL");
    else if (child.connected) child.send({ id: call.id, native_id } satisfies Reply, () => {});
  }

  const ends: [string, ...string[]] = [UNHEARD, ...BOUNDARIES.filter((name) => !/markFailed|dropOutgoing/.test(name))];
  for (let round = 0; killed < KILLS; round++) {
    planted.push(...(await plant(store, `round-${round}`, random.from(2, 5), random, now_ms)));
    await Promise.all(Array.from({ length: workers }, () => live(random.of(ends))));
    now_ms += pause(random);
  }
  // PostgreSQL's leases end by its own clock
  for (let lives = 0; lives < 50 && (await store.nextDue(NETWORKS)) !== null; lives++) {
    await live(null);
    now_ms += 1000;
    await new Promise((wait) => setTimeout(wait, 160));
  }
  await live(null);

  const { lost, double, stale, ...counts } = judge(planted, network.shown, dropped);
  if (process.env.GLEED_KILLS) console.log(kind.name, { killed, ...counts, died: Object.fromEntries(died) });
  expect({ lost, double, stale }, `seed ${SEED}`).toEqual({ lost: [], double: [], stale: [] });
  expect(await store.nextDue(NETWORKS)).toBeNull();
  await store.close();
  await at.remove();
}
