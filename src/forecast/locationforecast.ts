/**
 * A forecast by the Locationforecast 2.0 interface of the Norwegian Meteorological Institute (`compact`, the whole world, CC BY 4.0).
 * As its terms ask: a User-Agent that says who calls and how to reach them, at most four decimals of a place, nothing asked again before
 * `Expires`, then with `If-Modified-Since`. https://api.met.no/doc/TermsOfService, https://api.met.no/weatherapi/locationforecast/2.0/documentation
 */
import { z } from "zod";
import type { DayWeatherFacts } from "../records/schemas.ts";
import { type ForecastSource, NoForecast, type Spot } from "./port.ts";

export interface LocationforecastOptions {
  /** address of the `compact` endpoint, without a query */
  readonly url: string;
  /** mail or web address of whoever runs this Gleed */
  readonly contact: string;
  readonly version?: string;
  /** one try may take this long */
  readonly limit_ms?: number;
  readonly wait?: (ms: number) => Promise<void>;
  /** 0 (included) to 1 (excluded) */
  readonly random?: () => number;
}

const Answer = z.object({
  properties: z.object({
    timeseries: z.array(z.object({ time: z.string(), data: z.object({ instant: z.object({ details: z.object({ air_temperature: z.number() }) }) }) })).min(1),
  }),
});
type Point = readonly [at_ms: number, air_C: number];

interface Kept {
  readonly points: readonly Point[];
  readonly fresh_until_ms: number;
  readonly got_at_ms: number;
  readonly modified: string | null;
}

const TRIES = 3;
const FIRST_WAIT_MS = 500;
/** Asked again no sooner when the service names no time. */
const USUAL_FRESH_MS = 30 * 60_000;
/** An old forecast is better than none for this long. */
const STALE_MS = 24 * 3_600_000;
/** After a failure the service is left alone, longer each time. */
const REST_MS = { first: 60_000, longest: 3_600_000 };
const MOST_DAYS = 7;
const MOST_SPOTS = 500;
/** Hours of a later day that must be covered before it has a low and a high. */
const COVERED_H = 18;

export function locationforecast(options: LocationforecastOptions): ForecastSource {
  const { url, contact, version = "0.1", limit_ms = 4_000, wait = (ms) => new Promise((done) => setTimeout(done, ms)), random = Math.random } = options;
  const kept = new Map<string, Kept>();
  const asking = new Map<string, Promise<Kept>>();
  let failures = 0;
  let rest_until_ms = 0;

  async function ask(key: string, known: Kept | undefined, now_ms: number): Promise<Kept> {
    for (let attempt = 1; ; attempt++) {
      const tried = await once(key, known, now_ms);
      if (typeof tried !== "string") {
        failures = 0;
        return tried;
      }
      const [why, again] = [tried.slice(1), tried.startsWith("~")];
      if (again && attempt < TRIES) {
        await wait(FIRST_WAIT_MS * 2 ** (attempt - 1) * (0.5 + random() / 2));
        continue;
      }
      failures += 1;
      rest_until_ms = now_ms + Math.min(REST_MS.longest, REST_MS.first * 2 ** (failures - 1));
      throw new NoForecast(`The forecast service did not give a forecast: ${why}.`);
    }
  }

  /** What came, or why nothing did; "~" where another try may help. */
  async function once(key: string, known: Kept | undefined, now_ms: number): Promise<Kept | string> {
    const [lat, lon] = key.split(",");
    let response: Response;
    try {
      response = await fetch(`${url}?lat=${lat}&lon=${lon}`, {
        headers: { "User-Agent": `gleed/${version} ${contact}`, Accept: "application/json", ...(known?.modified ? { "If-Modified-Since": known.modified } : {}) },
        signal: AbortSignal.timeout(limit_ms),
      });
      const expires_ms = Date.parse(response.headers.get("expires") ?? "");
      const fresh_until_ms = Number.isFinite(expires_ms) && expires_ms > now_ms ? expires_ms : now_ms + USUAL_FRESH_MS;
      if (response.status === 304 && known) return { ...known, fresh_until_ms, got_at_ms: now_ms };
      if (!response.ok) {
        await response.body?.cancel();
        return `${response.status >= 500 ? "~" : "!"}it answered ${response.status}`;
      }
      const read = Answer.safeParse(await response.json());
      if (!read.success) return "!what it sent is no forecast";
      const points = read.data.properties.timeseries.map(({ time, data }): Point => [Date.parse(time), data.instant.details.air_temperature]);
      return { points, fresh_until_ms, got_at_ms: now_ms, modified: response.headers.get("last-modified") };
    } catch (error) {
      return error instanceof SyntaxError ? "!what it sent is no forecast" : `~${(error as Error).name === "TimeoutError" ? `no answer within ${limit_ms / 1000} s` : "it cannot be reached"}`;
    }
  }

  return {
    async days(spot, now_ms) {
      // two decimals are about a kilometre: near enough for weather, and nobody's door
      const key = `${spot.latitude.toFixed(2)},${spot.longitude.toFixed(2)}`;
      const known = kept.get(key);
      if (known && now_ms < known.fresh_until_ms) return daysOf(known.points, spot, now_ms);
      try {
        if (now_ms < rest_until_ms) throw new NoForecast("The forecast service failed a short while ago and is left alone for now.");
        const work = asking.get(key) ?? ask(key, known, now_ms).finally(() => asking.delete(key));
        asking.set(key, work);
        const got = await work;
        kept.delete(key);
        kept.set(key, got);
        const [oldest] = kept.keys();
        if (kept.size > MOST_SPOTS && oldest !== undefined) kept.delete(oldest);
        return daysOf(got.points, spot, now_ms);
      } catch (error) {
        if (known && now_ms - known.got_at_ms < STALE_MS) return daysOf(known.points, spot, now_ms);
        throw error;
      }
    },
  };
}

/** Low and high of each day of the place, from now on; a last day that is cut short has neither. */
export function daysOf(points: readonly Point[], { timezone }: Pick<Spot, "timezone">, now_ms: number): DayWeatherFacts[] {
  const dateOf = (at_ms: number): string => Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO(timezone).toPlainDate().toString();
  const today = dateOf(now_ms);
  const byDate = Map.groupBy(points.filter(([at_ms]) => at_ms >= now_ms - 3_600_000), ([at_ms]) => dateOf(at_ms));
  return [...byDate]
    .filter(([date, own]) => date === today || (own.at(-1)![0] - own[0]![0]) / 3_600_000 >= COVERED_H)
    .map(([date, own]) => ({ date, low_C: Math.min(...own.map(([, air_C]) => air_C)), high_C: Math.max(...own.map(([, air_C]) => air_C)) }))
    .sort((a, b) => a.date.localeCompare(b.date))
    .slice(0, MOST_DAYS);
}
