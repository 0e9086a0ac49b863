/** The core as the adapters' thread sees it. Never waits longer than told, whatever hangs over there. */
import { Worker } from "node:worker_threads";
import type { Log } from "../delivery/log.ts";
import type { Outlet } from "../delivery/outlet.ts";
import type { Received } from "../delivery/receive.ts";
import type { Message } from "../message.ts";
import type { Catalogues } from "../text/render.ts";
import { calls } from "./calls.ts";
import type { ThreadOptions } from "./thread.ts";

/** The records or the knowledge do not answer in time, or at all. */
export class Unanswered extends Error {}

export interface RemoteCore {
  /** resolves with the texts once records and knowledge are open */
  ready(limit_ms: number): Promise<Catalogues>;
  receive(message: Message, limit_ms: number): Promise<Received>;
  advance(ms: number, limit_ms: number): Promise<number>;
  now(limit_ms: number): Promise<number>;
  exportPerson(network: string, id: string, limit_ms: number): Promise<Record<string, unknown> | null>;
  shown(message: Pick<Message, "adapter" | "native_id" | "identity">, limit_ms: number): Promise<Received | null>;
  names(message: Pick<Message, "identity" | "place">, limit_ms: number): Promise<Record<string, readonly string[]>>;
  photo(picture_id: string, person_id: string, limit_ms: number): Promise<{ readonly media_type: string; readonly bytes: Uint8Array } | null>;
  /** something asked earlier has not come back in time and still has not */
  stuck(): boolean;
  /** resolves when records and knowledge answer now */
  answers(limit_ms: number): Promise<void>;
  close(limit_ms: number): Promise<void>;
}

export function startCore(options: Omit<ThreadOptions, "networks">, outlets: readonly Outlet[], log: Log): RemoteCore {
  const file = import.meta.url.endsWith(".ts") ? "./thread.ts" : "./thread.js";
  const worker = new Worker(new URL(file, import.meta.url), { workerData: { ...options, networks: outlets.map(({ network }) => network) } satisfies ThreadOptions });
  const overdue = new Set<Promise<unknown>>();
  let broken: Error | null = null;
  worker.on("error", (error) => {
    broken = error instanceof Error ? error : new Error(String(error));
    log.error({ why: String(error) }, "the core's thread ended");
  });
  const far = calls(worker, {
    log: (level: keyof Log, data: Record<string, unknown>, words: string) => log[level](data, words),
    send: (outgoing: Parameters<Outlet["send"]>[0], reader: Parameters<Outlet["send"]>[1]) => outlet(outgoing.network).send(outgoing, reader),
    "look-up": (outgoing: Parameters<Outlet["send"]>[0]) => outlet(outgoing.network).lookUp?.(outgoing) ?? null,
  });
  const outlet = (network: string): Outlet => {
    const found = outlets.find((one) => one.network === network);
    if (!found) throw new Error(`no adapter for ${network}`);
    return found;
  };

  async function within<T>(limit_ms: number, name: string, ...args: unknown[]): Promise<T> {
    if (broken) throw new Unanswered("the core's thread has ended");
    const work = far(name, ...args) as Promise<T>;
    let timer: NodeJS.Timeout | undefined;
    const limit = new Promise<never>((_, reject) => {
      timer = setTimeout(() => {
        overdue.add(work);
        work.catch(() => {}).finally(() => overdue.delete(work));
        reject(new Unanswered(`no answer within ${limit_ms / 1000} s`));
      }, limit_ms);
    });
    try {
      return await Promise.race([work, limit]);
    } finally {
      clearTimeout(timer);
    }
  }

  return {
    ready: (limit_ms) => within(limit_ms, "ready"),
    receive: (message, limit_ms) => within(limit_ms, "receive", message),
    advance: (ms, limit_ms) => within(limit_ms, "advance", ms),
    now: (limit_ms) => within(limit_ms, "now"),
    exportPerson: (network, id, limit_ms) => within(limit_ms, "export", network, id),
    shown: (message, limit_ms) => within(limit_ms, "shown", message),
    names: (message, limit_ms) => within(limit_ms, "names", message),
    photo: (picture_id, person_id, limit_ms) => within(limit_ms, "photo", picture_id, person_id),
    stuck: () => overdue.size > 0 || broken !== null,
    answers: (limit_ms) => within(limit_ms, "answers"),
    async close(limit_ms) {
      if (!broken) await within(limit_ms, "close").catch(() => {});
      await worker.terminate();
    },
  };
}
