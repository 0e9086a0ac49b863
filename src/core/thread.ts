/** The core's thread: opens records and knowledge, again and again if need be, and answers calls from the adapters' thread. */
import { parentPort, workerData } from "node:worker_threads";
import type { Log } from "../delivery/log.ts";
import type { Outlet, Reader, Sent } from "../delivery/outlet.ts";
import type { Message } from "../message.ts";
import type { Outgoing } from "../records/ports.ts";
import { calls } from "./calls.ts";
import { openCore, type Core, type CoreOptions } from "./core.ts";

/** Options that can cross between threads. */
export type ThreadOptions = Omit<CoreOptions, "outlets" | "log"> & { readonly networks: readonly string[] };

const AGAIN_MS = 3_000;

if (parentPort) serve(workerData as ThreadOptions);

function serve({ networks, ...options }: ThreadOptions): void {
  const port = parentPort;
  if (!port) return;
  let opening: Promise<Core> | null = null;
  let failed_at = Number.NEGATIVE_INFINITY;
  const log: Log = {
    info: (data, words) => void far("log", "info", data, words),
    warn: (data, words) => void far("log", "warn", data, words),
    error: (data, words) => void far("log", "error", data, words),
  };

  function core(): Promise<Core> {
    if (opening && performance.now() - failed_at < AGAIN_MS) return opening;
    if (opening && failed_at === Number.NEGATIVE_INFINITY) return opening;
    failed_at = Number.NEGATIVE_INFINITY;
    opening = openCore({ ...options, log, outlets: networks.map(outlet) });
    opening.catch(() => {
      failed_at = performance.now();
    });
    return opening;
  }

  const outlet = (network: string): Outlet => ({
    network,
    send: (outgoing: Outgoing, reader: Reader) => far("send", outgoing, reader) as Promise<Sent>,
    lookUp: (outgoing: Outgoing) => far("look-up", outgoing) as Promise<Sent | null>,
  });

  const far = calls(port, {
    ready: async () => (await core()).texts,
    receive: async (message: Message) => (await core()).receive(message),
    advance: async (ms: number) => (await core()).advance(ms),
    now: async () => (await core()).now(),
    shown: async (message: Parameters<Core["shown"]>[0]) => (await core()).shown(message),
    names: async (message: Parameters<Core["names"]>[0]) => (await core()).names(message),
    photo: async (picture_id: string, person_id: string) => (await core()).photo(picture_id, person_id),
    export: async (network: string, id: string) => (await core()).exportPerson(network, id),
    answers: async () => (await core()).answers(),
    close: async () => {
      const open = await opening?.catch(() => null);
      await open?.close();
    },
  });
  core().catch(() => {});
}
