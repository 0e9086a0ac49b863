/** A store in memory, a clock that is told, a network that does as it is told. */
import { type SteppedClock, steppedClock } from "../../src/delivery/clock.ts";
import type { DeliverDeps } from "../../src/delivery/deliver.ts";
import type { Log } from "../../src/delivery/log.ts";
import type { Outlet, Reader, Sent } from "../../src/delivery/outlet.ts";
import type { Outgoing } from "../../src/records/ports.ts";
import { openStore } from "../../src/store/open.ts";
import { decided, NOW, saying } from "../store/made.ts";

export interface Line {
  readonly level: "info" | "warn" | "error";
  readonly words: string;
  readonly data: Readonly<Record<string, unknown>>;
}
export function listeningLog(): Log & { readonly lines: Line[] } {
  const lines: Line[] = [];
  const at = (level: Line["level"]) => (data: Line["data"], words: string) => void lines.push({ level, words, data });
  return { lines, info: at("info"), warn: at("warn"), error: at("error") };
}

export interface Post {
  readonly row: Outgoing;
  readonly reader: Reader;
}
export type Answering = (row: Outgoing, nth: number) => Sent | Promise<Sent>;

export type More = Partial<Pick<DeliverDeps, "decideDue" | "random" | "windows_ms" | "send_limit_ms">> & {
  readonly lookUp?: Outlet["lookUp"];
};

export async function world(answering: Answering = () => ({ sent: true, native_id: "event" }), more: More = {}) {
  const clock = steppedClock(NOW);
  const store = await openStore(":memory:", { monotonic: clock.monotonic });
  const posts: Post[] = [];
  const log = listeningLog();
  const outlet: Outlet = {
    network: "lines",
    async send(row, reader) {
      posts.push({ row, reader });
      return answering(row, posts.length);
    },
    ...(more.lookUp ? { lookUp: more.lookUp } : {}),
  };
  const { lookUp: _, ...changed } = more;
  const deps: DeliverDeps & { readonly clock: SteppedClock } = {
    store,
    clock,
    log,
    outlets: [outlet],
    windows_ms: { lines: 60_000 },
    reader: { locale: "en", system: "metric", timezone: "UTC" },
    random: () => 0.5,
    send_limit_ms: 50,
    lease_ms: 60_000,
    decideDue: (_snapshot, row, now_ms) =>
      decided({ answer: saying(`${row.key}${now_ms > row.useful_until_ms ? ": what do you see now?" : ""}`) }),
    ...changed,
  };
  const words = () => posts.map(({ row }) => String(row.answer.headline.args?.words));
  return { clock, store, posts, words, log, deps };
}
