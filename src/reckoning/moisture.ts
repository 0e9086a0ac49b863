/**
 * Water in wood. Two bases are in use and mixing them is the commonest mistake of the trade:
 * wet basis M = water / mass as it lies (fuel standards, heat values), dry basis U = water / oven-dry mass (timber trade, pin meters).
 */

/**
 * M = 100 U / (100 + U).
 * @param moisture_pct_dry water / oven-dry mass, %, 0 to about 400
 * @returns water / wet mass, %
 * Source: definitions, ISO 18134 (M) and EN 13183-1 (U). Worked example: 25 % dry basis is 20 % wet basis.
 */
export const wetFromDry_pct = (moisture_pct_dry: number): number => (100 * moisture_pct_dry) / (100 + moisture_pct_dry);

/**
 * U = 100 M / (100 - M).
 * @param moisture_pct_wet water / wet mass, %, 0 to below 100
 * @returns water / oven-dry mass, %
 * Source: definitions, ISO 18134 (M) and EN 13183-1 (U). Worked example: 50 % wet basis is 100 % dry basis.
 */
export const dryFromWet_pct = (moisture_pct_wet: number): number => (100 * moisture_pct_wet) / (100 - moisture_pct_wet);

/**
 * M = 100 (m - m_dry) / m, from one weighing before and one after the oven.
 * @param mass_kg as it lies, kg, above 0
 * @param dry_kg after drying at 103 to 105 °C to constant mass, kg
 * @returns wet basis, %
 * Source: ISO 18134. Worked example: 0.412 kg that dries to 0.3315 kg held 19.54 %.
 */
export const moistureFromMasses_pct_wet = (mass_kg: number, dry_kg: number): number => (100 * (mass_kg - dry_kg)) / mass_kg;

/**
 * m_dry = m (1 - M / 100).
 * @returns oven-dry mass, kg. Source: definition. Worked example: 15 kg at 20 % wet basis hold 12 kg of dry wood.
 */
export const dryMass_kg = (mass_kg: number, moisture_pct_wet: number): number => mass_kg * (1 - moisture_pct_wet / 100);

/**
 * m = m_dry / (1 - M / 100): what a piece of known dry mass weighs at a moisture.
 * @returns kg. Source: definition. Worked example: 1.3978 kg of dry wood weigh 1.7473 kg at 20 % wet basis.
 */
export const massAtMoisture_kg = (dry_kg: number, moisture_pct_wet: number): number => dry_kg / (1 - moisture_pct_wet / 100);

/** Water vapour from burning 1 kg of hydrogen, kg: 18.015 / 2.016. */
const WATER_PER_HYDROGEN = 8.937;

/**
 * All water leaving the chimney as vapour: the wood's own, and what its hydrogen burns to. m M + 8.937 H m_dry.
 * @param hydrogen_share_dry hydrogen in dry wood, 0.062 typical
 * @returns kg. Source: stoichiometry. Worked example: 15 kg at 20 % wet basis give 9.65 kg of vapour.
 */
export const vapourFromLoad_kg = (load_kg: number, moisture_pct_wet: number, hydrogen_share_dry = 0.062): number =>
  load_kg - dryMass_kg(load_kg, moisture_pct_wet) + WATER_PER_HYDROGEN * hydrogen_share_dry * dryMass_kg(load_kg, moisture_pct_wet);

/** Density of the wood substance itself relative to water. */
const CELL_WALL_DENSITY = 1.54;

/**
 * The most water wood can hold: U_max = 100 (1.54 - G_b) / (1.54 G_b).
 * @param basic_density_g_per_cm3 dry mass / green volume, 0.1 to 1.2
 * @returns dry basis, %
 * Source: Wood Handbook, FPL-GTR-282 (2021), eq. 4-3. Worked example: basic density 0.37 holds 205 %.
 */
export const greatestMoisture_pct_dry = (basic_density_g_per_cm3: number): number =>
  (100 * (CELL_WALL_DENSITY - basic_density_g_per_cm3)) / (CELL_WALL_DENSITY * basic_density_g_per_cm3);

/** Dry basis above which the cell walls are full and the wood no longer shrinks or swells, %. Wood Handbook ch. 4: about 30. */
export const FIBRE_SATURATION_PCT_DRY = 30;

/**
 * Density of wood at a moisture, with its shrinkage below fibre saturation: 1000 G_x (1 + U/100), G_x = G_b / (1 - 0.265 G_b (1 - U/30)).
 * @returns kg/m3. Source: FPL-GTR-282 eq. 4-13, 4-14. Worked example: basic density 0.585 at 31.62 % dry basis weighs 770 kg/m3.
 */
export function density_kg_per_m3(basic_density_g_per_cm3: number, moisture_pct_dry: number): number {
  const below = Math.max(0, 1 - moisture_pct_dry / FIBRE_SATURATION_PCT_DRY);
  return (1000 * basic_density_g_per_cm3 * (1 + moisture_pct_dry / 100)) / (1 - 0.265 * basic_density_g_per_cm3 * below);
}

/**
 * Moisture of a piece from its measured density, by bisection on {@link density_kg_per_m3}. A book density that is 10 % wrong
 * moves the answer by about 8 points on dry wood: good for following one pile, useless as a test.
 * @param measured_kg_per_m3 mass / volume of the piece now
 * @returns dry basis, %, never below 0
 * Source: FPL-GTR-282 eq. 4-13. Worked example: basic density 0.37 and 460 kg/m3 measured is 20.44 %.
 */
export function moistureFromDensity_pct_dry(basic_density_g_per_cm3: number, measured_kg_per_m3: number): number {
  let low = 0;
  let high = greatestMoisture_pct_dry(basic_density_g_per_cm3);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (density_kg_per_m3(basic_density_g_per_cm3, middle) < measured_kg_per_m3) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Volume of a round log from its middle: V = pi/4 D2 L (Huber).
 * @returns m3. Source: forestry practice, printed in COFORD leaflet HT21. Worked example: 0.30 m across, 4 m long: 0.2827 m3.
 */
export const logVolume_m3 = (middle_diameter_m: number, length_m: number): number => (Math.PI / 4) * middle_diameter_m ** 2 * length_m;
