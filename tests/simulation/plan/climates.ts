/**
 * Six climates of both hemispheres as monthly means and daily swing, rounded from climate normals (from memory), and a
 * seeded year of each.
 */
export interface Climate {
  readonly name: string;
  /** January first */
  readonly mean_C: readonly number[];
  readonly swing_K: number;
  /** how restless from day to day, K */
  readonly spread_K: number;
}

export const CLIMATES: readonly Climate[] = [
  { name: "southern Finland", mean_C: [-5, -6, -2, 4, 10, 15, 18, 16, 11, 6, 1, -3], swing_K: 6, spread_K: 4 },
  { name: "upper Midwest", mean_C: [-9, -6, 1, 8, 15, 20, 23, 22, 17, 10, 2, -6], swing_K: 10, spread_K: 5 },
  { name: "Alpine valley", mean_C: [-2, 0, 5, 9, 14, 17, 19, 18, 15, 10, 4, -1], swing_K: 10, spread_K: 3.5 },
  { name: "northern Japan", mean_C: [-3, -3, 1, 7, 13, 17, 21, 22, 18, 12, 5, -1], swing_K: 7, spread_K: 3 },
  { name: "southern New Zealand", mean_C: [15, 15, 14, 11, 9, 7, 6, 7, 9, 11, 12, 14], swing_K: 8, spread_K: 3 },
  { name: "Patagonian Andes", mean_C: [15, 15, 12, 8, 5, 3, 2, 3, 5, 8, 11, 13], swing_K: 11, spread_K: 3 },
];

/** A small seeded generator (mulberry32) and normal deviates from it (Box and Muller). */
export function random(seed: number): { uniform: () => number; normal: () => number } {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return { uniform, normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()) };
}

export interface Day {
  readonly low_C: number;
  readonly high_C: number;
  readonly sun: number;
}

export function yearOf(climate: Climate, seed: number, days = 373): Day[] {
  const { normal, uniform } = random(seed);
  let off_K = 0;
  return Array.from({ length: days }, (_, i) => {
    const month = (i / 30.44 + 11.5) % 12;
    const from = Math.floor(month);
    const mean = climate.mean_C[from]! + (month - from) * (climate.mean_C[(from + 1) % 12]! - climate.mean_C[from]!);
    off_K = 0.75 * off_K + Math.sqrt(1 - 0.75 ** 2) * climate.spread_K * normal();
    const swing = climate.swing_K * (0.6 + 0.8 * uniform());
    return { low_C: mean + off_K - swing / 2, high_C: mean + off_K + swing / 2, sun: uniform() };
  });
}

/** What a forecast said on day `today` for it and the days after: its error grows from 1 K by 0.7 K a day. */
export function forecast(year: readonly Day[], today: number, days: number, seed: number): { low_C: number; high_C: number }[] {
  const { normal } = random(seed * 7919 + today);
  return Array.from({ length: days }, (_, i) => {
    const truth = year[Math.min(today + i, year.length - 1)]!;
    const error_K = (1 + 0.7 * i) * normal();
    return {
      low_C: truth.low_C + error_K + 0.5 * normal(),
      high_C: Math.max(truth.low_C + error_K + 1, truth.high_C + error_K + 0.5 * normal()),
    };
  });
}
