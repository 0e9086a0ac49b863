/** The defaults against common practice, no source: about 20 kg of dry wood in 2.5 to 3 t, 8 kg in 1.2 t, 40 kg in 5 t. */
import { describe, expect, it } from "vitest";
import { heatCurve } from "../../../src/reckoning/heat-curve.ts";
import { curve, LARGE, MIDDLE, SMALL, THICK, THIN } from "./cases.ts";
import { BURNING, HEAT } from "./check-values.ts";

const CURVES = {
  "20 kg, thin": curve(THIN, 20),
  "20 kg, usual": curve(MIDDLE, 20),
  "20 kg, thick": curve(THICK, 20),
  "20 kg, soapstone": curve({ ...MIDDLE, facing_material: "soapstone" }, 20),
  "20 kg in 2.5 t": curve({ ...MIDDLE, masonry_kg: 2500 }, 20),
  "20 kg in 3 t": curve({ ...MIDDLE, masonry_kg: 3000 }, 20),
  "8 kg in 1.2 t": curve(SMALL, 8),
  "40 kg in 5 t": curve(LARGE, 40),
};

describe.each(Object.entries(CURVES))("%s", (_, one) => {
  it.each([...BURNING, ...HEAT])("$name within $band", ({ of, band: [low, high] }) => {
    expect(of(one)).toBeGreaterThanOrEqual(low);
    expect(of(one)).toBeLessThanOrEqual(high);
  });
  it("gives its heat in the right order: engaged, embers, last flame, bed black, warmest", () => {
    const { engaged_h, collapsed_h, flame_out_h, bed_black_h } = one.run.burn!;
    expect([engaged_h, collapsed_h, flame_out_h, bed_black_h]).toEqual(
      [engaged_h, collapsed_h, flame_out_h, bed_black_h].sort((a, b) => a - b),
    );
    expect(one.peak_output_h).toBeGreaterThan(flame_out_h);
  });
});

it("is warmest about an hour after the flames through a thin skin, hours after through a thick one", () => {
  const after = (name: keyof typeof CURVES): number => CURVES[name].peak_output_h - CURVES[name].run.burn!.flame_out_h;
  expect(after("20 kg, thin")).toBeGreaterThan(0.5);
  expect(after("20 kg, thin")).toBeLessThan(1.6);
  expect(after("20 kg, usual")).toBeGreaterThan(1.5);
  expect(after("20 kg, thick")).toBeGreaterThan(3);
  expect(after("20 kg, thick")).toBeLessThan(6.5);
});

it("very dry wood is out of flames before 2 h, wet wood after more than 2 h", () => {
  expect(curve(MIDDLE, 20, { moisture_pct_wet: 9 }).run.burn!.flame_out_h).toBeLessThan(1.75);
  expect(curve(MIDDLE, 20, { moisture_pct_wet: 30 }).run.burn!.flame_out_h).toBeGreaterThan(2);
});

it("lit from below it is engaged in 10 to 15 min", () => {
  const engaged_min = curve({ ...MIDDLE, lighting: "bottom" }, 20).run.burn!.engaged_h * 60;
  expect(engaged_min).toBeGreaterThan(9);
  expect(engaged_min).toBeLessThan(18);
});

it("a flue left open overnight costs 3 to 10 % of the load", () => {
  const shut = curve(MIDDLE, 20);
  const open = curve(MIDDLE, 20, { damper_closed_after_h: 14 });
  const cost = shut.efficiency - open.efficiency;
  expect(cost).toBeGreaterThan(0.03);
  expect(cost).toBeLessThan(0.1);
  expect(open.given_24h_kWh).toBeLessThan(shut.given_24h_kWh);
});

it("a day's fire heats as the standard says: 3.25 kWh/kg, EN 15544, within 12 %", () => {
  const daily = curve(MIDDLE, 20);
  const toRoom_kWh = (daily.run.burn!.net_J / 3.6e6) * daily.efficiency;
  expect(Math.abs(toRoom_kWh / 20 / 3.25 - 1)).toBeLessThan(0.12);
});

it("a heater of which nothing is known still gives a curve, and says what it assumed", () => {
  const bare = heatCurve({ heater: {}, house: {}, load_kg: 10, moisture_pct_wet: 17, outside: () => 0, before: "daily" });
  expect(bare.assumed.length).toBeGreaterThanOrEqual(6);
  expect(bare.peak_facing_C).toBeGreaterThan(30);
});
