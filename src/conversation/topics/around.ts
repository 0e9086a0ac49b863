/** What the reckonings stand on beside what was said: place and climate, weather, hours awake; and the words for what had to be assumed. */
import { say, text, type Block, type Text } from "../../answer.ts";
import { allPlaces, nearestPlace, type Place } from "../../calculators/reference-data.ts";
import { q, type Quantity, type UnitId } from "../../quantities.ts";
import type { Context } from "../context.ts";
import { fold } from "../reading/tokens.ts";

export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;

/** Moisture taken when nobody said one: what split wood under cover ends at; common practice, no source. */
export const USUAL_MOISTURE_PCT = 17;
const USUAL_AWAKE = { from: "06:30", to: "22:30" };
/** A climate farther away than this says little. */
const FAR_KM = 300;

/** South of the line winter begins in May. */
export const winterMonths = (latitude: number): readonly number[] => (latitude < 0 ? [5, 6, 7, 8, 9] : [11, 12, 1, 2, 3]);

export interface Climate {
  readonly place: Place;
  /** the place was taken from a name or the time zone, or lies far away */
  readonly guessed: boolean;
}

/** The climate of a place that is named, else of the person's own place, else of the city their time zone is called after. */
export function climateOf(context: Context): Climate | null {
  const { latitude, longitude, timezone } = context.snapshot.person.facts;
  const said = ` ${fold(context.text.toLowerCase()).replace(/[^\p{L}\d]+/gu, " ")} `;
  const named = allPlaces().find((place) => said.includes(` ${fold(place.name.toLowerCase())} `));
  if (named) return { place: named, guessed: false };
  const north = coordinate(context.text, "NS") ?? latitude;
  const east = coordinate(context.text, "EW") ?? longitude;
  if (north !== undefined && east !== undefined) {
    const { place, distance_km } = nearestPlace(north, east);
    return distance_km > 1500 ? null : { place, guessed: distance_km > FAR_KM };
  }
  const city = timezone?.split("/").at(-1)?.replaceAll("_", " ");
  const place = allPlaces().find((one) => one.name === city);
  return place ? { place, guessed: true } : null;
}

/** "47.1 N", "11.4 E": degrees, south and west negative. */
function coordinate(words: string, [plus, minus]: string): number | undefined {
  const found = new RegExp(`(\\d{1,3}(?:[.,]\\d+)?)\\s*°?\\s*([${plus}${minus}])\\b`).exec(words);
  if (!found) return undefined;
  const degrees = Number(found[1]?.replace(",", "."));
  return found[2] === minus ? -degrees : degrees;
}

export interface Outdoors {
  readonly low_C: number;
  readonly high_C: number;
  readonly from: "said" | "record" | "climate" | "assumed";
}

/** Tonight's low and high: said now, on record for today, the month's mean of the climate, or a plain winter day. */
export function outdoors(context: Context, said: { low_C?: number; high_C?: number } = {}): Outdoors {
  const today = dateAt(context, context.now_ms);
  const record = context.snapshot.home.weather.find((day) => day.date === today);
  const low_C = said.low_C ?? record?.low_C;
  if (low_C !== undefined) {
    const high_C = Math.max(low_C, said.high_C ?? (said.low_C === undefined ? record?.high_C : undefined) ?? low_C + 7);
    return { low_C, high_C, from: said.low_C === undefined ? "record" : "said" };
  }
  const climate = climateOf(context);
  const month = Number(today.slice(5, 7)) - 1;
  const mean_C = climate?.place.mean_C[month];
  return mean_C === undefined ? { low_C: -3, high_C: 4, from: "assumed" } : { low_C: Math.round(mean_C - 3.5), high_C: Math.round(mean_C + 3.5), from: "climate" };
}

/** Hours awake, from the hours asleep; the usual ones when nobody said. */
export function awakeHours(context: Context): { from: string; to: string; assumed: boolean } {
  const { asleep } = context.snapshot.person.facts;
  return asleep ? { from: asleep.to, to: asleep.from, assumed: false } : { ...USUAL_AWAKE, assumed: true };
}

export const dateAt = (context: Context, at_ms: number): string => zonedAt(context, at_ms).toPlainDate().toString();
export const zonedAt = (context: Context, at_ms: number): Temporal.ZonedDateTime => Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO(context.reader.timezone);
/** An instant as the calculators take it: the person's own clock, with its offset. */
export const clockIso = (context: Context, at_ms: number): string => zonedAt(context, at_ms).toString({ timeZoneName: "never", smallestUnit: "minute" });

/** A reckoned time is named to ten minutes; more would be invented. */
export const toTenMinutes = (at_ms: number): number => Math.round(at_ms / 600_000) * 600_000;

/** A result of a calculator with the range it carries. */
export function figureOf(result: Record<string, unknown>, key: string, unit: UnitId, digits: number): Quantity {
  const [low, high] = (result.range as Record<string, [number, number]> | undefined)?.[key] ?? [];
  return q(Number(result[key]), unit, { digits, ...(low === undefined || high === undefined ? {} : { low, high }) });
}

export const assumedLine = (assumed: readonly Text[]): Block | null => (assumed.length > 0 ? say(text("reckoned.assumed", { what: assumed })) : null);
