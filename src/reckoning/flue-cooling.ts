/** How flue gas cools on its way up, and whether its water condenses on the wall near the top. */
import { saturationTemperature_C } from "./air-moisture.ts";

/**
 * Cooling coefficient K = U k L / (m cp).
 * @param flue perimeter from the inner diameter, m; length, m; heat transmission k, W/m2K (2 insulated, 5 plain brick)
 * @param mass_flow_kg_per_s about 0.0035 kg/s per kg of load in EN 15544
 * @param cp_J_per_kgK 1050 for flue gas
 * @returns pure number. Source: EN 13384-1, 5.8; EN 13084-1, A.4.2. Worked example: 0.18 m, k 2, 6 m, 0.035 kg/s is 0.1846.
 */
export const coolingCoefficient = (
  flue: { diameter_m: number; length_m: number; k_W_per_m2K: number },
  mass_flow_kg_per_s: number,
  cp_J_per_kgK = 1050,
): number => (Math.PI * flue.diameter_m * flue.k_W_per_m2K * flue.length_m) / (mass_flow_kg_per_s * cp_J_per_kgK);

/**
 * Gas at the mouth and its mean along the flue: T_o = T_u + (T_e - T_u) e^-K, T_m = T_u + (T_e - T_u)(1 - e^-K)/K.
 * @param inlet_C gas where it enters the flue; @param around_C air around the flue
 * @returns °C. Source: EN 13384-1, 5.8 (exact integral).
 * Worked example: 180 °C, 15 °C around, K 0.184649: 152.2 at the mouth, 165.7 mean.
 */
export function gasTemperatures_C(inlet_C: number, around_C: number, K: number): { mouth_C: number; mean_C: number } {
  const rise = inlet_C - around_C;
  return { mouth_C: around_C + rise * Math.exp(-K), mean_C: around_C + (K > 1e-9 ? (rise * -Math.expm1(-K)) / K : rise) };
}

/**
 * Inner wall at the mouth: T_iob = T_o - (k / alpha_i)(T_o - T_u).
 * @param k_W_per_m2K heat transmission at the mouth; @param inside_W_per_m2K heat transfer gas to wall, 5 to 12
 * @returns °C. Source: EN 13384-1, 5.8.4 (from memory). Worked example: 78 °C, k 2.75, 5 W/m2K, 0 °C outside is 35.1 °C.
 */
export const innerWall_C = (mouth_C: number, around_C: number, k_W_per_m2K: number, inside_W_per_m2K: number): number =>
  mouth_C - (k_W_per_m2K / inside_W_per_m2K) * (mouth_C - around_C);

/** Dry wood: carbon and hydrogen by mass; air for complete combustion and carbon dioxide from it, Nm3 per kg of dry wood. */
const WOOD = { carbon: 0.502, hydrogen: 0.061, air_Nm3: 4.6491, co2_max_share: 0.20309 };
const MOLE_NM3 = 22.414;

/**
 * Carbon dioxide in the dry flue gas from the air ratio.
 * @param air_ratio 1 to 6; a masonry heater burns near 2 to 3
 * @returns volume %. Source: element balance of wood C 50.2, H 6.1, O 43.1 %. Worked example: air ratio 2 is 10.1 %.
 */
export function co2_pct_dry(air_ratio: number): number {
  const co2_Nm3 = (WOOD.carbon / 12.011) * MOLE_NM3;
  return (100 * co2_Nm3) / (co2_Nm3 / WOOD.co2_max_share + (air_ratio - 1) * WOOD.air_Nm3);
}

/** Volume % that moist outside air adds to the water of the gas. EN 13384-1, 5.7.6 (from memory). */
const HUMID_AIR_PCT = 1.1;

/**
 * Water vapour in the flue gas: s = 100 / (1 + f_w / s_CO2) + 1.1, f_w from the wood's carbon, hydrogen and moisture.
 * @returns volume % of the moist gas. Source: EN 13384-1 form, f_w from the element balance.
 * Worked example: air ratio 2, 17 %: 9.15 % and 1.1 % of the air.
 */
export function waterVapour_pct(air_ratio: number, moisture_pct_wet: number, humid_air_pct: number = HUMID_AIR_PCT): number {
  const dry = 1 - moisture_pct_wet / 100;
  const co2_moles = (dry * WOOD.carbon) / 12.011;
  const water_moles = (dry * WOOD.hydrogen) / 2.016 + (1 - dry) / 18.015;
  const f_w = (100 * co2_moles) / water_moles;
  return 100 / (1 + f_w / co2_pct_dry(air_ratio)) + humid_air_pct;
}

/**
 * Dew point of wood flue gas.
 * @returns °C. Source: as above, with the saturation pressure of water. Worked example: air ratio 2.95, 17 %, 97000 Pa, dry air: 36.7 °C.
 */
export const flueDewPoint_C = (
  air_ratio: number,
  moisture_pct_wet: number,
  pressure_Pa: number,
  humid_air_pct: number = HUMID_AIR_PCT,
): number => saturationTemperature_C((waterVapour_pct(air_ratio, moisture_pct_wet, humid_air_pct) / 100) * pressure_Pa);

/** Inner wall temperature at the mouth that EN 15544 (4.10.2, from memory) asks for: a fixed margin, not the dew point itself. */
export const WALL_LIMIT_C = 45;

/** Whether water condenses at the mouth: "dry" at or above 45 °C, "marginal" between the dew point and 45 °C, else "wet". */
export const condensation = (wall_C: number, dew_point_C: number): "dry" | "marginal" | "wet" =>
  wall_C >= WALL_LIMIT_C ? "dry" : wall_C > dew_point_C ? "marginal" : "wet";
