/** Every plate by the chart it draws. */
import type { ChartName } from "../charts.ts";
import { bandsPlate } from "./bands.ts";
import { dryingPlate } from "./drying.ts";
import { firePlanPlate } from "./fire-plan.ts";
import { heatCurvePlate } from "./heat-curve.ts";
import { pilePlate } from "./pile.ts";
import type { Plate } from "./plate.ts";
import { seasonPlate } from "./season.ts";

export const PLATES: { readonly [N in ChartName]: Plate<N> } = {
  "heat-curve": heatCurvePlate,
  "fire-plan": firePlanPlate,
  drying: dryingPlate,
  pile: pilePlate,
  season: seasonPlate,
  bands: bandsPlate,
};
