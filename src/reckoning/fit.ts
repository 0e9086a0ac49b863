/**
 * What an owner's own readings say about house and heater: heat loss, heat capacity, masonry that takes part; each with a range,
 * and plainly "cannot tell" where the readings do not decide. It adjusts the reckoning and never touches a limit.
 */
import { planPlant, type PlannedFire, roomUnder } from "./fire-plan.ts";
import type { HeaterFacts } from "./heater-layers.ts";
import { type HouseFacts, houseFrom, type Outside } from "./heater-room.ts";
import { type Plant, uniform } from "./heater.ts";
import { leastSquares } from "./least-squares.ts";

export interface Reading {
  /** hours after the start, 0 or later */
  readonly at_h: number;
  /** room air or the mean of several spots of the face */
  readonly what: "room" | "facing";
  readonly reading_C: number;
}

export interface FitInputs {
  readonly heater: HeaterFacts;
  readonly house: HouseFacts;
  readonly moisture_pct_wet: number;
  readonly outside: Outside;
  /** fires since the start, at whole quarters */
  readonly fires: readonly PlannedFire[];
  readonly readings: readonly Reading[];
}

export interface Fitted {
  readonly value: number;
  /** 90 % range */
  readonly low: number;
  readonly high: number;
}
export type FitKey = "heat_loss_W_per_K" | "heat_capacity_kWh_per_K" | "masonry_share";

export interface Fit extends Readonly<Record<FitKey, Fitted>> {
  /** heat capacity over heat loss */
  readonly time_constant_h: Fitted;
  /** spread of the readings about the model, K */
  readonly residual_K: number;
  /** what the readings do not decide: its range is wider than a factor of three, or it ran into the end of what is sensible */
  readonly cannot_tell: readonly FitKey[];
}

const KEYS: readonly FitKey[] = ["heat_loss_W_per_K", "heat_capacity_kWh_per_K", "masonry_share"];
/** Largest factor a belief may be moved by either way. */
const FARTHEST = Math.log(5);
const UNDECIDED = Math.log(3);
/** Fewest readings worth fitting five unknowns to. */
const FEWEST = 10;

/**
 * Fit on logarithms, so that nothing becomes negative and ranges are factors; the temperatures of masonry and room at the start
 * are fitted along.
 * @throws RangeError with one sentence for fewer than ten readings or readings before the start
 */
export function fitHeater(inputs: FitInputs): Fit {
  const { readings } = inputs;
  if (readings.length < FEWEST)
    throw new RangeError(`There are ${readings.length} readings; a fit needs at least ${FEWEST}, over two days or more.`);
  const early = readings.find((reading) => reading.at_h < 0);
  if (early) throw new RangeError(`A reading is at ${early.at_h} h; it should be at 0 h or later, counted from the start.`);
  const believed = houseFrom(inputs.house);
  const hours = Math.ceil(Math.max(...readings.map((reading) => reading.at_h)) + 0.25);
  const room0_C = [...readings].filter((reading) => reading.what === "room").sort((a, b) => a.at_h - b.at_h)[0]?.reading_C ?? 20;

  const model = ([loss = 0, capacity = 0, masonry = 0, start_K = 0, room_K = 0]: readonly number[]): number[] => {
    const plant = withMasonry(
      planPlant(inputs.heater, {
        ...inputs.house,
        floor_m2: believed.floor_m2,
        heat_loss_W_per_K: believed.heat_loss_W_per_K * Math.exp(loss),
        heat_capacity_kWh_per_K: believed.heat_capacity_kWh_per_K * Math.exp(capacity),
      }),
      Math.exp(masonry),
    );
    const state = uniform(plant, room0_C + room_K + 10 + 10 * start_K, room0_C + room_K);
    const course = roomUnder(
      {
        plant,
        moisture_pct_wet: inputs.moisture_pct_wet,
        start_hour: 0,
        hours,
        outside: inputs.outside,
        wanted: [],
        awake: { from_h: 0, to_h: 24 },
        bounds: { max_load_kg: plant.heater.max_load_kg, min_load_kg: 0, max_day_kg: Infinity, spacing_h: 0 },
        state,
      },
      inputs.fires,
      hours,
    );
    return readings.map(({ at_h, what }) => between(what === "room" ? course.room_C : course.facing_C, at_h));
  };
  const found = leastSquares(
    model,
    readings.map((reading) => reading.reading_C),
    [
      ...KEYS.map(() => ({ start: 0, bounds: [-FARTHEST, FARTHEST], step: 0.01 }) as const),
      { start: 0, bounds: [-3, 8], step: 0.05 },
      { start: 0, bounds: [-5, 5], step: 0.05 },
    ],
  );

  const t = student90(found.freedom);
  const spread = (variance: number): number => t * Math.sqrt(Math.max(0, variance));
  const base = [believed.heat_loss_W_per_K, believed.heat_capacity_kWh_per_K, 1];
  const fitted = (log: number, off: number, unit: number): Fitted => ({
    value: unit * Math.exp(log),
    low: unit * Math.exp(log - off),
    high: unit * Math.exp(log + off),
  });
  const off = KEYS.map((_, i) => spread(found.covariance[i]![i]!));
  const [lossVar = 0, capacityVar = 0, shared = 0] = [found.covariance[0]![0], found.covariance[1]![1], found.covariance[0]![1]];
  return {
    heat_loss_W_per_K: fitted(found.values[0]!, off[0]!, base[0]!),
    heat_capacity_kWh_per_K: fitted(found.values[1]!, off[1]!, base[1]!),
    masonry_share: fitted(found.values[2]!, off[2]!, base[2]!),
    time_constant_h: fitted(found.values[1]! - found.values[0]!, spread(lossVar + capacityVar - 2 * shared), (1000 * base[1]!) / base[0]!),
    residual_K: found.residual,
    cannot_tell: KEYS.filter((_, i) => 2 * off[i]! > UNDECIDED || Math.abs(found.values[i]!) > 0.99 * FARTHEST),
  };
}

/** The same plant with masonry that holds this many times the heat. */
function withMasonry(plant: Plant, times: number): Plant {
  const capacity_J_per_K = plant.mesh.capacity_J_per_K.map((capacity, i) => (i < plant.room ? capacity * times : capacity));
  return { ...plant, mesh: { ...plant.mesh, capacity_J_per_K }, steppers: new Map() };
}

function between(quarters: Float64Array, at_h: number): number {
  const i = Math.min(Math.floor(at_h * 4), quarters.length - 2);
  return quarters[i]! + (at_h * 4 - i) * (quarters[i + 1]! - quarters[i]!);
}

/** Student's t for 90 % both sides: 1.645 + 1.52/n + 1.2/n2 is within 0.5 % of the tables from 5 degrees of freedom on. */
const student90 = (freedom: number): number => 1.645 + 1.52 / freedom + 1.2 / freedom ** 2;
