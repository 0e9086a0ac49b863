/** Heaters and runs that several tests look at. */
import { heatCurve, type HeatCurve, type HeatCurveInputs } from "../../../src/reckoning/heat-curve.ts";
import type { HeaterFacts } from "../../../src/reckoning/heater-layers.ts";
import { sameDay } from "../../../src/reckoning/heater-room.ts";

export const MIDDLE: HeaterFacts = { max_load_kg: 20, masonry_kg: 2750 };
export const THIN: HeaterFacts = { ...MIDDLE, facing_material: "tile" };
export const THICK: HeaterFacts = { ...MIDDLE, masonry_kg: 3000, facing_material: "brick", wall_mm: 180 };
export const SMALL: HeaterFacts = { max_load_kg: 8, masonry_kg: 1200 };
export const LARGE: HeaterFacts = { max_load_kg: 40, masonry_kg: 5000 };

/** A daily fire at 18:00 in a house that the heater about heats, 0 °C on the mean. */
export const curve = (heater: HeaterFacts, load_kg: number, more: Partial<HeatCurveInputs> = {}): HeatCurve =>
  heatCurve({
    heater,
    load_kg,
    moisture_pct_wet: 17,
    outside: sameDay(-3, 3, 18),
    before: "daily",
    house: { heat_loss_W_per_K: load_kg * 6.5, heat_capacity_kWh_per_K: load_kg * 0.4, other_heat_W: 300 },
    ...more,
  });
