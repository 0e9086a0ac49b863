/** Pin (resistance) moisture meters: dry basis, made for one species at one temperature. Temperature is corrected first, then species. */

/** Readings above this are not figures: free water conducts, and the scale means only "wet". */
export const METER_CEILING_PCT_DRY = 30;
/** What a corrected reading is worth in practice, points of dry basis either way. */
export const METER_UNCERTAINTY_PTS = 2.5;

/**
 * Reading at the wood's temperature turned into the reading at the scale's own (22.7 °C for a 15 % reading):
 * U = (R + 0.567 - 0.0260 t + 0.000051 t2) / (0.881 * 1.0056^t). Cold wood reads low, so cold wood is corrected upward.
 * @param reading_pct_dry as shown, %, best between 6 and 28
 * @param wood_C temperature of the wood, not of the air, °C; below 0 the wood should be brought in and measured again
 * @returns dry basis, %
 * Source: Pfaff and Garrahan 1986, Forest Products Journal (from memory); sign and size held against three makers' published corrections.
 * Worked example: 16 % shown at 0 °C is 18.8 %.
 */
export const temperatureCorrected_pct_dry = (reading_pct_dry: number, wood_C: number): number =>
  (reading_pct_dry + 0.567 - 0.026 * wood_C + 0.000051 * wood_C ** 2) / (0.881 * 1.0056 ** wood_C);

/** Points to add for a species at readings of 12, 16 and 20 % dry basis. */
export type SpeciesCorrection = readonly [at12: number, at16: number, at20: number];

/**
 * Adds the species correction, linear between its three readings and level outside them.
 * @param corrected_pct_dry already corrected for temperature, %
 * @returns dry basis, %
 * Source: published Australian table on the Douglas-fir scale (AS/NZS 1080.1, FWPRDC PN01.1306).
 * Worked example: river red gum, 16 % is 18 %.
 */
export function speciesCorrected_pct_dry(corrected_pct_dry: number, [at12, at16, at20]: SpeciesCorrection): number {
  const from12 = Math.min(Math.max(corrected_pct_dry - 12, 0), 4) / 4;
  const from16 = Math.min(Math.max(corrected_pct_dry - 16, 0), 4) / 4;
  return corrected_pct_dry + at12 + (at16 - at12) * from12 + (at20 - at16) * from16;
}

/** Arithmetic mean of several readings, %. @throws RangeError for an empty list. */
export function mean(readings: readonly number[]): number {
  if (readings.length === 0) throw new RangeError("no readings");
  return readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
}
