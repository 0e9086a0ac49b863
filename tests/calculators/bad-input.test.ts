import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CALCULATORS, reckon } from "../../src/calculators/index.ts";

const error = (name: string, inputs: unknown): string => {
  const reckoned = reckon(name, inputs);
  if (reckoned.ok) throw new Error(`${name} took ${JSON.stringify(inputs)}`);
  return reckoned.error;
};

/** What is wrong, and what the sentence must name. */
const SENTENCES: readonly (readonly [string, unknown, readonly (string | RegExp)[]])[] = [
  ["moisture", { moisture_pct_wet: 100 }, ["moisture_pct_wet", "100", "0 to 80", "dry basis"]],
  ["moisture", { moisture_pct_wet: -5 }, ["moisture_pct_wet", "-5", "0 to 80"]],
  ["moisture", { moisture_pct_wet: "12,5" }, ["moisture_pct_wet", "12,5", "12.5"]],
  ["moisture", { moisture_pct_wet: null }, ["moisture_pct_wet", "null", "number"]],
  ["moisture", { moist: 12 }, ['"moist"', "12", "moisture_pct_wet"]],
  ["moisture", {}, ["moisture_pct_wet", "moisture_pct_dry", "fresh_kg + oven_dry_kg"]],
  ["moisture", { moisture_pct_wet: 20, moisture_pct_dry: 25 }, ["moisture_pct_wet 20", "moisture_pct_dry 25", "only one"]],
  ["moisture", { fresh_kg: 2 }, ["fresh_kg", "oven_dry_kg"]],
  ["moisture", { fresh_kg: 0.3, oven_dry_kg: 0.4 }, ["oven_dry_kg", "0.4", "0.3"]],
  ["moisture", { fresh_kg: 400, oven_dry_kg: 0.33 }, ["oven_dry_kg", "0.33", "same unit"]],
  ["moisture", [20], ["moisture", "JSON object"]],
  ["split-weight", { first_kg: 2, first_pct_wet: 20, now_kg: 1.5 }, ["now_kg", "1.5", "1.600"]],
  ["meter", { readings_pct_dry: [], wood_C: 10 }, ["readings_pct_dry", "at least 1"]],
  ["meter", { readings_pct_dry: [12, "x"], wood_C: 10 }, ["readings_pct_dry[1]", '"x"', "number"]],
  ["meter", { readings_pct_dry: [12] }, ["wood_C", "°C"]],
  ["fuel", { load_kg: -5, moisture_pct_wet: 20 }, ["load_kg", "-5 kg", "above 0"]],
  ["fuel", { load_kg: 12 }, ["moisture_pct_wet or moisture_pct_dry"]],
  ["fuel", { load_kg: 12, moisture_pct_wet: 20, species: "baobab" }, ["species", "baobab", "beech"]],
  ["fuel", { load_kg: 12, moisture_pct_wet: 20, species: "swamp pine" }, ["species", "swamp pine", "Scots pine"]],
  ["fuel", { load_kg: 12, moisture_pct_wet: 20, species: "oleander" }, ["oleander", "never burn", "poisonous"]],
  ["fuel", { load_kg: 12, moisture_pct_wet: 20, efficiency: 80 }, ["efficiency", "80", "up to 1|above 0"]],
  ["rated-load", { nominal_output_kW: 4 }, ["nominal_heating_time_h"]],
  ["rated-load", { nominal_output_kW: 4, max_load_kg: 15, nominal_heating_time_h: 12 }, ["nominal_output_kW 4", "max_load_kg 15"]],
  ["rated-load", { nominal_output_kW: 4, nominal_heating_time_h: 12, efficiency: 0.8 }, ["efficiency", "ncv_kWh_per_kg"]],
  ["stack", { length_m: 2, height_m: 1 }, ["log_length_m", "0.33"]],
  ["stack", { length_ft: 8, height_ft: 4 }, ["log_length_in", "16"]],
  ["stack", { cords: 1, volume_m3_loose: 2 }, ["cords 1", "volume_m3_loose 2"]],
  ["air-moisture", { air_C: 10 }, ["rh_pct or target_pct_wet"]],
  ["air-moisture", { air_C: 10, rh_pct: 120 }, ["rh_pct", "120", "0 to 100"]],
  ["draught", { flue_height_m: 6, outside_C: 0, flue_mean_C: 100, altitude_m: 500, pressure_Pa: 95000 }, ["altitude_m 500", "pressure_Pa 95000", "only one"]],
  ["house-heat", { heat_loss_W_per_K: 200, walls_m2: 100, walls_W_per_m2K: 0.4 }, ["heat_loss_W_per_K 200", "not both"]],
  ["house-heat", { walls_m2: 100 }, ["walls_m2", "walls_W_per_m2K"]],
  ["house-heat", {}, ["heat_loss_W_per_K"]],
  ["season", { degree_days_Kd: 3000, heat_loss_W_per_K: 200, useful_kWh_per_kg: 3, ncv_kWh_per_kg: 4, efficiency: 0.8 }, ["useful_kWh_per_kg 3", "not both"]],
  ["seasoning", { species: "beech", split_mm: 100, start_pct_wet: 50, target_pct_wet: 20, stacked_on: "2026-02-30", latitude: 48, longitude: 11 }, ["stacked_on", "2026-02-30", "YYYY-MM-DD"]],
  ["seasoning", { species: "beech", split_mm: 100, start_pct_wet: 50, target_pct_wet: 20, stacked_on: "2026-03-01", latitude: 48 }, ["latitude", "longitude"]],
  ["seasoning", { species: "beech", split_mm: 100, start_pct_wet: 75, target_pct_wet: 20, stacked_on: "2026-03-01", latitude: 48, longitude: 11 }, ["start_pct_wet", "75", "beech"]],
  ["seasoning", { species: "beech", split_mm: 100, start_pct_wet: 50, target_pct_wet: 20, stacked_on: "2026-03-01", latitude: -20, longitude: -150 }, ["km", "climate"]],
  ["seasoning", { species: "beech", split_mm: 100, start_pct_wet: 50, target_pct_wet: 20, stacked_on: "2026-03-01", climate: { mean_C: [1], rh_pct: [2] } }, ["climate.mean_C", "at least 12"]],
  ["no-such", {}, ['"no-such"', "moisture"]],
];

describe("bad input", () => {
  it.each(SENTENCES)("%s %j", (name, inputs, parts) => {
    const text = error(name, inputs);
    for (const part of parts) expect(text).toMatch(part instanceof RegExp ? part : new RegExp(part.split("|").map((one) => one.replace(/[.*+?^${}()[\]\\]/g, "\\$&")).join("|")));
    expect(text).toMatch(/\.$/);
  });

  it("takes what only sounds wrong: green wood above 100 % dry basis, bone-dry wood, a flue colder than the air", () => {
    expect(reckon("moisture", { moisture_pct_dry: 140 }).ok).toBe(true);
    expect(reckon("moisture", { moisture_pct_wet: 0 }).ok).toBe(true);
    expect(reckon("draught", { flue_height_m: 6, outside_C: 25, flue_mean_C: 15 }).ok).toBe(true);
  });

  it("never throws and never answers with something that is not a number, whatever it is given", () => {
    const key = fc.constantFrom(...new Set(Object.values(CALCULATORS).flatMap((one) => one.inputs.map((input) => input.key))));
    const value = fc.oneof(fc.double(), fc.integer({ min: -50, max: 200 }), fc.string(), fc.constant(null), fc.array(fc.double()), fc.constant("beech"), fc.constant("2026-03-01"));
    fc.assert(fc.property(fc.constantFrom(...Object.keys(CALCULATORS)), fc.dictionary(key, value), (name, inputs) => {
      const reckoned = reckon(name, inputs);
      if (reckoned.ok) expect(JSON.stringify(reckoned.result)).not.toMatch(/NaN|:null/);
      else expect(reckoned.error.length).toBeGreaterThan(10);
    }), { numRuns: 600, seed: 11 });
  });
});
