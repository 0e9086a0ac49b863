/** Ten years of owners in forty zones: every sweep is spoken of before that owner's season, early enough to be booked. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ZONES } from "../../upkeep/zones.ts";
import { liveYears } from "./owners.ts";
import { aroundChanges, FILE, LEAD_DAYS, leadDays, OWNERS as ALL, YEARS, yearsTable } from "./years.ts";

/** GLEED_TEST_FULL: the thousand; otherwise each zone once */
const OWNERS = process.env.GLEED_TEST_FULL ? ALL : ZONES.length;

describe(`${OWNERS} owners over ${YEARS} years`, () => {
  const years = Array.from({ length: OWNERS }, (_, owner) => liveYears(owner, YEARS)).flat();

  it("each is told of the sweep before each season, with the longest booking lead", () => {
    expect(years.length).toBe(OWNERS * YEARS);
    expect(years.filter((year) => leadDays(year) < LEAD_DAYS)).toEqual([]);
  });
  it("a few times until somebody acts, and no more often in a year to whoever never does", () => {
    const acting = years.filter(({ swept }) => swept);
    expect(acting.length).toBeGreaterThan(OWNERS * YEARS * 0.6);
    expect(Math.max(...acting.map(({ tellings }) => tellings))).toBeLessThanOrEqual(5);
    expect(Math.max(...years.map(({ tellings }) => tellings))).toBeLessThanOrEqual(7);
  });
  it("whoever acts has the flue swept before the first fire", () => {
    expect(years.filter(({ swept, first_fire }) => swept && Temporal.PlainDate.compare(swept, first_fire) > 0)).toEqual([]);
  });
  it.runIf(OWNERS === ALL)("the table in YEARS.md is of this run", () => expect(readFileSync(FILE, "utf8")).toBe(yearsTable(years)));
  it("no change of the clocks doubles a reminder or skips one, in no zone", () => {
    for (const { zone } of ZONES) expect(aroundChanges(zone), zone).toMatchObject({ doubled: 0, skipped: 0 });
  });
});
