/**
 * A child process that delivers what is due, against a network that lives in the parent, and kills itself (SIGKILL) at the boundary it
 * is told. Arguments: one JSON object (see Orders).
 */
import { steppedClock } from "../../../src/delivery/clock.ts";
import { deliver } from "../../../src/delivery/deliver.ts";
import type { Outlet, Sent } from "../../../src/delivery/outlet.ts";
import { openStore } from "../../../src/store/open.ts";
import { random } from "../random.ts";
import { mortalOutlet, mortalStore } from "./life.ts";
import { NETWORKS, WINDOWS_MS } from "./network.ts";
import { decideDue, dropsOf, wordsOf } from "./world.ts";

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
  | { readonly call: "lookUp"; readonly id: number; readonly network: string; readonly key: string }
  | { readonly call: "dropped"; readonly key: string };
export interface Reply {
  readonly id: number;
  readonly native_id: string | null;
}

const orders = JSON.parse(process.argv[2] ?? "") as Orders;
const tell = (call: Call): void => void process.send?.(call);

const waiting = new Map<number, (native_id: string | null) => void>();
process.on("message", ({ id, native_id }: Reply) => waiting.get(id)?.(native_id));
let calls = 0;
function ask(make: (id: number) => Call): Promise<string | null> {
  const id = ++calls;
  const heard = new Promise<string | null>((resolve) => waiting.set(id, resolve));
  tell(make(id));
  return heard;
}

let passes = 0;
function step(name: string): void {
  if (name === orders.end && ++passes >= orders.nth) {
    process.kill(process.pid, "SIGKILL");
    // the signal ends the process before this call is over
    for (;;) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1000);
  }
}

const clock = steppedClock(orders.now_ms);
const outlets = NETWORKS.map(
  (network): Outlet => ({
    network,
    async send(row): Promise<Sent> {
      const { key, maybe_repeat } = row;
      const native_id = await ask((id) => ({ call: "send", id, network, key, maybe_repeat, words: wordsOf(row), at_ms: clock.now() }));
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
  }),
);

const store = await openStore(orders.location, { connections: 4 });
await deliver({
  store: mortalStore(store, step),
  outlets: outlets.map((outlet) => mortalOutlet(outlet, step)),
  clock,
  decideDue,
  random: random(orders.seed).next,
  log: dropsOf((key) => tell({ call: "dropped", key })),
  windows_ms: WINDOWS_MS,
  reader: { locale: "en", system: "metric", timezone: "UTC" },
  lease_ms: 150,
  send_limit_ms: 2000,
  batch: 5,
});
await store.close();
process.disconnect?.();
