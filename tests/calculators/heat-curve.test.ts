/** heat-curve and fire-plan as an outside caller sees them. */
import { describe, expect, it } from "vitest";
import { runCalculator } from "../../src/calculators/calculator.ts";
import { firePlan } from "../../src/calculators/fire-plan.ts";
import { heatCurve } from "../../src/calculators/heat-curve.ts";

type Curve = {
  series: { t_h: number; output_kW: number; facing_C: number; room_C: number }[];
  warnings: string[];
  range: Record<string, [number, number]>;
} & Record<
  | "peak_output_h"
  | "peak_facing_C"
  | "half_output_h"
  | "bed_black_h"
  | "given_24h_kWh"
  | "flue_loss_kWh"
  | "stored_kWh"
  | "balance_error_rel",
  number
>;

const FIRE = {
  heater: { kind: "contraflow", max_load_kg: 20, masonry_kg: 2750, shut_off_damper: true },
  house: { heat_loss_W_per_K: 140 },
  load_kg: 16,
  moisture_pct_wet: 17,
  lit_at: "2026-01-10T18:00:00",
  outside: { low_C: -8, high_C: 0 },
};
const curve = (more: object = {}): Curve => {
  const reckoned = runCalculator(heatCurve, { ...FIRE, ...more });
  if (!reckoned.ok) throw new Error(reckoned.error);
  return reckoned.result as unknown as Curve;
};
const error = (one: typeof heatCurve, inputs: object): string => {
  const reckoned = runCalculator(one, inputs);
  return reckoned.ok ? "" : reckoned.error;
};

describe("heat-curve", () => {
  it("gives 193 quarter hours and the figures read off them", () => {
    const { series, peak_output_h, half_output_h, given_24h_kWh, peak_facing_C } = curve();
    expect(series.map((point) => point.t_h)).toEqual(Array.from({ length: 193 }, (_, i) => i / 4));
    const top = series.reduce((a, b) => (b.output_kW > a.output_kW ? b : a));
    expect(Math.abs(top.t_h - peak_output_h)).toBeLessThanOrEqual(0.25);
    const at = (h: number): number => series[Math.round(h * 4)]!.output_kW;
    expect(Math.abs(at(half_output_h) / top.output_kW - 0.5)).toBeLessThan(0.02);
    expect(
      Math.abs(
        series.slice(0, 97).reduce((sum, point, i) => sum + point.output_kW * (i === 0 || i === 96 ? 0.125 : 0.25), 0) / given_24h_kWh - 1,
      ),
    ).toBeLessThan(0.01);
    expect(Math.max(...series.map((point) => point.facing_C))).toBeCloseTo(peak_facing_C, 0);
  });

  it.each([0, 0.5, 2])("moves a damper time of %f h to bed black and names carbon monoxide first", (damper_closed_after_h) => {
    const early = curve({ damper_closed_after_h });
    expect(early.warnings[0]).toMatch(/carbon monoxide/);
    expect(early.series).toEqual(curve({ damper_closed_after_h: early.bed_black_h }).series);
  });

  it("a later damper costs heat and gets no such warning", () => {
    const late = curve({ damper_closed_after_h: 12 });
    expect(late.given_24h_kWh).toBeLessThan(curve().given_24h_kWh);
    expect(late.warnings.some((warning) => warning.startsWith("Danger"))).toBe(false);
  });

  it("reads hourly temperatures from lighting on, and the clock of a daily low", () => {
    const steady = curve({ outside: { hourly_C: Array.from({ length: 48 }, () => -4) }, before: "cold" });
    const same = curve({ outside: { low_C: -4, high_C: -4 }, before: "cold" });
    expect(steady.series).toEqual(same.series);
    const morning = curve({ lit_at: "2026-01-10T06:00:00+01:00", outside: { low_C: -15, high_C: 5 }, before: "cold" });
    const evening = curve({ lit_at: "2026-01-10T18:00:00+01:00", outside: { low_C: -15, high_C: 5 }, before: "cold" });
    expect(morning.series[32]!.room_C).toBeGreaterThan(evening.series[32]!.room_C);
  });

  it("a cold heater starts at what the room is kept at", () => {
    const cold = curve({ before: "cold", house: { heat_loss_W_per_K: 140, wanted_C: 18 } });
    expect(cold.series[0]).toEqual({ t_h: 0, output_kW: 0, facing_C: 18, room_C: 18 });
  });

  it("warns of more wood than the heater may have, and refuses what no fire is", () => {
    expect(curve({ load_kg: 24 }).warnings.join(" ")).toMatch(/more than this heater's largest load of 20 kg/);
    expect(error(heatCurve, { ...FIRE, load_kg: 100 })).toBe("load_kg is 100; in a heater made for 20 kg it should be at most that.");
    expect(error(heatCurve, { ...FIRE, moisture_pct_wet: 70 })).toMatch(/moisture_pct_wet is 70/);
    expect(error(heatCurve, { ...FIRE, outside: { low_C: 5, high_C: -5 } })).toMatch(/outside.low_C is 5/);
    expect(error(heatCurve, { ...FIRE, lit_at: "tonight" })).toMatch(/lit_at is "tonight"/);
    expect(error(heatCurve, { ...FIRE, heater: { mass: 3 } })).toMatch(/"mass"/);
  });

  it("says what it assumed and how far off it may be", () => {
    const bare = curve({ heater: {}, house: {} });
    expect(bare.warnings.length).toBeGreaterThan(7);
    for (const [low, high] of Object.values(bare.range)) expect(low).toBeLessThan(high);
    expect(bare.range.bed_black_h![1]).toBeGreaterThan(4);
  });
});

const PLAN = {
  heater: { max_load_kg: 16, masonry_kg: 2500, shut_off_damper: true },
  house: { heat_loss_W_per_K: 110, other_heat_W: 300 },
  wood: { species: "birch", moisture_pct_wet: 17 },
  from: "2026-01-10T06:00:00+02:00",
  weather: [
    { date: "2026-01-10", low_C: -6, high_C: 0 },
    { date: "2026-01-11", low_C: -8, high_C: -1 },
  ],
  wanted: [{ from: "06:30", to: "22:00", min_C: 20, max_C: 24 }],
  awake: { from: "06:30", to: "22:30" },
};

describe("fire-plan", () => {
  it("names fires on the plan's own clock, adds up their wood and says why in two sentences", () => {
    const reckoned = runCalculator(firePlan, PLAN);
    if (!reckoned.ok) throw new Error(reckoned.error);
    const { fires, wood_kg, why, warnings } = reckoned.result as {
      fires: { lit_at: string; load_kg: number }[];
      wood_kg: number;
      why: string;
      warnings: string[];
    };
    expect(fires.length).toBeGreaterThan(1);
    for (const fire of fires) expect(fire.lit_at).toMatch(/^2026-01-1[01]T(0[7-9]|1\d):\d\d:00\+02:00$/);
    expect(wood_kg).toBeCloseTo(
      fires.reduce((sum, fire) => sum + fire.load_kg, 0),
      9,
    );
    expect(why.split(/(?<=\.) (?=[A-Z])/)).toHaveLength(2);
    expect(warnings[0]).toMatch(/^Carbon monoxide/);
  });

  it("refuses gaps in the weather, a start after it, and a heater without any figure for a load", () => {
    expect(error(firePlan, { ...PLAN, weather: [PLAN.weather[0], { ...PLAN.weather[1], date: "2026-01-12" }] })).toMatch(
      /weather\[1\].date is 2026-01-12; it should be 2026-01-11/,
    );
    expect(error(firePlan, { ...PLAN, from: "2026-02-01T06:00:00" })).toMatch(/weather\[0\].date is 2026-01-10; it should be 2026-02-01/);
    expect(error(firePlan, { ...PLAN, heater: {} })).toMatch(/heater.max_load_kg is missing/);
    expect(error(firePlan, { ...PLAN, wanted: [{ from: "06:30", to: "22:00", min_C: 25, max_C: 20 }] })).toMatch(/wanted\[0\].min_C is 25/);
  });

  it.each(["00:00", "06:20", "11:45", "15:00", "17:30", "18:10", "19:30", "20:59", "22:00", "23:40"])("from %s on it finds the fires of four cold days, on whole hours", (clock) => {
    const reckoned = runCalculator(firePlan, {
      ...PLAN, from: `2026-01-10T${clock}:00+02:00`,
      weather: [[-6, 0], [-8, -1], [-9, -2], [-4, 3]].map(([low_C, high_C], i) => ({ date: `2026-01-1${i}`, low_C, high_C })),
    });
    if (!reckoned.ok) throw new Error(reckoned.error);
    const { fires, hours_below_h } = reckoned.result as { fires: { lit_at: string; load_kg: number }[]; hours_below_h: number };
    const days = new Set(fires.map((fire) => fire.lit_at.slice(0, 10)));
    for (const day of ["2026-01-11", "2026-01-12", "2026-01-13"]) expect(days).toContain(day);
    for (const fire of fires) expect(fire.lit_at).toMatch(/T(0[7-9]|1\d):00:00\+02:00$/);
    expect(hours_below_h).toBeLessThan(5);
  });
});
