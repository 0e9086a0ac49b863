/** Volumes a woodpile is sold and measured in, and what they weigh. A stacked cubic metre is a good half wood, a loose one two fifths. */
import { convert } from "../quantities.ts";
import { massAtMoisture_kg } from "./moisture.ts";

/** Shares measured on split wood, solid wood / stacked volume by log length, and loose / stacked for short logs. */
export interface StackShares {
  /** solid / stacked for 33 cm logs */
  readonly solid_short: number;
  /** solid / stacked for 1 m logs */
  readonly solid_1m: number;
  /** loose m3 that one stacked m3 of 33 cm logs fills */
  readonly loose_per_stacked: number;
}

/** TFZ Straubing, measured on beech and spruce, table of January 2006. The mean stands for a species nobody named. */
export const MEASURED_SHARES = {
  hardwood: { solid_short: 0.62, solid_1m: 0.5, loose_per_stacked: 1.48 },
  softwood: { solid_short: 0.64, solid_1m: 0.56, loose_per_stacked: 1.62 },
  unknown: { solid_short: 0.63, solid_1m: 0.53, loose_per_stacked: 1.55 },
} as const satisfies Record<string, StackShares>;

/** What sellers count as solid wood in a stacked m3 of short split logs. Overstates the measured share by a third. */
export const TRADE_SOLID_SHARE = 0.85;

/**
 * Solid share of a stack of split logs: measured at 33 cm and 1 m, linear between them (ours), level outside.
 * @param log_length_m 0.2 to 1.2
 * @returns solid / stacked, 0 to 1. Source: TFZ Straubing 2006. Worked example: beech, 0.33 m, 0.62.
 */
export function solidShare(shares: StackShares, log_length_m: number): number {
  const along = Math.min(Math.max((log_length_m - 0.33) / (1 - 0.33), 0), 1);
  return shares.solid_short + (shares.solid_1m - shares.solid_short) * along;
}

/**
 * Cubic metres in cords: 128 ft3 stacked.
 * @returns cords. Source: NIST Handbook 130, 2.4. Worked example: 1 stacked m3 is 0.2759 cord.
 */
export const cordsFromStacked = (volume_m3_stacked: number): number => convert(volume_m3_stacked, "m3", "cord");

/** The inverse: 1 cord is 3.6246 m3 stacked. Source: NIST Handbook 130, 2.4. */
export const stackedFromCords_m3 = (cords: number): number => convert(cords, "cord", "m3");

/** Volume of a straight stack, m3. Worked example: 8 ft by 4 ft by 16 in (2.4384 x 1.2192 x 0.4064 m) is 1.2082 m3, a third of a cord. */
export const stackVolume_m3 = (length_m: number, height_m: number, log_length_m: number): number => length_m * height_m * log_length_m;

/**
 * Mass of a solid volume: basic density is dry mass / GREEN volume; the shrinkage of a stack is left out,
 * as a drying stack does not settle.
 * m = 1000 V G_b / (1 - M/100).
 * @returns kg at the moisture. Source: definition of basic density. Worked example: 0.62 m3 of beech (0.585) at 20 % is 453.4 kg.
 */
export const solidMass_kg = (volume_m3_solid: number, basic_density_g_per_cm3: number, moisture_pct_wet: number): number =>
  massAtMoisture_kg(1000 * volume_m3_solid * basic_density_g_per_cm3, moisture_pct_wet);
