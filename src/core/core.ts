/** Records, knowledge and decisions put together: what a message goes through, and what falls due. Runs beside the adapters, in a thread of its own. */
import { randomBytes } from "node:crypto";
import { fileURLToPath } from "node:url";
import type { Answer } from "../answer.ts";
import type { Settings } from "../conversation/context.ts";
import { decide, decideDue } from "../conversation/decide.ts";
import { groupWanted } from "../conversation/topics/group-wanted.ts";
import { loadTimes } from "../conversation/reading/times.ts";
import { steppedClock, systemClock, type SteppedClock } from "../delivery/clock.ts";
import { deliver, deliverUntil, nextDelivery, type DeliverDeps } from "../delivery/deliver.ts";
import type { Log } from "../delivery/log.ts";
import type { Outlet, Windows } from "../delivery/outlet.ts";
import { receiver, type Received } from "../delivery/receive.ts";
import { startTicker, type Ticker } from "../delivery/ticker.ts";
import { forecasting } from "../forecast/forecasting.ts";
import { locationforecast } from "../forecast/locationforecast.ts";
import { loadKnowledge, type Knowledge } from "../knowledge/load.ts";
import { COMMON_SPECIES } from "../conversation/reading/species.ts";
import { messageKey, type Message } from "../message.ts";
import type { Clock, Outgoing, Store } from "../records/ports.ts";
import { openStore } from "../store/open.ts";
import { loadCatalogues } from "../text/catalogues.ts";
import { withCopy } from "./export.ts";
import { withSeason } from "./season.ts";
import { withBuilderCode } from "./builder-code.ts";
import { withSharedHeater } from "./shared-heater.ts";

export interface CoreOptions {
  readonly database: string;
  readonly settings: Settings;
  readonly knowledge?: string;
  readonly outlets: readonly Outlet[];
  readonly windows_ms: Windows;
  readonly log: Log;
  /** a clock that only moves when told, starting here; the machine's own otherwise */
  readonly stands_at_ms?: number | "now";
  /** tick by itself */
  readonly ticking: boolean;
  /** a forecast service for days nobody spoke of; none is asked without */
  readonly forecast?: { readonly url: string; readonly contact: string };
}

export interface Core {
  receive(message: Message): Promise<Received>;
  /** Move a standing clock on; everything that fell due on the way went to the outlets. */
  advance(ms: number): Promise<number>;
  exportPerson(network: string, network_id: string): Promise<Record<string, unknown> | null>;
  /** the answer kept for a message, null when none is (any longer) */
  shown(message: Pick<Message, "adapter" | "native_id" | "identity">): Promise<Received | null>;
  photo: Store["photo"];
  /** names to offer while somebody types; a stranger is not written down for it */
  names(message: Pick<Message, "identity" | "place">): Promise<Record<string, readonly string[]>>;
  readonly texts: ReadonlyMap<string, ReadonlyMap<string, string>>;
  now(): number;
  /** throws when the store does not answer */
  answers(): Promise<void>;
  close(): Promise<void>;
}

const KNOWLEDGE = fileURLToPath(new URL("../../knowledge", import.meta.url));

export async function openCore(options: CoreOptions): Promise<Core> {
  const [opened, knowledge, own] = await Promise.all([openStore(options.database), loadKnowledge(options.knowledge ?? KNOWLEDGE), loadCatalogues(), loadTimes()]);
  const store = options.forecast ? forecasting(opened, locationforecast(options.forecast), options.settings.timezone, options.log) : opened;
  const clock = await clockFor(options, store);
  const deciding = { knowledge, settings: options.settings };
  const deps: DeliverDeps = {
    store, clock, outlets: options.outlets, windows_ms: options.windows_ms, log: options.log, random: Math.random,
    reader: { locale: options.settings.locale, system: "metric", timezone: options.settings.timezone },
    decideDue: (snapshot, row, now_ms) => decideDue(deciding, snapshot, row, now_ms),
  };
  const tidy = daily(async (now_ms) => {
    const rows = await store.tidy(now_ms - KEPT_MS);
    if (rows > 0) options.log.info({ rows }, "answered messages and sent rows older than two weeks forgotten");
  });
  const tick = async (): Promise<void> => {
    await deliver(deps);
    await tidy(clock.now());
  };
  const ticker: Ticker | null = options.ticking ? startTicker({ tick, next: () => nextDelivery(deps), clock, log: options.log }) : null;
  const inOrder = receiver({ store, clock, nudge: () => ticker?.nudge(), decide: (snapshot, one, now_ms) => decide(deciding, snapshot, one, now_ms) }, async (message) => {
    const shared = await withSharedHeater(store, await withBuilderCode(store, await withSeason(store, message, clock.now()), clock.now()));
    const group = groupWanted(message);
    return { message: group ? { ...shared.message, lot: randomBytes(16).toString("hex") } : shared.message, ...(group ? { group } : {}), decide: (snapshot, one, now_ms) => shared.after(decide(deciding, snapshot, one, now_ms), snapshot) };
  });
  return {
    texts: joined(knowledge, own),
    now: () => clock.now(),
    async receive(message) {
      return withCopy(store, message, await inOrder(message));
    },
    async advance(ms) {
      if (!isStepped(clock)) throw new RangeError("only a clock that stands still can be moved on");
      await deliverUntil({ ...deps, clock }, clock.now() + ms);
      await store.noteInstant(clock.now());
      return clock.now();
    },
    async exportPerson(network, network_id) {
      const person = await store.personByIdentity(network, network_id);
      return person ? store.exportPerson(person.id) : null;
    },
    async shown(message) {
      const kept = await store.inbox(messageKey(message));
      if (!kept) return null;
      const person = await store.personByIdentity(message.identity.network, message.identity.id);
      return { answer: kept.answer, facts: person?.facts ?? {}, again: true };
    },
    photo: (picture_id, person_id) => store.photo(picture_id, person_id),
    async names({ identity, place }) {
      const species = COMMON_SPECIES.map(({ id }) => id);
      if (!(await store.personByIdentity(identity.network, identity.id))) return { species, heaters: [], woodpiles: [] };
      const now_ms = clock.now();
      const { person_id, place_id } = await store.enter(identity, place, now_ms);
      const { heaters, home } = await store.load(person_id, place_id, now_ms);
      return { species, heaters: heaters.flatMap(({ facts }) => facts.name ?? []), woodpiles: home.wood.flatMap((wood) => wood.name ?? []) };
    },
    async answers() {
      const { ok, detail } = await store.check("quick");
      if (!ok) throw new Error(detail);
    },
    async close() {
      await ticker?.stop();
      await store.close();
    },
  };
}

/** repeats of a message come within hours; a fortnight is kept */
const KEPT_MS = 14 * 86_400_000;
const DAY_MS = 86_400_000;

/** Does the work at most once a day. */
function daily(work: (now_ms: number) => Promise<void>): (now_ms: number) => Promise<void> {
  let done_ms = Number.NEGATIVE_INFINITY;
  return async (now_ms) => {
    if (now_ms - done_ms < DAY_MS) return;
    await work(now_ms);
    done_ms = now_ms;
  };
}

async function clockFor({ stands_at_ms, log }: CoreOptions, store: Store): Promise<Clock> {
  const last_ms = (await store.lastInstant()) ?? 0;
  if (stands_at_ms === undefined)
    return systemClock(last_ms, undefined, undefined, (behind_ms) =>
      log.warn({ behind_ms }, "the clock of this machine is behind what was written before: time goes on slowly until it has caught up"),
    );
  return steppedClock(Math.max(last_ms, stands_at_ms === "now" ? Date.now() : stands_at_ms));
}
const isStepped = (clock: Clock): clock is SteppedClock => "to" in clock;

function joined(knowledge: Knowledge, own: ReadonlyMap<string, ReadonlyMap<string, string>>): Map<string, Map<string, string>> {
  const all = new Map<string, Map<string, string>>();
  for (const texts of [own, knowledge.texts]) {
    for (const [language, catalogue] of texts) all.set(language, new Map([...(all.get(language) ?? []), ...catalogue]));
  }
  return all;
}

export type { Answer, Outgoing };
