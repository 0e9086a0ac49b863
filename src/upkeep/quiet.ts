/** Quiet hours: while somebody sleeps, reminders wait for the morning. Check-ins of a fire never come here. Pure. */
import type { PersonFacts } from "../records/schemas.ts";

const minutesOf = (hhmm: string): number => {
  const [hour = 0, minute = 0] = hhmm.split(":").map(Number);
  return hour * 60 + minute;
};

/** The instant at which this may be said: `at_ms` itself, or the end of the sleep it falls into. */
export function afterSleep_ms(asleep: PersonFacts["asleep"], timezone: string, at_ms: number): number {
  if (!asleep) return at_ms;
  const at = Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO(timezone);
  const [from, to, now] = [minutesOf(asleep.from), minutesOf(asleep.to), at.hour * 60 + at.minute];
  const sleeps = from <= to ? now >= from && now < to : now >= from || now < to;
  if (!sleeps || from === to) return at_ms;
  const wakes = at.toPlainDate().add({ days: from > to && now >= from ? 1 : 0 });
  return wakes.toZonedDateTime({ timeZone: timezone, plainTime: Temporal.PlainTime.from(asleep.to) }).epochMilliseconds;
}
