/** Puts the events of one fire in time together: lit, last flame, air closed, damper closed come in this order and within a day. */
import type { Moment } from "./times.ts";
import { onDay } from "./times.ts";

export type EventName = "lit_at" | "flame_out_at" | "air_closed_at" | "damper_closed_at";
export interface SaidEvent {
  readonly moment: Moment;
  readonly events: readonly (EventName | "closed")[];
}
export interface PlacedEvents extends Partial<Record<EventName, Temporal.ZonedDateTime>> {
  /** something was closed, and not said what */
  readonly closed?: Temporal.ZonedDateTime;
  /** only the day of the fire was said */
  readonly day_only?: true;
  /** morning or evening was not said */
  readonly open_half?: true;
}

/** Usual hour of a fire of which only the day is known: common practice, no source. */
const USUAL_FIRE_HOUR = 18;
const PART_HOURS: Readonly<Record<string, number>> = { morning: 7, noon: 12, afternoon: 15, evening: 18, night: 20 };
const LONGEST_H = 16;
const SLACK_MS = 15 * 60_000;

/** @param lit_now the text says "just lit" without a time */
export function placeEvents(said: readonly SaidEvent[], now: Temporal.ZonedDateTime, lit_now: boolean): PlacedEvents {
  const timed = said.filter(({ moment }) => moment.clock || moment.instant_ms !== undefined);
  const day = said.find(({ moment }) => moment.day)?.moment;
  const litSaid = timed.find(({ events }) => events.includes("lit_at"))
    ?? timed.find(({ events, moment }) => events.length === 0 && moment.instant_ms === undefined)
    ?? timed.find(({ events }) => events.length === 0);
  const later = timed.filter((one) => one !== litSaid && one.events.length > 0);
  if (!litSaid) {
    if (lit_now) return { lit_at: now };
    if (later.length === 0 && day?.day) return { lit_at: onDay(day.day,
      { hour: day.part ? (PART_HOURS[day.part] ?? USUAL_FIRE_HOUR) : USUAL_FIRE_HOUR, minute: 0 }, now), day_only: true };
    return afterwards({}, later, null, day?.day, now).placed;
  }
  const starts = candidates(litSaid.moment, day?.day, now, [-2, -1, 0, 1]);
  const ranked = starts.map((lit) => {
    const { placed, strain } = afterwards({ lit_at: lit }, later, lit, undefined, now);
    const ahead = lit.epochMilliseconds - now.epochMilliseconds;
    return { placed, cost: strain + (ahead > SLACK_MS ? 1e6 : 0) + Math.max(0, -ahead) / 3.6e6 + (day && litSaid.moment.clock?.twelve
      && lit.hour < 12 && later.length === 0 && day.part === undefined ? 12 : 0) };
  }).sort((a, b) => a.cost - b.cost);
  const best = ranked[0]?.placed ?? {};
  return { ...best, ...(litSaid.moment.clock?.twelve ? { open_half: true as const } : {}) };
}

function candidates(moment: Moment, day: Temporal.PlainDate | undefined, now: Temporal.ZonedDateTime,
  shifts: readonly number[]): Temporal.ZonedDateTime[] {
  if (moment.instant_ms !== undefined) return [Temporal.Instant.fromEpochMilliseconds(moment.instant_ms).toZonedDateTimeISO(
    now.timeZoneId)];
  const { clock } = moment;
  if (!clock) return [];
  const own = moment.day ?? day;
  const days = own ? [own] : shifts.map((shift) => now.toPlainDate().add({ days: shift }));
  const hours = clock.twelve ? [clock.hour, (clock.hour + 12) % 24] : [clock.hour];
  return days.flatMap((date) => hours.map((hour) => onDay(date, { hour, minute: clock.minute }, now)));
}

/** Each later event at its first possible time after the one before. `strain` grows with what is unlikely. */
function afterwards(
  start: PlacedEvents, later: readonly SaidEvent[], lit: Temporal.ZonedDateTime | null, day: Temporal.PlainDate | undefined,
    now: Temporal.ZonedDateTime,
): { placed: PlacedEvents; strain: number } {
  const placed: { -readonly [K in keyof PlacedEvents]: PlacedEvents[K] } = { ...start };
  let strain = 0;
  for (const { moment, events } of later) {
    const all = lit
      ? candidates(moment, moment.day, lit, [0, 1])
      : candidates(moment, day, now, [-1, 0]);
    const from = lit?.epochMilliseconds ?? -Infinity;
    const fitting = all.filter((at) => at.epochMilliseconds > from);
    const past = lit ? fitting : fitting.filter((at) => at.epochMilliseconds <= now.epochMilliseconds + SLACK_MS);
    const sorted = (past.length > 0 ? past : all).toSorted((a, b) => a.epochMilliseconds - b.epochMilliseconds);
    const at = lit && fitting.length > 0 ? sorted[0] : sorted.at(-1);
    if (!at) continue;
    if (at.epochMilliseconds > now.epochMilliseconds + SLACK_MS) strain += 5e5;
    const after_h = (at.epochMilliseconds - from) / 3.6e6;
    if (lit && (after_h <= 0 || after_h > LONGEST_H)) strain += 1e5;
    for (const event of events) {
      if (event === "closed") placed.closed ??= at;
      else placed[event] ??= at;
    }
  }
  return { placed, strain };
}
