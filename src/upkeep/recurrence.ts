/**
 * When something comes round again. A rule is RFC 5545 text: `DTSTART:20261206T090000` (local time, no zone) and `RRULE:...`. It is worked on
 * the wall clock and only then put into the reader's zone, so that neither change of the clocks doubles or skips a time: one that the
 * spring change leaves out comes an hour later that day, one that the autumn change has twice comes the first time. Pure.
 */
import { RRuleTemporal } from "rrule-temporal";

export interface Rule {
  readonly start: Temporal.PlainDateTime;
  /** what stands behind `RRULE:` */
  readonly rrule: string;
}

export class BadRule extends Error {}

export const ruleText = ({ start, rrule }: Rule): string => `DTSTART:${basic(start)}\nRRULE:${rrule}`;

/** 20261206T090000 */
export const basic = (at: Temporal.PlainDateTime): string => at.toString({ smallestUnit: "second" }).replace(/[-:]/g, "");

/** @throws BadRule when the text is no rule */
export function readRule(words: string): Rule {
  const start = /^DTSTART[^:]*:(\d{8}T\d{6})/m.exec(words)?.[1];
  const rrule = /^RRULE:(.+)$/m.exec(words)?.[1]?.trim();
  if (!start || !rrule) throw new BadRule(`"${words.slice(0, 80)}" is no recurrence; it takes DTSTART:<local time> and RRULE:<rule>.`);
  return { start: Temporal.PlainDateTime.from(`${start.slice(0, 4)}-${start.slice(4, 6)}-${start.slice(6, 11)}:${start.slice(11, 13)}:${start.slice(13)}`), rrule };
}

/** An end given in UTC, as wall time in the zone, so that it compares with the rest. */
const untilLocal = (rrule: string, timezone: string): string =>
  rrule.replace(/UNTIL=(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})Z/, (_, y: string, m: string, d: string, h: string, min: string, s: string) => {
    const at = Temporal.Instant.from(`${y}-${m}-${d}T${h}:${min}:${s}Z`).toZonedDateTimeISO(timezone).toPlainDateTime();
    return `UNTIL=${basic(at)}Z`;
  });

function walls({ start, rrule }: Rule, timezone: string): RRuleTemporal {
  try {
    return new RRuleTemporal({ rruleString: untilLocal(rrule, timezone), dtstart: start.toZonedDateTime("UTC") as never });
  } catch (error) {
    throw new BadRule(`"${rrule.slice(0, 80)}" is no recurrence rule: ${error instanceof Error ? error.message : String(error)}`);
  }
}

const wallOf = (at: { toString(): string }): Temporal.PlainDateTime => Temporal.ZonedDateTime.from(at.toString()).toPlainDateTime();
const instantOf = (wall: Temporal.PlainDateTime, timezone: string): number => wall.toZonedDateTime(timezone, { disambiguation: "compatible" }).epochMilliseconds;

/** The first time after `after_ms`, in epoch milliseconds; null when the rule has ended. */
export function nextTime(rule: Rule, timezone: string, after_ms: number): number | null {
  const rounds = walls(rule, timezone);
  // a day earlier, since wall time and instants part by an hour around a change of the clocks
  let wall = Temporal.Instant.fromEpochMilliseconds(after_ms).toZonedDateTimeISO(timezone).toPlainDateTime().subtract({ days: 1 });
  for (;;) {
    const next = rounds.next(wall.toZonedDateTime("UTC") as never, false);
    if (!next) return null;
    wall = wallOf(next);
    const at_ms = instantOf(wall, timezone);
    if (at_ms > after_ms) return at_ms;
  }
}

/** The first `most` times, in epoch milliseconds. */
export const firstTimes = (rule: Rule, timezone: string, most: number): number[] =>
  walls(rule, timezone).all((_, i) => i < most).slice(0, most).map((at) => instantOf(wallOf(at), timezone));
