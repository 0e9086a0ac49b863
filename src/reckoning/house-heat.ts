/** What a house loses and the wood that makes it good, over hours and over a season. */

/** Heat that one cubic metre of air takes per kelvin, Wh/m3K. EN 12831-1. */
const AIR_WH_PER_M3K = 0.34;

/**
 * Heat loss through surfaces: H_T = sum A U. A floor on the ground counts about 0.6 of its area (EN 12831, from memory).
 * @returns W/K. Source: ISO 13789. Worked example: 160 m2 x 0.4, 20 x 1.4, 100 x 0.2 and 60 x 0.4 is 136 W/K.
 */
export const transmission_W_per_K = (surfaces: readonly { area_m2: number; u_W_per_m2K: number }[]): number =>
  surfaces.reduce((sum, surface) => sum + surface.area_m2 * surface.u_W_per_m2K, 0);

/**
 * Heat loss with the air that leaves: H_V = 0.34 n V.
 * @param volume_m3 heated air, m3; @param air_changes_per_h 0.3 tight, 0.5 usual, 1 and more leaky
 * @returns W/K. Source: EN 12831-1. Worked example: 250 m3 at 0.5 per hour is 42.5 W/K.
 */
export const ventilation_W_per_K = (volume_m3: number, air_changes_per_h: number): number => AIR_WH_PER_M3K * air_changes_per_h * volume_m3;

/**
 * Heat to be made good: Q = max(0, H (T_i - T_e) - gains) h / 1000. On a mild day the gains suffice and the answer is 0.
 * @param gains_W people, sun and appliances
 * @returns kWh. Source: EN 12831-1, simplified. Worked example: 90 W/K, 20 and -5 °C, 24 h, 300 W gains is 46.8 kWh.
 */
export const heatNeeded_kWh = (heat_loss_W_per_K: number, inside_C: number, outside_C: number, hours_h: number, gains_W = 0): number =>
  (Math.max(0, heat_loss_W_per_K * (inside_C - outside_C) - gains_W) * hours_h) / 1000;

/**
 * Heat of a season: Q = 24 H HDD / 1000. Degree days of different bases differ by 20 to 40 %: name the base.
 * @param degree_days_Kd heating degree days, K d
 * @returns kWh. Source: arithmetic; degree days as national statistics define them. Worked example: 200 W/K and 3000 K d is 14400 kWh.
 */
export const seasonHeat_kWh = (heat_loss_W_per_K: number, degree_days_Kd: number): number =>
  (24 * heat_loss_W_per_K * degree_days_Kd) / 1000;

/**
 * Wood for an amount of heat: m = Q / (q eta).
 * @param ncv_kWh_per_kg as received; @param efficiency 0 to 1
 * @returns kg. Source: definition. Worked example: 46.8 kWh at 4.15 kWh/kg and 0.8 is 14.10 kg.
 */
export const woodForHeat_kg = (heat_kWh: number, ncv_kWh_per_kg: number, efficiency: number): number =>
  heat_kWh / (ncv_kWh_per_kg * efficiency);

/**
 * Heating degree days of a run of daily means: sum of (base - T) over the days at or below the threshold.
 * @param base_C 18 or 18.3 (US 65 °F), 15.5, 20
 * @param threshold_C the warmest day that counts; the base itself when absent. Eurostat: base 18, threshold 15
 * @returns K d. Source: CBS, EEA, Eurostat definitions. Worked example: -3, 1, 7, 12, 16, 19, 14.9, 15.1 on base 18.3 is 65.1 K d.
 */
export const degreeDays_Kd = (daily_means_C: readonly number[], base_C: number, threshold_C: number = base_C): number =>
  daily_means_C.reduce((sum, day_C) => sum + (day_C <= threshold_C ? Math.max(0, base_C - day_C) : 0), 0);

/**
 * Heat transmission of a wall: U = 1 / (R_si + sum d/k + R_se).
 * @param layers from inside to outside, thickness m and conductivity W/mK
 * @returns W/m2K. Source: ISO 6946. Worked example: 24 cm brick and 1.5 cm plaster of 0.8 W/mK is 2.046 W/m2K.
 */
export const uValue_W_per_m2K = (
  layers: readonly { thickness_m: number; k_W_per_mK: number }[],
  inside_m2K_per_W = 0.13,
  outside_m2K_per_W = 0.04,
): number => 1 / layers.reduce((sum, layer) => sum + layer.thickness_m / layer.k_W_per_mK, inside_m2K_per_W + outside_m2K_per_W);
