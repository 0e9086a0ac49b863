/** Three ways to fire a heater through a year: by plan, by habit, by degree days. All believe the same figures; none knows the truth. */
import { firePlan, type Bounds, type PlannedFire, planPlant, roomUnder, type Wanted } from "../../../src/reckoning/fire-plan.ts";
import { corrected, learntHeat_W, usualState } from "../../../src/reckoning/plan-state.ts";
import type { HeaterFacts } from "../../../src/reckoning/heater-layers.ts";
import { type HouseFacts, runOfDays } from "../../../src/reckoning/heater-room.ts";

export const WANTED: Wanted = { from_h: 7, to_h: 22, min_C: 19.5, max_C: 24 };
export const AWAKE = { from_h: 6, to_h: 23 };

export interface Believed {
  readonly heater: HeaterFacts;
  readonly house: HouseFacts;
  readonly bounds: Bounds;
  readonly moisture_pct_wet: number;
}

export interface Morning {
  readonly day: number;
  /** the thermometer at six, as read; null when nobody read it */
  readonly room_C: number | null;
  /** yesterday's low and high as they were */
  readonly yesterday: { low_C: number; high_C: number };
  readonly forecast: readonly { low_C: number; high_C: number }[];
  /** fires of the day before as logged, hours after yesterday's six */
  readonly fires: readonly PlannedFire[];
}
/** Fires for the day, hours after six. */
export type Owner = (morning: Morning) => PlannedFire[];

export function planner(believed: Believed, horizon_d = 3): Owner {
  const { heater, house, bounds, moisture_pct_wet } = believed;
  const told_W = house.other_heat_W ?? 0;
  let learnt_W = 0;
  let state: Float64Array | undefined;
  let past: PlannedFire[] = [];
  return ({ room_C, yesterday, forecast, fires }) => {
    const known = (outside: { low_C: number; high_C: number }[]) => ({
      plant: planPlant(heater, { ...house, other_heat_W: told_W + learnt_W }),
      moisture_pct_wet,
      start_hour: 6,
      hours: horizon_d * 24 - 6,
      wanted: [WANTED],
      awake: AWAKE,
      bounds,
      outside: runOfDays(outside, 6),
    });
    if (state === undefined) state = usualState(known([...forecast]), forecast[0]!).state;
    else {
      const after = roomUnder({ ...known([yesterday, forecast[0]!]), state }, fires, 24).end_C;
      const { plant } = known([]);
      if (room_C === null) state = after;
      else {
        learnt_W = learntHeat_W(learnt_W, LEARN * (room_C - after[plant.room]!), plant.house.heat_loss_W_per_K);
        state = corrected(plant, after, room_C);
      }
    }
    past = [...past, ...fires].map((fire) => ({ ...fire, lit_h: fire.lit_h - 24 })).filter((fire) => fire.lit_h > -24);
    return firePlan({ ...known(forecast.slice(0, horizon_d)), state, past, margin_K: MARGIN_K })
      .fires.filter((fire) => fire.lit_h < 24)
      .map((fire) => ({ ...fire }));
  };
}
const LEARN = 0.5;
/** Against forecasts and figures that are off. */
const MARGIN_K = 0.7;

/** The same load at the same hours on every day whose forecast mean is below a mark; a second one in real cold. */
export const habit =
  (h: { load_kg: number; hours: readonly number[]; below_C: number; second_below_C: number }): Owner =>
  ({ forecast: [today] }) => {
    const mean_C = (today!.low_C + today!.high_C) / 2;
    if (mean_C >= h.below_C) return [];
    const hours = mean_C < h.second_below_C ? h.hours : h.hours.slice(-1);
    return hours.map((hour) => ({ lit_h: hour - 6, load_kg: h.load_kg }));
  };

/** Heat loss times degrees, less gains, over what a kilogram gives: what a careful owner with a pencil does. */
export const degreeDays =
  (believed: Believed, inside_C: number): Owner =>
  ({ forecast: [today] }) => {
    const { house, bounds } = believed;
    const mean_C = (today!.low_C + today!.high_C) / 2;
    const need_kg = ((house.heat_loss_W_per_K! * (inside_C - mean_C) - (house.other_heat_W ?? 0)) * 0.024) / (4.2 * 0.8);
    if (need_kg < bounds.min_load_kg / 2) return [];
    if (need_kg <= bounds.max_load_kg) return [{ lit_h: 11, load_kg: Math.max(bounds.min_load_kg, need_kg) }];
    const each_kg = Math.min(bounds.max_load_kg, Math.max(bounds.min_load_kg, need_kg / 2));
    return [
      { lit_h: 1, load_kg: each_kg },
      { lit_h: 13, load_kg: each_kg },
    ];
  };
