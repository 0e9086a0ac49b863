/**
 * A fit against readings made by the model with known figures and noise: it finds them, and inside its ranges as often as
 * these claim.
 */
import { expect, it } from "vitest";
import { type PlannedFire, planPlant, roomUnder } from "../../../src/reckoning/fire-plan.ts";
import { fitHeater, type Reading } from "../../../src/reckoning/fit.ts";
import { leastSquares } from "../../../src/reckoning/least-squares.ts";
import { sameDay } from "../../../src/reckoning/heater-room.ts";
import { uniform } from "../../../src/reckoning/heater.ts";
import { random } from "../../simulation/plan/climates.ts";

const HEATER = { max_load_kg: 16, masonry_kg: 2400, facing_material: "brick" } as const;
const HOUSE = { heat_loss_W_per_K: 120, heat_capacity_kWh_per_K: 8, floor_m2: 80, other_heat_W: 300 };
const outside = sameDay(-6, 1, 6);
const FIRES: PlannedFire[] = [
  { lit_h: 2, load_kg: 12 },
  { lit_h: 36, load_kg: 15 },
  { lit_h: 61, load_kg: 10 },
  { lit_h: 85, load_kg: 14 },
];

/** Readings of a house that loses `loss` and holds `capacity` times what is believed. */
function readingsOf(
  loss: number,
  capacity: number,
  seed: number,
  noise_K: number,
  hours: readonly number[],
  what: readonly Reading["what"][],
): Reading[] {
  const plant = planPlant(HEATER, { ...HOUSE, heat_loss_W_per_K: 120 * loss, heat_capacity_kWh_per_K: 8 * capacity });
  const course = roomUnder(
    {
      plant,
      moisture_pct_wet: 17,
      start_hour: 6,
      hours: 120,
      outside,
      wanted: [],
      awake: { from_h: 0, to_h: 24 },
      bounds: { max_load_kg: 16, min_load_kg: 8, max_day_kg: 32, spacing_h: 8 },
      state: uniform(plant, 33, 20),
    },
    FIRES,
    120,
  );
  const { normal } = random(seed);
  return hours.flatMap((at_h) =>
    what.map((one) => ({
      at_h,
      what: one,
      reading_C: (one === "room" ? course.room_C : course.facing_C)[Math.round(at_h * 4)]! + noise_K * normal(),
    })),
  );
}
const EVERY_3_H = Array.from({ length: 36 }, (_, i) => 3 * i);
const given = { heater: HEATER, house: HOUSE, moisture_pct_wet: 17, outside, fires: FIRES };

it("finds heat loss and capacity that are 25 % off what was believed", () => {
  const fit = fitHeater({ ...given, readings: readingsOf(1.25, 0.75, 3, 0.2, EVERY_3_H, ["room", "facing"]) });
  expect(Math.abs(fit.heat_loss_W_per_K.value / 150 - 1)).toBeLessThan(0.05);
  expect(Math.abs(fit.heat_capacity_kWh_per_K.value / 6 - 1)).toBeLessThan(0.1);
  expect(Math.abs(fit.masonry_share.value - 1)).toBeLessThan(0.1);
  expect(fit.cannot_tell).toEqual([]);
  expect(fit.residual_K).toBeGreaterThan(0.1);
  expect(fit.residual_K).toBeLessThan(0.3);
});

it("is inside its 90 % ranges about nine times in ten", () => {
  let inside = 0;
  let asked = 0;
  for (let seed = 1; seed <= 10; seed++) {
    const { uniform: chance } = random(seed * 31);
    const [loss, capacity] = [0.75 + 0.5 * chance(), 0.75 + 0.5 * chance()];
    const fit = fitHeater({
      ...given,
      readings: readingsOf(
        loss,
        capacity,
        seed,
        0.3,
        EVERY_3_H.filter((_, i) => i % 2 === 0),
        ["room", "facing"],
      ),
    });
    for (const [{ low, high }, truth] of [
      [fit.heat_loss_W_per_K, 120 * loss],
      [fit.heat_capacity_kWh_per_K, 8 * capacity],
      [fit.masonry_share, 1],
    ] as const) {
      asked++;
      if (truth >= low && truth <= high) inside++;
    }
  }
  expect(inside / asked).toBeGreaterThan(0.82);
  expect(inside / asked).toBeLessThan(0.99);
});

it("says when the readings cannot tell", () => {
  const fit = fitHeater({
    ...given,
    fires: [],
    readings: readingsOf(
      1,
      1,
      5,
      0.5,
      Array.from({ length: 12 }, (_, i) => i / 4),
      ["room"],
    ),
  });
  expect(fit.cannot_tell).toContain("heat_loss_W_per_K");
});

it("refuses too few readings in one sentence", () => {
  expect(() => fitHeater({ ...given, readings: [] })).toThrow("There are 0 readings; a fit needs at least 10, over two days or more.");
});

it("least squares finds the line of a standard problem: slope, intercept and their standard errors (NIST Norris, certified)", () => {
  const x = [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1,
    995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
  ];
  const y = [
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3,
    998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
  ];
  const found = leastSquares(([a = 0, b = 0]) => x.map((one) => a + b * one), y, [
    { start: 0, bounds: [-10, 10], step: 0.01 },
    { start: 0.5, bounds: [0, 10], step: 0.001 },
  ]);
  expect(found.values[0]).toBeCloseTo(-0.262323073774029, 6);
  expect(found.values[1]).toBeCloseTo(1.00211681802045, 8);
  expect(Math.sqrt(found.covariance[0]![0]!)).toBeCloseTo(0.232818234301152, 5);
  expect(Math.sqrt(found.covariance[1]![1]!)).toBeCloseTo(0.000429796848199937, 8);
});
