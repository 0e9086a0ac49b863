/** How long this heater takes from lighting to a black bed, and until what hour a fire may be lit for that to come before bedtime. */
import type { Fire } from "../records/types.ts";

const HOUR = 3_600_000;

export interface ToBlack {
  readonly hours: number;
  /** how many fires of this heater it rests on; 0 means common practice */
  readonly fires: number;
}

/** Common practice, no source: 2 to 4 h to black, up to 5 h for big hardwood loads, growing with the load. */
export const usualToBlack_h = (load_kg: number): number => Math.min(5, 3.5 * (Math.max(load_kg, 2) / 12) ** 0.3);

/**
 * From the heater's own log (lighting to a damper closed over a bed seen black), scaled to this load; the slow end of the last twelve,
 * so that four fires of five are black by then. With fewer than three such fires, common practice.
 */
export function toBlack(fires: readonly Fire[], load_kg: number): ToBlack {
  const own = fires
    .filter((fire) => fire.facts.damper_closed_at !== undefined && fire.facts.bed_at_close === "black")
    .map((fire) => ((Date.parse(fire.facts.damper_closed_at ?? "") - fire.lit_at_ms) / HOUR) * (load_kg / (fire.facts.load_kg ?? load_kg)) ** 0.3)
    .filter((hours) => hours >= 1 && hours <= 10)
    .slice(0, 12)
    .sort((a, b) => a - b);
  if (own.length < 3) return { hours: usualToBlack_h(load_kg), fires: 0 };
  return { hours: own[Math.min(own.length - 1, Math.ceil(own.length * 0.8) - 1)] ?? usualToBlack_h(load_kg), fires: own.length };
}

/** The next time the clock shows `hhmm` in the zone, at or after `now_ms`. */
export function nextClock_ms(hhmm: string, timezone: string, now_ms: number): number {
  const [hour = 0, minute = 0] = hhmm.split(":").map(Number);
  const now = Temporal.Instant.fromEpochMilliseconds(now_ms).toZonedDateTimeISO(timezone);
  const today = now.withPlainTime({ hour, minute });
  return (Temporal.ZonedDateTime.compare(today, now) >= 0 ? today : today.add({ days: 1 })).epochMilliseconds;
}

export interface LightBy {
  /** latest lighting for a black bed before sleep */
  readonly latest_ms: number;
  readonly bedtime_ms: number;
  readonly to_black: ToBlack;
  readonly too_late: boolean;
}

/** Null when bedtime is unknown. */
export function lightBy(asleep: { from: string; to: string } | undefined, timezone: string, now_ms: number, fires: readonly Fire[], load_kg: number): LightBy | null {
  if (!asleep) return null;
  const bedtime_ms = nextClock_ms(asleep.from, timezone, now_ms);
  const to_black = toBlack(fires, load_kg);
  const latest_ms = bedtime_ms - to_black.hours * HOUR;
  return { latest_ms, bedtime_ms, to_black, too_late: now_ms > latest_ms };
}
