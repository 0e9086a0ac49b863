import {
  DESIGN_PRESSURE_PA,
  R_AIR,
  R_WOOD_GAS,
  STANDARD_PRESSURE_PA,
  gasDensity_kg_per_m3,
  pressureAtAltitude_Pa,
  staticDraught_Pa,
} from "../reckoning/draught.ts";
import { BadInput, calculator, figure } from "./calculator.ts";
import { result, signed } from "./keys.ts";

const PUSHES_DOWN =
  "The flue pushes down or stands still: smoke and carbon monoxide would come into the room. " +
  "Do not light until a warmed flue is seen to draw upward.";

export const draught = calculator({
  name: "draught",
  about:
    "Static draught of a flue, before friction, wind and extractors take from it. Negative means the flue pushes down.",
  source: "EN 13384-1, 5.7 and 5.10.1 (formulas from memory, held against published stack-effect figures)",
  inputs: {
    flue_height_m: figure("m", "from where the gas enters the flue to its mouth", { above: 0, max: 100 }),
    outside_C: figure("°C", "outside air", { min: -60, max: 60 }),
    flue_mean_C: figure("°C", "mean temperature in the flue, not that at the inlet", { min: -60, max: 1000 }),
    altitude_m: figure("m", "height above sea level; pressure then after EN 13384-1, 97000 Pa at 0 m; 0 when neither is given", {
      min: -450,
      max: 5000,
      source: "EN 13384-1, 5.7.2 (from memory)",
    }).optional(),
    pressure_Pa: figure("Pa", "air pressure at the house, not reduced to sea level", { min: 50000, max: 110000 }).optional(),
    R_air_J_per_kgK: figure("J/kgK", "gas constant of air; dry air is 287", { min: 270, max: 300, source: "EN 13384-1, 5.7.3" }).default(
      R_AIR,
    ),
    R_flue_J_per_kgK: figure(
      "J/kgK",
      "gas constant of the flue gas: 288 for air in a cold flue and the standard's round figure, 286.5 for wood gas",
      {
        min: 270,
        max: 330,
        source: "EN 13384-1; wood gas from an element balance",
      },
    ).default(R_AIR),
  },
  outputs: {
    draught_Pa: signed("Pa", "static draught, before friction and wind"),
    air_density_kg_per_m3: result("kg/m3", "outside air"),
    flue_density_kg_per_m3: result("kg/m3", "gas in the flue"),
  },
  run: (given) => {
    if (given.altitude_m !== undefined && given.pressure_Pa !== undefined) {
      throw new BadInput(
        `altitude_m ${given.altitude_m} and pressure_Pa ${given.pressure_Pa} would count altitude twice; give only one.`,
      );
    }
    const pressure = given.pressure_Pa ?? pressureAtAltitude_Pa(given.altitude_m ?? 0);
    const at = (pressure_Pa: number, R_flue: number): { air: number; flue: number; draught: number } => {
      const air = gasDensity_kg_per_m3(given.outside_C, pressure_Pa, given.R_air_J_per_kgK);
      const flue = gasDensity_kg_per_m3(given.flue_mean_C, pressure_Pa, R_flue);
      return { air, flue, draught: staticDraught_Pa(given.flue_height_m, air, flue) };
    };
    const { air, flue, draught: draught_Pa } = at(pressure, given.R_flue_J_per_kgK);
    const finest = given.pressure_Pa === undefined ? (pressure * STANDARD_PRESSURE_PA) / DESIGN_PRESSURE_PA : pressure;
    const ends = [
      at(finest, given.R_flue_J_per_kgK).draught,
      at(pressure, Math.min(given.R_flue_J_per_kgK, R_WOOD_GAS)).draught,
      draught_Pa,
    ];
    return {
      draught_Pa,
      air_density_kg_per_m3: air,
      flue_density_kg_per_m3: flue,
      range: { draught_Pa: [Math.min(...ends), Math.max(...ends)] },
      warnings: [
        ...(draught_Pa <= 0
          ? [
              PUSHES_DOWN,
            ]
          : []),
        ...(draught_Pa > 0 && draught_Pa < 3
          ? ["Almost no draught: the flue must be warmed first, and seen to draw upward before the fire is lit."]
          : []),
      ],
    };
  },
});
