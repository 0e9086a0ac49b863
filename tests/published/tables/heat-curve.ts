/** What the heater model is made of, and the whole of it against an independent solver. */
import { table } from "../row.ts";

const SERIES = "Carslaw and Jaeger, Conduction of Heat in Solids: Fourier series and erfc solutions, summed by scipy 1.17.1";
const FACES: readonly (readonly [face_C: number, convection: number, radiation: number])[] = [
  [30, 3.0948, 5.4118],
  [40, 3.8073, 5.6932],
  [50, 4.2826, 5.9873],
  [60, 4.6431, 6.2942],
  [80, 5.1761, 6.95],
  [100, 5.56, 7.66],
];

export const heatCurve = [
  ...table({ of: "heat-curve@fire", abs: 0.02, source: "the equations written out again for scipy 1.17.1, solve_ivp LSODA, rtol 1e-10 (tests/bench/lsoda.py): mean face", kind: "library" }, [
    [["facing_C", 1], 21.242],
    [["facing_C", 2], 38.352],
    [["facing_C", 4], 62.029],
    [["facing_C", 6], 62.522],
    [["facing_C", 12], 49.811],
    [["facing_C", 24], 31.81],
    [["facing_C", 48], 14.758],
  ]),
  ...table({ of: "heat-curve@fire", abs: 0.02, source: "the same: room air", kind: "library" }, [
    [["room_C", 3], 17.073],
    [["room_C", 12], 17.139],
    [["room_C", 36], 10.378],
  ]),
  ...table(
    { of: "surface.ts#convection_W_per_m2K", rel: 0.02, source: "Churchill and Chu by ht 1.2.0 with air of CoolProp 8.0.0, 1.5 m high, room 20 °C", kind: "library" },
    FACES.map(([face_C, convection]) => [[face_C, 20, 1.5], convection] as const),
  ),
  ...table(
    { of: "surface.ts#radiation_W_per_m2K", rel: 0.005, source: "ht 1.2.0, emissivity 0.9, room 20 °C", kind: "library" },
    FACES.map(([face_C, , radiation]) => [[face_C, 20, 0.9], radiation] as const),
  ),
  ...table({ of: "surface.ts#radiation_W_per_m2K", abs: 0.005, source: "ISO 6946 annex C: black surfaces at 20 °C", kind: "memory" }, [[[20, 20, 1], 5.714]]),
  ...table({ of: "heat-curve@wall", abs: 0.3, source: `${SERIES}; slab 0.12 m, one face adiabatic, h 10, 300 to 20 °C`, kind: "computed" }, [
    [["cooling", 0.5, 0.12], 228.4],
    [["cooling", 1, 0.12], 207.07],
    [["cooling", 2, 0.12], 181.91],
    [["cooling", 4, 0.12], 149.11],
    [["cooling", 8, 0.12], 103.66],
    [["cooling", 12, 0.12], 74.23],
    [["cooling", 24, 0.12], 34.78],
    [["cooling", 2, 0], 272.2],
    [["cooling", 8, 0], 152.54],
  ]),
  ...table({ of: "heat-curve@wall", rel: 0.005, source: `${SERIES}; 3000 W/m2 into a half space`, kind: "computed" }, [
    [["flux", 0.5, 0], 135.77],
    [["flux", 1, 0], 183.72],
    [["flux", 2, 0], 251.54],
    [["flux", 2, 0.05], 122.04],
    [["flux", 2, 0.1], 56.14],
  ]),
  ...table({ of: "heat-curve@wall", rel: 0.005, source: `${SERIES}; gas of 700 °C, h 35, on a half space`, kind: "computed" }, [
    [["gas", 0.5, 0], 442.14],
    [["gas", 1, 0], 501],
    [["gas", 2, 0], 551.09],
    [["gas", 1, 0.05], 191.08],
  ]),
  ...table({ of: "heat-curve@layers", rel: 1e-6, source: "ISO 6946: resistances of layers and joints add up", kind: "computed" }, [[[0.06, 0.05, 0.11], 0.06 / 1.1 + 0.05 + 0.11 / 0.78]]),
  ...table({ of: "heat-curve@cylinder", rel: 1e-4, source: "Incropera 3.3: 2 pi k / ln(r2/r1), k 1.2, 0.1 to 0.3 m", kind: "computed" }, [[[0.1, 0.3, 1.2], (2 * Math.PI * 1.2) / Math.log(3)]]),
  ...table({ of: "heat-curve@burn", rel: 1e-3, source: "ISO 18125: 2.443 MJ/kg for 3.4 kg of moisture and 0.545 kg/kg of hydrogen's water in 16.6 kg dry", kind: "computed" }, [["latent_J", 2.443e6 * (3.4 + 0.545 * 16.6)]]),
  ...table({ of: "heat-curve@burn", rel: 1e-3, source: "EN 14961-1 annex D: q (1 - M/100) - 0.02443 M with q 19.0 MJ/kg, M 17, 20 kg", kind: "computed" }, [["net_J", 20e6 * (19 * 0.83 - 0.02443 * 17)]]),
  ...table({ of: "heat-curve@useful", rel: 0.12, source: "EN 15544, 4.2.1: 3.25 kWh of useful heat per kg", kind: "memory" }, [
    [{ load_kg: 20, masonry_kg: 2750 }, 3.25],
    [{ load_kg: 12, masonry_kg: 1700 }, 3.25],
    [{ load_kg: 32, masonry_kg: 4200 }, 3.25],
  ]),
  ...table({ of: "heat-curve@heater", rel: 1e-4, source: "EN 15544, 4.3.1: firebox surface 900 cm2 per kg of largest load, door counted in", kind: "memory" }, [
    [["firebox", 20], 1.8],
    [["firebox", 14.769], 1.3292],
  ]),
  ...table({ of: "heater-room.ts#dayShape", abs: 1e-9, source: "ASHRAE's daily profile: coldest at 5 h, warmest at 15 h, cosines between", kind: "memory" }, [
    [[5], 0],
    [[15], 1],
    [[10], 0.5],
    [[22], 0.5],
  ]),
  ...table({ of: "heat-curve@house", rel: 1e-6, source: "EN ISO 13790 table 12, medium building: 165 kJ/m2K", kind: "memory" }, [[["heat_capacity_kWh_per_K", 120], (165 * 120) / 3600]]),
];

/** A whole plan against the heat that must be replaced. It keeps the room above 20 °C and fills the masonry, so it needs somewhat more. */
export const firePlan = table(
  { of: "fire-plan@per-day", rel: 0.18, source: "steady balance at 20 °C with EN 15544's 3.25 kWh/kg: H (20 - T) 24 h / 3.25, over a week of one temperature", kind: "computed" },
  [
    [[100, -5], (100 * 25 * 0.024) / 3.25],
    [[80, -5], (80 * 25 * 0.024) / 3.25],
    [[120, 0], (120 * 20 * 0.024) / 3.25],
    [[60, -10], (60 * 30 * 0.024) / 3.25],
    [[140, 5], (140 * 15 * 0.024) / 3.25],
    [[110, -8], (110 * 28 * 0.024) / 3.25],
  ],
);
