import { describe, expect, it } from "vitest";
import { afterSleep_ms } from "../../src/upkeep/quiet.ts";

const at = (words: string): number => Temporal.ZonedDateTime.from(words).epochMilliseconds;
describe("quiet hours", () => {
  const night = { from: "22:30", to: "06:30" };
  it.each([
    ["2026-11-25T22:29[Europe/Helsinki]", "2026-11-25T22:29[Europe/Helsinki]"],
    ["2026-11-25T22:30[Europe/Helsinki]", "2026-11-26T06:30[Europe/Helsinki]"],
    ["2026-11-26T03:00[Europe/Helsinki]", "2026-11-26T06:30[Europe/Helsinki]"],
    ["2026-11-26T06:30[Europe/Helsinki]", "2026-11-26T06:30[Europe/Helsinki]"],
    // a night of nine hours and one of seven
    ["2026-10-24T23:00[Europe/Helsinki]", "2026-10-25T06:30[Europe/Helsinki]"],
    ["2027-03-27T23:00[Europe/Helsinki]", "2027-03-28T06:30[Europe/Helsinki]"],
  ])("%s is said at %s", (asked, said) => expect(afterSleep_ms(night, "Europe/Helsinki", at(asked))).toBe(at(said)));
  it("of somebody who sleeps by day", () => {
    const day = { from: "08:00", to: "15:00" };
    expect(afterSleep_ms(day, "UTC", at("2026-11-25T09:00[UTC]"))).toBe(at("2026-11-25T15:00[UTC]"));
    expect(afterSleep_ms(day, "UTC", at("2026-11-25T02:00[UTC]"))).toBe(at("2026-11-25T02:00[UTC]"));
  });
  it("none when nobody said any", () => expect(afterSleep_ms(undefined, "UTC", 7)).toBe(7));
});
