/** The state a plan starts from: guessed when nothing is known, set right by a thermometer, and what its errors teach. */
import { clock, type PlanInputs, type PlannedFire, roomUnder, within } from "./fire-plan.ts";
import { MASONRY_HEATER_EFFICIENCY, NCV_DRY_MJ_PER_KG, ncv_MJ_per_kg } from "./fuel.ts";
import { type Plant, uniform } from "./heater.ts";
import { sameDay } from "./heater-room.ts";
import { settled } from "./settled.ts";

/** Lit less than this before the start, a fire would still be burning. */
const OUT_H = 4;

/**
 * A state to start from when nothing is known of the last days: a daily fire, or two, that just hold the wanted temperature
 * within the bounds.
 * @param day low and high of such a day
 * @returns the state and the fires it rests on, their times before the start negative
 */
export function usualState(
  inputs: Omit<PlanInputs, "state" | "outside">,
  day: { low_C: number; high_C: number },
): { state: Float64Array; past: PlannedFire[] } {
  const { plant, start_hour, wanted, awake, bounds } = inputs;
  const least_C = wanted.length > 0 ? Math.max(...wanted.map((one) => one.min_C)) : 20;
  const mean_C = (day.low_C + day.high_C) / 2;
  const useful_kWh =
    (ncv_MJ_per_kg(inputs.ncv_dry_MJ_per_kg ?? NCV_DRY_MJ_PER_KG.unknown.typical, inputs.moisture_pct_wet) / 3.6) *
    MASONRY_HEATER_EFFICIENCY.typical;
  const perKelvin_kg = (plant.house.heat_loss_W_per_K * 0.024) / useful_kWh;
  const rest_C = Math.max(least_C + 0.5, mean_C);
  // late in the evening the day's last fire has been lit, and long enough ago to be out; earlier it is still to come
  const lateness_h = clock(awake.to_h - start_hour) < OUT_H ? 24 - OUT_H : 24;
  const lit_h = (hour: number): number => Math.min(clock(hour - start_hour), lateness_h);
  const waking_hour = Math.ceil(awake.from_h);
  const firesOf = (day_kg: number): PlannedFire[] =>
    day_kg <= bounds.max_load_kg || bounds.spacing_h > 12
      ? [{ lit_h: lit_h(Math.floor(clock(awake.to_h - 5))), load_kg: Math.min(day_kg, bounds.max_load_kg) }]
      : [waking_hour, waking_hour + 12].map((hour) => ({ lit_h: lit_h(hour), load_kg: day_kg / 2 }));
  const at = { ...inputs, outside: sameDay(day.low_C, day.high_C, start_hour) };
  let day_kg = perKelvin_kg * (least_C + 1 - mean_C - plant.house.other_heat_W / plant.house.heat_loss_W_per_K);
  let state = uniform(plant, rest_C + 20, rest_C);
  for (let round = 0; round < 3; round++) {
    day_kg = Math.min(day_kg, bounds.max_day_kg, 2 * bounds.max_load_kg);
    if (day_kg < 0.2 * bounds.min_load_kg) return { state: uniform(plant, rest_C, rest_C), past: [] };
    state = settled((from) => roomUnder({ ...at, state: from }, firesOf(day_kg), 24).end_C, state, 0.02);
    const { room_C } = roomUnder({ ...at, state }, firesOf(day_kg), 24);
    const off_K = wanted.flatMap((one) =>
      [...room_C.keys()].filter((i) => within(clock(start_hour + i / 4), one)).map((i) => room_C[i]! - one.min_C),
    );
    if (off_K.length === 0) break;
    day_kg += perKelvin_kg * (0.3 - Math.min(...off_K));
  }
  const out = firesOf(day_kg).filter((fire) => fire.lit_h <= 24 - OUT_H);
  return { state: roomUnder({ ...at, state }, out, 24).end_C, past: out.map((fire) => ({ ...fire, lit_h: fire.lit_h - 24 })) };
}

/**
 * Set a state right by a thermometer: air and fabric move by the difference, the masonry stays.
 * @returns a new state
 */
export function corrected(plant: Plant, state: Float64Array, room_C: number): Float64Array {
  const right = Float64Array.from(state);
  const off = room_C - right[plant.room]!;
  right[plant.room]! += off;
  right[plant.room + 1]! += off;
  return right;
}

/**
 * Heat the room gets or loses beside what the model knows, learnt from how far a day's forecast of the room was off.
 * Over a day a steady error of P watt moves the room by some P / (3 H); a third of that is believed.
 * @param before_W what was believed so far
 * @param off_K measured less reckoned room temperature after about a day
 * @returns W, at most 15 K times the heat loss either way
 */
export function learntHeat_W(before_W: number, off_K: number, heat_loss_W_per_K: number): number {
  const most_W = 15 * heat_loss_W_per_K;
  return Math.min(most_W, Math.max(-most_W, before_W + off_K * heat_loss_W_per_K));
}
