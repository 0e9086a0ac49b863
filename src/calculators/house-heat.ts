/** house-heat and season: what the house loses, over hours and over a winter, and the wood that makes it good. */
import { EN15544_KWH_PER_KG } from "../reckoning/load.ts";
import { heatNeeded_kWh, seasonHeat_kWh, transmission_W_per_K, ventilation_W_per_K, woodForHeat_kg } from "../reckoning/house-heat.ts";
import { BadInput, calculator, figure } from "./calculator.ts";
import { efficiency, ncvKWhPerKg, result } from "./keys.ts";
import { together } from "./one-of.ts";

const area = (what: string): ReturnType<typeof figure> => figure("m2", `area of the ${what}`, { min: 0, max: 10000 });
const u = (what: string, usual: string): ReturnType<typeof figure> =>
  figure("W/m2K", `heat transmission of the ${what}, ${usual}`, { min: 0, max: 8, source: "ISO 6946; usual values from two UK guides" });

const lossInputs = {
  heat_loss_W_per_K: figure("W/K", "heat loss of the whole house", { above: 0, max: 5000 }).optional(),
  walls_m2: area("outside walls").optional(),
  walls_W_per_m2K: u("walls", "0.2 to 2.2").optional(),
  windows_m2: area("windows").optional(),
  windows_W_per_m2K: u("windows", "0.8 to 5.6").optional(),
  roof_m2: area("roof").optional(),
  roof_W_per_m2K: u("roof", "0.1 to 2.0").optional(),
  floor_m2: area("floor (count 0.6 of it over ground or cellar)").optional(),
  floor_W_per_m2K: u("floor", "0.15 to 1.0").optional(),
  volume_m3: figure("m3", "heated air", { min: 0, max: 100000 }).optional(),
  air_changes_per_h: figure("1/h", "air changes: 0.3 tight, 0.5 usual, 1 and more leaky", {
    min: 0,
    max: 20,
    source: "EN 12831 (from memory)",
  }).optional(),
};

export const houseHeat = calculator({
  name: "house-heat",
  about: "Heat loss of a house, the heat it needs over some hours, and the wood for it. 0 when sun, people and appliances suffice.",
  source: "EN 12831-1, simplified; ISO 13789; ISO 6946",
  inputs: {
    ...lossInputs,
    inside_C: figure("°C", "mean wanted inside", { min: -10, max: 40 }).default(20),
    outside_C: figure("°C", "mean outside over the hours; without it only the heat loss is given", { min: -60, max: 60 }).optional(),
    hours_h: figure("h", "how long", { above: 0, max: 9000 }).default(24),
    internal_gains_W: figure("W", "people, sun and appliances", { min: 0, max: 50000 }).default(0),
    ncv_kWh_per_kg: ncvKWhPerKg().optional(),
    efficiency: efficiency().optional(),
  },
  outputs: {
    heat_loss_W_per_K: result("W/K", "heat loss of the house"),
    heat_kWh: result("kWh", "heat it needs over the hours").optional(),
    wood_kg: result("kg", "wood for that heat; more than one load means several fires or other heat").optional(),
  },
  run: (given) => {
    const heat_loss_W_per_K = heatLoss_W_per_K(given);
    const heat_kWh =
      given.outside_C === undefined
        ? undefined
        : heatNeeded_kWh(heat_loss_W_per_K, given.inside_C, given.outside_C, given.hours_h, given.internal_gains_W);
    const burned = together(given, ["ncv_kWh_per_kg", "efficiency"]);
    return {
      heat_loss_W_per_K,
      heat_kWh,
      wood_kg: burned && heat_kWh !== undefined ? woodForHeat_kg(heat_kWh, given.ncv_kWh_per_kg ?? 0, given.efficiency ?? 0) : undefined,
    };
  },
});

type Loss = { readonly [K in keyof typeof lossInputs]?: number | undefined };

const SURFACES = [
  ["walls_m2", "walls_W_per_m2K"],
  ["windows_m2", "windows_W_per_m2K"],
  ["roof_m2", "roof_W_per_m2K"],
  ["floor_m2", "floor_W_per_m2K"],
] as const;

function heatLoss_W_per_K(given: Loss): number {
  const surfaces = SURFACES.flatMap(([m2, w]) =>
    together(given, [m2, w]) ? [{ area_m2: given[m2] ?? 0, u_W_per_m2K: given[w] ?? 0 }] : [],
  );
  const aired = together(given, ["volume_m3", "air_changes_per_h"]);
  const fromParts = surfaces.length > 0 || aired;
  if (given.heat_loss_W_per_K !== undefined) {
    if (fromParts)
      throw new BadInput(
        `heat_loss_W_per_K ${given.heat_loss_W_per_K} is the whole house already; give it or its parts, not both.`,
      );
    return given.heat_loss_W_per_K;
  }
  if (!fromParts)
    throw new BadInput(
      "house-heat needs heat_loss_W_per_K, or parts of it such as walls_m2 + walls_W_per_m2K or volume_m3 + air_changes_per_h.",
    );
  return transmission_W_per_K(surfaces) + (aired ? ventilation_W_per_K(given.volume_m3 ?? 0, given.air_changes_per_h ?? 0) : 0);
}

/** Useful heat per kg from wood of 25 % in a heater of 0.78 to wood of 15 % in one of 0.88. */
const USEFUL_BAND = { low: 2.94, high: 3.84 };

export const season = calculator({
  name: "season",
  about: "Heat and wood of a whole season from degree days; sun, people and appliances count only through the base of the degree days.",
  source: "Q = 24 H HDD; degree days as national statistics define them; wood at 3.25 useful kWh/kg (EN 15544) when nothing is given",
  inputs: {
    degree_days_Kd: figure("K d", "heating degree days of the season; bases differ by 20 to 40 %, so know yours", { min: 0, max: 12000 }),
    heat_loss_W_per_K: figure("W/K", "heat loss of the house", { above: 0, max: 5000 }),
    ncv_kWh_per_kg: ncvKWhPerKg().optional(),
    efficiency: efficiency().optional(),
    useful_kWh_per_kg: figure("kWh/kg", "heat to the room per kg of wood", {
      above: 0,
      max: 5.6,
      assumed: EN15544_KWH_PER_KG,
      source: "EN 15544, 4.2.1 (from memory)",
    }).optional(),
    wood_share: figure("share", "part of the heat that comes from wood", { min: 0, max: 1 }).default(1),
    mass_kg_per_m3_stacked: figure("kg/m3", "weight of a stacked cubic metre; the stack calculator gives it", {
      above: 0,
      max: 1200,
    }).optional(),
  },
  outputs: {
    heat_kWh: result("kWh", "heat the house needs over the season"),
    wood_kg: result("kg", "wood for its share of that"),
    wood_m3_stacked: result("m3", "the same stacked").optional(),
  },
  run: (given) => {
    const burned = together(given, ["ncv_kWh_per_kg", "efficiency"]);
    if (burned && given.useful_kWh_per_kg !== undefined) {
      throw new BadInput(
        `useful_kWh_per_kg ${given.useful_kWh_per_kg} already holds the efficiency; give it, or ncv_kWh_per_kg and efficiency, not both.`,
      );
    }
    const assumed = !burned && given.useful_kWh_per_kg === undefined;
    const heat_kWh = seasonHeat_kWh(given.heat_loss_W_per_K, given.degree_days_Kd);
    const [ncv, share] = burned ? [given.ncv_kWh_per_kg ?? 0, given.efficiency ?? 0] : [given.useful_kWh_per_kg ?? EN15544_KWH_PER_KG, 1];
    const wood_kg = woodForHeat_kg(heat_kWh * given.wood_share, ncv, share);
    return {
      heat_kWh,
      wood_kg,
      wood_m3_stacked: given.mass_kg_per_m3_stacked === undefined ? undefined : wood_kg / given.mass_kg_per_m3_stacked,
      ...(assumed && {
        range: {
          wood_kg: [
            woodForHeat_kg(heat_kWh * given.wood_share, USEFUL_BAND.high, 1),
            woodForHeat_kg(heat_kWh * given.wood_share, USEFUL_BAND.low, 1),
          ],
        },
        warnings: [`${EN15544_KWH_PER_KG} kWh of useful heat per kg of wood is assumed.`],
      }),
    };
  },
});
