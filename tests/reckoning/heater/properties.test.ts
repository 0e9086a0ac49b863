/** What must hold whatever the parameters: energy, monotony, physical bounds. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heatCurve, type HeatCurve } from "../../../src/reckoning/heat-curve.ts";
import type { HeaterFacts } from "../../../src/reckoning/heater-layers.ts";
import { heaterFrom } from "../../../src/reckoning/heater-layers.ts";
import { houseFrom, sameDay } from "../../../src/reckoning/heater-room.ts";
import { fireRun, PARAMETERS, plantOf, run, uniform } from "../../../src/reckoning/heater.ts";
import { burnOf } from "../../../src/reckoning/burn.ts";
import { curve, MIDDLE, SMALL, THICK, THIN } from "./cases.ts";

const heaters = fc
  .record({
    kind: fc.constantFrom("channel", "bell", "contraflow", "mixed", "unknown"),
    max_load_kg: fc.double({ min: 6, max: 40, noNaN: true }),
    share: fc.double({ min: 0.4, max: 1, noNaN: true }),
    facing_material: fc.constantFrom("brick", "tile", "soapstone", "render", "stone"),
    shut_off_damper: fc.boolean(),
    outside_air: fc.boolean(),
    lighting: fc.constantFrom("top", "bottom"),
    flue_height_m: fc.double({ min: 3, max: 12, noNaN: true }),
  })
  .map(({ share, ...facts }): HeaterFacts => ({ ...facts, masonry_kg: (facts.max_load_kg * 100) / share }) as HeaterFacts);
const weather = fc.tuple(fc.integer({ min: -35, max: 12 }), fc.integer({ min: 0, max: 14 }));
const moisture = fc.double({ min: 6, max: 35, noNaN: true });
const RUNS = { numRuns: 25, seed: 20261125 };

describe("energy", () => {
  it("closes to 1e-9 for any heater, wood, weather and damper", () => {
    fc.assert(
      fc.property(
        heaters,
        weather,
        moisture,
        fc.double({ min: 0.3, max: 1.2, noNaN: true }),
        fc.constantFrom(undefined, 0, 6, 14, 40),
        fc.constantFrom("daily" as const, "cold" as const),
        (heater, [low, swing], wet, share, closed, before) => {
          const one = heatCurve({
            heater,
            house: { heat_loss_W_per_K: 130, other_heat_W: 250 },
            load_kg: share * heater.max_load_kg!,
            moisture_pct_wet: wet,
            outside: sameDay(low, low + swing, 18),
            before,
            damper_closed_after_h: closed,
          });
          expect(one.balance_error_rel).toBeLessThan(1e-9);
        },
      ),
      RUNS,
    );
  });

  it("what is given, lost and stored adds up to the net heat of the wood over 48 h, reckoned from the outside", () => {
    const one = curve(MIDDLE, 20);
    const { quarter, burn } = one.run;
    const net = quarter.given_J[192]! + quarter.flue_J[192]! + quarter.stored_J[192]! + burn!.unburnt_J + burn!.charcoal_left_J;
    expect(Math.abs(net / burn!.net_J - 1)).toBeLessThan(1e-9);
  });

  it("gross heat is net heat and the heat of all the water, from the moisture and from hydrogen (ISO 18125: 2.443 MJ/kg)", () => {
    const burn = burnOf({ load_kg: 20, moisture_pct_wet: 17, max_load_kg: 20 });
    const water_kg = 20 * 0.17 + (20 * 0.83 * 0.061 * 18.015) / 2.016;
    expect(burn.gross_J - burn.net_J).toBeCloseTo(water_kg * 2.443e6, -4);
    expect(burn.released_J.at(-1)! + burn.unburnt_J + burn.charcoal_left_J + burn.latent_J).toBeCloseTo(burn.gross_J, -1);
  });

  it("a house with a daily fire settles at the outside mean plus mean output over heat loss", () => {
    const outside = sameDay(-5, 5, 18);
    const plant = plantOf(heaterFrom({ ...MIDDLE, outside_air: true }), houseFrom({ heat_loss_W_per_K: 140, heat_capacity_kWh_per_K: 7 }));
    const day = fireRun(plant, { load_kg: 20, moisture_pct_wet: 17, outside, before: "daily", hours: 24 });
    const meanRoom = day.quarter.room_C.slice(0, 96).reduce((sum, C) => sum + C, 0) / 96;
    expect(meanRoom).toBeCloseTo(day.quarter.given_J[96]! / 86400 / 140, 0);
    expect(Math.abs(day.quarter.stored_J[96]!) / day.burn!.net_J).toBeLessThan(0.002);
  });
});

/** The room at 07:00 after a fire at 18:00. */
const morning_C = (one: HeatCurve): number => one.series[13 * 4]!.room_C;

describe("monotony", () => {
  it("more wood never gives a colder morning, flue shut at bed black, same air and draught", () => {
    for (const heater of [MIDDLE, THIN, THICK, SMALL]) {
      for (const before of ["daily", "cold"] as const) {
        const house = { heat_loss_W_per_K: 120, heat_capacity_kWh_per_K: 6 };
        const top = heater.max_load_kg!;
        const mornings = Array.from({ length: 11 }, (_, i) =>
          curve(heater, top * (0.25 + 0.1 * i), { before, house, damper_closed_after_h: 0 }),
        );
        mornings.slice(1).forEach((one, i) => {
          expect(morning_C(one)).toBeGreaterThanOrEqual(morning_C(mornings[i]!));
          expect(one.given_24h_kWh).toBeGreaterThan(mornings[i]!.given_24h_kWh);
        });
      }
    }
  });

  it("for any heater and weather too", () => {
    fc.assert(
      fc.property(
        heaters,
        weather,
        moisture,
        fc.double({ min: 0.3, max: 1.1, noNaN: true }),
        fc.double({ min: 1.02, max: 1.3, noNaN: true }),
        (facts, [low, swing], moisture_pct_wet, share, more) => {
          const heater = { ...facts, shut_off_damper: true };
          const at = (load_kg: number): HeatCurve =>
            heatCurve({
              heater,
              house: { heat_loss_W_per_K: 130 },
              load_kg,
              moisture_pct_wet,
              outside: sameDay(low, low + swing, 18),
              before: "cold",
            });
          const load_kg = share * heater.max_load_kg!;
          expect(morning_C(at(load_kg * more))).toBeGreaterThanOrEqual(morning_C(at(load_kg)));
        },
      ),
      RUNS,
    );
  });

  it("wetter wood of the same weight never gives more heat", () => {
    for (const heater of [MIDDLE, THIN, SMALL]) {
      for (const share of [0.5, 1]) {
        const gives = Array.from({ length: 16 }, (_, i) =>
          curve(heater, share * heater.max_load_kg!, { moisture_pct_wet: 4 + 3 * i, house: { heat_loss_W_per_K: 120 } }),
        );
        gives.slice(1).forEach((one, i) => expect(one.given_24h_kWh).toBeLessThan(gives[i]!.given_24h_kWh));
      }
    }
  });

  it("an earlier shut flue never loses more, and is never before bed black", () => {
    const curves = [0, 3, 5, 8, 14, 30].map((h) => curve(MIDDLE, 20, { damper_closed_after_h: h }));
    expect(curves[0]!.damper_closed_h).toBe(curves[0]!.bed_black_h);
    curves.slice(1).forEach((one, i) => expect(one.flue_loss_kWh).toBeGreaterThan(curves[i]!.flue_loss_kWh));
  });
});

it("temperatures stay inside what flame, room and outside allow", () => {
  fc.assert(
    fc.property(heaters, weather, moisture, (heater, [low, swing], moisture_pct_wet) => {
      const one = heatCurve({
        heater,
        house: { heat_loss_W_per_K: 130 },
        load_kg: heater.max_load_kg!,
        moisture_pct_wet,
        outside: sameDay(low, low + swing, 18),
        before: "daily",
      });
      const { peaks } = one.run;
      expect(peaks.firebox_C).toBeLessThan(1250);
      expect(peaks.skin_C).toBeLessThan(peaks.firebox_C);
      expect(peaks.flue_C).toBeLessThan(peaks.firebox_C);
      expect(one.peak_facing_C).toBeLessThan(peaks.skin_C);
      for (const point of one.series) {
        expect(point.room_C).toBeGreaterThan(low - 1e-6);
        expect(point.facing_C).toBeGreaterThan(point.room_C - 2);
      }
    }),
    RUNS,
  );
});

it("with no fire and no other heat everything falls towards the outside and stays above it", () => {
  const plant = plantOf(heaterFrom(MIDDLE), houseFrom({ heat_loss_W_per_K: 150 }));
  const cold = run(plant, uniform(plant, 60, 20), { burn: undefined, outside: () => -10, closed_h: 0, hours: 400 });
  expect(cold.quarter.room_C.at(-1)!).toBeLessThan(cold.quarter.room_C[0]!);
  expect(Math.min(...cold.end_C)).toBeGreaterThan(-10);
  expect(cold.balance_error_rel).toBeLessThan(1e-9);
});

it("halving steps and cells changes the figures by less than the eye can see", () => {
  const usual = curve(MIDDLE, 20);
  const fine = curve(MIDDLE, 20, { parameters: { ...PARAMETERS, step_min: [0.5, 1, 3] } });
  expect(Math.abs(usual.peak_facing_C - fine.peak_facing_C)).toBeLessThan(0.2);
  expect(Math.abs(usual.given_24h_kWh / fine.given_24h_kWh - 1)).toBeLessThan(0.003);
  usual.series.forEach((point, i) => expect(Math.abs(point.facing_C - fine.series[i]!.facing_C)).toBeLessThan(0.3));
  const grid = (cells: number) => {
    const plant = plantOf(heaterFrom(MIDDLE, undefined, cells), houseFrom({ heat_loss_W_per_K: 130 }));
    return fireRun(plant, { load_kg: 20, moisture_pct_wet: 17, outside: () => 0, before: uniform(plant, 20, 20), hours: 48 });
  };
  const [coarse, dense] = [grid(8), grid(32)];
  expect(Math.abs(coarse.peaks.facing_C - dense.peaks.facing_C)).toBeLessThan(0.3);
  expect(Math.abs(coarse.quarter.given_J[96]! / dense.quarter.given_J[96]! - 1)).toBeLessThan(0.005);
});
