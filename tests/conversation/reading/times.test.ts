import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { anyText } from "./any-text.ts";
import { loadTimes, readTimes, timesLoaded, type TimeOptions } from "../../../src/conversation/reading/times.ts";

const ZONE = "Europe/Helsinki";
/** Wednesday, 21:40 in Helsinki */
const NOW = Date.parse("2026-11-25T21:40:00+02:00");
const local = (ms: number, zone = ZONE): string => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(
  zone).toPlainDateTime().toString({ smallestUnit: "minute" });
const read = (text: string, options: TimeOptions = { lean: "past" }): string[] =>
  readTimes(text, NOW, ZONE, options).map(({ at_ms, kind }) => (kind === "day" ? local(at_ms).slice(0, 10) : local(at_ms)));

describe("before the date library is loaded", () => {
  test.each([
    ["18:10", "2026-11-25T18:10"], ["6:30 pm", "2026-11-25T18:30"], ["half past six", "2026-11-25T18:30"],
      ["yesterday at 18:10", "2026-11-24T18:10"], ["last night", "2026-11-24"], ["2026-10-03", "2026-10-03"], ["3.10.2026", "2026-10-03"],
  ])("%s", (text, expected) => {
    expect(timesLoaded()).toBe(false);
    expect(read(text)).toEqual([expected]);
  });
});

describe("with it", () => {
  beforeAll(loadTimes);

  test.each([
    ["18:10", "2026-11-25T18:10"], ["at 18.10", "2026-11-25T18:10"], ["6:30 pm", "2026-11-25T18:30"], ["6.30pm", "2026-11-25T18:30"],
      ["6pm", "2026-11-25T18:00"], ["6 p.m.", "2026-11-25T18:00"], ["5am", "2026-11-25T05:00"], ["06:30", "2026-11-25T06:30"],
    ["at 1810", "2026-11-25T18:10"], ["1810 hrs", "2026-11-25T18:10"], ["18h10", "2026-11-25T18:10"], ["18 Uhr", "2026-11-25T18:00"],
      ["klo 18", "2026-11-25T18:00"], ["half past six", "2026-11-25T18:30"], ["half six", "2026-11-25T18:30"],
      ["half 6", "2026-11-25T18:30"],
    ["quarter to seven", "2026-11-25T18:45"], ["quarter past 7", "2026-11-25T19:15"], ["at ten to eight", "2026-11-25T19:50"],
      ["twenty past six", "2026-11-25T18:20"], ["at six", "2026-11-25T18:00"], ["around eight", "2026-11-25T20:00"],
      ["six o'clock", "2026-11-25T18:00"],
    ["six in the morning", "2026-11-25T06:00"], ["six in the evening", "2026-11-25T18:00"], ["9 at night", "2026-11-25T21:00"],
      ["noon", "2026-11-25T12:00"], ["midnight", "2026-11-25T00:00"],
    ["yesterday at 7 pm", "2026-11-24T19:00"], ["yesterday evening at 7", "2026-11-24T19:00"],
      ["at 7 yesterday evening", "2026-11-24T19:00"], ["last night at 11", "2026-11-24T23:00"], ["last night at 1", "2026-11-25T01:00"],
      ["this morning at 6", "2026-11-25T06:00"], ["half six this morning", "2026-11-25T06:30"],
    ["Sunday night at 9", "2026-11-22T21:00"], ["25 Nov 2025 at 18:10", "2025-11-25T18:10"], ["3 October at 18:10", "2026-10-03T18:10"],
    ["last night", "2026-11-24"], ["yesterday", "2026-11-24"], ["today", "2026-11-25"], ["this arvo", "2026-11-25"],
      ["this morning", "2026-11-25"], ["the day before yesterday", "2026-11-23"], ["since Sunday", "2026-11-22"],
      ["on Monday", "2026-11-23"], ["last Wednesday", "2026-11-18"],
    ["last Friday", "2026-11-20"], ["3 days ago", "2026-11-22"], ["two weeks ago", "2026-11-11"], ["a month ago", "2026-10-25"],
      ["nine years ago", "2017-11-25"], ["last week", "2026-11-18"], ["last year", "2025-11-25"],
    ["on 1 August", "2026-08-01"], ["Nov 3rd", "2026-11-03"], ["3rd of November", "2026-11-03"], ["2026-10-03", "2026-10-03"],
      ["3/10/2026", "2026-10-03"], ["3.10.26", "2026-10-03"], ["in March", "2026-03-01"], ["March 2018", "2018-03-01"],
      ["in december", "2025-12-01"],
    ["an hour ago", "2026-11-25T20:40"], ["half an hour ago", "2026-11-25T21:10"], ["20 minutes ago", "2026-11-25T21:20"],
      ["now", "2026-11-25T21:40"],
  ])("what happened: %s", (text, expected) => expect(read(text)).toEqual([expected]));

  test.each([
    ["tomorrow morning at 6", "2026-11-26T06:00"], ["at 6", "2026-11-26T06:00"], ["tonight", "2026-11-25"], ["tomorrow", "2026-11-26"],
      ["on Friday", "2026-11-27"], ["next Wednesday", "2026-12-02"], ["in 2 hours", "2026-11-25T23:40"], ["at 22:30", "2026-11-25T22:30"],
      ["on 1 August", "2027-08-01"], ["in 3 weeks", "2026-12-16"],
  ])("what is planned: %s", (text, expected) => expect(read(text, { lean: "future" })).toEqual([expected]));

  test.each([
    "it may smoke", "3/4 cord", "12-14 kg", "about 12 of them", "4 by 1.5 by 0.33", "max 15 at most", "ten to twelve kilos", "16 in logs",
      "5 to 6 kg", "at 12 kg", "at 20 degrees", "half a cord", "a quarter of a cord", "we sat by the fire", "second fire", "0.26",
      "at 17 %", "31.02.2026", "by 4 pieces", "light it at two points", "wood is at twenty-two on the meter", "at 22 on the meter", "clause 14.2.1", "max load 12",
  ])("no time in: %s", (text) => expect(read(text)).toEqual([]));

  test("two times with one day, over midnight", () => expect(read("lit yesterday at 6pm, damper at 00:30")).toEqual(["2026-11-24T18:00",
    "2026-11-25T00:30"]));
  test("two days stay two", () => expect(read("on Saturday and by Sunday evening")).toEqual(["2026-11-21", "2026-11-22"]));
  test("the other half of the day is told", () => {
    const [six] = readTimes("lit at six", NOW, ZONE, { lean: "past" });
    expect(local(six!.at_ms)).toBe("2026-11-25T18:00");
    expect(local(six!.other_ms!)).toBe("2026-11-25T06:00");
    expect(readTimes("at 18:10", NOW, ZONE)[0]?.other_ms).toBeUndefined();
  });
  test("month first for readers in the United States", () => {
    expect(read("3/10/2026", { lean: "past", locale: "en-US" })).toEqual(["2026-03-10"]);
    expect(read("on 3/10", { lean: "past", locale: "en-US" })).toEqual(["2026-03-10"]);
  });
  test("the person's own zone, through a change of the clocks", () => {
    // clocks in New York went back on 1 November 2026 at 02:00 (US Energy Policy Act of 2005: first Sunday in November)
    const now = Date.parse("2026-11-01T20:00:00-05:00");
    const [evening] = readTimes("last night at 8 pm", now, "America/New_York", { lean: "past" });
    expect(new Date(evening!.at_ms).toISOString()).toBe("2026-11-01T00:00:00.000Z");
  });
  test("a zone that does not exist is read as UTC", () => expect(local(readTimes("18:10", NOW, "Mars/Olympus", { lean: "past" })[
    0]!.at_ms, "UTC")).toBe("2026-11-25T18:10"));
  test("words and place", () => expect(readTimes("lit at half past six today", NOW,
    ZONE)[0]).toMatchObject({ words: "half past six today", at: [7, 26] }));

  test("any time of day written as hours and minutes is read as written", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }), fc.constantFrom("lit at ", "", "damper "),
        (hour, minute, lead) => {
        const text = `${lead}${String(hour).padStart(2, "0")}:${String(minute).padStart(2, "0")}`;
        const [time] = readTimes(text, NOW, ZONE, { lean: "past" });
        expect(local(time!.at_ms).slice(11)).toBe(text.slice(lead.length));
        expect(time!.at_ms).toBeLessThanOrEqual(NOW + 600_000);
        expect(time!.at_ms).toBeGreaterThan(NOW - 86_400_000);
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  test("never throws", () => {
    const piece = fc.constantFrom("18", ":", "10", "half", " ", "past", "to", "last", "night", "ago", "99999", "years", "yesterday", ".",
      "-", "/", "2026", "in", "1e9", "may", "sun", "\u200b", "pm", "31", "-02-");
    fc.assert(
      fc.property(fc.oneof(anyText(60), fc.array(piece, { maxLength: 25 }).map((parts) => parts.join(" ")),
        fc.array(piece, { maxLength: 25 }).map((parts) => parts.join(""))), (text) => {
        for (const time of readTimes(text, NOW, ZONE)) expect(Number.isFinite(time.at_ms)).toBe(true);
      }),
      { seed: 7, numRuns: 800 },
    );
  });
});
