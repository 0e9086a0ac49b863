import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allPlaces } from "../../src/calculators/reference-data.ts";
import {
  type Climate,
  DRYING_RATE_PER_D,
  daysToTarget,
  dryingCourse_pct_dry,
  dryingYear,
  driestEquilibrium_pct_dry,
  equilibriumOnDay_pct_dry,
  onDay,
  stackRate_per_d,
} from "../../src/reckoning/drying.ts";

const places = allPlaces();
const place = (name: string): Climate => {
  const found = places.find((one) => one.name === name);
  if (!found) throw new Error(name);
  return found;
};
const shifted = (climate: Climate, months: number): Climate => ({
  mean_C: climate.mean_C.map((_, month) => climate.mean_C[(month + months) % 12] ?? 0),
  rh_pct: climate.rh_pct.map((_, month) => climate.rh_pct[(month + months) % 12] ?? 0),
});
const ready = (climate: Climate, first_day: number, rate: number = DRYING_RATE_PER_D.typical): number | undefined =>
  daysToTarget(dryingYear(climate), { start_pct_dry: 100, first_day, k20_per_d: rate }, 25);
const [APRIL, OCTOBER] = [90, 273];

describe("drying course", () => {
  it("never gives an earlier ready date to a later start", () => {
    for (const climate of places) {
      for (const rate of Object.values(DRYING_RATE_PER_D)) {
        let before = Number.NEGATIVE_INFINITY;
        for (let start = 9000; start < 9365 + 45; start += 15) {
          const days = ready(climate, start, rate);
          const end = days === undefined ? Number.POSITIVE_INFINITY : start + days;
          expect(end, `${climate.name} from day ${start}`).toBeGreaterThanOrEqual(before);
          before = end;
        }
      }
    }
  });

  it("never dries below the driest equilibrium, nor wets above where it started or the dampest one", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...places),
        fc.integer({ min: 0, max: 364 }),
        fc.double({ min: 20, max: 200, noNaN: true }),
        fc.double({ min: 0.002, max: 0.3, noNaN: true }),
        (climate, first_day, start, rate) => {
          const year = Array.from({ length: 366 }, (_, day) => equilibriumOnDay_pct_dry(climate, day));
          const low = Math.min(start, ...year) - 1e-9;
          const high = Math.max(start, ...year) + 1e-9;
          return dryingCourse_pct_dry(dryingYear(climate), { start_pct_dry: start, first_day, k20_per_d: rate }, 730).every(
            (moisture) => moisture >= low && moisture <= high,
          );
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });

  it("knows no month names: a climate moved by half a year dries the same half a year later", () => {
    for (const name of ["Munich", "Denver", "Hobart"]) {
      const here = ready(place(name), APRIL) ?? 0;
      const there = ready(shifted(place(name), 6), APRIL + 182) ?? 0;
      expect(Math.abs(here - there), name).toBeLessThan(6);
    }
  });

  it("treats like climates of both hemispheres alike, each in its own spring, within a quarter", () => {
    const south = [ready(place("Christchurch"), OCTOBER), ready(place("Hobart"), OCTOBER)].map(Number);
    const north = [ready(place("London"), APRIL), ready(place("Seattle"), APRIL)].map(Number);
    for (const one of south) for (const other of north) expect(Math.abs(one - other) / other).toBeLessThan(0.25);
  });

  it("takes longer for thicker splits, at least twice as long for rounds of twice the size", () => {
    const days = (split_mm: number): number =>
      ready(place("Vienna"), APRIL, stackRate_per_d(DRYING_RATE_PER_D.typical, { split_mm, seasoning_class: 2, bark: true })) ??
      Number.POSITIVE_INFINITY;
    expect(days(50)).toBeLessThan(days(80));
    expect(days(80)).toBeLessThan(days(120));
    expect(days(240)).toBeGreaterThan(2 * days(120));
    const [thin, thick] = [50, 100].map((split_mm) => stackRate_per_d(0.016, { split_mm, seasoning_class: 2, bark: true }));
    expect((thin ?? 0) / (thick ?? 1)).toBeGreaterThan(2 ** 1.4);
    expect((thin ?? 0) / (thick ?? 1)).toBeLessThanOrEqual(2 ** 2);
  });

  it("takes oak and dense eucalypts 1.5 to 2 times as long as beech", () => {
    const steady: Climate = { mean_C: Array(12).fill(15), rh_pct: Array(12).fill(65) };
    const days = (seasoning_class: 2 | 4): number =>
      ready(steady, 0, stackRate_per_d(0.016, { split_mm: 100, seasoning_class, bark: true })) ?? 0;
    expect(days(4) / days(2)).toBeGreaterThan(1.5);
    expect(days(4) / days(2)).toBeLessThan(2);
  });

  it("follows the closed form in a steady climate", () => {
    const steady: Climate = { mean_C: Array(12).fill(20), rh_pct: Array(12).fill(74.55) };
    const end = equilibriumOnDay_pct_dry(steady, 0);
    expect(end).toBeCloseTo(14.2, 0);
    expect(dryingCourse_pct_dry(dryingYear(steady), { start_pct_dry: 100, first_day: 40, k20_per_d: 0.016 }, 180)[180]).toBeCloseTo(
      end + (100 - end) * Math.exp(-0.016 * 180),
      9,
    );
  });

  it("never reaches a target below its floor", () => {
    const floor = driestEquilibrium_pct_dry(place("Bergen"));
    expect(daysToTarget(dryingYear(place("Bergen")), { start_pct_dry: 60, first_day: 0, k20_per_d: 0.04 }, floor - 0.5)).toBeUndefined();
  });

  it("interpolates through the middle of each month and round the new year", () => {
    const rising = Array.from({ length: 12 }, (_, month) => month);
    expect(onDay(rising, 15.5)).toBeCloseTo(0, 9);
    expect(onDay(rising, 45)).toBeCloseTo(1, 9);
    expect(onDay(rising, 349.5)).toBeCloseTo(11, 9);
    expect(onDay(rising, 365)).toBeCloseTo(5.5, 0);
    expect(onDay(rising, -1)).toBeCloseTo(onDay(rising, 364), 9);
  });
});
