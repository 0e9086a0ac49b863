/** Heat in wood, on the net (lower) calorific value: the water in the wood leaves as vapour and its heat is lost. */
import { convert } from "../quantities.ts";

/** Heat to evaporate 1 % of the wet mass of water at 25 °C, MJ per kg of wood and per % (2.443 MJ per kg of water). ISO 18125. */
const LATENT_MJ_PER_KG_PCT = 0.02443;

/** Net calorific value of oven-dry wood, MJ/kg, and the band its species fall in. NIBIO; ISO 17225-1 table B.1 (from memory). */
export const NCV_DRY_MJ_PER_KG = {
  softwood: { typical: 19.1, low: 18.5, high: 19.8 },
  hardwood: { typical: 18.9, low: 18.4, high: 19.2 },
  unknown: { typical: 19.0, low: 18.4, high: 19.8 },
} as const;

/**
 * Net calorific value as received: q = q_d (1 - M/100) - 0.02443 M.
 * @param ncv_dry_MJ_per_kg net calorific value of the oven-dry wood, MJ/kg, 18.4 to 19.8 for wood
 * @param moisture_pct_wet wet basis, %, 0 to 80
 * @returns MJ/kg as received
 * Source: ISO 18125; ISO 17225-1 annex D. Worked example: 18.9 MJ/kg dry at 20 % is 14.631 MJ/kg.
 */
export const ncv_MJ_per_kg = (ncv_dry_MJ_per_kg: number, moisture_pct_wet: number): number =>
  ncv_dry_MJ_per_kg * (1 - moisture_pct_wet / 100) - LATENT_MJ_PER_KG_PCT * moisture_pct_wet;

/**
 * The same in kWh/kg. Source: 1 kWh = 3.6 MJ. Worked example: 19.1 MJ/kg dry at 15 % is 4.408 kWh/kg.
 */
export const ncv_kWh_per_kg = (ncv_dry_MJ_per_kg: number, moisture_pct_wet: number): number =>
  convert(ncv_MJ_per_kg(ncv_dry_MJ_per_kg, moisture_pct_wet), "MJ", "kWh");

/**
 * Net calorific value of dry wood from the gross one: q_d = q_gr - 0.2122 H - 0.0008 (O + N).
 * @param gross_dry_MJ_per_kg bomb value of the dry wood, MJ/kg
 * @param hydrogen_pct_dry, oxygen_and_nitrogen_pct_dry of the dry mass, %
 * @returns MJ/kg. Source: ISO 18125 (from memory). Worked example: 20.25 MJ/kg with 6.2 % H and 44 % O + N is 18.899 MJ/kg.
 */
export const netFromGross_MJ_per_kg = (
  gross_dry_MJ_per_kg: number,
  hydrogen_pct_dry: number,
  oxygen_and_nitrogen_pct_dry: number,
): number => gross_dry_MJ_per_kg - 0.2122 * hydrogen_pct_dry - 0.0008 * oxygen_and_nitrogen_pct_dry;

/**
 * Heat of one load: E = m q.
 * @returns kWh. Source: definition. Worked example: 15 kg at 4.16 kWh/kg is 62.4 kWh.
 */
export const loadEnergy_kWh = (load_kg: number, ncv_kWh_per_kg_now: number): number => load_kg * ncv_kWh_per_kg_now;

/** Share of the net calorific value that a masonry heater gives to the room: common practice 0.78 to 0.88, EN 15544 asks at least 0.78. */
export const MASONRY_HEATER_EFFICIENCY = { typical: 0.8, low: 0.78, high: 0.88 } as const;

/**
 * Efficiency of an EN 15544 heater from the flue gas temperature where it leaves the heater: eta = 101.09 - 0.0941 t.
 * @param flue_gas_C 100 to 300 °C
 * @returns share, 0 to 1. Source: EN 15544, 4.10.3 (from memory). Worked example: 240 °C gives 0.785.
 */
export const efficiencyFromFlueGas = (flue_gas_C: number): number => (101.09 - 0.0941 * flue_gas_C) / 100;
