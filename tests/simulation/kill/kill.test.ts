/**
 * Real processes killed by SIGKILL between every two steps of claiming, deciding, sending and marking, and while the network is just
 * accepting a message; on PostgreSQL two workers at a time. GLEED_KILLS says how many kills a store (continuous integration: 300).
 */
import { type ChildProcess, fork } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Due } from "../../../src/records/types.ts";
import { openStore } from "../../../src/store/open.ts";
import { FILE, type Kind, POSTGRES } from "../../store/locations.ts";
import { NOW } from "../../store/made.ts";
import { random as seeded } from "../random.ts";
import { BOUNDARIES } from "./life.ts";
import { NETWORKS, Network } from "./network.ts";
import type { Call, Orders, Over, Reply } from "./worker.ts";
import { judge, pause, plant } from "./world.ts";

const KILLS = Number(process.env.GLEED_KILLS ?? 6);
const SEED = Number(process.env.GLEED_SEED ?? 20261125);
const WORKER = fileURLToPath(new URL("./worker.ts", import.meta.url));
/** a new process starts in half the time where what it compiles is kept */
const compiled = join(tmpdir(), "gleed-compiled");
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
  const died = new Map<string, number>();
  const at = await kind.fresh();
  const store = await openStore(at.location);
  let now_ms = NOW;
  let killed = 0;

  // one that lived on is given another life; one that was killed is replaced, ahead of time
  const idle: ChildProcess[] = [];
  const spawn = () => fork(WORKER, { stdio: ["ignore", "inherit", "inherit", "ipc"], env: { ...process.env, NODE_COMPILE_CACHE: compiled } });

  async function live(end: string | null): Promise<void> {
    const orders: Orders = { location: at.location, now_ms, end, nth: random.from(1, 2), seed: random.from(1, 1e9) };
    const child = idle.shift() ?? spawn();
    if (idle.length === 0) idle.push(spawn());
    const life = Promise.withResolvers<boolean>();
    const hear = (heard: Call | Over) => {
      if ("call" in heard) listen(child, heard, end === UNHEARD);
      else if (heard.over === null) life.resolve(false);
      else life.reject(new Error(`a worker failed: ${heard.over}`));
    };
    const end_of_it = (code: number | null, signal: string | null) =>
      signal === "SIGKILL" ? life.resolve(true) : life.reject(new Error(`a worker ended with ${code ?? signal}`));
    child.on("message", hear).once("exit", end_of_it);
    child.send(orders);
    const was_killed = await life.promise;
    child.off("message", hear).off("exit", end_of_it);
    if (!was_killed) return void idle.push(child);
    killed++;
    died.set(end ?? "", (died.get(end ?? "") ?? 0) + 1);
  }

  function listen(child: ChildProcess, call: Call, unheard: boolean): void {
    const native_id = call.call === "send" ? network.send(call.key, call.words, call.maybe_repeat, call.at_ms) : network.lookUp(call.key);
    if (unheard && call.call === "send") child.kill("SIGKILL");
    else if (child.connected) child.send({ id: call.id, native_id } satisfies Reply, () => {});
  }

  const ends: [string, ...string[]] = [UNHEARD, ...BOUNDARIES.filter((name) => !/markFailed/.test(name))];
  for (let round = 0; killed < KILLS; round++) {
    planted.push(...(await plant(store, `round-${round}`, random.from(2, 5), random, now_ms)));
    await Promise.all(Array.from({ length: workers }, () => live(random.of(ends))));
    now_ms += pause(random);
  }
  // PostgreSQL's leases end by its own clock, and what a killed worker still holds is not shown as due: idle is who finds nothing twice
  for (let lives = 0, idleLives = 0; lives < 60 && idleLives < 2; lives++) {
    idleLives = (await store.nextDue(NETWORKS)) === null ? idleLives + 1 : 0;
    await live(null);
    now_ms += 1000;
    await new Promise((wait) => setTimeout(wait, 160));
  }
  for (const child of idle) child.disconnect();

  const { lost, double, stale, ...counts } = judge(planted, network.shown);
  if (process.env.GLEED_KILLS) console.log(kind.name, { killed, ...counts, died: Object.fromEntries(died) });
  expect({ lost, double, stale }, `seed ${SEED}`).toEqual({ lost: [], double: [], stale: [] });
  expect(await store.nextDue(NETWORKS)).toBeNull();
  await store.close();
  await at.remove();
}
