/** The room as air and fabric, and the day outside. */
import type { Mesh } from "./conduction.ts";

/** The keys of a house record that the reckoning uses. */
export interface HouseFacts {
  readonly heat_loss_W_per_K?: number;
  readonly heat_capacity_kWh_per_K?: number;
  readonly floor_m2?: number;
  readonly wanted_C?: number;
  readonly other_heat_W?: number;
}

/** Heat loss per floor area of an average house, W/m2K. Common practice 0.3 passive to 4 uninsulated, no source. */
const AVERAGE_LOSS_W_PER_M2K = 1.5;
/** Internal capacity per floor area, medium building, 165 kJ/m2K. EN ISO 13790 table 12 (from memory). */
const MEDIUM_KWH_PER_M2K = 165 / 3600;
/** Air and furniture per floor area, 10 kJ/m2K. EN ISO 52016-1 (from memory). */
const AIR_J_PER_M2K = 10_000;
/**
 * Air to fabric per floor area: 9.1 on 2.5 times the floor, in series with 3.45 on 4.5 times. EN ISO 13790, 7.2.2 and
 * 12.2.2 (from memory).
 */
const COUPLING_W_PER_M2K = 1 / (1 / (9.1 * 2.5) + 1 / (3.45 * 4.5));

export interface HouseModel {
  readonly heat_loss_W_per_K: number;
  readonly heat_capacity_kWh_per_K: number;
  readonly floor_m2: number;
  readonly other_heat_W: number;
  readonly assumed: readonly string[];
}

/** Complete the facts of a house, each missing one from the others. */
export function houseFrom(facts: HouseFacts): HouseModel {
  const assumed: string[] = [];
  const floor_m2 =
    facts.floor_m2 ??
    (facts.heat_loss_W_per_K !== undefined
      ? facts.heat_loss_W_per_K / AVERAGE_LOSS_W_PER_M2K
      : facts.heat_capacity_kWh_per_K !== undefined
        ? facts.heat_capacity_kWh_per_K / MEDIUM_KWH_PER_M2K
        : 100);
  const heat_loss_W_per_K = facts.heat_loss_W_per_K ?? floor_m2 * AVERAGE_LOSS_W_PER_M2K;
  const heat_capacity_kWh_per_K = facts.heat_capacity_kWh_per_K ?? floor_m2 * MEDIUM_KWH_PER_M2K;
  if (facts.heat_loss_W_per_K === undefined) {
    assumed.push(
      `heat_loss_W_per_K is not known; ${Math.round(heat_loss_W_per_K)} W/K is assumed, an average house of ${Math.round(floor_m2)} m²; a tight one loses half, a leaky one twice as much.`,
    );
  }
  if (facts.heat_capacity_kWh_per_K === undefined) {
    assumed.push(
      `heat_capacity_kWh_per_K is not known; ${heat_capacity_kWh_per_K.toFixed(1)} kWh/K is assumed (medium, EN ISO 13790); light timber has half, heavy masonry twice as much.`,
    );
  }
  return { heat_loss_W_per_K, heat_capacity_kWh_per_K, floor_m2, other_heat_W: facts.other_heat_W ?? 0, assumed };
}

/** Two nodes: air, which loses to the outside, and fabric. */
export function roomMesh(house: HouseModel): Mesh {
  const air_J_per_K = house.floor_m2 * AIR_J_PER_M2K;
  return {
    capacity_J_per_K: Float64Array.of(air_J_per_K, Math.max(house.heat_capacity_kWh_per_K * 3.6e6 - air_J_per_K, 0.1 * air_J_per_K)),
    link_W_per_K: Float64Array.of(COUPLING_W_PER_M2K * house.floor_m2),
    loss_W_per_K: Float64Array.of(house.heat_loss_W_per_K, 0),
  };
}

/** Outside temperature, °C, at a time in hours after a chosen start. */
export type Outside = (after_h: number) => number;

/**
 * Coldest and warmest hour of a clear day; the half waves between them are cosines. ASHRAE's daily profile has its
 * extremes at 5 and 15 h (from memory).
 */
const COLDEST_H = 5;
const WARMEST_H = 15;

/** Temperature of a day with a low and a high at a clock hour, 0 to 24. */
export function dayShape(hour: number): number {
  const h = ((hour % 24) + 24) % 24;
  return h >= COLDEST_H && h <= WARMEST_H
    ? 0.5 - 0.5 * Math.cos((Math.PI * (h - COLDEST_H)) / (WARMEST_H - COLDEST_H))
    : 0.5 + 0.5 * Math.cos((Math.PI * ((h - WARMEST_H + 24) % 24)) / (24 - WARMEST_H + COLDEST_H));
}

/** The same day again and again. @param start_hour clock hour at 0 */
export const sameDay =
  (low_C: number, high_C: number, start_hour: number): Outside =>
  (after_h) =>
    low_C + (high_C - low_C) * dayShape(start_hour + after_h);

/** Hourly values from the start; after the last one the last 24 (or all, when fewer) are repeated. */
export function hourly(values_C: readonly number[]): Outside {
  const period = Math.min(24, values_C.length);
  const at = (hour: number): number => {
    if (hour < 0) return at(hour + Math.ceil(-hour / period) * period);
    return values_C[hour < values_C.length ? hour : values_C.length - period + ((hour - values_C.length) % period)]!;
  };
  return (after_h) => {
    const hour = Math.floor(after_h);
    return at(hour) + (after_h - hour) * (at(hour + 1) - at(hour));
  };
}

/** A run of days from midnight of the first; between a day's high and the next day's low the halves of the wave join. */
export function runOfDays(days: readonly { low_C: number; high_C: number }[], start_hour: number): Outside {
  const day = (index: number): { low_C: number; high_C: number } => days[Math.min(Math.max(index, 0), days.length - 1)]!;
  return (after_h) => {
    const clock = start_hour + after_h;
    const index = Math.floor(clock / 24);
    const hour = clock - index * 24;
    const low_C = hour > WARMEST_H ? day(index + 1).low_C : day(index).low_C;
    const high_C = hour < COLDEST_H ? day(index - 1).high_C : day(index).high_C;
    return low_C + (high_C - low_C) * dayShape(hour);
  };
}
