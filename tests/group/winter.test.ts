/** A heater's week in three figures, the weeks themselves, and the degree days they rest on. */
import { describe, expect, test } from "vitest";
import { degreesOf, figuresOf, publishWeek } from "../../src/group/winter.ts";
import type { WinterHeater } from "../../src/records/group.ts";
import { lastWholeWeek, nextWeek, weekOf } from "../../src/records/weeks.ts";

const MONDAY = Date.parse("2026-11-30T00:00:00Z");
const DAY_MS = 86_400_000;
const END = MONDAY + 7 * DAY_MS;
const fire = (day: number, load_kg: number | undefined, more: object = {}) => ({ lit_at_ms: MONDAY + day * DAY_MS + 18 * 3_600_000, facts: { lit_at: "", ...(load_kg === undefined ? {} : { load_kg }), ...more } });
const heater = (fires: WinterHeater["fires"], more: Partial<WinterHeater> = {}): WinterHeater => ({ heater: { id: "h", upkeep: {} }, weather: [], fires, ...more });

test("degree days: a mean of 12 °C counts 6, one of 16 °C nothing (Eurostat, nrg_chdd reference metadata, its own example; from memory)", () => {
  expect([12, 16, 15, 15.1, -10].map(degreesOf)).toEqual([6, 0, 3, 0, 28]);
});

// ISO 8601 week dates of days near new year, as the standard's own description lists them (from memory)
test.each([["2008-12-29", "2009-W01"], ["2010-01-03", "2009-W53"], ["2005-01-01", "2004-W53"], ["2026-11-30", "2026-W49"], ["2026-12-06", "2026-W49"], ["2027-01-03", "2026-W53"]])("%s lies in %s", (day, week) => {
  expect(weekOf(Date.parse(`${day}T23:59:59Z`)).week).toBe(week);
});
test("weeks follow one another, sort by name and hold their seven days", () => {
  for (let at = Date.parse("2020-01-01T12:00:00Z"); at < Date.parse("2032-01-01T00:00:00Z"); at += 5 * DAY_MS) {
    const week = weekOf(at);
    expect(week.to_ms - week.from_ms).toBe(7 * DAY_MS);
    expect(week.from_ms <= at && at < week.to_ms).toBe(true);
    expect(nextWeek(at).from_ms).toBe(week.to_ms);
    expect(lastWholeWeek(at).to_ms).toBe(week.from_ms);
    expect(nextWeek(at).week > week.week).toBe(true);
  }
});

describe("a heater's week", () => {
  test("wood over degree days, by the weather on record and else by what was read at the fires", () => {
    // seven days at 3 °C: 7 * 15 = 105 Kd; 84 kg
    const weather = Array.from({ length: 7 }, (_, n) => ({ date: new Date(MONDAY + n * DAY_MS).toISOString().slice(0, 10), low_C: 0, high_C: 6 }));
    const fires = Array.from({ length: 7 }, (_, n) => fire(n, 12));
    expect(figuresOf(heater(fires, { weather }), MONDAY, END)["kg-per-degree-day"]).toBeCloseTo(84 / 105, 9);
    const read = Array.from({ length: 7 }, (_, n) => fire(n, 12, { outside_C: 3 }));
    expect(figuresOf(heater(read), MONDAY, END)["kg-per-degree-day"]).toBeCloseTo(84 / 105, 9);
    // two days known stand for the week
    expect(figuresOf(heater([fire(0, 42, { outside_C: 3 }), fire(4, 42, { outside_C: 3 })]), MONDAY, END)["kg-per-degree-day"]).toBeCloseTo(84 / 105, 9);
  });

  test("what the records do not hold is not known, rather than nothing", () => {
    expect(figuresOf(heater([]), MONDAY, END)).toEqual({ "kg-per-degree-day": null, moisture: null, "black-glass": null });
    expect(figuresOf(heater([fire(0, undefined, { outside_C: 0 })]), MONDAY, END)["kg-per-degree-day"]).toBeNull();
    expect(figuresOf(heater([fire(0, 12)]), MONDAY, END)["kg-per-degree-day"]).toBeNull();
    expect(figuresOf(heater([fire(0, 12, { outside_C: 20 })]), MONDAY, END)["kg-per-degree-day"]).toBeNull();
  });

  test("water by weight burnt, black glass by days with a fire", () => {
    expect(figuresOf(heater([fire(0, 10, { moisture_pct_wet: 15 }), fire(1, 30, { moisture_pct_wet: 19 })]), MONDAY, END).moisture).toBeCloseTo(18, 9);
    const signs = { "black-glass": ["2026-11-30", "2026-12-02", "2026-11-01"] };
    expect(figuresOf(heater([fire(0, 10), fire(1, 10), fire(2, 10), fire(2, 8)], { heater: { id: "h", upkeep: { signs } } }), MONDAY, END)["black-glass"]).toBeCloseTo(2 / 3, 9);
  });
});

test("of a whole week only bands and steps are published: no figure, no count, nobody", () => {
  const many = Array.from({ length: 17 }, (_, n) => heater([fire(0, 10 + n * 0.37, { outside_C: -1.5, moisture_pct_wet: 14.2 + n * 0.3 })], { heater: { id: `secret ${n}`, upkeep: {} } }));
  const week = publishWeek(many, MONDAY, END);
  expect(Object.values(week).flatMap(({ levels }) => levels).every((level) => ["hidden", "some", "third", "half"].includes(level))).toBe(true);
  expect(JSON.stringify(week)).not.toMatch(/secret|\d\.\d|17/);
  expect(week["black-glass"]).toEqual({ at_least: 15, levels: ["half", "hidden", "hidden"] });
});
