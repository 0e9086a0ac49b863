/** The worked example in each docstring of the plain reckonings, worked again. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import * as air from "../../src/reckoning/air-moisture.ts";
import * as draught from "../../src/reckoning/draught.ts";
import * as drying from "../../src/reckoning/drying.ts";
import * as flue from "../../src/reckoning/flue-cooling.ts";
import * as fuel from "../../src/reckoning/fuel.ts";
import * as house from "../../src/reckoning/house-heat.ts";
import * as load from "../../src/reckoning/load.ts";
import * as meter from "../../src/reckoning/meter.ts";
import * as moisture from "../../src/reckoning/moisture.ts";
import * as stack from "../../src/reckoning/stack.ts";

/** 20 °C and an equilibrium of 14 % all year. */
const STEADY = drying.dryingYear({ mean_C: Array(12).fill(20), rh_pct: Array(12).fill(73.53) });

/** Function, what the docstring's example gives, what it says, and to how much. */
const EXAMPLES: readonly (readonly [string, number | undefined, number, number])[] = [
  ["moisture.wetFromDry_pct", moisture.wetFromDry_pct(25), 20, 1e-9],
  ["moisture.dryFromWet_pct", moisture.dryFromWet_pct(50), 100, 1e-9],
  ["moisture.moistureFromMasses_pct_wet", moisture.moistureFromMasses_pct_wet(0.412, 0.3315), 19.54, 0.005],
  ["moisture.dryMass_kg", moisture.dryMass_kg(15, 20), 12, 1e-9],
  ["moisture.massAtMoisture_kg", moisture.massAtMoisture_kg(1.3978, 20), 1.7473, 6e-5],
  ["moisture.vapourFromLoad_kg", moisture.vapourFromLoad_kg(15, 20), 9.65, 0.005],
  ["moisture.greatestMoisture_pct_dry", moisture.greatestMoisture_pct_dry(0.37), 205, 0.5],
  ["moisture.density_kg_per_m3", moisture.density_kg_per_m3(0.585, 31.62), 770, 0.05],
  ["moisture.moistureFromDensity_pct_dry", moisture.moistureFromDensity_pct_dry(0.37, 460), 20.44, 0.01],
  ["moisture.logVolume_m3", moisture.logVolume_m3(0.3, 4), 0.2827, 5e-5],
  ["meter.temperatureCorrected_pct_dry", meter.temperatureCorrected_pct_dry(16, 0), 18.8, 0.05],
  ["meter.speciesCorrected_pct_dry", meter.speciesCorrected_pct_dry(16, [2, 2, 2]), 18, 1e-9],
  ["fuel.ncv_MJ_per_kg", fuel.ncv_MJ_per_kg(18.9, 20), 14.631, 5e-4],
  ["fuel.ncv_kWh_per_kg", fuel.ncv_kWh_per_kg(19.1, 15), 4.408, 5e-4],
  ["fuel.netFromGross_MJ_per_kg", fuel.netFromGross_MJ_per_kg(20.25, 6.2, 44), 18.899, 5e-4],
  ["fuel.loadEnergy_kWh", fuel.loadEnergy_kWh(15, 4.16), 62.4, 1e-9],
  ["fuel.efficiencyFromFlueGas", fuel.efficiencyFromFlueGas(240), 0.785, 5e-4],
  ["load.ratedLoad_kg", load.ratedLoad_kg(4, 12), 14.77, 0.005],
  ["load.nominalOutput_kW", load.nominalOutput_kW(40, 12), 10.83, 0.005],
  ["load.smallestLoad_kg", load.smallestLoad_kg(14.77), 7.38, 0.006],
  ["load.guessedLoad_kg", load.guessedLoad_kg({ masonry_kg: 2500, half_firebox_kg: 14 }), 12.5, 1e-9],
  ["stack.solidShare", stack.solidShare(stack.MEASURED_SHARES.hardwood, 0.33), 0.62, 1e-9],
  ["stack.cordsFromStacked", stack.cordsFromStacked(1), 0.2759, 5e-5],
  ["stack.stackVolume_m3", stack.stackVolume_m3(2.4384, 1.2192, 0.4064), 1.2082, 5e-5],
  ["stack.solidMass_kg", stack.solidMass_kg(0.62, 0.585, 20), 453.4, 0.05],
  ["air-moisture.equilibriumMoisture_pct_dry", air.equilibriumMoisture_pct_dry(20, 65), 12.0, 0.05],
  ["air-moisture.humidityForMoisture_pct", air.humidityForMoisture_pct(20, 12), 65, 0.3],
  ["air-moisture.saturationPressure_Pa", air.saturationPressure_Pa(20), 2338.8, 0.05],
  ["air-moisture.saturationTemperature_C", air.saturationTemperature_C(8877), 43.5, 0.05],
  ["air-moisture.dewPoint_C", air.dewPoint_C(20, 50), 9.27, 0.005],
  ["draught.pressureAtAltitude_Pa", draught.pressureAtAltitude_Pa(1000), 86185, 0.5],
  ["draught.gasDensity_kg_per_m3", draught.gasDensity_kg_per_m3(15, 97000, 288), 1.16885, 5e-6],
  ["draught.staticDraught_Pa", draught.staticDraught_Pa(6, draught.gasDensity_kg_per_m3(15, 97000, 288), draught.gasDensity_kg_per_m3(150, 97000, 288)), 21.95, 0.005],
  ["draught.frictionFactor", draught.frictionFactor(10000, 0.0075), 0.0405, 5e-5],
  ["draught.resistance_Pa", draught.resistance_Pa({ factor: 0.040887, length_m: 6, diameter_m: 0.18 }, 0.7721, 1.7826), 1.67, 0.005],
  ["draught.draughtLeft_Pa", draught.draughtLeft_Pa(23.4, 2.5, 0), 20.9, 1e-9],
  ["flue-cooling.coolingCoefficient", flue.coolingCoefficient({ diameter_m: 0.18, length_m: 6, k_W_per_m2K: 2 }, 0.035), 0.1846, 5e-5],
  ["flue-cooling.gasTemperatures_C", flue.gasTemperatures_C(180, 15, 0.184649).mean_C, 165.7, 0.05],
  ["flue-cooling.innerWall_C", flue.innerWall_C(78, 0, 2.75, 5), 35.1, 1e-9],
  ["flue-cooling.co2_pct_dry", flue.co2_pct_dry(2), 10.1, 0.05],
  ["flue-cooling.waterVapour_pct", flue.waterVapour_pct(2, 17, 0), 9.15, 0.005],
  ["flue-cooling.flueDewPoint_C", flue.flueDewPoint_C(2.95, 17, 97000, 0), 36.7, 0.05],
  ["house-heat.transmission_W_per_K", house.transmission_W_per_K([[160, 0.4], [20, 1.4], [100, 0.2], [60, 0.4]].map(([area_m2 = 0, u_W_per_m2K = 0]) => ({ area_m2, u_W_per_m2K }))), 136, 1e-9],
  ["house-heat.ventilation_W_per_K", house.ventilation_W_per_K(250, 0.5), 42.5, 1e-9],
  ["house-heat.heatNeeded_kWh", house.heatNeeded_kWh(90, 20, -5, 24, 300), 46.8, 1e-9],
  ["house-heat.seasonHeat_kWh", house.seasonHeat_kWh(200, 3000), 14400, 1e-9],
  ["house-heat.woodForHeat_kg", house.woodForHeat_kg(46.8, 4.15, 0.8), 14.1, 0.005],
  ["house-heat.degreeDays_Kd", house.degreeDays_Kd([-3, 1, 7, 12, 16, 19, 14.9, 15.1], 18.3), 65.1, 1e-6],
  ["house-heat.uValue_W_per_m2K", house.uValue_W_per_m2K([{ thickness_m: 0.24, k_W_per_mK: 0.8 }, { thickness_m: 0.015, k_W_per_mK: 0.8 }]), 2.046, 5e-4],
  ["drying.stackRate_per_d", drying.stackRate_per_d(0.016, { split_mm: 50, seasoning_class: 2, bark: true }), 0.0453, 5e-5],
  ["drying.dryingCourse_pct_dry", drying.dryingCourse_pct_dry(STEADY, { start_pct_dry: 100, first_day: 0, k20_per_d: 0.016 }, 180)[180], 18.83, 0.05],
  ["drying.daysToTarget", drying.daysToTarget(STEADY, { start_pct_dry: 100, first_day: 0, k20_per_d: 0.016 }, 25), 129, 0],
  ["drying.boardDrying_d", drying.boardDrying_d(1, 17.54, 80, 25, 12), 20.1, 0.05],
];

describe("worked examples", () => {
  it.each(EXAMPLES)("%s", (_name, actual, said, within) => {
    expect(Math.abs((actual ?? Number.NaN) - said)).toBeLessThanOrEqual(within);
  });

  it("covers every docstring that gives one, and the docstring says the same figure", () => {
    for (const file of new Set(EXAMPLES.map(([name]) => name.split(".")[0] ?? ""))) {
      const source = readFileSync(new URL(`../../src/reckoning/${file}.ts`, import.meta.url), "utf8");
      for (const [, doc = "", name = ""] of source.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*?)\*\/\nexport (?:const|function) (\w+)/g)) {
        const worked = doc.split("Worked example")[1];
        if (worked === undefined) continue;
        const example = EXAMPLES.find(([of]) => of === `${file}.${name}`);
        expect(example, `${file}.${name}`).toBeDefined();
        expect(worked.match(/-?\d+(\.\d+)?/g)?.map(Number), `${file}.${name}`).toContain(example?.[2]);
      }
    }
  });
});
