/**
 * A masonry heater through one fire and after: burn curve, gas, masonry, room, outside; and the state a daily fire settles into.
 */
import { type Burn, type BurnParameters, BURN, burnOf, type Load } from "./burn.ts";
import { heat_J, joined, type Mesh, step, type Stepper, stepper, wallOf, workFor } from "./conduction.ts";
import { EXCHANGE, type Exchange, exchangeOf, type ExchangeParameters, PORT, STAGE_SHARE } from "./heater-exchange.ts";
import { coldFactor, FLUE, type FlueParameters, leak_kg_per_s } from "./heater-flue.ts";
import type { HeaterModel } from "./heater-layers.ts";
import { type HouseModel, type Outside, roomMesh } from "./heater-room.ts";
import { settled } from "./settled.ts";

export interface Parameters {
  readonly burn: BurnParameters;
  readonly exchange: ExchangeParameters;
  readonly flue: FlueParameters;
  /** lengths of a step, minutes: in the fire, in the three hours after the last change, later. Each divides 15. */
  readonly step_min: readonly [fire: number, after: number, later: number];
}
export const PARAMETERS: Parameters = { burn: BURN, exchange: EXCHANGE, flue: FLUE, step_min: [3, 5, 15] };

/** A heater and its house, ready to run: mesh, ports, one factorisation per step length. */
export interface Plant {
  readonly heater: HeaterModel;
  readonly house: HouseModel;
  readonly parameters: Parameters;
  readonly mesh: Mesh;
  readonly ports: readonly number[];
  readonly room: number;
  readonly steppers: Map<number, Stepper>;
}

export function plantOf(heater: HeaterModel, house: HouseModel, parameters: Parameters = PARAMETERS): Plant {
  const [fire, passages] = [wallOf(heater.walls[0]), wallOf(heater.walls[1])];
  const { mesh, offsets } = joined([fire, passages, roomMesh(house)]);
  const skin = heater.skinLayer;
  const ports = [
    fire.first[skin]!,
    fire.last.at(-1)!,
    offsets[1]! + passages.first[skin]!,
    offsets[1]! + passages.last.at(-1)!,
    offsets[2]!,
    offsets[2]! + 1,
  ];
  return { heater, house, parameters, mesh, ports, room: offsets[2]!, steppers: new Map() };
}

const stepperOf = (plant: Plant, minutes: number): Stepper => {
  let one = plant.steppers.get(minutes);
  if (!one) plant.steppers.set(minutes, (one = stepper(plant.mesh, minutes * 60, plant.ports)));
  return one;
};

/** Everything at one temperature, or masonry and room each at their own. */
export function uniform(plant: Plant, masonry_C: number, room_C: number): Float64Array {
  return new Float64Array(plant.mesh.capacity_J_per_K.length).fill(masonry_C).fill(room_C, plant.room);
}

export interface Run {
  readonly quarter: {
    readonly output_W: Float64Array;
    readonly facing_C: Float64Array;
    readonly room_C: Float64Array;
    /** heat given and heat lost up the flue since the start, J */
    readonly given_J: Float64Array;
    readonly flue_J: Float64Array;
    readonly stored_J: Float64Array;
  };
  readonly burn: Burn | undefined;
  readonly closed_h: number;
  readonly peaks: {
    firebox_C: number;
    glass_C: number;
    flue_C: number;
    skin_C: number;
    output_W: number;
    output_h: number;
    facing_C: number;
    flueMean_C: number;
  };
  readonly balance_error_rel: number;
  readonly door_J: number;
  readonly end_C: Float64Array;
}

/** What a run starts with and goes through. */
export interface Course {
  readonly burn: Burn | undefined;
  readonly outside: Outside;
  /** hours after the start at which the flue is shut; Infinity for never, 0 with no fire */
  readonly closed_h: number;
  readonly hours: number;
}

/**
 * Run the heater from a state. The state is not changed; the end state is in the result.
 * Times are hours after lighting. Energy: gross heat of the wood + gains = given off + flue + latent + unburnt + charcoal + stored.
 */
export function run(plant: Plant, start_C: Float64Array, course: Course): Run {
  const { heater, house, parameters, mesh } = plant;
  const { burn, outside, closed_h, hours } = course;
  const full_kg_per_s = parameters.burn.air_kg_per_s_kg * heater.max_load_kg;
  const exchange = exchangeOf(heater, house, full_kg_per_s, parameters.exchange);
  const temperature_C = Float64Array.from(start_C);
  const work = workFor(temperature_C.length, plant.ports.length);
  const { draw, tally } = exchange;
  const quarters = Math.round(hours * 4);
  const series = () => new Float64Array(quarters + 1);
  const quarter = { output_W: series(), facing_C: series(), room_C: series(), given_J: series(), flue_J: series(), stored_J: series() };
  const peaks = { firebox_C: 0, glass_C: 0, flue_C: 0, skin_C: 0, output_W: 0, output_h: 0, facing_C: 0, flueMean_C: 0 };
  const start_J = heat_J(mesh, temperature_C);
  const room_J = (): number =>
    mesh.capacity_J_per_K[plant.room]! * temperature_C[plant.room]! +
    mesh.capacity_J_per_K[plant.room + 1]! * temperature_C[plant.room + 1]!;
  const masonry0_J = start_J - room_J();
  const cold = burn ? coldFactor(heater, outside(0)) : 1;
  const burnEnd_min = burn ? burn.released_J.length - 1 : 0;
  const schedule = stepMinutes(parameters.step_min, burnEnd_min / 60, closed_h);
  let flue_C = temperature_C[plant.ports[PORT.passageSkin]!]!;
  let leak = 0;
  let flueWeight = 0;
  let glow = 0;
  facesNow(plant, temperature_C, exchange, outside(0));

  for (let q = 0, minute = 0; q <= quarters; q++) {
    quarter.output_W[q] = tally.output_W;
    quarter.facing_C[q] = tally.facing_C;
    quarter.room_C[q] = temperature_C[plant.room]!;
    quarter.given_J[q] = tally.given_J;
    quarter.flue_J[q] = tally.flue_J;
    quarter.stored_J[q] = heat_J(mesh, temperature_C) - room_J() - masonry0_J;
    if (q === quarters) break;
    const step_min = schedule(q);
    const one = stepperOf(plant, step_min);
    exchange.use(one);
    for (let end = minute + step_min; end <= (q + 1) * 15 + 1e-9; end += step_min, minute += step_min) {
      const step_s = step_min * 60;
      const after_h = end / 60;
      draw.outside_C = outside(after_h);
      draw.outsideAtStage_C = outside((minute + STAGE_SHARE * step_min) / 60);
      const released_J = burn && minute < burnEnd_min ? upTo(burn.released_J, end) - upTo(burn.released_J, minute) : 0;
      draw.released_W = released_J / step_s;
      draw.flame = burn ? draw.released_W / (draw.released_W + 0.15 * burn.peak_W) : 0;
      leak =
        closed_h * 60 > minute && end > burnEnd_min
          ? leak_kg_per_s(heater, parameters.flue, full_kg_per_s, {
              leaving_C: flue_C,
              outside_C: draw.outside_C,
              room_C: temperature_C[plant.room]!,
              before_kg_per_s: leak || 0.002,
            })
          : 0;
      draw.gas_kg_per_s = !burn
        ? leak * overlap(minute, end, 0, closed_h * 60)
        : cold * burn.flame_air_kg_per_s * overlap(minute, end, 0, burn.flame_out_h * 60) +
          cold * burn.ember_air_kg_per_s * overlap(minute, end, burn.flame_out_h * 60, burnEnd_min) +
          (upTo(burn.gas_kg, end) - upTo(burn.gas_kg, minute)) / step_s +
          leak * overlap(minute, end, burnEnd_min, closed_h * 60);
      step(one, temperature_C, [draw.outsideAtStage_C, draw.outside_C], exchange.flows, work);
      if (draw.gas_kg_per_s > 0) flue_C = tally.flue_C;
      if (released_J > 0) {
        glow += tally.flue_C * draw.gas_kg_per_s * step_s;
        flueWeight += draw.gas_kg_per_s * step_s;
        peaks.flue_C = Math.max(peaks.flue_C, tally.flue_C);
        peaks.firebox_C = Math.max(peaks.firebox_C, tally.firebox_C);
      }
      peaks.glass_C = Math.max(peaks.glass_C, tally.glass_C);
      peaks.skin_C = Math.max(peaks.skin_C, temperature_C[plant.ports[PORT.fireSkin]!]!);
      peaks.facing_C = Math.max(peaks.facing_C, tally.facing_C);
      if (tally.output_W > peaks.output_W) {
        peaks.output_W = tally.output_W;
        peaks.output_h = after_h;
      }
    }
  }
  peaks.flueMean_C = flueWeight > 0 ? glow / flueWeight : 0;
  const gross_J = burn?.gross_J ?? 0;
  const lost_J = (burn ? burn.latent_J + burn.unburnt_J + burn.charcoal_left_J : 0) + tally.flue_J + tally.house_loss_J + tally.drawn_air_J;
  const balance = gross_J + tally.gains_J - lost_J - (heat_J(mesh, temperature_C) - start_J);
  const turnover_J = Math.max(gross_J, Math.abs(tally.house_loss_J), 3.6e6);
  return { quarter, burn, closed_h, peaks, balance_error_rel: Math.abs(balance) / turnover_J, door_J: tally.door_J, end_C: temperature_C };
}

/** Share of a step that lies between two times. */
const overlap = (from: number, to: number, start: number, end: number): number =>
  Math.max(0, Math.min(to, end) - Math.max(from, start)) / (to - from);

const upTo = (sums: Float64Array, minute: number): number => {
  if (minute >= sums.length - 1) return sums[sums.length - 1]!;
  const whole = Math.floor(minute);
  return whole === minute ? sums[whole]! : sums[whole]! + (minute - whole) * (sums[whole + 1]! - sums[whole]!);
};

/** Step length by quarter hour: short while it burns and where the flue is shut, longer as the changes die away. */
function stepMinutes(
  [fire, after, later]: readonly [number, number, number],
  burnEnd_h: number,
  closed_h: number,
): (quarter: number) => number {
  return (quarter) => {
    const from_h = quarter / 4;
    const sinceClose_h = from_h - closed_h;
    if (from_h < burnEnd_h || (sinceClose_h > -0.25 && sinceClose_h <= 0)) return fire;
    return from_h < burnEnd_h + 3 || (sinceClose_h > 0 && sinceClose_h < 1) ? after : later;
  };
}

/** Readings at the very start, with nothing burning and no time passing. */
function facesNow(plant: Plant, temperature_C: Float64Array, exchange: Exchange, outside_C: number): void {
  const bare = Float64Array.from(plant.ports, (port) => temperature_C[port]!);
  exchange.use({ ...stepperOf(plant, 15), response_K_per_W: new Float64Array(36) });
  exchange.draw.outside_C = exchange.draw.outsideAtStage_C = outside_C;
  for (let round = 0; round < 8; round++) exchange.flows(bare, new Float64Array(6), 0, 1);
}

/** One fire and the hours after it. */
export interface Fire extends Omit<Load, "max_load_kg" | "lit"> {
  readonly outside: Outside;
  /** hours after lighting; bed black when absent, never before it; Infinity for never */
  readonly closed_h?: number;
  /** the state at lighting, or "daily": the one that one such fire a day settles into */
  readonly before: "daily" | Float64Array;
  readonly hours: number;
}

export function fireRun(plant: Plant, fire: Fire): Run {
  const burn = burnOf({ ...fire, max_load_kg: plant.heater.max_load_kg, lit: plant.heater.lit }, plant.parameters.burn);
  const closed_h = Math.max(burn.bed_black_h, fire.closed_h ?? (plant.heater.shut_off_damper ? burn.bed_black_h : Infinity));
  const course: Course = { burn, outside: fire.outside, closed_h, hours: fire.hours };
  if (fire.before !== "daily") return run(plant, fire.before, course);
  const day: Course = { ...course, hours: 24, outside: (after_h) => fire.outside(((after_h % 24) + 24) % 24) };
  const dayMean_C = mean(fire.outside, 24);
  const mean_W = (0.75 * burn.net_J) / 86_400;
  const room_C = dayMean_C + (mean_W + plant.house.other_heat_W) / plant.house.heat_loss_W_per_K;
  const guess = uniform(plant, room_C + mean_W / (9 * plant.heater.facing_m2) + 15, room_C);
  const coarse = { ...plant, parameters: { ...plant.parameters, step_min: COARSE_MIN } };
  const near = settled((state) => run(coarse, state, day).end_C, guess);
  return run(plant, run(plant, near, day).end_C, course);
}

/** Long steps do while the days before settle; the last of them is run like the day that is asked for. */
const COARSE_MIN = [5, 15, 15] as const;

function mean(outside: Outside, hours: number): number {
  let sum = 0;
  for (let h = 0; h < hours; h++) sum += outside(h);
  return sum / hours;
}
