/** Reminders as an RFC 5545 calendar that ordinary calendar programs open: times in the zone, with the zone's own changes written out. Pure. */
import type { Reminder } from "../records/types.ts";
import { basic, readRule } from "./recurrence.ts";

export interface CalendarEntry {
  readonly reminder: Reminder;
  readonly title: string;
}

const FOLD_BYTES = 75;
const LENGTH = "PT15M";

/** RFC 5545 3.3.11 */
const escaped = (words: string): string => words.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r?\n/g, "\\n");

/** RFC 5545 3.1: no line over 75 octets, continued behind a space; never cut inside a character. */
export function folded(line: string): string {
  let out = "";
  let bytes = 0;
  for (const sign of line) {
    const size = Buffer.byteLength(sign);
    if (bytes + size > FOLD_BYTES) {
      out += "\r\n ";
      bytes = 1;
    }
    out += sign;
    bytes += size;
  }
  return out;
}

export function calendar(entries: readonly CalendarEntry[], timezone: string, now_ms: number): string {
  const utc = `${basic(Temporal.Instant.fromEpochMilliseconds(now_ms).toZonedDateTimeISO("UTC").toPlainDateTime())}Z`;
  const earliest_ms = Math.min(now_ms, ...entries.map(({ reminder }) => reminder.due_at_ms));
  const lines = [
    "BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Gleed//Reminders//EN", "CALSCALE:GREGORIAN",
    ...(timezone === "UTC" ? [] : zone(timezone, earliest_ms)),
    ...entries.flatMap((entry) => event(entry, timezone, utc)),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

function event({ reminder, title }: CalendarEntry, timezone: string, utc: string): string[] {
  const start = Temporal.Instant.fromEpochMilliseconds(reminder.due_at_ms).toZonedDateTimeISO(timezone).toPlainDateTime();
  const at = timezone === "UTC" ? `DTSTART:${basic(start)}Z` : `DTSTART;TZID=${timezone}:${basic(start)}`;
  return [
    "BEGIN:VEVENT",
    `UID:${reminder.id}@gleed.invalid`,
    `DTSTAMP:${utc}`,
    at,
    `DURATION:${LENGTH}`,
    ...(reminder.rule ? [`RRULE:${readRule(reminder.rule).rrule}`] : []),
    `SUMMARY:${escaped(title)}`,
    "BEGIN:VALARM", "ACTION:DISPLAY", `DESCRIPTION:${escaped(title)}`, "TRIGGER:PT0S", "END:VALARM",
    "END:VEVENT",
  ];
}

const ZONE_YEARS = 10;

/** The zone's changes for ten years as observances of one onset each: no rule of ours to be wrong about, and right where laws have changed. */
function zone(timezone: string, from_ms: number): string[] {
  const first = Temporal.Instant.fromEpochMilliseconds(from_ms).toZonedDateTimeISO(timezone).subtract({ months: 1 });
  const last = first.add({ years: ZONE_YEARS });
  const lines = [observance(first, first.offsetNanoseconds)];
  let at: Temporal.ZonedDateTime | null = first.getTimeZoneTransition("next");
  let before = first.offsetNanoseconds;
  while (at && Temporal.ZonedDateTime.compare(at, last) < 0) {
    lines.push(observance(at, before));
    before = at.offsetNanoseconds;
    at = at.getTimeZoneTransition("next");
  }
  return ["BEGIN:VTIMEZONE", `TZID:${timezone}`, ...lines.flat(), "END:VTIMEZONE"];
}

/** DTSTART of an observance is local time as it was before the change (RFC 5545 3.6.5). */
function observance(at: Temporal.ZonedDateTime, before_ns: number): string[] {
  const kind = at.offsetNanoseconds > before_ns ? "DAYLIGHT" : "STANDARD";
  const onset = at.toInstant().toZonedDateTimeISO("UTC").add({ nanoseconds: before_ns }).toPlainDateTime();
  return [`BEGIN:${kind}`, `DTSTART:${basic(onset)}`, `TZOFFSETFROM:${offset(before_ns)}`, `TZOFFSETTO:${offset(at.offsetNanoseconds)}`, `END:${kind}`];
}

function offset(ns: number): string {
  const minutes = Math.round(Math.abs(ns) / 60e9);
  return `${ns < 0 ? "-" : "+"}${String(Math.floor(minutes / 60)).padStart(2, "0")}${String(minutes % 60).padStart(2, "0")}`;
}
