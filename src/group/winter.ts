/** Three figures of one heater's week, and the bands they are spoken of in. Pure; a figure is null where the records do not hold it. */
import type { WinterHeater } from "../records/group.ts";
import { bandCount, bandOf, publish, type Bands, type Published } from "./bands.ts";

/**
 * Degree days by the method of Eurostat (nrg_chdd, reference metadata; from memory): a day whose mean is at most 15 °C counts 18 °C less
 * its mean; a warmer one counts nothing. The mean of a day is that of its low and high, else of the readings written down with its fires.
 */
export const HEATED_TO_C = 18;
export const HEATED_BELOW_C = 15;
export const degreesOf = (mean_C: number): number => (mean_C <= HEATED_BELOW_C ? HEATED_TO_C - mean_C : 0);

export const METRICS = ["kg-per-degree-day", "moisture", "black-glass"] as const;
export type Metric = (typeof METRICS)[number];

/**
 * kg/Kd: with 3.25 kWh of heat from a kilogram, edges at houses that lose about 100, 200 and 350 W/K (0.024 · loss / 3.25).
 * Water: 15 and 20 % wet basis, the usual bounds of dry and of too wet. Black glass: the share of the days with a fire on which it was noted.
 */
export const BANDS: Readonly<Record<Metric, Bands>> = {
  "kg-per-degree-day": { edges: [0.75, 1.5, 2.5] },
  moisture: { edges: [15, 20] },
  "black-glass": { edges: [0.01, 0.25] },
};

export type WinterFigures = Readonly<Record<Metric, number | null>>;

const DAY_MS = 86_400_000;
const dayOf = (at_ms: number): string => new Date(at_ms).toISOString().slice(0, 10);

/** @param from_ms start of the week, UTC @param to_ms its end */
export function figuresOf({ heater, weather, fires }: WinterHeater, from_ms: number, to_ms: number): WinterFigures {
  const days = Array.from({ length: Math.round((to_ms - from_ms) / DAY_MS) }, (_, n) => dayOf(from_ms + n * DAY_MS));
  const wood_kg = fires.reduce((sum, { facts }) => sum + (facts.load_kg ?? 0), 0);
  const weighed = fires.length > 0 && fires.every(({ facts }) => facts.load_kg !== undefined);
  const means = days.flatMap((day) => meanOf(day, weather, fires) ?? []);
  const mean_C = means.length > 0 ? means.reduce((sum, one) => sum + one, 0) / means.length : null;
  // days without any word on the weather are taken as the others of the week
  const degree_days_Kd = mean_C === null ? 0 : (means.reduce((sum, one) => sum + degreesOf(one), 0) / means.length) * days.length;
  const wet = fires.flatMap(({ facts }) => (facts.moisture_pct_wet === undefined ? [] : [{ pct: facts.moisture_pct_wet, kg: facts.load_kg ?? 1 }]));
  const wet_kg = wet.reduce((sum, { kg }) => sum + kg, 0);
  const lit = new Set(fires.map(({ lit_at_ms }) => dayOf(lit_at_ms)));
  const black = (heater.upkeep.signs?.["black-glass"] ?? []).filter((day) => lit.has(day));
  return {
    "kg-per-degree-day": weighed && degree_days_Kd > 0 ? wood_kg / degree_days_Kd : null,
    moisture: wet_kg > 0 ? wet.reduce((sum, { pct, kg }) => sum + pct * kg, 0) / wet_kg : null,
    "black-glass": lit.size > 0 ? new Set(black).size / lit.size : null,
  };
}

function meanOf(day: string, weather: WinterHeater["weather"], fires: WinterHeater["fires"]): number | null {
  const known = weather.find(({ date }) => date === day);
  if (known) return (known.low_C + known.high_C) / 2;
  const read = fires.flatMap(({ lit_at_ms, facts }) => (dayOf(lit_at_ms) === day && facts.outside_C !== undefined ? facts.outside_C : []));
  return read.length > 0 ? read.reduce((sum, one) => sum + one, 0) / read.length : null;
}

export const bandsOf = (figures: WinterFigures): Readonly<Record<Metric, number | null>> =>
  Object.fromEntries(METRICS.map((metric) => [metric, figures[metric] === null ? null : bandOf(BANDS[metric], figures[metric])])) as Record<Metric, number | null>;

export type PublishedWeek = Readonly<Record<Metric, Published>>;

/** All that is kept and shown of a week. */
export function publishWeek(heaters: readonly WinterHeater[], from_ms: number, to_ms: number): PublishedWeek {
  const bands = heaters.map((heater) => bandsOf(figuresOf(heater, from_ms, to_ms)));
  return Object.fromEntries(METRICS.map((metric) => [metric, publish(bands.map((one) => one[metric]), bandCount(BANDS[metric]))])) as Record<Metric, Published>;
}
