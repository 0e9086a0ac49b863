/** How much wood a heater is built for, from its nominal output or, without papers, from its masonry. */

/**
 * Heat to the room per kg of wood in EN 15544: 4.16 kWh/kg times an efficiency of 0.78, rounded in the standard to 3.25.
 * The efficiency is already inside: never multiply by it again.
 */
export const EN15544_KWH_PER_KG = 3.25;

/** Scope of EN 15544: one load per heating time, loads of 10 to 40 kg, heating times of 8 to 24 h. */
export const EN15544_SCOPE = { load_kg: [10, 40], heating_time_h: [8, 24] } as const;

/**
 * m_B = P_n t_n / 3.25.
 * @param nominal_output_kW mean output over the heating time, kW, above 0
 * @param nominal_heating_time_h hours one load heats, 8 to 24 in the standard
 * @param useful_kWh_per_kg heat to the room per kg, 3.25 in the standard
 * @returns the largest load, kg
 * Source: EN 15544, 4.2.1 (from memory; the constant proven from printed pairs of load and output).
 * Worked example: 4 kW over 12 h is 14.77 kg.
 */
export const ratedLoad_kg = (
  nominal_output_kW: number,
  nominal_heating_time_h: number,
  useful_kWh_per_kg: number = EN15544_KWH_PER_KG,
): number => (nominal_output_kW * nominal_heating_time_h) / useful_kWh_per_kg;

/**
 * P_n = m_B 3.25 / t_n, the inverse of {@link ratedLoad_kg}.
 * @returns kW. Source: EN 15544, 4.2.1. Worked example: 40 kg over 12 h is 10.83 kW.
 */
export const nominalOutput_kW = (
  max_load_kg: number,
  nominal_heating_time_h: number,
  useful_kWh_per_kg: number = EN15544_KWH_PER_KG,
): number => (max_load_kg * useful_kWh_per_kg) / nominal_heating_time_h;

/**
 * The smallest load that still burns clean: half the largest.
 * @returns kg. Source: EN 15544, 4.2.2 (from memory). Worked example: 14.77 kg largest is 7.38 kg smallest.
 */
export const smallestLoad_kg = (max_load_kg: number): number => 0.5 * max_load_kg;

/** Largest load per kg of masonry that may be guessed for a heater without papers. */
const LOAD_PER_MASONRY = 0.5 / 100;

/**
 * A cautious guess for a heater without sheet or plate: the lower of half the firebox height filled, as weight, and
 * 0.5 kg per 100 kg of masonry.
 * @param half_firebox_kg weight of wood that fills the firebox to half its height, kg, when known
 * @param masonry_kg mass of the heater without chimney and base, kg, when known
 * @returns kg, or undefined when neither is known
 * Source: common practice, no source. Worked example: 2500 kg of masonry and 14 kg to half height is 12.5 kg.
 */
export function guessedLoad_kg(known: { half_firebox_kg?: number; masonry_kg?: number }): number | undefined {
  const bounds = [known.half_firebox_kg, known.masonry_kg === undefined ? undefined : known.masonry_kg * LOAD_PER_MASONRY].filter(
    (bound) => bound !== undefined,
  );
  return bounds.length > 0 ? Math.min(...bounds) : undefined;
}
