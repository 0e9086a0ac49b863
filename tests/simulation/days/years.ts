/** The table of ten simulated years. `node tests/simulation/days/years.ts` writes YEARS.md (some minutes); the full tests hold it against a run. */
import { writeFileSync } from "node:fs";
import { readRule, basic, nextTime } from "../../../src/upkeep/recurrence.ts";
import { ZONES } from "../../upkeep/zones.ts";
import { liveYears, type Year } from "./owners.ts";

export const OWNERS = 1000;
export const YEARS = 10;
/** longest booking lead, and the two weeks before the first fire by which the flue is to be swept */
export const LEAD_DAYS = 70;
export const FILE = new URL("./YEARS.md", import.meta.url);

export const leadDays = ({ told, first_fire }: Year): number => (told ? told.until(first_fire).days : Number.NEGATIVE_INFINITY);

export interface Changes {
  readonly changes: number;
  readonly doubled: number;
  readonly skipped: number;
}

/** A daily reminder at the very time that each change of the clocks leaves out or has twice, from three days before to three days after. */
export function aroundChanges(zone: string): Changes {
  let changes = 0;
  let doubled = 0;
  let skipped = 0;
  let at = Temporal.ZonedDateTime.from(`2026-01-01T00:00[${zone}]`);
  for (;;) {
    const change = at.getTimeZoneTransition("next");
    if (!change || change.year >= 2026 + YEARS) return { changes, doubled, skipped };
    changes += 1;
    at = change;
    const before = change.subtract({ nanoseconds: 1 });
    const forward = change.offsetNanoseconds > before.offsetNanoseconds;
    const wall = (forward ? before.toPlainDateTime() : change.toPlainDateTime()).add({ minutes: forward ? 15 : 30 });
    const rule = readRule(`DTSTART:${basic(wall.subtract({ days: 10 }).round("second"))}\nRRULE:FREQ=DAILY`);
    const first = wall.toPlainDate().subtract({ days: 3 });
    let last_ms = first.toZonedDateTime({ timeZone: zone, plainTime: "00:00" }).epochMilliseconds - 1;
    const days: string[] = [];
    for (let n = 0; n < 7; n += 1) {
      last_ms = nextTime(rule, zone, last_ms) ?? Number.NaN;
      days.push(Temporal.Instant.fromEpochMilliseconds(last_ms).toZonedDateTimeISO(zone).toPlainDate().toString());
    }
    // a time left out at midnight comes an hour later, which may be the next day's: told by the count of days all the same
    const wanted = Array.from({ length: 7 }, (_, n) => first.add({ days: n }).toString());
    doubled += days.length - new Set(days).size;
    skipped += wanted.filter((day) => !days.includes(day)).length;
  }
}

const middle = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;

export function yearsTable(years: readonly Year[]): string {
  const rows = ZONES.map(({ zone, latitude }) => {
    const here = years.filter((year) => year.zone === zone);
    const leads = here.map(leadDays);
    const acted = here.filter(({ swept }) => swept);
    const { changes, doubled, skipped } = aroundChanges(zone);
    return {
      cells: [zone, latitude < 0 ? "S" : "N", new Set(here.map(({ owner }) => owner)).size, here.length, leads.filter((lead) => lead < LEAD_DAYS).length, Math.min(...leads), middle(leads), Math.max(...leads), `${acted.filter(({ swept, first_fire }) => swept && Temporal.PlainDate.compare(swept, first_fire) <= 0).length} of ${acted.length}`, changes, doubled, skipped],
      late: leads.filter((lead) => lead < LEAD_DAYS).length, changes, doubled, skipped,
    };
  });
  const sum = (of: "late" | "changes" | "doubled" | "skipped"): number => rows.reduce((all, row) => all + row[of], 0);
  return `# Ten simulated years

Written by \`node tests/simulation/days/years.ts\`; the full tests fail when a run differs. ${new Set(years.map(({ owner }) => owner)).size} owners in ${ZONES.length} zones, ${years.length} seasons: each owner lights by the climate of the
place, up to two weeks earlier or later by habit, and differs from year to year; one in five does nothing about a notice. Lead: days from the first
word on the sweep to the first fire of that season; ${LEAD_DAYS} are wanted (the longest time a sweep may have to be booked ahead, and two weeks). Clocks: a daily
reminder at the very time that a change leaves out or has twice, around every change of the ten years.

Told too late: **${sum("late")}**. Changes of the clocks: ${sum("changes")}; reminders doubled **${sum("doubled")}**, skipped **${sum("skipped")}**.

| zone | half | owners | seasons | told too late | least lead | median | most | swept before the first fire, of those who acted | changes | doubled | skipped |
|---|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|
${rows.map(({ cells }) => `| ${cells.join(" | ")} |`).join("\n")}
`;
}

if (import.meta.main) writeFileSync(FILE, yearsTable(Array.from({ length: OWNERS }, (_, owner) => liveYears(owner, YEARS)).flat()));
