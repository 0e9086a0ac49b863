import { dewPoint_C, equilibriumMoisture_pct_dry, humidityForMoisture_pct } from "../reckoning/air-moisture.ts";
import { dryFromWet_pct, wetFromDry_pct } from "../reckoning/moisture.ts";
import { calculator, figure } from "./calculator.ts";
import { moisturePctWet, result, signed } from "./keys.ts";
import { oneOf } from "./one-of.ts";

const SPECIES_SPREAD_PTS = 1;

export const airMoisture = calculator({
  name: "air-moisture",
  about: "The moisture sheltered wood ends at in steady air, and the dew point; or the humidity that holds wood at a moisture.",
  source: "Wood Handbook FPL-GTR-282 eq. 4-5 (Hailwood and Horrobin); ASHRAE Handbook Fundamentals 2017 ch. 1",
  inputs: {
    air_C: figure("°C", "temperature of the air; the fit is extrapolated below 0", { min: -40, max: 100 }),
    rh_pct: figure("%", "relative humidity", { min: 0, max: 100 }).optional(),
    target_pct_wet: moisturePctWet("the moisture the wood should end at").optional(),
  },
  outputs: {
    emc_pct_dry: result("% dry basis", "where wood ends in this air").optional(),
    emc_pct_wet: result("% wet basis", "the same on wet basis").optional(),
    dew_point_C: signed("°C", "where this air begins to condense, frost point below 0").optional(),
    rh_pct: result("%", "humidity that holds the target; 100 when any air dries sheltered wood below it").optional(),
  },
  run: (given) => {
    oneOf("air-moisture", given, [["rh_pct"], ["target_pct_wet"]]);
    const { air_C, rh_pct, target_pct_wet } = given;
    const warnings = air_C < 0 ? ["Below 0 °C the equation is extrapolated, and drying all but stands still."] : [];
    if (target_pct_wet !== undefined) {
      const needed = humidityForMoisture_pct(air_C, dryFromWet_pct(target_pct_wet));
      return {
        rh_pct: needed,
        warnings: needed >= 100 ? [...warnings, "Any air, however damp, dries sheltered wood below that."] : warnings,
      };
    }
    const rh = rh_pct ?? 0;
    const dry = equilibriumMoisture_pct_dry(air_C, rh);
    const band: [number, number] = [Math.max(0, dry - SPECIES_SPREAD_PTS), dry + SPECIES_SPREAD_PTS];
    return {
      emc_pct_dry: dry,
      emc_pct_wet: wetFromDry_pct(dry),
      dew_point_C: rh > 0 ? dewPoint_C(air_C, rh) : undefined,
      range: { emc_pct_dry: band, emc_pct_wet: [wetFromDry_pct(band[0]), wetFromDry_pct(band[1])] },
      warnings: rh > 97 ? [...warnings, "Above 97 % wood also takes up liquid water: this is the least it can hold."] : warnings,
    };
  },
});
