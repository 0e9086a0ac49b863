/** The tree table against printed figures it was not made from. */
import { describe, expect, it } from "vitest";
import { reckon } from "../../src/calculators/index.ts";
import { allWoods, findWood } from "../../src/calculators/reference-data.ts";

const solid = (species: string): number => {
  const reckoned = reckon("stack", { volume_m3_solid: 1, species, moisture_pct_wet: 25 });
  return reckoned.ok ? Number(reckoned.result.energy_kWh) : Number.NaN;
};

/** Belgian table, GJ per stacked m3 at 25 %: its absolute figures count stacks as fuller than measured ones are, its ratios stand. */
const GJ_PER_STACKED: readonly (readonly [string, number])[] = [
  ["hornbeam", 10.0],
  ["robinia", 9.15],
  ["oak", 8.35],
  ["ash", 8.1],
  ["birch", 7.92],
  ["larch", 7.3],
  ["Douglas-fir", 6.61],
  ["pine", 6.5],
  ["spruce", 5.84],
  ["fir", 5.53],
];

/** OeHU table (Austria), kg of dry wood per solid m3 without bark. */
const KG_PER_SOLID: readonly (readonly [string, number])[] = [
  ["spruce", 427],
  ["pine", 510],
  ["larch", 545],
  ["beech", 650],
  ["oak", 630],
  ["ash", 650],
  ["birch", 515],
  ["hornbeam", 680],
];

describe("heat of trees against beech", () => {
  it.each(GJ_PER_STACKED)("%s: %d GJ where beech has 8.61, within 13 %%", (species, gigajoule) => {
    const ratio = solid(species) / solid("beech");
    expect(Math.abs(ratio / (gigajoule / 8.61) - 1)).toBeLessThan(0.13);
  });
});

describe("dry mass of trees against beech", () => {
  it.each(KG_PER_SOLID)("%s: %d kg where beech has 650, within 14 %%", (species, kg) => {
    const ratio = findWood(species).basic_density_g_per_cm3 / findWood("beech").basic_density_g_per_cm3;
    expect(Math.abs(ratio / (kg / 650) - 1)).toBeLessThan(0.14);
  });
});

describe("the table", () => {
  const { species, sources } = allWoods();

  it("gives each tree a density in the range of wood, from a named source", () => {
    for (const tree of species) {
      expect(tree.basic_density, tree.botanical).toBeGreaterThan(0.25);
      expect(tree.basic_density, tree.botanical).toBeLessThan(1);
      expect(sources, tree.botanical).toHaveProperty(tree.density_source);
    }
  });

  it("has each tree once, and keeps green moisture below what the tree can hold", () => {
    expect(new Set(species.map((tree) => tree.botanical)).size).toBe(species.length);
    for (const tree of species) {
      const most = (100 * (1.54 - tree.basic_density)) / (1.54 * tree.basic_density);
      for (const green of [tree.green?.heartwood, tree.green?.sapwood])
        if (green !== undefined) expect(green, tree.botanical).toBeLessThanOrEqual(most + 5);
    }
  });

  it("covers the regions people heat in", () => {
    const regions = new Set(species.flatMap((tree) => tree.regions));
    for (const region of ["EU", "NA", "AU", "NZ", "ZA", "SA"]) expect(regions).toContain(region);
  });
});
