import { table } from "../row.ts";

const WOOD_HANDBOOK = "Wood Handbook table 4-1 (green moisture of heartwood and sapwood, dry basis); wet basis by the definition";

export const moisture = [
  ...table({ of: "moisture", source: "definitions of ISO 18134 and EN 13183-1, worked by hand", kind: "computed", abs: 0.01 }, [
    [{ moisture_pct_wet: 10 }, { moisture_pct_dry: 11.111 }],
    [{ moisture_pct_wet: 15 }, { moisture_pct_dry: 17.647 }],
    [{ moisture_pct_wet: 30 }, { moisture_pct_dry: 42.857 }],
    [{ moisture_pct_wet: 60 }, { moisture_pct_dry: 150 }],
    [{ moisture_pct_dry: 140 }, { moisture_pct_wet: 58.333 }],
    [{ fresh_kg: 0.412, oven_dry_kg: 0.3315 }, { moisture_pct_wet: 19.539, moisture_pct_dry: 24.284 }],
    [{ moisture_pct_wet: 20, load_kg: 15 }, { dry_kg: 12, water_kg: 3 }],
  ]),
  ...table({ of: "moisture", source: "boiler planning guide: u = 100 w / (100 - w), its own example", kind: "seen", abs: 0.01 }, [
    [{ moisture_pct_wet: 50 }, { moisture_pct_dry: 100 }],
  ]),
  ...table({ of: "moisture", source: "1. BImSchV (Germany): 25 % of the dry mass explained as 20 % water", kind: "seen", abs: 0.01 }, [
    [{ moisture_pct_dry: 25 }, { moisture_pct_wet: 20 }],
  ]),
  ...table({ of: "moisture", source: "bioenergy page on MCwb and MCdb", kind: "seen", abs: 0.01 }, [
    [{ moisture_pct_wet: 17 }, { moisture_pct_dry: 20.48 }],
    [{ moisture_pct_dry: 20 }, { moisture_pct_wet: 16.67 }],
  ]),
  ...table({ of: "moisture", source: "ISO 17225-5: moisture classes and their dry-basis twins", kind: "memory", abs: 0.6 }, [
    [{ moisture_pct_wet: 20 }, { moisture_pct_dry: 25 }],
    [{ moisture_pct_wet: 25 }, { moisture_pct_dry: 33 }],
    [{ moisture_pct_wet: 35 }, { moisture_pct_dry: 54 }],
  ]),
  ...table({ of: "moisture", source: WOOD_HANDBOOK, kind: "seen", abs: 0.1 }, [
    [{ moisture_pct_dry: 46 }, { moisture_pct_wet: 31.5 }],
    [{ moisture_pct_dry: 80 }, { moisture_pct_wet: 44.4 }],
    [{ moisture_pct_dry: 89 }, { moisture_pct_wet: 47.1 }],
    [{ moisture_pct_dry: 37 }, { moisture_pct_wet: 27.0 }],
    [{ moisture_pct_dry: 249 }, { moisture_pct_wet: 71.3 }],
  ]),
  ...table({ of: "moisture.ts#vapourFromLoad_kg", source: "stoichiometry by hand: 3.0 kg of water and 8.937 x 0.062 x 12 kg from hydrogen", kind: "computed", rel: 0.005 }, [
    [[15, 20], 9.649],
  ]),
  ...table({ of: "moisture.ts#greatestMoisture_pct_dry", source: "Wood Handbook eq. 4-3, printed values", kind: "seen", abs: 3 }, [
    [[0.3], 267],
    [[0.9], 44],
  ]),
  ...table({ of: "moisture.ts#moistureFromDensity_pct_dry", source: "Wood Handbook eq. 4-13, root by scipy.optimize.brentq 1.17.1", kind: "library", abs: 0.05 }, [
    [[0.585, 770], 31.62],
    [[0.37, 460], 20.44],
    [[0.56, 700], 16.9],
  ]),
  ...table({ of: "moisture.ts#density_kg_per_m3", source: "Wood Handbook table 5-3: specific gravity at 12 % times 1.12 (handbook scatter 0.04)", kind: "seen", abs: 45 }, [
    [[0.55, 12], 672],
    [[0.64, 12], 806],
    [[0.56, 12], 717],
    [[0.47, 12], 560],
    [[0.38, 12], 448],
    [[0.54, 12], 661],
  ]),
  ...table({ of: "moisture.ts#logVolume_m3", source: "COFORD leaflet HT21 (formula of the middle diameter), worked by hand", kind: "computed", abs: 0.0001 }, [
    [[0.3, 4], 0.2827],
    [[0.2, 0.33], 0.010367],
  ]),
];

export const splitWeight = [
  ...table({ of: "split-weight", source: "mass balance by hand", kind: "computed", rel: 0.001 }, [
    [{ first_kg: 2.41, first_pct_wet: 42, now_kg: 1.76 }, { now_pct_wet: 20.58 }],
    [{ first_kg: 2.41, first_pct_wet: 42, target_pct_wet: 20 }, { target_kg: 1.7473, water_to_lose_kg: 0.6628 }],
    [{ first_kg: 1000, first_pct_wet: 50, target_pct_wet: 20 }, { target_kg: 625, water_to_lose_kg: 375 }],
    [{ first_kg: 1000, first_pct_wet: 60, target_pct_wet: 30 }, { target_kg: 571.43 }],
    [{ first_kg: 659.45, first_pct_wet: 45, target_pct_wet: 18 }, { water_to_lose_kg: 217.1 }],
    [{ first_kg: 3, first_pct_wet: 50, now_kg: 2, target_pct_wet: 20 }, { now_pct_wet: 25, target_kg: 1.875, water_to_lose_kg: 0.125 }],
    [{ first_kg: 2, first_pct_wet: 20, now_kg: 1.6 }, { now_pct_wet: 0 }, { abs: 1e-6 }],
  ]),
];

const AS_TABLE = "published Australian correction table on the Douglas-fir scale, whole points";
const PFAFF = "Pfaff and Garrahan 1986, formula worked in Python";
const GUM = "the same table, species at readings of 12, 16 and 20";

export const meter = [
  ...table({ of: "meter.ts#temperatureCorrected_pct_dry", source: AS_TABLE, kind: "seen", abs: 1.5 }, [
    [[8, 15], 8], [[8, 25], 7], [[8, 30], 7],
    [[12, 15], 13], [[12, 25], 11], [[12, 30], 11],
    [[16, 15], 17], [[16, 25], 15], [[16, 30], 14],
    [[20, 15], 22], [[20, 25], 19], [[20, 30], 18],
  ]),
  ...table({ of: "meter.ts#temperatureCorrected_pct_dry", source: "a meter's user guide", kind: "seen" }, [
    [[15, 10], 17, { abs: 1 }],
    [[15, 50], 11, { abs: 1.5 }],
  ]),
  ...table({ of: "meter.ts#temperatureCorrected_pct_dry", source: "another maker's leaflet: half a point for 5 °C", kind: "seen", abs: 1.2 }, [
    [[18, 0], 20],
    [[18, 40], 16],
  ]),
  ...table({ of: "meter.ts#temperatureCorrected_pct_dry", source: "a third maker's manual: 1.5 too high at 30 °C", kind: "seen", abs: 0.8 }, [
    [[16, 30], 14.5],
  ]),
  ...table({ of: "meter", source: PFAFF, kind: "memory", abs: 0.05 }, [
    [{ readings_pct_dry: [16], wood_C: -10 }, { corrected_pct_dry: 20.2 }],
    [{ readings_pct_dry: [12], wood_C: 0 }, { corrected_pct_dry: 14.26 }],
    [{ readings_pct_dry: [16], wood_C: 0 }, { corrected_pct_dry: 18.8 }],
    [{ readings_pct_dry: [20], wood_C: 10 }, { corrected_pct_dry: 21.8 }],
    [{ readings_pct_dry: [15], wood_C: 22.72 }, { corrected_pct_dry: 15 }],
    [{ readings_pct_dry: [16], wood_C: 40 }, { corrected_pct_dry: 14.17 }],
  ]),
  ...table({ of: "meter", source: `${AS_TABLE}: river red gum, 16 shown at 15 °C is 16 + 1 + 2`, kind: "seen", abs: 0.5 }, [
    [{ readings_pct_dry: [16], wood_C: 15, species: "river red gum" }, { corrected_pct_dry: 19 }],
    [{ readings_pct_dry: [15, 17], wood_C: 15, species: "Eucalyptus camaldulensis" }, { mean_pct_dry: 16, corrected_pct_dry: 19, corrected_pct_wet: 15.97 }],
  ]),
  ...table({ of: "meter", source: GUM, kind: "seen", abs: 0.35 }, [
    [{ readings_pct_dry: [16], wood_C: 21.5, species: "yellow stringybark" }, { corrected_pct_dry: 18 }],
    [{ readings_pct_dry: [20], wood_C: 21.5, species: "Sydney blue gum" }, { corrected_pct_dry: 19 }],
    [{ readings_pct_dry: [12], wood_C: 21.5, species: "rose gum" }, { corrected_pct_dry: 14 }],
    [{ readings_pct_dry: [16], wood_C: 21.5, species: "blackwood" }, { corrected_pct_dry: 16 }],
  ]),
];
