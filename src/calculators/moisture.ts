/** moisture, split-weight and meter: how much water is in the wood. */
import { z } from "zod";
import { dryFromWet_pct, dryMass_kg, massAtMoisture_kg, moistureFromMasses_pct_wet, wetFromDry_pct } from "../reckoning/moisture.ts";
import {
  METER_CEILING_PCT_DRY,
  METER_UNCERTAINTY_PTS,
  mean,
  speciesCorrected_pct_dry,
  temperatureCorrected_pct_dry,
} from "../reckoning/meter.ts";
import { BadInput, calculator, described, figure } from "./calculator.ts";
import { loadKg, moisturePctDry, moisturePctWet, result, species } from "./keys.ts";
import { oneOf } from "./one-of.ts";
import { meterPoints } from "./reference-data.ts";

export const moisture = calculator({
  name: "moisture",
  about: "Turns moisture between wet and dry basis, from a figure or from a sample weighed fresh and oven-dry.",
  source: "definitions, ISO 18134 and EN 13183-1",
  inputs: {
    moisture_pct_wet: moisturePctWet().optional(),
    moisture_pct_dry: moisturePctDry().optional(),
    fresh_kg: figure("kg", "sample before the oven", { above: 0 }).optional(),
    oven_dry_kg: figure("kg", "the same sample dried at 103 to 105 °C until it loses no more", { above: 0 }).optional(),
    load_kg: loadKg("a load of the same wood").optional(),
  },
  outputs: {
    moisture_pct_wet: result("% wet basis", "water / mass as it lies"),
    moisture_pct_dry: result("% dry basis", "water / oven-dry mass"),
    dry_kg: result("kg", "dry wood in the load").optional(),
    water_kg: result("kg", "water in the load").optional(),
  },
  run: (given) => {
    oneOf("moisture", given, [["moisture_pct_wet"], ["moisture_pct_dry"], ["fresh_kg", "oven_dry_kg"]]);
    const wet = wetBasis(given);
    const dry_kg = given.load_kg === undefined ? undefined : dryMass_kg(given.load_kg, wet);
    return {
      moisture_pct_wet: wet,
      moisture_pct_dry: given.moisture_pct_dry ?? dryFromWet_pct(wet),
      dry_kg,
      water_kg: dry_kg === undefined || given.load_kg === undefined ? undefined : given.load_kg - dry_kg,
    };
  },
});

function wetBasis(given: { moisture_pct_wet?: number; moisture_pct_dry?: number; fresh_kg?: number; oven_dry_kg?: number }): number {
  if (given.moisture_pct_wet !== undefined) return given.moisture_pct_wet;
  if (given.moisture_pct_dry !== undefined) return wetFromDry_pct(given.moisture_pct_dry);
  const fresh = given.fresh_kg ?? 0;
  const dry = given.oven_dry_kg ?? 0;
  if (dry > fresh)
    throw new BadInput(
      `oven_dry_kg is ${dry} kg, more than fresh_kg ${fresh} kg; a sample gets lighter in the oven, so it should be at most ${fresh} kg.`,
    );
  const wet = moistureFromMasses_pct_wet(fresh, dry);
  if (wet > 80)
    throw new BadInput(
      `oven_dry_kg is ${dry} kg of ${fresh} kg fresh, which would be ${wet.toFixed(0)} % water; ` +
        "no wood holds more than about 80 %, so weigh again in the same unit.",
    );
  return wet;
}

export const splitWeight = calculator({
  name: "split-weight",
  about: "Follows one marked split by its weight: dry wood stays, only water leaves.",
  source: "mass balance",
  inputs: {
    first_kg: loadKg("weight of the split when its moisture was known"),
    first_pct_wet: moisturePctWet("its moisture then"),
    now_kg: loadKg("its weight now").optional(),
    target_pct_wet: moisturePctWet("the moisture wanted").optional(),
  },
  outputs: {
    now_pct_wet: result("% wet basis", "its moisture now").optional(),
    target_kg: result("kg", "what it will weigh at the target").optional(),
    water_to_lose_kg: result("kg", "water still to leave, from now (from first when now is not given); 0 when it is there").optional(),
  },
  run: ({ first_kg, first_pct_wet, now_kg, target_pct_wet }) => {
    const dry_kg = dryMass_kg(first_kg, first_pct_wet);
    if (now_kg !== undefined && now_kg < dry_kg) {
      throw new BadInput(
        `now_kg is ${now_kg} kg, less than the ${dry_kg.toFixed(3)} kg of dry wood in the split ` +
          `(${first_kg} kg at ${first_pct_wet} %); it should be at least that, or first_pct_wet was lower.`,
      );
    }
    const target_kg = target_pct_wet === undefined ? undefined : massAtMoisture_kg(dry_kg, target_pct_wet);
    return {
      now_pct_wet: now_kg === undefined ? undefined : moistureFromMasses_pct_wet(now_kg, dry_kg),
      target_kg,
      water_to_lose_kg: target_kg === undefined ? undefined : Math.max(0, (now_kg ?? first_kg) - target_kg),
      warnings: now_kg !== undefined && now_kg > first_kg ? ["The split is heavier than at first: it has taken up water."] : [],
    };
  },
});

const BRING_IN =
  "The wood is below 0 °C: frozen water does not conduct and the reading is not a measurement. " +
  "Bring a piece indoors, split it again and measure the fresh face.";
const OVER =
  'A reading over 30 means only "over 30": free water conducts and the scale no longer measures. ' +
  "Take the wood as too wet to burn (over 23 % wet basis) and dry it on.";

export const meter = calculator({
  name: "meter",
  about:
    "Corrects a pin meter for the temperature of the wood, then for the tree, and gives the wet basis. Measure on a freshly split face.",
  source: "Pfaff and Garrahan 1986 for temperature (from memory), AS/NZS 1080.1 table for species; worth about 2 to 3 points",
  inputs: {
    readings_pct_dry: described(z.array(z.number().min(0).max(200)).min(1).max(200), "readings as shown, dry basis, several pieces", {
      unit: "% dry basis",
    }),
    wood_C: figure("°C", "temperature of the wood itself", { min: -40, max: 60, source: "Pfaff and Garrahan 1986 (from memory)" }),
    species: species().optional(),
  },
  outputs: {
    mean_pct_dry: result("% dry basis", "mean of the readings as shown"),
    corrected_pct_dry: result("% dry basis", "mean after both corrections; left out when over 30").optional(),
    corrected_pct_wet: result("% wet basis", "the same on wet basis, what fuel rules mean").optional(),
  },
  run: ({ readings_pct_dry, wood_C, species: tree }) => {
    const points = tree === undefined ? undefined : meterPoints(tree);
    const correct = (reading: number): number => {
      const at_scale = temperatureCorrected_pct_dry(reading, wood_C);
      return Math.max(0, points ? speciesCorrected_pct_dry(at_scale, points) : at_scale);
    };
    const mean_pct_dry = mean(readings_pct_dry);
    const corrected = correct(mean_pct_dry);
    const worst = Math.max(...readings_pct_dry);
    const over = mean_pct_dry > METER_CEILING_PCT_DRY || corrected > METER_CEILING_PCT_DRY;
    const low = Math.max(0, corrected - METER_UNCERTAINTY_PTS);
    const high = corrected + METER_UNCERTAINTY_PTS;
    return {
      mean_pct_dry,
      corrected_pct_dry: over ? undefined : corrected,
      corrected_pct_wet: over ? undefined : wetFromDry_pct(corrected),
      range: over ? undefined : { corrected_pct_dry: [low, high], corrected_pct_wet: [wetFromDry_pct(low), wetFromDry_pct(high)] },
      warnings: [
        ...(wood_C < 0 ? [BRING_IN] : []),
        ...(over || worst > METER_CEILING_PCT_DRY ? [OVER] : []),
        ...(!over && worst - mean_pct_dry > 4 ? [`The wettest piece reads ${worst}, well above the mean: judge the pile by it.`] : []),
        ...(mean_pct_dry < 6 ? ["Readings below 6 are beyond what a pin meter can tell."] : []),
        ...(tree !== undefined && !points ? [`No published pin meter correction for ${tree}: corrected for temperature only.`] : []),
      ],
    };
  },
});
