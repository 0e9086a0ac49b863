import { describe, expect, it } from "vitest";
import { reckon } from "../../src/calculators/index.ts";

interface Seasoned {
  ready_on?: string;
  moisture_pct_wet_by_month: number[];
  floor_pct_wet: number;
  range?: { ready_on: [string, string | null] };
  warnings?: string[];
}
const MUNICH = { latitude: 48.14, longitude: 11.58 };
const seasoned = (more: object = {}): Seasoned => {
  const reckoned = reckon("seasoning", {
    species: "beech",
    split_mm: 90,
    start_pct_wet: 48,
    target_pct_wet: 20,
    stacked_on: "2026-03-15",
    ...MUNICH,
    ...more,
  });
  if (!reckoned.ok) throw new Error(reckoned.error);
  return reckoned.result as unknown as Seasoned;
};

describe("seasoning", () => {
  it("gives a range round the date, 24 months and a floor under them", () => {
    const one = seasoned();
    const [early, late] = one.range?.ready_on ?? ["", ""];
    expect(early <= (one.ready_on ?? "")).toBe(true);
    expect((one.ready_on ?? "") <= (late ?? "9")).toBe(true);
    expect(one.moisture_pct_wet_by_month).toHaveLength(24);
    for (const moisture of one.moisture_pct_wet_by_month) expect(moisture).toBeGreaterThanOrEqual(one.floor_pct_wet);
  });

  it("agrees with its own months about the date", () => {
    const one = seasoned();
    const months = (Date.parse(one.ready_on ?? "") - Date.parse("2026-03-15")) / 86_400_000 / 30.44;
    expect(one.moisture_pct_wet_by_month[Math.floor(months) - 1]).toBeGreaterThan(20);
    expect(one.moisture_pct_wet_by_month[Math.ceil(months) - 1]).toBeLessThanOrEqual(20);
  });

  it("never gives a later stack an earlier date", () => {
    let before = "";
    for (let day = 0; day < 730; day += 10) {
      const stacked_on = new Date(Date.UTC(2027, 0, 1 + day)).toISOString().slice(0, 10);
      const { ready_on } = seasoned({ stacked_on });
      expect((ready_on ?? "9999") >= before, stacked_on).toBe(true);
      before = ready_on ?? "9999";
    }
  });

  it("promises nothing to uncovered wood, and it is wetter in winter", () => {
    const bare = seasoned({ cover: "none" });
    expect(bare.ready_on).toBeUndefined();
    expect(bare.range).toBeUndefined();
    expect(bare.warnings?.join(" ")).toMatch(/rain/);
    const winter = 9;
    expect(bare.moisture_pct_wet_by_month[winter]).toBeGreaterThan(seasoned().moisture_pct_wet_by_month[winter] ?? 0);
  });

  it("never reaches a target below the floor, and says where the rest comes off", () => {
    const one = seasoned({ target_pct_wet: 9 });
    expect(one.ready_on).toBeUndefined();
    expect(one.warnings?.join(" ")).toMatch(/indoors/);
  });

  it("says when a little difference costs a winter", () => {
    expect(seasoned({ stacked_on: "2026-05-01", split_mm: 110 }).warnings?.join(" ")).toMatch(/whole winter/);
    expect(seasoned({ split_mm: 50, stacked_on: "2026-03-01" }).warnings?.join(" ")).not.toMatch(/whole winter/);
  });

  it("dries thinner, barkless and quicker woods sooner, and oak later", () => {
    const on = (more: object): string => seasoned(more).ready_on ?? "9999";
    expect(on({ split_mm: 60 }) < on({})).toBe(true);
    expect(on({ bark: false }) <= on({})).toBe(true);
    expect(on({ species: "spruce" }) < on({})).toBe(true);
    expect(on({ species: "oak" }) > on({})).toBe(true);
  });

  it("is ready at once when it is already dry", () => {
    expect(seasoned({ start_pct_wet: 18 }).ready_on).toBe("2026-03-15");
  });

  it("names the place it took the climate from, and how far that is", () => {
    expect(seasoned().warnings?.join(" ")).toMatch(/Munich/);
    expect(seasoned({ latitude: 43, longitude: -2 }).warnings?.join(" ")).toMatch(/km away/);
    expect(seasoned({ latitude: 45.5, longitude: -73.6 }).warnings?.join(" ")).toMatch(/recalled/);
  });
});
