/**
 * When to fire and how much over the next days, for the least wood that holds the wanted temperature in the wanted hours.
 * The heater model answers for every plan; what one more fire does is learnt from it once and added up, which makes a wide search cheap,
 * and the sum is set right against the whole model before and after.
 */
import { burnOf } from "./burn.ts";
import { type HeaterFacts, heaterFrom } from "./heater-layers.ts";
import { type HouseFacts, houseFrom, type Outside } from "./heater-room.ts";
import { PARAMETERS, type Parameters, type Plant, plantOf, run } from "./heater.ts";
import { costOf, refined, searchPlan, type Search } from "./plan-search.ts";

/** Hours of every day, 0 to 24; `to_h` before `from_h` runs past midnight. */
export interface Hours {
  readonly from_h: number;
  readonly to_h: number;
}
export interface Wanted extends Hours {
  readonly min_C: number;
  readonly max_C: number;
}

/** Bounds every load must keep; they come from limits() and from nowhere else. */
export interface Bounds {
  readonly max_load_kg: number;
  /** smaller loads do not burn clean: skip instead */
  readonly min_load_kg: number;
  /** in any 24 h */
  readonly max_day_kg: number;
  /** lighting to lighting */
  readonly spacing_h: number;
}

export interface PlannedFire {
  /** hours after the start */
  readonly lit_h: number;
  readonly load_kg: number;
}

export interface PlanInputs {
  readonly plant: Plant;
  readonly moisture_pct_wet: number;
  readonly ncv_dry_MJ_per_kg?: number;
  /** clock hour of the start, 0 to 24; a whole quarter */
  readonly start_hour: number;
  /** hours planned, from the start to a midnight */
  readonly hours: number;
  readonly outside: Outside;
  readonly wanted: readonly Wanted[];
  readonly awake: Hours;
  readonly bounds: Bounds;
  readonly state: Float64Array;
  /** fires already lit, hours before the start negative */
  readonly past?: readonly PlannedFire[];
  /** hours after the start in which no fire may be lit: burn bans, absence */
  readonly barred?: readonly { readonly from_h: number; readonly to_h: number }[];
  /** held above the wanted least against forecast and model error */
  readonly margin_K?: number;
}

export interface Plan {
  readonly fires: readonly PlannedFire[];
  readonly wood_kg: number;
  /** in the wanted hours, or in all when none are wanted */
  readonly coldest_C: number;
  readonly warmest_C: number;
  /** wanted hours below their least */
  readonly hours_below_h: number;
  /** the day gives no hour at which a fire would be out and black before bedtime */
  readonly no_window: boolean;
  readonly latest_lit_hour: number;
  readonly room_C: Float64Array;
}

/** Coarser steps and cells than the heat curve's: a plan needs tenths of a kelvin. */
export const PLAN_PARAMETERS: Parameters = { ...PARAMETERS, step_min: [5, 15, 15] };
const PLAN_CELLS = 5;
/** A load is named to the half kilogram: a bathroom scale shows no more. */
const LOAD_STEP_KG = 0.5;
/** Time kept between the reckoned black bed and bedtime. Common practice, no source. */
const BEFORE_BED_H = 0.5;
/**
 * No fire is planned into weather as warm as this: under 5 K between room and outside the draught cannot be relied on.
 * Common practice, no source.
 */
const MILDEST_C = 15;
/** The day after the last is planned too and thrown away, so that the last day's fires are not saved at its expense. */
const BEYOND_H = 24;

export const planPlant = (heater: HeaterFacts, house: HouseFacts): Plant =>
  plantOf(heaterFrom(heater, undefined, PLAN_CELLS), houseFrom(house), PLAN_PARAMETERS);

export const within = (hour: number, { from_h, to_h }: Hours): boolean =>
  from_h <= to_h ? hour >= from_h && hour < to_h : hour >= from_h || hour < to_h;
export const clock = (hour: number): number => ((hour % 24) + 24) % 24;

/** Room and mean face by quarter hours under a list of fires, and the state at the end. */
export function roomUnder(
  inputs: PlanInputs,
  fires: readonly PlannedFire[],
  hours: number,
): { room_C: Float64Array; facing_C: Float64Array; end_C: Float64Array } {
  const { plant, outside } = inputs;
  const room_C = new Float64Array(hours * 4 + 1);
  const facing_C = new Float64Array(hours * 4 + 1);
  let state = inputs.state;
  let from_h = 0;
  const sorted = [...fires].sort((a, b) => a.lit_h - b.lit_h).filter((fire) => fire.lit_h < hours);
  const stretch = (to_h: number, load_kg: number): void => {
    if (to_h <= from_h) return;
    const start_h = from_h;
    const burn = load_kg > 0 ? burnFor(inputs, load_kg) : undefined;
    const part = run(plant, state, {
      burn,
      outside: (after_h) => outside(start_h + after_h),
      hours: to_h - from_h,
      closed_h: burn === undefined ? 0 : plant.heater.shut_off_damper ? burn.bed_black_h : Infinity,
    });
    room_C.set(part.quarter.room_C, from_h * 4);
    facing_C.set(part.quarter.facing_C, from_h * 4);
    state = part.end_C;
    from_h = to_h;
  };
  stretch(sorted[0]?.lit_h ?? hours, 0);
  sorted.forEach((fire, i) => stretch(sorted[i + 1]?.lit_h ?? hours, fire.load_kg));
  return { room_C, facing_C, end_C: state };
}

const burnFor = (inputs: PlanInputs, load_kg: number) =>
  burnOf(
    {
      load_kg,
      moisture_pct_wet: inputs.moisture_pct_wet,
      ncv_dry_MJ_per_kg: inputs.ncv_dry_MJ_per_kg,
      max_load_kg: inputs.plant.heater.max_load_kg,
      lit: inputs.plant.heater.lit,
    },
    inputs.plant.parameters.burn,
  );

/**
 * The plan.
 * Search: beam over the days on summed responses, then single loads and times, then the same against the whole model's correction.
 */
export function firePlan(inputs: PlanInputs): Plan {
  const { bounds, awake, start_hour, hours } = inputs;
  const reach_h = hours + BEYOND_H;
  const black_h = burnFor(inputs, bounds.max_load_kg).bed_black_h;
  const awake_h = awake.to_h > awake.from_h ? awake.to_h - awake.from_h : awake.to_h + 24 - awake.from_h;
  const window_h = awake_h - black_h - BEFORE_BED_H;
  const latest_lit_hour = clock(awake.from_h + Math.floor(window_h * 4) / 4);
  const mayLight = (at_h: number): boolean =>
    clock(start_hour + at_h - awake.from_h) <= window_h &&
    inputs.outside(at_h) < MILDEST_C &&
    !(inputs.barred ?? []).some((bar) => at_h >= bar.from_h && at_h < bar.to_h);

  const free = roomUnder(inputs, [], reach_h).room_C;
  const loads_kg = [bounds.min_load_kg, bounds.max_load_kg];
  const responses = loads_kg.map((load_kg) => {
    const lit = roomUnder(inputs, [{ lit_h: 0, load_kg }], reach_h).room_C;
    return lit.map((value, i) => value - free[i]!);
  });
  const bound = (i: number, key: "min_C" | "max_C", worst: (a: number, b: number) => number, none: number): number => {
    const hour = clock(start_hour + i / 4);
    return inputs.wanted.filter((one) => within(hour, one)).reduce((value, one) => worst(value, one[key]), none);
  };
  const margin_K = inputs.margin_K ?? 0.25;
  const least_C = free.map((_, i) => bound(i, "min_C", Math.max, -Infinity));
  const most_C = free.map((_, i) => bound(i, "max_C", Math.min, Infinity));

  let fires: readonly PlannedFire[] = [];
  if (window_h >= 0) {
    const search: Search = {
      least_C: byHour(least_C, Math.max, margin_K),
      most_C: byHour(most_C, Math.min, 0),
      responses: responses.map(onTheHour),
      loads_kg,
      known: new Map(),
      bounds,
      past: inputs.past ?? [],
      mayLight,
      step_kg: LOAD_STEP_KG,
      firstDay_h: Math.ceil(clock(awake.from_h - start_hour)) || 24,
      hours: Math.floor(reach_h),
      kept_h: hours,
    };
    let base = onTheHour(free);
    let least = Infinity;
    let found = searchPlan(search, base);
    for (let round = 1; ; round++) {
      const real = onTheHour(roomUnder(inputs, found.fires, reach_h).room_C);
      const cost = costOf(search, found.fires, real);
      if (cost < least) {
        least = cost;
        fires = found.fires;
      }
      const off = real.map((value, i) => value - found.room_C[i]!);
      if (round === CORRECTIONS || off.every((value) => Math.abs(value) < 0.05)) break;
      base = base.map((value, i) => value + off[i]!);
      found = round === 1 ? searchPlan(search, base) : refined(search, base, found.fires);
    }
  }
  const kept = fires.filter((fire) => fire.lit_h < hours);
  const room_C = roomUnder(inputs, fires, reach_h).room_C.slice(0, hours * 4 + 1);
  const anyWanted = least_C.some((value) => value > -Infinity);
  const counted = [...room_C.keys()].filter((i) => !anyWanted || least_C[i]! > -Infinity);
  return {
    fires: kept,
    wood_kg: kept.reduce((sum, fire) => sum + fire.load_kg, 0),
    coldest_C: counted.reduce((low, i) => Math.min(low, room_C[i]!), Infinity),
    warmest_C: counted.reduce((high, i) => Math.max(high, room_C[i]!), -Infinity),
    hours_below_h: counted.filter((i) => i > 0 && room_C[i]! < least_C[i]! - 0.01).length / 4,
    no_window: window_h < 0,
    latest_lit_hour,
    room_C,
  };
}

const onTheHour = (quarters: Float64Array): Float64Array =>
  Float64Array.from({ length: (quarters.length - 1) / 4 + 1 }, (_, h) => quarters[4 * h]!);

/** The tightest bound of the quarters round each hour. */
const byHour = (quarters: Float64Array, tightest: (...values: number[]) => number, more: number): Float64Array =>
  Float64Array.from(
    { length: (quarters.length - 1) / 4 + 1 },
    (_, h) => tightest(...quarters.subarray(Math.max(0, 4 * h - 1), 4 * h + 3)) + more,
  );

/** Rounds of search and setting right; the search is wide in the first two. */
const CORRECTIONS = 4;
