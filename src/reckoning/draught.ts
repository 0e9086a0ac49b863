/**
 * What pulls the smoke up: warm gas in the flue weighs less than the outside air beside it. Kelvin throughout, and never cut off
 * at zero: on a mild day a cold flue pushes down, and that answer matters most.
 */

const GRAVITY = 9.81;
const KELVIN = 273.15;

/** Gas constant of air in EN 13384-1, 5.7.3, J/kgK. */
export const R_AIR = 288;
/** Gas constant of wood flue gas at an air ratio near 3 and 17 % moisture, from an element balance, J/kgK. */
export const R_WOOD_GAS = 286.5;

/** Design air pressure of EN 13384-1 at sea level, Pa: a low-pressure day, 4 % under the standard atmosphere. */
export const DESIGN_PRESSURE_PA = 97000;
export const STANDARD_PRESSURE_PA = 101325;

/**
 * Air pressure with altitude: p = 97000 exp(-g z / (R_L T_L)), T_L 288.15 K. Do not give altitude and a measured pressure together.
 * @param altitude_m above sea level, -400 to 4000
 * @returns Pa. Source: EN 13384-1, 5.7.2 (from memory). Worked example: 1000 m is 86185 Pa.
 */
export const pressureAtAltitude_Pa = (altitude_m: number): number =>
  DESIGN_PRESSURE_PA * Math.exp((-GRAVITY * altitude_m) / (R_AIR * 288.15));

/**
 * rho = p / (R T).
 * @param t_C °C, turned into kelvin inside
 * @returns kg/m3. Source: ideal gas; EN 13384-1, 5.7.5 and 5.9.1. Worked example: 97000 Pa, 15 °C, R 288 is 1.16885 kg/m3.
 */
export const gasDensity_kg_per_m3 = (t_C: number, pressure_Pa: number, R_J_per_kgK: number): number =>
  pressure_Pa / (R_J_per_kgK * (t_C + KELVIN));

/**
 * Static draught: P_H = H g (rho_outside - rho_flue). Use the MEAN temperature of the flue gas, not the one at the inlet.
 * @param flue_height_m from the flue inlet to the mouth, m
 * @returns Pa, negative when the air in the flue is heavier than outside
 * Source: EN 13384-1, 5.10.1. Worked example: 6 m, 150 °C in the flue, 15 °C outside, 97000 Pa, R 288 both: 21.95 Pa.
 */
export const staticDraught_Pa = (flue_height_m: number, air_kg_per_m3: number, flue_kg_per_m3: number): number =>
  flue_height_m * GRAVITY * (air_kg_per_m3 - flue_kg_per_m3);

/**
 * Darcy friction factor of a rough flue: Colebrook and White, solved by fixed-point steps; the Reynolds number is at least 2300.
 * @param relative_roughness roughness / hydraulic diameter: clay liner 0.0015 m, brick 0.005 m
 * @returns Darcy factor (four times the Fanning one)
 * Source: EN 13384-1, 5.10.3.3. Worked example: Re 10000, 0.0075 is 0.0405.
 */
export function frictionFactor(reynolds: number, relative_roughness: number): number {
  const Re = Math.max(reynolds, 2300);
  let factor = 0.04;
  for (let i = 0; i < 40; i++) factor = (-2 * Math.log10(2.51 / (Re * Math.sqrt(factor)) + relative_roughness / 3.71)) ** -2;
  return factor;
}

/**
 * Pressure lost to friction and bends: P_R = (psi L / D + sum zeta) rho w2 / 2.
 * @param bends sum of the single resistances: 1.2 for a right angle, 0.4 for 45 degrees (EN 15544, from memory)
 * @returns Pa. Source: EN 13384-1, 5.10.3. Worked example: factor 0.040887, 6 m, 0.18 m, 0.7721 kg/m3 at 1.7826 m/s is 1.67 Pa.
 */
export const resistance_Pa = (
  flue: { factor: number; length_m: number; diameter_m: number; bends?: number },
  gas_kg_per_m3: number,
  speed_m_per_s: number,
): number => ((flue.factor * flue.length_m) / flue.diameter_m + (flue.bends ?? 0)) * (gas_kg_per_m3 / 2) * speed_m_per_s ** 2;

/** Downward pressure to allow for wind on a badly placed mouth, Pa: EN 13384-1, 5.10.4 (from memory). A free mouth gets 0. */
export const WIND_PA = { free: 0, unfavourable_inland: 25, unfavourable_coast: 40 } as const;

/**
 * What is left at the heater: P_Z = P_H - P_R - P_L.
 * @returns Pa, negative when smoke comes into the room
 * Source: EN 13384-1, 5.2.1. Worked example: 23.4 - 2.5 - 0 is 20.9 Pa.
 */
export const draughtLeft_Pa = (static_Pa: number, resistance_in_flue_Pa: number, wind_Pa: number): number =>
  static_Pa - resistance_in_flue_Pa - wind_Pa;
