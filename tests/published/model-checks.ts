/**
 * What the heater model and the plan must show beside published values: balance, order of a fire, the bands of common practice, and the
 * bounds of a plan. The same checks run on the shipped modules and on mutants of them.
 */
import type * as HeatCurve from "../../src/reckoning/heat-curve.ts";
import type * as Burn from "../../src/reckoning/burn.ts";
import type * as FirePlan from "../../src/reckoning/fire-plan.ts";
import type * as Exchange from "../../src/reckoning/heater-exchange.ts";
import type * as Flue from "../../src/reckoning/heater-flue.ts";
import type * as Layers from "../../src/reckoning/heater-layers.ts";
import type * as PlanState from "../../src/reckoning/plan-state.ts";
import type * as Room from "../../src/reckoning/heater-room.ts";
import { BURNING, HEAT } from "../reckoning/heater/check-values.ts";
import { LARGE, MIDDLE, SMALL, THICK, THIN } from "../reckoning/heater/cases.ts";
import type { Load } from "./rows.ts";

type Check = (load: Load) => Promise<string | undefined>;
const module = <T>(load: Load, name: string): Promise<T> => load(`reckoning/${name}`) as unknown as Promise<T>;
const HOUSE = { heat_loss_W_per_K: 140, floor_m2: 120, other_heat_W: 300 };

async function curves(load: Load) {
  const { heatCurve } = await module<typeof HeatCurve>(load, "heat-curve.ts");
  const { sameDay } = await module<typeof Room>(load, "heater-room.ts");
  return (heater: HeatCurve.HeatCurveInputs["heater"], load_kg: number, more: Partial<HeatCurve.HeatCurveInputs> = {}): HeatCurve.HeatCurve =>
    heatCurve({ heater, house: HOUSE, load_kg, moisture_pct_wet: 17, outside: sameDay(-5, 1, 18), before: "daily", ...more });
}

const bands: Check = async (load) => {
  const of = await curves(load);
  for (const [heater, load_kg] of [[MIDDLE, 20], [THIN, 20], [THICK, 20], [SMALL, 8], [LARGE, 40]] as const) {
    const one = of(heater, load_kg);
    for (const { name, of: figure, band: [low, high] } of [...BURNING, ...HEAT]) {
      const value = figure(one);
      if (!(value >= low && value <= high)) return `${load_kg} kg: ${name} is ${value}, not ${low} to ${high}`;
    }
    const { engaged_h, collapsed_h, flame_out_h, bed_black_h } = one.run.burn!;
    if (!(engaged_h < collapsed_h && collapsed_h < flame_out_h && flame_out_h < bed_black_h && flame_out_h < one.peak_output_h)) return "a fire goes through its times in the wrong order";
    if (!(one.balance_error_rel < 1e-9)) return `balance open by ${one.balance_error_rel}`;
  }
  return undefined;
};

const readings: Check = async (load) => {
  const one = (await curves(load))(MIDDLE, 20);
  const at = (i: number): number => one.series[i]!.output_kW;
  const sum_kWh = one.series.slice(0, 97).reduce((sum, point, i) => sum + point.output_kW * (i === 0 || i === 96 ? 0.125 : 0.25), 0);
  if (!(Math.abs(sum_kWh / one.given_24h_kWh - 1) < 0.01)) return `${one.given_24h_kWh} kWh given is not the sum of the series, ${sum_kWh}`;
  const peak = Math.max(...one.series.map((point) => point.output_kW));
  if (!(peak < 20) || !(Math.abs(at(Math.round(4 * (one.half_output_h ?? 0))) / peak - 0.5) < 0.02)) return "half of the greatest output is at another time";
  const { burn, quarter } = one.run;
  const whole_J = quarter.given_J[192]! + quarter.flue_J[192]! + quarter.stored_J[192]! + burn!.unburnt_J + burn!.charcoal_left_J;
  if (!(Math.abs(whole_J / burn!.net_J - 1) < 1e-9)) return "given, lost and stored are not the net heat of the wood";
  if (!(Math.abs((one.flue_loss_kWh * 3.6e6 - quarter.flue_J[192]! - burn!.unburnt_J - burn!.charcoal_left_J) / burn!.net_J) < 1e-9)) return "the flue loss leaves something out";
  return Math.abs(one.efficiency - (1 - (one.flue_loss_kWh * 3.6e6) / burn!.net_J)) < 1e-12 ? undefined : "efficiency is not on net heat";
};

const daily: Check = async (load) => {
  const of = await curves(load);
  const { run } = of(MIDDLE, 20);
  // a day that repeats stores nothing
  const stored = Math.abs(run.quarter.stored_J[96]!) / run.burn!.net_J;
  return stored < 0.004 ? undefined : `a daily fire leaves ${stored} of its heat behind each day`;
};

const damper: Check = async (load) => {
  const of = await curves(load);
  const [early, open] = [of(MIDDLE, 20, { damper_closed_after_h: 0.5 }), of(MIDDLE, 20, { damper_closed_after_h: 14 })];
  if (early.damper_closed_h !== early.bed_black_h) return "a flue shut before bed black";
  const cost = early.efficiency - open.efficiency;
  return cost > 0.03 && cost < 0.1 ? undefined : `an open flue overnight costs ${cost}, not 3 to 10 %`;
};

const monotony: Check = async (load) => {
  const of = await curves(load);
  const wet = [8, 17, 26, 35].map((moisture_pct_wet) => of(MIDDLE, 20, { moisture_pct_wet }).given_24h_kWh);
  if (wet.some((kWh, i) => i > 0 && !(kWh < wet[i - 1]!))) return "wetter wood gives more heat";
  const dry = of(MIDDLE, 20, { moisture_pct_wet: 9 }).run.burn!.flame_out_h;
  if (!(dry < 1.75) || !(of(MIDDLE, 20, { moisture_pct_wet: 30 }).run.burn!.flame_out_h > 2)) return "very dry wood is not out of flames before 2 h, or wet wood not after";
  const { burnOf } = await module<typeof Burn>(load, "burn.ts");
  const one = burnOf({ load_kg: 20, moisture_pct_wet: 17, max_load_kg: 20 });
  const parts_J = one.released_J.at(-1)! + one.unburnt_J + one.charcoal_left_J + one.latent_J;
  if (!(Math.abs(parts_J / one.gross_J - 1) < 1e-9)) return "the parts of a burn are not its gross heat";
  const wood_kg = one.gas_kg.at(-1)! + one.charcoal_left_J / 32e6;
  if (!(Math.abs(wood_kg / 20 - 1) < 1e-6)) return `gas and charcoal weigh ${wood_kg} kg of 20`;
  const crowded = burnOf({ load_kg: 30, moisture_pct_wet: 10, max_load_kg: 10 });
  if (!(crowded.peak_W < burnOf({ load_kg: 30, moisture_pct_wet: 10, max_load_kg: 30 }).peak_W)) return "more wood than its air burns no slower";
  return one.unburnt_J < burnOf({ load_kg: 20, moisture_pct_wet: 30, max_load_kg: 20 }).unburnt_J ? undefined : "wet wood burns cleaner";
};

/** Flow through a gap goes with the root of the pressure, and the draught of a flue with its height. */
const flue: Check = async (load) => {
  const { FLUE, leak_kg_per_s } = await module<typeof Flue>(load, "heater-flue.ts");
  const { heaterFrom } = await module<typeof Layers>(load, "heater-layers.ts");
  const at = { leaving_C: 120, outside_C: 0, room_C: 20, before_kg_per_s: 1e3 };
  const [low, high] = [4, 9].map((flue_height_m) => leak_kg_per_s(heaterFrom({ ...MIDDLE, flue_height_m }), FLUE, 0.05, at)) as [number, number];
  return Math.abs(high / low - 1.5) < 1e-3 ? undefined : `a flue of 9 m draws ${high / low} times what one of 4 m does, not 1.5 times`;
};

/** What the passages take of the embers' slow gas: the convection of a slow flow is more than its share of the flow (Nu with Re^0.8). */
const embers: Check = async (load) => {
  const { EXCHANGE, exchangeOf } = await module<typeof Exchange>(load, "heater-exchange.ts");
  const { heaterFrom } = await module<typeof Layers>(load, "heater-layers.ts");
  const heater = heaterFrom({ ...MIDDLE, outside_air: true });
  const exchange = exchangeOf(heater, { other_heat_W: 0, heat_loss_W_per_K: 100 }, 0.05);
  exchange.use({ response_K_per_W: new Float64Array(36) } as Parameters<typeof exchange.use>[0]);
  Object.assign(exchange.draw, { released_W: 6000, gas_kg_per_s: 0.0125, flame: 0, outside_C: 0, outsideAtStage_C: 0 });
  const bare = Float64Array.of(200, 40, 100, 40, 20, 20);
  const watts = new Float64Array(6);
  for (let round = 0; round < 20; round++) exchange.flows(bare, watts, 0, 1);
  // gas into the passages from what leaves them, by hand: t = skin + (t0 - skin) exp(-h A / m c)
  const h = EXCHANGE.passage_still_W_per_m2K + EXCHANGE.passage_forced_W_per_m2K * 0.25 ** 0.8;
  const kept = Math.exp((-h * heater.passage_m2) / (0.0125 * 1090));
  const into_C = 100 + (exchange.tally.flue_C - 100) / kept;
  const enthalpy = (C: number): number => (1040 + 0.127 * C) * C;
  const given_W = 0.0125 * (enthalpy(into_C) - enthalpy(exchange.tally.flue_C));
  return Math.abs(watts[2]! / given_W - 1) < 1e-6 ? undefined : `the passages take ${watts[2]} W, not ${given_W}`;
};

const plans: Check = async (load) => {
  const { firePlan, planPlant } = await module<typeof FirePlan>(load, "fire-plan.ts");
  const { usualState } = await module<typeof PlanState>(load, "plan-state.ts");
  const { runOfDays } = await module<typeof Room>(load, "heater-room.ts");
  const THAW = [[-12, -5], [-18, -8], [9, 19], [13, 22]];
  const FROST = [[-15, -8], [-18, -9], [-20, -11], [-16, -9]];
  const MILD = [[16, 22], [17, 24]];
  for (const { days, start_hour, from_h, to_h, loss, min_C, least, most, max_day_kg = 28 } of [
    { days: THAW, start_hour: 6, from_h: 6.5, to_h: 22.5, loss: 130, min_C: 20, least: 2, most: 5 },
    { days: THAW, start_hour: 17.25, from_h: 7, to_h: 22, loss: 130, min_C: 20, least: 1, most: 4 },
    { days: FROST, start_hour: 17.5, from_h: 6.5, to_h: 22.5, loss: 220, min_C: 20, least: 5, most: 8, max_day_kg: 48 },
    { days: MILD, start_hour: 6, from_h: 6.5, to_h: 22.5, loss: 130, min_C: 30, least: 0, most: 0 },
  ]) {
    const bounds = { max_load_kg: 16, min_load_kg: 8, max_day_kg, spacing_h: 10 };
    const weather = days.map(([low_C, high_C]) => ({ low_C: low_C!, high_C: high_C! }));
    const known = {
      plant: planPlant({ max_load_kg: 16, masonry_kg: 2500, facing_material: "brick" }, { heat_loss_W_per_K: loss, heat_capacity_kWh_per_K: 8, floor_m2: 80, other_heat_W: 300 }),
      moisture_pct_wet: 17, start_hour, hours: days.length * 24 - start_hour, wanted: [{ from_h, to_h, min_C, max_C: 35 }], awake: { from_h, to_h }, bounds,
    };
    const outside = runOfDays(weather, start_hour);
    const { fires } = firePlan({ ...known, ...usualState(known, weather[0]!), outside });
    if (fires.length < least || fires.length > most) return `from ${start_hour} h ${fires.length} fires, not ${least} to ${most}`;
    for (const fire of fires) {
      const hour = (start_hour + fire.lit_h) % 24;
      if (hour < from_h || hour + 2.8 > to_h) return `lit at ${hour} h`;
      if (!(outside(fire.lit_h) < 15)) return `lit at ${outside(fire.lit_h)} °C`;
      if (!(fire.load_kg >= bounds.min_load_kg && fire.load_kg <= bounds.max_load_kg)) return `a load of ${fire.load_kg} kg`;
      if (fires.some((other) => other !== fire && Math.abs(other.lit_h - fire.lit_h) < bounds.spacing_h)) return "fires too close";
      if (fires.reduce((sum, other) => sum + (other.lit_h > fire.lit_h - 24 && other.lit_h <= fire.lit_h ? other.load_kg : 0), 0) > bounds.max_day_kg) return "too much in a day";
    }
  }
  return undefined;
};

export const MODEL_CHECKS: Readonly<Record<string, Check>> = { bands, readings, daily, damper, monotony, flue, embers, plans };
