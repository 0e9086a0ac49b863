/** Air the flue draws: more when it is cold outside, and through the gaps of a closed door once the fire is out. */
import { DESIGN_PRESSURE_PA, gasDensity_kg_per_m3, R_AIR, R_WOOD_GAS, staticDraught_Pa } from "./draught.ts";
import { coolingCoefficient, gasTemperatures_C } from "./flue-cooling.ts";
import type { HeaterModel } from "./heater-layers.ts";

/** What the flue rests on. */
export const FLUE = {
  /** Draught at which the air opening passes what the fire is made for, Pa. Test draught of room heaters 12 Pa. */
  design_Pa: 12,
  /**
   * Gaps of a closed door and air slide, as a share of the full opening. Fitted to 3 to 10 % of a load lost overnight,
   * common practice, no source.
   */
  leak_share: 0.06,
  diameter_m: 0.18,
  /** Flue wall, W/m2K: 2 insulated or inside, 5 on an outside wall. EN 13384-1 examples. */
  inside_W_per_m2K: 2,
  outside_W_per_m2K: 5,
} as const;
export type FlueParameters = { readonly [key in keyof typeof FLUE]: number };

/** Draught of the flue with gas of a mean temperature, Pa. */
const draught_Pa = (heater: HeaterModel, mean_C: number, outside_C: number, R: number): number =>
  staticDraught_Pa(
    heater.flue_height_m,
    gasDensity_kg_per_m3(outside_C, DESIGN_PRESSURE_PA, R_AIR),
    gasDensity_kg_per_m3(mean_C, DESIGN_PRESSURE_PA, R),
  );

/** How much more air the outside cold draws than 0 °C does, with a flue at 150 °C; the root of the draughts. */
export function coldFactor(heater: HeaterModel, outside_C: number): number {
  const now = draught_Pa(heater, 150, outside_C, R_WOOD_GAS);
  return Math.sqrt(Math.max(0.1, now / draught_Pa(heater, 150, 0, R_WOOD_GAS)));
}

/**
 * Air through a closed door and an open flue: falls as the heater cools and stops when the flue is as cold as the outside.
 * @param at temperatures of the gas leaving the heater, outside and in the room; the last flow, which sets how far the gas
 * cools on its way
 * @returns kg/s
 */
export function leak_kg_per_s(
  heater: HeaterModel,
  flue: FlueParameters,
  full_kg_per_s: number,
  at: { leaving_C: number; outside_C: number; room_C: number; before_kg_per_s: number },
): number {
  const around_C = heater.flue_outside ? at.outside_C : at.room_C;
  const k_W_per_m2K = heater.flue_outside ? flue.outside_W_per_m2K : flue.inside_W_per_m2K;
  const shape = { diameter_m: flue.diameter_m, length_m: heater.flue_height_m, k_W_per_m2K };
  const K = coolingCoefficient(shape, Math.max(at.before_kg_per_s, 1e-5));
  const pull_Pa = draught_Pa(heater, gasTemperatures_C(at.leaving_C, around_C, K).mean_C, at.outside_C, R_AIR);
  return flue.leak_share * full_kg_per_s * Math.sqrt(Math.max(0, pull_Pa) / flue.design_Pa);
}
