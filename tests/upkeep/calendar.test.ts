/** The calendar file, read back by RFC 5545's own rules: lines of 75 octets, escapes, and a zone whose changes are written out. */
import { describe, expect, it } from "vitest";
import type { Reminder } from "../../src/records/types.ts";
import { calendar, folded } from "../../src/upkeep/calendar.ts";
import { ZONES } from "./zones.ts";

const NOW = Date.parse("2026-11-25T16:00:00Z");
const entry = (id: string, title: string, due: string, rule?: string) => {
  const reminder: Reminder = { id, person_id: "ana", place_id: "place", what: title, due_at_ms: Date.parse(due), ...(rule ? { rule } : {}) };
  return { reminder, title };
};
const unfolded = (words: string): string[] => words.replace(/\r\n /g, "").split("\r\n").filter(Boolean);
const value = (lines: readonly string[], name: string): string => lines.find((line) => line.startsWith(name))?.slice(name.length) ?? "";
const unescaped = (words: string): string => words.replace(/\\([\\;,nN])/g, (_, sign: string) => (sign.toLowerCase() === "n" ? "\n" : sign));

/** Offset of a wall time by the observances of the file: the last onset that is not later (RFC 5545 3.6.5). */
function offsetAt(lines: readonly string[], wall: string): string {
  const zone = lines.slice(lines.indexOf("BEGIN:VTIMEZONE"), lines.indexOf("END:VTIMEZONE"));
  const starts = zone.flatMap((line, i) => (line.startsWith("DTSTART:") ? [{ at: line.slice(8), to: value(zone.slice(i), "TZOFFSETTO:") }] : []));
  return starts.filter(({ at }) => at <= wall).at(-1)?.to ?? "";
}

describe("a calendar file", () => {
  const title = 'test; both, "CO" & smoke \\ ääni 🔥 and a title that is much longer than one line of the file may be';
  const words = calendar([entry("a1", title, "2026-12-06T07:00:00Z", "DTSTART:20261125T090000\nRRULE:FREQ=MONTHLY;BYDAY=1SU"), entry("b2", "book the sweep", "2027-08-01T06:00:00Z")], "Europe/Helsinki", NOW);
  const lines = unfolded(words);

  it("ends its lines with CR LF and keeps them to 75 octets, cut nowhere inside a character", () => {
    expect(words.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    for (const line of words.split("\r\n")) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(unfolded(`${folded(`SUMMARY:${"🔥".repeat(60)}`)}\r\n`)).toEqual([`SUMMARY:${"🔥".repeat(60)}`]);
  });
  it("holds what every calendar asks for, and the words as they were", () => {
    expect(lines.slice(0, 3)).toEqual(["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Gleed//Reminders//EN"]);
    for (const name of ["VCALENDAR", "VTIMEZONE", "VEVENT", "VALARM"]) expect(lines.filter((line) => line === `BEGIN:${name}`).length).toBe(lines.filter((line) => line === `END:${name}`).length);
    expect(lines.filter((line) => line.startsWith("UID:")).length).toBe(2);
    expect(unescaped(value(lines, "SUMMARY:"))).toBe(title);
    expect(value(lines, "DTSTART;TZID=Europe/Helsinki:")).toBe("20261206T090000");
    expect(lines).toContain("RRULE:FREQ=MONTHLY;BYDAY=1SU");
  });
  it.each(ZONES)("in $zone every nine o'clock of ten years is where the zone has it", ({ zone }) => {
    const file = unfolded(calendar([entry("a", "x", "2026-12-06T07:00:00Z")], zone, NOW));
    for (let day = Temporal.PlainDate.from("2026-12-01"); day.year < 2036; day = day.add({ days: 5 })) {
      const at = day.toZonedDateTime({ timeZone: zone, plainTime: "09:00" });
      expect(offsetAt(file, `${day.toString().replaceAll("-", "")}T090000`), `${zone} ${day}`).toBe(at.offset.replace(":", ""));
    }
  });
  it("in UTC needs no zone", () => {
    const file = calendar([entry("a", "x", "2026-12-06T07:00:00Z")], "UTC", NOW);
    expect(file).not.toContain("VTIMEZONE");
    expect(file).toContain("DTSTART:20261206T070000Z");
  });
});
