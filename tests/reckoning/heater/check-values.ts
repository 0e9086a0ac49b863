/**
 * What a practitioner expects of a fire, all of it common practice, no source, each with its band. Used by the test and by the
 * sensitivity table.
 * Firebox: "800 to 1000 °C", "around 1000 °C at the hottest". Door glass: "200 to 350 °C", "some hundreds". Flue gas: peak 150
 * to 250, mean 120 to 200 °C.
 */
import type { HeatCurve } from "../../../src/reckoning/heat-curve.ts";

export interface CheckValue {
  readonly name: string;
  readonly of: (curve: HeatCurve) => number;
  readonly band: readonly [number, number];
}

const burn = (curve: HeatCurve) => curve.run.burn!;
export const BURNING: readonly CheckValue[] = [
  { name: "load fully engaged, min", of: (c) => burn(c).engaged_h * 60, band: [20, 40] },
  { name: "down to embers, min", of: (c) => burn(c).collapsed_h * 60, band: [45, 80] },
  { name: "last flame, h", of: (c) => burn(c).flame_out_h, band: [1.5, 2.5] },
  { name: "bed black, h", of: (c) => c.bed_black_h, band: [2, 4] },
  {
    name: "charcoal left, % of load",
    of: (c) => (100 * burn(c).charcoal_left_J) / 32e6 / (burn(c).gas_kg.at(-1)! + burn(c).charcoal_left_J / 32e6),
    band: [0, 1],
  },
];
export const HEAT: readonly CheckValue[] = [
  { name: "firebox at the hottest, °C", of: (c) => c.run.peaks.firebox_C, band: [800, 1100] },
  { name: "door glass at the hottest, °C", of: (c) => c.run.peaks.glass_C, band: [200, 400] },
  { name: "flue gas peak, °C", of: (c) => c.run.peaks.flue_C, band: [130, 275] },
  { name: "flue gas mean, °C", of: (c) => c.run.peaks.flueMean_C, band: [100, 230] },
  { name: "efficiency", of: (c) => c.efficiency, band: [0.68, 0.88] },
  { name: "mean face at the hottest, °C", of: (c) => c.peak_facing_C, band: [45, 90] },
  { name: "face above room after 24 h, K", of: (c) => c.series[96]!.facing_C - c.series[96]!.room_C, band: [5, 35] },
];
