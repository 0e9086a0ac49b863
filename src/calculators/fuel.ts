/** fuel and rated-load: the heat in the wood, and how much of it a heater is built for. */
import { MASONRY_HEATER_EFFICIENCY, NCV_DRY_MJ_PER_KG, loadEnergy_kWh, ncv_kWh_per_kg } from "../reckoning/fuel.ts";
import { EN15544_SCOPE, nominalOutput_kW, ratedLoad_kg, smallestLoad_kg } from "../reckoning/load.ts";
import { dryMass_kg, wetFromDry_pct } from "../reckoning/moisture.ts";
import { calculator, figure } from "./calculator.ts";
import { efficiency, loadKg, moisturePctDry, moisturePctWet, ncvKWhPerKg, result, species } from "./keys.ts";
import { oneOf, together } from "./one-of.ts";
import { findWood, woodWarnings } from "./reference-data.ts";

export const fuel = calculator({
  name: "fuel",
  about: "Heat of a load on the net calorific value, and what of it reaches the room.",
  source: "ISO 18125; ISO 17225-1 annex D",
  inputs: {
    load_kg: loadKg("weight of the wood as it is burned"),
    moisture_pct_wet: moisturePctWet().optional(),
    moisture_pct_dry: moisturePctDry().optional(),
    ncv_dry_MJ_per_kg: figure("MJ/kg", "net heat of the oven-dry wood; without it, from the species, else 19.0", {
      min: 15,
      max: 23,
      source: "NIBIO: softwood 19.1, hardwood 18.9; band 18.4 to 19.8 (from memory)",
    }).optional(),
    species: species().optional(),
    efficiency: efficiency(MASONRY_HEATER_EFFICIENCY.typical).optional(),
  },
  outputs: {
    ncv_kWh_per_kg: result("kWh/kg", "net heat of the wood as it is burned"),
    energy_kWh: result("kWh", "net heat of the load"),
    useful_kWh: result("kWh", "what of it reaches the room"),
    dry_kg: result("kg", "dry wood in the load"),
    water_kg: result("kg", "water in the load (burning makes about half a kilogram more per kg of dry wood)"),
  },
  run: (given) => {
    oneOf("fuel", given, [["moisture_pct_wet"], ["moisture_pct_dry"]]);
    const { load_kg } = given;
    const wet = given.moisture_pct_wet ?? wetFromDry_pct(given.moisture_pct_dry ?? 0);
    const wood = given.species === undefined ? undefined : findWood(given.species);
    const known = given.ncv_dry_MJ_per_kg;
    const heat = known === undefined ? NCV_DRY_MJ_PER_KG[wood?.kind ?? "unknown"] : { typical: known, low: known, high: known };
    const share =
      given.efficiency === undefined
        ? MASONRY_HEATER_EFFICIENCY
        : { typical: given.efficiency, low: given.efficiency, high: given.efficiency };
    const at = (end: "typical" | "low" | "high"): { ncv: number; energy_kWh: number; useful_kWh: number } => {
      const ncv = Math.max(0, ncv_kWh_per_kg(heat[end], wet));
      const energy_kWh = loadEnergy_kWh(load_kg, ncv);
      return { ncv, energy_kWh, useful_kWh: energy_kWh * share[end] };
    };
    const [typical, low, high] = [at("typical"), at("low"), at("high")];
    const dry_kg = dryMass_kg(load_kg, wet);
    return {
      ncv_kWh_per_kg: typical.ncv,
      energy_kWh: typical.energy_kWh,
      useful_kWh: typical.useful_kWh,
      dry_kg,
      water_kg: load_kg - dry_kg,
      range: {
        ...(known === undefined && { ncv_kWh_per_kg: [low.ncv, high.ncv], energy_kWh: [low.energy_kWh, high.energy_kWh] }),
        ...((known === undefined || given.efficiency === undefined) && { useful_kWh: [low.useful_kWh, high.useful_kWh] }),
      },
      warnings: [
        ...woodWarnings(wood),
        ...(given.efficiency === undefined ? [`An efficiency of ${share.typical} is assumed.`] : []),
        ...(wet > 25 ? [`${wet.toFixed(0)} % wet basis is too wet to burn clean; most fuel rules ask for 20 % or less.`] : []),
      ],
    };
  },
});

export const ratedLoad = calculator({
  name: "rated-load",
  about:
    "Largest and smallest load of a heater built to EN 15544, or its output from its load. The builder's sheet or plate comes first.",
  source: "EN 15544, 4.2 (formulas from memory; 3.25 = 4.16 kWh/kg times an efficiency of 0.78)",
  inputs: {
    nominal_output_kW: figure("kW", "mean output over the heating time", { above: 0, max: 100 }).optional(),
    max_load_kg: figure("kg", "largest load of one fire", { above: 0, max: 200 }).optional(),
    nominal_heating_time_h: figure("h", "hours one load heats; the standard covers 8 to 24", {
      above: 0,
      max: 72,
      source: "EN 15544 scope",
    }),
    efficiency: efficiency().optional(),
    ncv_kWh_per_kg: ncvKWhPerKg().optional(),
  },
  outputs: {
    max_load_kg: result("kg", "largest load of one fire"),
    min_load_kg: result("kg", "smallest load that still burns clean: half the largest"),
    nominal_output_kW: result("kW", "mean output over the heating time"),
  },
  run: (given) => {
    oneOf("rated-load", given, [["nominal_output_kW"], ["max_load_kg"]]);
    const useful = together(given, ["efficiency", "ncv_kWh_per_kg"]) ? (given.efficiency ?? 0) * (given.ncv_kWh_per_kg ?? 0) : undefined;
    const hours = given.nominal_heating_time_h;
    const max_load_kg = given.max_load_kg ?? ratedLoad_kg(given.nominal_output_kW ?? 0, hours, useful);
    const [least, most] = EN15544_SCOPE.load_kg;
    const [shortest, longest] = EN15544_SCOPE.heating_time_h;
    return {
      max_load_kg,
      min_load_kg: smallestLoad_kg(max_load_kg),
      nominal_output_kW: given.nominal_output_kW ?? nominalOutput_kW(max_load_kg, hours, useful),
      warnings: [
        ...(max_load_kg < least || max_load_kg > most
          ? [
              `${max_load_kg.toFixed(1)} kg is outside EN 15544 (${least} to ${most} kg): trust the builder's sheet only.`,
            ]
          : []),
        ...(hours < shortest || hours > longest
          ? [`A heating time of ${hours} h is outside EN 15544, which covers ${shortest} to ${longest} h.`]
          : []),
      ],
    };
  },
});
