import { describe, expect, it } from "vitest";
import { reckon } from "../../src/calculators/index.ts";

const result = (
  name: string,
  inputs: unknown,
): Record<string, unknown> & { warnings?: string[]; range?: Record<string, [number, number]> } => {
  const reckoned = reckon(name, inputs);
  if (!reckoned.ok) throw new Error(reckoned.error);
  return reckoned.result;
};
const warned = (name: string, inputs: unknown): string => (result(name, inputs).warnings ?? []).join(" ");

describe("results", () => {
  it("leave out what was not asked for", () => {
    expect(result("moisture", { moisture_pct_wet: 20 })).not.toHaveProperty("dry_kg");
    expect(result("stack", { volume_m3_stacked: 2, moisture_pct_wet: 20 })).not.toHaveProperty("mass_kg");
    expect(result("stack", { volume_m3_stacked: 2, species: "oak" })).not.toHaveProperty("mass_kg");
    expect(result("house-heat", { heat_loss_W_per_K: 200 })).toEqual({ heat_loss_W_per_K: 200 });
    expect(result("season", { degree_days_Kd: 3000, heat_loss_W_per_K: 200, useful_kWh_per_kg: 3.2 })).not.toHaveProperty(
      "wood_m3_stacked",
    );
    expect(result("air-moisture", { air_C: 20, target_pct_wet: 10 })).not.toHaveProperty("emc_pct_dry");
    expect(result("split-weight", { first_kg: 2, first_pct_wet: 40 })).toEqual({});
  });

  it("carry a range only where something was assumed, and the figure lies in it", () => {
    for (const [name, inputs] of [
      ["fuel", { load_kg: 12, moisture_pct_wet: 18 }],
      ["stack", { volume_m3_loose: 3, species: "oak", moisture_pct_wet: 20 }],
      ["season", { degree_days_Kd: 3000, heat_loss_W_per_K: 200 }],
      ["meter", { readings_pct_dry: [16, 18], wood_C: 5 }],
      ["draught", { flue_height_m: 6, outside_C: 5, flue_mean_C: 120 }],
      ["air-moisture", { air_C: 10, rh_pct: 80 }],
    ] as const) {
      const one = result(name, inputs);
      expect(Object.keys(one.range ?? {}).length, name).toBeGreaterThan(0);
      for (const [key, [low, high]] of Object.entries(one.range ?? {})) {
        expect(low, `${name} ${key}`).toBeLessThanOrEqual(Number(one[key]));
        expect(high, `${name} ${key}`).toBeGreaterThanOrEqual(Number(one[key]));
      }
    }
    expect(result("fuel", { load_kg: 12, moisture_pct_wet: 18, ncv_dry_MJ_per_kg: 18.9, efficiency: 0.8 })).not.toHaveProperty("range");
  });

  it("says over 30 instead of a figure, and brings frozen wood indoors", () => {
    const wet = result("meter", { readings_pct_dry: [34, 36], wood_C: 15 });
    expect(wet).not.toHaveProperty("corrected_pct_dry");
    expect(wet.warnings?.join(" ")).toMatch(/over 30/);
    expect(warned("meter", { readings_pct_dry: [16, 33], wood_C: 15 })).toMatch(/over 30/);
    expect(warned("meter", { readings_pct_dry: [16], wood_C: -5 })).toMatch(/indoors/);
    expect(result("meter", { readings_pct_dry: [16], wood_C: 15 }).warnings).toBeUndefined();
  });

  it("corrects cold wood upward and warm wood downward, temperature before species", () => {
    const at = (wood_C: number, species?: string): number =>
      Number(result("meter", { readings_pct_dry: [16], wood_C, ...(species && { species }) }).corrected_pct_dry);
    expect(at(0)).toBeGreaterThan(at(10));
    expect(at(10)).toBeGreaterThan(16);
    expect(at(35)).toBeLessThan(16);
    expect(at(5, "yellow stringybark")).toBeCloseTo(at(5) + 1.465, 1);
  });

  it("warns before any figure of a wood whose smoke is poisonous", () => {
    for (const name of ["fuel", "stack"]) {
      const inputs =
        name === "fuel" ? { load_kg: 10, moisture_pct_wet: 20, species: "tamboti" } : { volume_m3_stacked: 1, species: "tamboti" };
      expect(result(name, inputs).warnings?.[0]).toMatch(/Do not burn tamboti/);
    }
  });

  it("keeps a negative draught negative and says what it means", () => {
    expect(result("draught", { flue_height_m: 6, outside_C: 25, flue_mean_C: 20 }).draught_Pa).toBeLessThan(0);
    expect(warned("draught", { flue_height_m: 6, outside_C: 25, flue_mean_C: 20 })).toMatch(/carbon monoxide/);
    expect(warned("draught", { flue_height_m: 6, outside_C: 5, flue_mean_C: 150 })).toBe("");
  });

  it("reads a tree by any of its names and says how a bare one was read", () => {
    const kg = (species: string): number => Number(result("stack", { volume_m3_solid: 1, species, moisture_pct_wet: 0 }).mass_kg);
    for (const name of ["European beech", "fagus sylvatica", "Rotbuche", "hetre", "beech wood", "Beech"]) expect(kg(name), name).toBe(585);
    expect(kg("Douglas fir")).toBe(kg("Pseudotsuga menziesii"));
    expect(kg("kāmeeldoring".replace("ā", "a"))).toBe(kg("camel thorn"));
    expect(warned("stack", { volume_m3_solid: 1, species: "oak" })).toMatch(/pedunculate oak/);
  });

  it("conserves volumes whichever way the pile is told", () => {
    const told = result("stack", { cords: 2, species: "birch" });
    for (const key of ["volume_m3_stacked", "volume_m3_loose", "volume_m3_solid"]) {
      const back = result("stack", { [key]: told[key], species: "birch" });
      for (const other of ["volume_m3_stacked", "volume_m3_loose", "volume_m3_solid", "cords"])
        expect(back[other], `${key} to ${other}`).toBeCloseTo(Number(told[other]), 6);
    }
  });
});
