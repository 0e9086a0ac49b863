/** What owners write about their figures, as a whole: shares of messages read right. Single forms are in figures.test.ts. */
import { describe, expect, test } from "vitest";
import { judge, OWNERS } from "./owners.ts";

const hands = [...new Set(OWNERS.map(({ hand }) => hand))];
const missed = (hand: number, right: "found" | "exact"): string[] =>
  OWNERS.filter((owner) => owner.hand === hand && !judge(owner)[right]).map(({ text }) => text);

describe("messages of owners", () => {
  test("three hundred and sixty and more, each a text of its own", () => {
    expect(OWNERS.filter(({ hand }) => hand <= 3).length).toBeGreaterThanOrEqual(360);
    expect(new Set(OWNERS.map(({ text }) => text.toLowerCase())).size).toBe(OWNERS.length);
  });

  test.each(hands)("sitting %d: at least 97 of a hundred with every figure right, its range, its bound and its basis", (hand) => {
    const all = OWNERS.filter((owner) => owner.hand === hand);
    expect(missed(hand, "found").length / all.length, missed(hand, "found").join("\n")).toBeLessThanOrEqual(hand <= 2 ? 0.01 : 0.03);
  });

  test("hardly ever a figure where there is none", () => {
    const more = OWNERS.filter((owner) => { const { found, exact } = judge(owner); return found && !exact; });
    expect(more.length / OWNERS.length, more.map(({ text }) => text).join("\n")).toBeLessThanOrEqual(0.01);
    const none = OWNERS.filter((owner) => owner.expect.length === 0);
    expect(none.length).toBeGreaterThanOrEqual(30);
    expect(none.filter((owner) => !judge(owner).exact).map(({ text }) => text)).toEqual([]);
  });

  test("a reading that misses a basis, a bound or a unit is told from a right one", () => {
    const verdict = (text: string, value: number, more: object): boolean =>
      judge({ hand: 1, text, expect: [{ dimension: "share", value, unit: "pct", basis: null, ...more }] }).found;
    expect(verdict("20 % dry basis", 20, { basis: "dry" })).toBe(true);
    expect(verdict("20 %", 20, { basis: "dry" })).toBe(false);
    expect(verdict("over 20 %", 20, { low: 20 })).toBe(true);
    expect(verdict("20 %", 20, { low: 20 })).toBe(false);
    expect(verdict("20 kg", 20, {})).toBe(false);
  });
});
