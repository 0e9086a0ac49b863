/** What one fire gives: when it is warmest, how long it lasts, what went up the flue. */
import { type Geometry, type HeaterFacts, heaterFrom } from "./heater-layers.ts";
import { type HouseFacts, houseFrom, type Outside } from "./heater-room.ts";
import { fireRun, type Parameters, PARAMETERS, plantOf, type Run, uniform } from "./heater.ts";

export interface HeatCurveInputs {
  readonly heater: HeaterFacts;
  readonly house: HouseFacts;
  /** above 0 */
  readonly load_kg: number;
  /** wet basis, 0 to 60 % */
  readonly moisture_pct_wet: number;
  readonly ncv_dry_MJ_per_kg?: number;
  /** temperature after lighting */
  readonly outside: Outside;
  /** hours after lighting the flue is shut; earlier than bed black it is moved to bed black; Infinity for never */
  readonly damper_closed_after_h?: number;
  /** one such fire a day until it repeats, or a heater as cold as the room */
  readonly before: "daily" | "cold";
  readonly parameters?: Parameters;
  readonly geometry?: Geometry;
}

export interface HeatCurve {
  /** every quarter hour over 48 h */
  readonly series: readonly { readonly t_h: number; readonly output_kW: number; readonly facing_C: number; readonly room_C: number }[];
  readonly peak_output_h: number;
  readonly peak_facing_C: number;
  /** hours after lighting when the output has fallen to half its peak; absent when that takes more than 48 h */
  readonly half_output_h?: number;
  readonly bed_black_h: number;
  readonly damper_closed_h: number;
  readonly given_24h_kWh: number;
  /** of the net calorific value: hot gas in the fire and after it, unburnt gas, charcoal left, over 48 h */
  readonly flue_loss_kWh: number;
  /** heat in the masonry when the bed is black, above what it held at lighting */
  readonly stored_kWh: number;
  /** the part of the net calorific value that did not leave by the flue */
  readonly efficiency: number;
  readonly balance_error_rel: number;
  readonly assumed: readonly string[];
  readonly run: Run;
}

const HOURS = 48;
const J_PER_KWH = 3.6e6;
/** Temperature a room is kept at when nobody said otherwise. Common practice, no source. */
const USUAL_ROOM_C = 20;

/**
 * Heat curve of one fire.
 * Model: burn curve, gas, 1-D conduction, Churchill-Chu convection and radiation, room as air and fabric (see the modules).
 * Worked example: 20 kg at 17 % in a brick heater of 2750 kg fired daily gives its most about 5 h after lighting.
 * @throws RangeError for a load of nothing or wood with more water than 60 %
 */
export function heatCurve(inputs: HeatCurveInputs): HeatCurve {
  const { load_kg, moisture_pct_wet, before } = inputs;
  if (!(load_kg > 0)) throw new RangeError(`load_kg is ${load_kg}; it should be above 0.`);
  if (!(moisture_pct_wet >= 0 && moisture_pct_wet <= 60))
    throw new RangeError(`moisture_pct_wet is ${moisture_pct_wet}; it should be 0 to 60.`);
  const heater = heaterFrom(inputs.heater, inputs.geometry);
  const house = houseFrom(inputs.house);
  const plant = plantOf(heater, house, inputs.parameters ?? PARAMETERS);
  const room_C = inputs.house.wanted_C ?? USUAL_ROOM_C;
  const run = fireRun(plant, {
    load_kg,
    moisture_pct_wet,
    ncv_dry_MJ_per_kg: inputs.ncv_dry_MJ_per_kg,
    outside: inputs.outside,
    closed_h: inputs.damper_closed_after_h,
    before: before === "cold" ? uniform(plant, room_C, room_C) : "daily",
    hours: HOURS,
  });
  const { burn, quarter, peaks } = run;
  if (!burn) throw new Error("a fire has a burn curve");
  const left_J = burn.unburnt_J + burn.charcoal_left_J;
  const flue_J = quarter.flue_J[4 * HOURS]! + left_J;
  return {
    series: Array.from(quarter.output_W, (output_W, i) => ({
      t_h: i / 4,
      output_kW: output_W / 1000,
      facing_C: quarter.facing_C[i]!,
      room_C: quarter.room_C[i]!,
    })),
    peak_output_h: peaks.output_h,
    peak_facing_C: peaks.facing_C,
    half_output_h: fallsTo_h(quarter.output_W, peaks.output_W / 2, peaks.output_h),
    bed_black_h: burn.bed_black_h,
    damper_closed_h: run.closed_h,
    given_24h_kWh: quarter.given_J[96]! / J_PER_KWH,
    flue_loss_kWh: flue_J / J_PER_KWH,
    stored_kWh: between(quarter.stored_J, burn.bed_black_h) / J_PER_KWH,
    efficiency: 1 - flue_J / burn.net_J,
    balance_error_rel: run.balance_error_rel,
    assumed: [...heater.assumed, ...house.assumed],
    run,
  };
}

/** When a quarter-hourly series first falls below a level after a time. */
function fallsTo_h(series: Float64Array, level: number, after_h: number): number | undefined {
  for (let i = Math.ceil(after_h * 4) + 1; i < series.length; i++) {
    const before = series[i - 1]!;
    if (series[i]! < level) return (i - 1 + (before - level) / (before - series[i]!)) / 4;
  }
  return undefined;
}

function between(series: Float64Array, at_h: number): number {
  const i = Math.min(Math.floor(at_h * 4), series.length - 2);
  return series[i]! + (at_h * 4 - i) * (series[i + 1]! - series[i]!);
}
