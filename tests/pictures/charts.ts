/** One chart of each kind, made by formula. */
import type { Chart, ChartName } from "../../src/pictures/charts.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const WEEK_MS = 7 * DAY_MS;
export const START_MS = Date.parse("2026-11-25T18:00:00Z");

const HOURS = [...Array.from({ length: 24 }, (_, i) => i / 2), ...Array.from({ length: 25 }, (_, i) => 12 + i)];
const hill = (t_h: number): number => 0.4 + 3 * (t_h / 5) * Math.exp(1 - t_h / 5);

export const SAMPLES: { readonly [N in ChartName]: Chart<N> } = {
  "heat-curve": {
    lit_at_ms: START_MS,
    bed_black_h: { low: 2.2, value: 2.75, high: 4.4 },
    peak_output_h: { low: 3.8, value: 5, high: 6.3 },
    series: HOURS.map((t_h) => ({ t_h, output_kW: hill(t_h), facing_C: 20 + 11 * hill(t_h), room_C: 19.5 + 0.5 * hill(t_h) })),
  },
  "fire-plan": {
    days: [-8, -12, -15, -6, -1, 1, -3].map((low_C, i) => ({ from_ms: START_MS - 18 * HOUR_MS + i * DAY_MS, to_ms: START_MS + 6 * HOUR_MS + i * DAY_MS, low_C, high_C: low_C + 6 })),
    fires: [12, 14, 15, 14, 10, 9].map((load_kg, i) => ({ lit_at_ms: START_MS + i * DAY_MS, load_kg })),
    room: { coldest_C: 19.8, warmest_C: 22.9, wanted_C: 20 },
    wood_kg: 74,
  },
  drying: {
    points: Array.from({ length: 19 }, (_, i) => ({ at_ms: Date.parse("2026-05-10T12:00:00Z") + i * 30.4 * DAY_MS, pct_wet: 15 + 30 * Math.exp(-i / 4) })).map((point) => ({ ...point, at_ms: Math.round(point.at_ms) })),
    target_pct_wet: 20,
    floor_pct_wet: 10.4,
    ready: { early_ms: Date.parse("2026-09-10T12:00:00Z"), at_ms: Date.parse("2027-04-28T12:00:00Z"), late_ms: Date.parse("2027-06-24T12:00:00Z") },
  },
  pile: {
    points: Array.from({ length: 20 }, (_, i) => ({ at_ms: START_MS + i * WEEK_MS, low_kg: Math.max(0, 1400 - 110 * i), left_kg: Math.max(0, 1400 - 92 * i), high_kg: Math.max(0, 1400 - 75 * i) })),
    ends: { early_ms: START_MS + 12 * WEEK_MS, at_ms: START_MS + 15 * WEEK_MS, late_ms: START_MS + 18 * WEEK_MS },
  },
  season: {
    weeks: [10, 0, 24, 38, 52, 61, 70, 66, 98].map((load_kg, i) => ({ from_ms: Date.parse("2026-10-05T00:00:00Z") + i * WEEK_MS, load_kg, fires: Math.round(load_kg / 12) })),
  },
  bands: {
    week_from_ms: Date.parse("2026-11-23T00:00:00Z"),
    at_least: 30,
    metrics: [
      { metric: "kg-per-degree-day", levels: ["some", "half", "some", "hidden"] },
      { metric: "moisture", levels: ["third", "third", "hidden"] },
      { metric: "black-glass", levels: ["half", "some", "hidden"] },
    ],
  },
};
export const NAMES = Object.keys(SAMPLES) as ChartName[];
