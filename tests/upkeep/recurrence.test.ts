import { describe, expect, it } from "vitest";
import { BadRule, firstTimes, nextTime, readRule, ruleText } from "../../src/upkeep/recurrence.ts";
import { ZONES } from "./zones.ts";

const local = (ms: number, zone: string): string => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone).toString({ smallestUnit: "minute", timeZoneName: "never" });

describe("clocks that change", () => {
  const daily = (time: string) => readRule(`DTSTART:20260301T${time}\nRRULE:FREQ=DAILY`);
  it("a time that the spring change leaves out comes an hour later that day, and the next day as before", () => {
    const times = firstTimes(daily("023000"), "America/New_York", 10).slice(6, 9).map((ms) => local(ms, "America/New_York"));
    expect(times).toEqual(["2026-03-07T02:30-05:00", "2026-03-08T03:30-04:00", "2026-03-09T02:30-04:00"]);
  });
  it("a time that the autumn change has twice comes once, the first time", () => {
    const times = firstTimes(readRule("DTSTART:20261030T013000\nRRULE:FREQ=DAILY"), "America/New_York", 4).map((ms) => local(ms, "America/New_York"));
    expect(times).toEqual(["2026-10-30T01:30-04:00", "2026-10-31T01:30-04:00", "2026-11-01T01:30-04:00", "2026-11-02T01:30-05:00"]);
  });
  it.each(ZONES)("ten years of mornings in $zone: each day once, at nine", ({ zone }) => {
    const rule = readRule("DTSTART:20260101T090000\nRRULE:FREQ=DAILY");
    const all = firstTimes(rule, zone, 3653);
    const days = all.map((ms) => local(ms, zone));
    expect(new Set(days.map((day) => day.slice(0, 10))).size).toBe(3653);
    expect(days.filter((day) => day.slice(11, 16) !== "09:00")).toEqual([]);
    // step by step, as a reminder goes: around every change of the clocks of one year
    const from = Date.parse("2026-01-01T00:00:00Z");
    let last = from;
    const offset = all.findIndex((ms) => ms > from);
    for (let i = 0; i < 366; i += 1) {
      const next = nextTime(rule, zone, last);
      expect(next).toBe(all[i + offset]);
      last = next ?? Number.NaN;
    }
  });
  it("at half past two, in every zone: no day doubled, none skipped", () => {
    const rule = readRule("DTSTART:20260101T023000\nRRULE:FREQ=DAILY");
    for (const { zone } of ZONES) {
      let last = Date.parse("2025-12-31T12:00:00Z");
      const days: string[] = [];
      for (let i = 0; i < 400; i += 1) {
        last = nextTime(rule, zone, last) ?? Number.NaN;
        days.push(local(last, zone).slice(0, 10));
      }
      const whole = Array.from({ length: 400 }, (_, i) => Temporal.PlainDate.from("2026-01-01").add({ days: i }).toString());
      expect(days, zone).toEqual(whole);
    }
  });
});

describe("rules as text", () => {
  it("go through text unchanged", () => {
    const words = "DTSTART:20261206T090000\nRRULE:FREQ=MONTHLY;BYDAY=1SU";
    expect(ruleText(readRule(words))).toBe(words);
  });
  it("say what is wrong", () => {
    expect(() => readRule("every Sunday")).toThrow(BadRule);
    expect(() => nextTime(readRule("DTSTART:20261206T090000\nRRULE:FREQ=SOMETIMES"), "UTC", 0)).toThrow(/is no recurrence rule/);
  });
  it("ends where it ends", () => {
    expect(nextTime(readRule("DTSTART:20261206T090000\nRRULE:FREQ=DAILY;COUNT=2"), "UTC", Date.parse("2026-12-08T00:00:00Z"))).toBeNull();
  });
});
