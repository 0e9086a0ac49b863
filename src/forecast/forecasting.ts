/** A store whose homes come with a forecast: days nobody spoke of are filled in when loaded, and never written down. */
import type { Log } from "../delivery/log.ts";
import type { Store } from "../records/ports.ts";
import type { DayWeatherFacts } from "../records/schemas.ts";
import type { Decided, Snapshot, Write } from "../records/types.ts";
import type { ForecastSource } from "./port.ts";

/** An answer waits this long for a forecast; what comes later serves the next. */
const PATIENCE_MS = 1_500;

export function forecasting(store: Store, source: ForecastSource, usualTimezone: string, log: Log): Store {
  const filledIn = new WeakMap<Snapshot, readonly DayWeatherFacts[]>();

  async function withForecast(snapshot: Snapshot, now_ms: number): Promise<Snapshot> {
    const { latitude, longitude, timezone = usualTimezone } = snapshot.person.facts;
    if (latitude === undefined || longitude === undefined) return snapshot;
    const days = await inTime(source.days({ latitude, longitude, timezone }, now_ms), log);
    const said = new Set(snapshot.home.weather.map((day) => day.date));
    const more = days.filter((day) => !said.has(day.date));
    if (more.length === 0) return snapshot;
    const weather = [...snapshot.home.weather, ...more].sort((a, b) => a.date.localeCompare(b.date));
    const filled: Snapshot = { ...snapshot, home: { ...snapshot.home, weather } };
    filledIn.set(filled, more);
    return filled;
  }

  function unfilled<A>(snapshot: Snapshot, decided: Decided<A>): Decided<A> {
    const more = filledIn.get(snapshot);
    return more ? { ...decided, writes: decided.writes.map((write) => without(write, more)) } : decided;
  }

  return {
    ...store,
    load: async (person_id, place_id, now_ms, heater_id, group) =>
      withForecast(await store.load(person_id, place_id, now_ms, heater_id, group), now_ms),
    loadMany: async (wanted, now_ms) => {
      const snapshots = await store.loadMany(wanted, now_ms);
      return Promise.all(snapshots.map((snapshot) => snapshot && withForecast(snapshot, now_ms)));
    },
    commit: (cause, snapshot, decided, now_ms) => store.commit(cause, snapshot, unfilled(snapshot, decided), now_ms),
    commitMany: (given, now_ms) =>
      store.commitMany(
        given.map((one) => ({ ...one, decided: unfilled(one.snapshot, one.decided) })),
        now_ms,
      ),
  };
}

async function inTime(work: Promise<readonly DayWeatherFacts[]>, log: Log): Promise<readonly DayWeatherFacts[]> {
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<readonly DayWeatherFacts[]>((resolve) => {
    timer = setTimeout(resolve, PATIENCE_MS, []);
  });
  const days = work.catch((error: unknown) => {
    log.warn({ why: error instanceof Error ? error.message : String(error) }, "no forecast");
    return [];
  });
  try {
    return await Promise.race([days, limit]);
  } finally {
    clearTimeout(timer);
  }
}

function without(write: Write, more: readonly DayWeatherFacts[]): Write {
  if (write.write !== "home") return write;
  const same = (a: DayWeatherFacts, b: DayWeatherFacts): boolean => a.date === b.date && a.low_C === b.low_C && a.high_C === b.high_C;
  return { ...write, home: { ...write.home, weather: write.home.weather.filter((day) => !more.some((one) => same(one, day))) } };
}
