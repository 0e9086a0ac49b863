import { table } from "../row.ts";

const EN = "EN 13384-1 formulas recalled, worked in Python";
const COOLING = "exact integral, friction by fluids 1.3.1; Python";

export const draught = [
  ...table({ of: "draught", source: "encyclopaedia entry on the stack effect: 0.0342 p h (1/To - 1/Ti), its own form, 6 m, 15 and 150 °C", kind: "seen", abs: 0.05 }, [
    [{ flue_height_m: 6, outside_C: 15, flue_mean_C: 150, pressure_Pa: 101325, R_air_J_per_kgK: 287.06, R_flue_J_per_kgK: 287.06 }, { draught_Pa: 23.02 }],
  ]),
  ...table({ of: "draught", source: "US chimney handbooks: 0.52 p h (1/To - 1/Tg) in inches of water, psi, ft, Rankine; 100 ft, 60 and 500 °F is 0.674 in", kind: "memory", rel: 0.01 }, [
    [{ flue_height_m: 30.48, outside_C: 15.556, flue_mean_C: 260, pressure_Pa: 101325, R_air_J_per_kgK: 287, R_flue_J_per_kgK: 287 }, { draught_Pa: 167.9 }],
  ]),
  ...table({ of: "draught", source: `${EN}, 97000 Pa, R 288 both`, kind: "computed", abs: 0.01 }, [
    [{ flue_height_m: 6, outside_C: -15, flue_mean_C: 150 }, { draught_Pa: 29.94 }],
    [{ flue_height_m: 6, outside_C: 0, flue_mean_C: 150 }, { draught_Pa: 25.73, air_density_kg_per_m3: 1.23304 }],
    [{ flue_height_m: 6, outside_C: 15, flue_mean_C: 150 }, { draught_Pa: 21.95, air_density_kg_per_m3: 1.16885, flue_density_kg_per_m3: 0.79595 }],
    [{ flue_height_m: 6, outside_C: 25, flue_mean_C: 20 }, { draught_Pa: -1.13 }],
    [{ flue_height_m: 6, outside_C: 0, flue_mean_C: 15 }, { draught_Pa: 3.78 }],
    [{ flue_height_m: 10, outside_C: 15, flue_mean_C: 150 }, { draught_Pa: 36.58 }],
    [{ flue_height_m: 6, outside_C: 15, flue_mean_C: 150, altitude_m: 1000 }, { draught_Pa: 19.5 }],
    [{ flue_height_m: 6, outside_C: 15, flue_mean_C: 150, altitude_m: 2000 }, { draught_Pa: 17.33 }],
    [{ flue_height_m: 6, outside_C: -10, flue_mean_C: 250 }, { draught_Pa: 37.44 }],
  ]),
  ...table({ of: "draught", source: `${EN}, wood gas R 286.5`, kind: "computed", abs: 0.01 }, [
    [{ flue_height_m: 6, outside_C: 15, flue_mean_C: 150, R_flue_J_per_kgK: 286.5 }, { draught_Pa: 21.7 }],
    [{ flue_height_m: 4, outside_C: 15, flue_mean_C: 150, R_flue_J_per_kgK: 286.5 }, { draught_Pa: 14.47 }],
    [{ flue_height_m: 6, outside_C: -10, flue_mean_C: 250, R_flue_J_per_kgK: 286.5 }, { draught_Pa: 37.24 }],
  ]),
  ...table({ of: "draught", source: `${EN}, 101325 Pa`, kind: "computed", abs: 0.01 }, [
    [{ flue_height_m: 6, outside_C: 15, flue_mean_C: 150, pressure_Pa: 101325 }, { draught_Pa: 22.93 }],
    [{ flue_height_m: 6, outside_C: 25, flue_mean_C: 20, pressure_Pa: 101325 }, { draught_Pa: -1.18 }],
  ]),
  ...table({ of: "draught", source: "CoolProp 8.0.0, density of dry air at 101325 Pa", kind: "library", rel: 0.001 }, [
    [{ flue_height_m: 1, outside_C: -20, flue_mean_C: 20, pressure_Pa: 101325, R_air_J_per_kgK: 287.05 }, { air_density_kg_per_m3: 1.39565 }],
    [{ flue_height_m: 1, outside_C: 0, flue_mean_C: 20, pressure_Pa: 101325, R_air_J_per_kgK: 287.05 }, { air_density_kg_per_m3: 1.29307 }],
    [{ flue_height_m: 1, outside_C: 30, flue_mean_C: 20, pressure_Pa: 101325, R_air_J_per_kgK: 287.05 }, { air_density_kg_per_m3: 1.16473 }],
  ]),
  ...table({ of: "draught.ts#pressureAtAltitude_Pa", source: EN, kind: "computed", abs: 0.5 }, [
    [[500], 91432.9], [[1000], 86185.3], [[2000], 76576.4],
  ]),
  ...table({ of: "draught.ts#frictionFactor", source: "fluids 1.3.1, Colebrook with 3.7 where EN 13384-1 has 3.71", kind: "library", rel: 0.002 }, [
    [[10000, 0.0075], 0.0404888], [[100000, 0.005], 0.0313064], [[3000, 0.005], 0.0478412],
  ]),
  ...table({ of: "draught.ts#resistance_Pa", source: COOLING, kind: "library", rel: 0.002 }, [
    [[{ factor: 0.040887, length_m: 6, diameter_m: 0.18 }, 0.77179, 1.7826], 1.671],
  ]),
  ...table({ of: "draught.ts#resistance_Pa", source: "EN 15544: a right angle counts 1.2; 1.8 m/s at 0.68 kg/m3 by hand", kind: "memory", abs: 0.005 }, [
    [[{ factor: 0, length_m: 1, diameter_m: 0.18, bends: 1.2 }, 0.68, 1.8], 1.32],
  ]),
  ...table({ of: "draught.ts#draughtLeft_Pa", source: "EN 13384-1, 5.2.1, by hand", kind: "memory", abs: 0.001 }, [
    [[23.4, 2.5, 0], 20.9], [[23.4, 2.5, 25], -4.1],
  ]),
];

export const flueCooling = [
  ...table({ of: "flue-cooling.ts#coolingCoefficient", source: COOLING, kind: "computed", abs: 1e-5 }, [
    [[{ diameter_m: 0.18, length_m: 6, k_W_per_m2K: 2 }, 0.035], 0.184649],
    [[{ diameter_m: 0.2, length_m: 8, k_W_per_m2K: 5 }, 0.01], 2.39359],
  ]),
  ...table({ of: "flue-cooling.ts#gasTemperatures_C", source: COOLING, kind: "computed", abs: 0.02 }, [
    [[180, 15, 0.184649], { mouth_C: 152.18, mean_C: 165.66 }],
    [[180, -10, 0.76937], { mouth_C: 78.03, mean_C: 122.54 }],
    [[90, 0, 2.39359], { mouth_C: 8.22, mean_C: 34.17 }],
  ]),
  ...table({ of: "flue-cooling.ts#innerWall_C", source: "EN 13384-1, 5.8.4, by hand", kind: "memory", abs: 0.05 }, [
    [[78, 0, 2.75, 5], 35.1],
  ]),
  ...table({ of: "flue-cooling.ts#co2_pct_dry", source: "element balance of wood in Python", kind: "computed", abs: 0.01 }, [
    [[1], 20.309], [[2], 10.115], [[2.95], 6.849], [[4], 5.047],
  ]),
  ...table({ of: "flue-cooling.ts#waterVapour_pct", source: "element balance of wood in Python, dry air", kind: "computed", abs: 0.01 }, [
    [[2, 17, 0], 9.152], [[2.95, 25, 0], 7.399], [[2, 35, 0], 12.706], [[2, 17], 10.252],
  ]),
  ...table({ of: "flue-cooling.ts#flueDewPoint_C", source: "PsychroLib 2.5.0 on the element balance", kind: "library", abs: 0.05 }, [
    [[2, 17, 97000, 0], 43.5], [[2.95, 17, 101325, 0], 37.55], [[2, 35, 97000, 0], 49.96], [[2.95, 20, 97000], 40.59],
  ]),
];
