/**
 * A child process that delivers what is due, against a network that lives in the parent, and kills itself (SIGKILL) at the boundary it
 * is told. It waits for orders, one life after another, each with a store of its own, until one of them ends it.
 */
import { steppedClock } from "../../../src/delivery/clock.ts";
import { deliver } from "../../../src/delivery/deliver.ts";
import { silent } from "../../../src/delivery/log.ts";
import type { Outlet, Sent } from "../../../src/delivery/outlet.ts";
import { openStore } from "../../../src/store/open.ts";
import { random } from "../random.ts";
import { mortalOutlet, mortalStore } from "./life.ts";
import { NETWORKS, WINDOWS_MS } from "./network.ts";
import { decideDue, wordsOf } from "./world.ts";

export interface Orders {
  readonly location: string;
  readonly now_ms: number;
  /** null: live until nothing is left to do */
  readonly end: string | null;
  readonly nth: number;
  readonly seed: number;
}
export type Call =
  | {
      readonly call: "send";
      readonly id: number;
      readonly network: string;
      readonly key: string;
      readonly words: string;
      readonly maybe_repeat: boolean;
      readonly at_ms: number;
    }
  | { readonly call: "lookUp"; readonly id: number; readonly network: string; readonly key: string };
export interface Reply {
  readonly id: number;
  readonly native_id: string | null;
}
/** the life came to its end by itself: a failure, or null */
export interface Over {
  readonly over: string | null;
}

const tell = (call: Call): void => void process.send?.(call);

const waiting = new Map<number, (native_id: string | null) => void>();
process.on("message", (heard: Reply | Orders) => {
  if ("location" in heard) void live(heard);
  else waiting.get(heard.id)?.(heard.native_id);
});
let calls = 0;
function ask(make: (id: number) => Call): Promise<string | null> {
  const id = ++calls;
  const heard = new Promise<string | null>((resolve) => waiting.set(id, resolve));
  tell(make(id));
  return heard;
}

function killer({ end, nth }: Orders): (name: string) => void {
  let passes = 0;
  return (name) => {
    if (name !== end || ++passes < nth) return;
    process.kill(process.pid, "SIGKILL");
    // the signal ends the process before this call is over
    for (;;) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1000);
  };
}

const outletOf = (network: string, now_ms: number): Outlet => ({
  network,
  async send(row): Promise<Sent> {
    const { key, maybe_repeat } = row;
    const native_id = await ask((id) => ({ call: "send", id, network, key, maybe_repeat, words: wordsOf(row), at_ms: now_ms }));
    return { sent: true, native_id };
  },
  ...(network === "knowing"
    ? {
        async lookUp({ key }): Promise<Sent> {
          const native_id = await ask((id) => ({ call: "lookUp", id, network, key }));
          return native_id === null ? { sent: false, retry: true, why: "never arrived" } : { sent: true, native_id };
        },
      }
    : {}),
});

async function live(orders: Orders): Promise<void> {
  const step = killer(orders);
  const over: Over = await deliverAll(orders, step).then(
    () => ({ over: null }),
    (error: unknown) => ({ over: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
  );
  process.send?.(over);
}

async function deliverAll({ location, now_ms, seed }: Orders, step: (name: string) => void): Promise<void> {
  const store = await openStore(location, { connections: 4 });
  await deliver({
    store: mortalStore(store, step),
    outlets: NETWORKS.map((network) => mortalOutlet(outletOf(network, now_ms), step)),
    clock: steppedClock(now_ms),
    decideDue,
    random: random(seed).next,
    log: silent,
    windows_ms: WINDOWS_MS,
    reader: { locale: "en", system: "metric", timezone: "UTC" },
    lease_ms: 150,
    send_limit_ms: 2000,
    batch: 5,
  });
  await store.close();
}
