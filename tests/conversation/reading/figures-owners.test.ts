/** What owners write about their figures, as a whole: shares of messages read right. Single forms are in figures.test.ts. */
import { describe, expect, test } from "vitest";
import { judge, OWNERS, type Owner } from "./owners.ts";

const hands = [...new Map(OWNERS.map(({ hand, language }) => [`${language} ${hand}`, { hand, language }])).values()];
const missed = (all: readonly Owner[], right: "found" | "exact"): string[] => all.filter((owner) => !judge(owner)[right]).map(({ text }) => text);

describe("messages of owners", () => {
  test("three hundred and sixty and more, each a text of its own", () => {
    expect(OWNERS.filter(({ hand }) => hand <= 3).length).toBeGreaterThanOrEqual(360);
    expect(new Set(OWNERS.map(({ text }) => text.toLowerCase())).size).toBe(OWNERS.length);
  });

  test("a hundred and sixty and more in each of two fresh sittings of both languages", () => {
    for (const language of ["en", "de"]) expect(OWNERS.filter((one) => one.language === language
      && one.hand >= 8).length).toBeGreaterThanOrEqual(220);
  });

  test.each(hands)("sitting $hand, $language: at least 97 of a hundred with every figure right, its range, its bound and its basis",
    ({ hand, language }) => {
    const all = OWNERS.filter((owner) => owner.hand === hand && owner.language === language);
    expect(missed(all, "found").length / all.length, missed(all, "found").join("\n")).toBeLessThanOrEqual(hand <= 2 ? 0.01 : 0.03);
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
      judge({ hand: 1, language: "en", text, expect: [{ dimension: "share", value, unit: "pct", basis: null, ...more }] }).found;
    expect(verdict("20 % dry basis", 20, { basis: "dry" })).toBe(true);
    expect(verdict("20 %", 20, { basis: "dry" })).toBe(false);
    expect(verdict("over 20 %", 20, { low: 20 })).toBe(true);
    expect(verdict("20 %", 20, { low: 20 })).toBe(false);
    expect(verdict("20 kg", 20, {})).toBe(false);
  });
});
