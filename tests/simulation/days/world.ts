/**
 * One owner's reminders through some months of bad luck: clocks that jump, a network that fails or leaves it open whether it sent, a store that
 * is busy before or after it did the work, a process that dies, a machine that sleeps for days. All of it from one seed.
 */
import { decide, decideDue } from "../../../src/conversation/decide.ts";
import { loadTimes } from "../../../src/conversation/reading/times.ts";
import { systemClock } from "../../../src/delivery/clock.ts";
import { deliver, type DeliverDeps } from "../../../src/delivery/deliver.ts";
import { silent } from "../../../src/delivery/log.ts";
import { receive } from "../../../src/delivery/receive.ts";
import type { Outgoing, Store } from "../../../src/records/ports.ts";
import { StoreBusy, StoreError } from "../../../src/store/errors.ts";
import type { Engine } from "../../../src/store/engine.ts";
import { openEngine, storeOn } from "../../../src/store/open.ts";
import type { Tables } from "../../../src/store/schema.ts";
import { knowledge } from "../../upkeep/facts.ts";
import { ZONES } from "../../upkeep/zones.ts";
import { random as seeded, type Random } from "../random.ts";

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const WINDOW = 2 * MINUTE;
const START = Date.parse("2026-09-20T12:00:00Z");

await loadTimes();

interface Arrived {
  readonly outgoing: Outgoing;
  /** by the clock Gleed had */
  readonly clock_ms: number;
}
interface Wanted {
  readonly what: string;
  readonly daily: boolean;
  /** by the clock Gleed had, when it was set */
  readonly set_ms: number;
}

/** @returns a sentence for each broken promise */
export async function months(seed: number, days: number): Promise<string[]> {
  const chance = seeded(seed);
  const { zone } = chance.of(ZONES as readonly [(typeof ZONES)[number], ...typeof ZONES[number][]]);
  const asleep = chance.chance(0.7) ? { from: chance.of(["21:00", "22:30", "23:45", "01:00"]), to: chance.of(["05:30", "06:30", "09:00"]) } : undefined;
  const time = { true_ms: START, offset_ms: 0 };
  const trouble = { network: false, store: 0, unknown: 0 };
  const sound = await emptyStore(() => time.true_ms - START);
  const store = faulty(sound, chance, trouble);
  const arrived: Arrived[] = [];
  const seen = new Map<string, number>();
  const settings = { timezone: "UTC", locale: "en-GB" };
  let clock = systemClock(0, () => time.true_ms + time.offset_ms, () => time.true_ms - START);
  const outlet = {
    network: "lines",
    async send(outgoing: Outgoing) {
      if (trouble.network) return { sent: false, retry: true, why: "down" } as const;
      const last = seen.get(outgoing.key);
      if (last === undefined || time.true_ms - last > WINDOW) arrived.push({ outgoing, clock_ms: clock.now() });
      seen.set(outgoing.key, time.true_ms);
      if (chance.chance(trouble.unknown)) throw new Error("no word");
      return { sent: true, native_id: null } as const;
    },
  };
  const deps = (): DeliverDeps => ({
    store, clock, outlets: [outlet], windows_ms: { lines: WINDOW }, log: silent, random: () => chance.next(), reader: { locale: "en-GB", system: "metric", timezone: "UTC" }, send_limit_ms: 1_000,
    decideDue: (snapshot, row, now_ms) => decideDue({ knowledge, settings }, snapshot, row, now_ms),
  });
  const broken: string[] = [];
  const guarded = async (work: () => Promise<unknown>): Promise<boolean> => {
    try {
      await work();
      return true;
    } catch (error) {
      if (!(error instanceof StoreError)) broken.push(`an error of its own: ${String(error)}`);
      return false;
    }
  };
  let messages = 0;
  /** sent again until it is answered, as networks do */
  const say = async (more: { text?: string; records?: Record<string, unknown> }): Promise<void> => {
    const native_id = `${messages++}`;
    const message = { adapter: "lines", native_id, identity: { network: "lines", id: "ana" }, place: { network: "lines", id: "ana", kind: "private", encrypted: null } as const, received_at_ms: clock.now(), ...more };
    for (let tries = 0; tries < 40; tries += 1) {
      if (await guarded(() => receive({ store, clock, decide: (snapshot, one, now_ms) => decide({ knowledge, settings }, snapshot, one, now_ms) }, message))) return;
    }
    broken.push(`message ${native_id} was never answered`);
  };

  await say({ records: { timezone: zone, ...(asleep ? { asleep } : {}) } });
  const wanted: Wanted[] = [];
  const want = async (words: string, what: string, daily: boolean): Promise<void> => {
    wanted.push({ what, daily, set_ms: clock.now() });
    await say({ text: `${words} to ${what}` });
  };
  await want(`remind me every day at ${chance.from(0, 23)}:${chance.of(["00", "30"])}`, "weigh basket a", true);
  await want(`remind me every ${chance.of(["Monday", "Sunday"])} at ${chance.from(0, 23)}:15`, "weigh basket b", true);

  const until = START + days * DAY;
  while (time.true_ms < until) {
    time.true_ms += chance.from(5, 400) * MINUTE;
    if (chance.chance(0.02)) time.true_ms += chance.from(1, 5) * DAY;
    if (chance.chance(0.03)) time.offset_ms += chance.from(-90, 90) * MINUTE;
    if (chance.chance(0.03)) time.offset_ms = 0;
    if (chance.chance(0.03)) clock = systemClock((await sound.lastInstant()) ?? 0, () => time.true_ms + time.offset_ms, () => time.true_ms - START);
    if (chance.chance(0.05)) trouble.network = !trouble.network;
    if (chance.chance(0.05)) trouble.store = chance.of([0, 0, 0.02, 0.2]);
    if (chance.chance(0.05)) trouble.unknown = chance.of([0, 0, 0.1, 0.5]);
    if (wanted.length < 12 && chance.chance(0.05)) {
      const name = `weigh basket ${String.fromCharCode(97 + wanted.length)}`;
      await want(chance.of([`remind me in ${chance.from(1, 60)} hours`, `remind me in ${chance.from(1, 20)} days`, "remind me tomorrow at 23:30"]), name, false);
    }
    // a tick with nothing due does nothing: most are left out
    const next_ms = await sound.nextDue(["lines"]);
    if ((next_ms !== null && next_ms <= clock.now()) || chance.chance(0.1)) await guarded(() => deliver(deps()));
  }
  // all is well again, for longer than anything waits
  Object.assign(trouble, { network: false, store: 0, unknown: 0 });
  time.offset_ms = 0;
  for (const over_ms = time.true_ms + 22 * DAY; time.true_ms < over_ms; ) {
    const next_ms = (await sound.nextDue(["lines"])) ?? Number.POSITIVE_INFINITY;
    time.true_ms += Math.min(Math.max(next_ms - clock.now(), MINUTE), DAY);
    await guarded(() => deliver(deps()));
  }
  broken.push(...promises(wanted, arrived, zone, asleep));
  return broken;
}

let since = (): number => 0;
let shared: Promise<{ engine: Engine; tables: (keyof Tables)[] }> | undefined;
/** One store in memory for all seeds, emptied for each: opening one takes longer than a simulated month. */
async function emptyStore(monotonic: () => number): Promise<Store> {
  since = monotonic;
  shared ??= openEngine(":memory:", { boot: "a", monotonic: () => since() }).then(async (engine) => ({
    engine,
    tables: (await engine.db.introspection.getTables()).map(({ name }) => name as keyof Tables),
  }));
  const { engine, tables } = await shared;
  // references between the tables look after their order
  await engine.write(async (tx) => {
    for (const table of ["due", "outbox", "heaters", "people", "places", ...tables] as const) await tx.deleteFrom(table).execute();
  });
  return storeOn(engine);
}

function promises(wanted: readonly Wanted[], arrived: readonly Arrived[], zone: string, asleep: { from: string; to: string } | undefined): string[] {
  const broken: string[] = [];
  const says = ({ answer }: Outgoing, what: string): boolean => JSON.stringify([answer.headline, answer.blocks]).includes(`"${what}"`);
  const local = (ms: number) => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
  for (const { what, set_ms } of wanted) {
    const some = arrived.filter(({ outgoing }) => says(outgoing, what));
    if (some.length === 0) broken.push(`"${what}" was lost`);
    if (some.some(({ outgoing }) => outgoing.due_at_ms < set_ms - 60_000)) broken.push(`"${what}" came for a time before it was set`);
  }
  const plain = arrived.filter(({ outgoing }) => !outgoing.maybe_repeat);
  for (const [key, list] of Map.groupBy(plain, ({ outgoing }) => outgoing.key)) if (list.length > 1) broken.push(`${key} arrived ${list.length} times without a word of it`);
  const alone = plain.filter(({ outgoing }) => outgoing.key.startsWith("reminder:"));
  for (const { what, daily } of wanted) {
    // the row's key holds the time it stands for, also when it waited for the morning
    const dates = alone.filter(({ outgoing }) => says(outgoing, what)).map(({ outgoing }) => local(Number(outgoing.key.split(/[:@]/)[2])).toPlainDate().toString());
    if (daily && new Set(dates).size !== dates.length) broken.push(`"${what}" was said twice for one day: ${dates.filter((date, i) => dates.indexOf(date) !== i).join(", ")}`);
    if (!daily && dates.length > 1) broken.push(`"${what}", wanted once, was said for ${dates.join(" and ")}`);
  }
  const sleeps = (ms: number): boolean => {
    const hhmm = local(ms).toPlainTime().toString().slice(0, 5);
    return asleep !== undefined && (asleep.from <= asleep.to ? hhmm >= asleep.from && hhmm < asleep.to : hhmm >= asleep.from || hhmm < asleep.to);
  };
  for (const { outgoing, clock_ms } of alone) {
    if (sleeps(outgoing.due_at_ms) && sleeps(clock_ms)) broken.push(`${outgoing.key} came at ${local(clock_ms)}, in the middle of a sleep`);
  }
  return broken;
}

/** Busy before the work or, worse, after it. */
function faulty(store: Store, chance: Random, trouble: { readonly store: number }): Store {
  return new Proxy(store, {
    get(target, name, self) {
      const method = Reflect.get(target, name, self) as (...args: unknown[]) => Promise<unknown>;
      return async (...args: unknown[]) => {
        if (chance.chance(trouble.store / 2)) throw new StoreBusy("busy before");
        const done = await method.apply(target, args);
        if (chance.chance(trouble.store / 2)) throw new StoreBusy("busy after");
        return done;
      };
    },
  });
}
