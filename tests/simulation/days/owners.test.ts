/** Ten years of owners in forty zones: every sweep is spoken of before that owner's season, early enough to be booked. */
import { describe, expect, it } from "vitest";
import { liveYears } from "./owners.ts";

/** GLEED_TEST_FULL: the thousand; otherwise each zone once */
const OWNERS = process.env.GLEED_TEST_FULL ? 1000 : 40;
const YEARS = 10;
/** longest booking lead, and the two weeks before the first fire by which the flue is to be swept */
const LEAD_DAYS = 70;

describe(`${OWNERS} owners over ${YEARS} years`, () => {
  const years = Array.from({ length: OWNERS }, (_, owner) => liveYears(owner, YEARS)).flat();
  const lead = ({ told, first_fire }: (typeof years)[number]): number => (told ? told.until(first_fire).days : Number.NEGATIVE_INFINITY);

  it("each is told of the sweep before each season, with the longest booking lead", () => {
    expect(years.length).toBe(OWNERS * YEARS);
    expect(years.filter((year) => lead(year) < LEAD_DAYS)).toEqual([]);
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
});
