/** stack: a woodpile in every unit it is sold in, and what it weighs and holds. */
import { convert } from "../quantities.ts";
import { NCV_DRY_MJ_PER_KG, loadEnergy_kWh, ncv_kWh_per_kg } from "../reckoning/fuel.ts";
import {
  MEASURED_SHARES,
  TRADE_SOLID_SHARE,
  cordsFromStacked,
  solidMass_kg,
  solidShare,
  stackVolume_m3,
  stackedFromCords_m3,
} from "../reckoning/stack.ts";
import { BadInput, calculator, figure } from "./calculator.ts";
import { moisturePctWet, result, species } from "./keys.ts";
import { oneOf } from "./one-of.ts";
import { type Wood, findWood, woodWarnings } from "./reference-data.ts";

const TFZ = "TFZ Straubing, measured on beech and spruce, January 2006";
const SHORT_LOG_M = 0.33;
/** How far a single stack is from the usual solid share: 75 to 100 around 85 ft3 of wood in a cord (two extension tables). */
const SOLID_SPREAD = [75 / 85, 100 / 85];
/** Stacked / loose in practice: OENORM M 7132 table 0.60, Maine law on thrown cords 0.71. */
const STACKED_PER_LOOSE = [0.6, 0.71];

const volume = (about: string): ReturnType<typeof figure> => figure("m3", about, { above: 0, max: 100000 });

const inputs = {
  volume_m3_stacked: volume("stacked volume, air between the logs included").optional(),
  volume_m3_loose: volume("loose volume, tipped or in a big bag").optional(),
  volume_m3_solid: volume("wood alone, without air").optional(),
  cords: figure("cord", "full cords of 128 ft3, stacked", { above: 0, max: 30000, source: "NIST Handbook 130, 2.4" }).optional(),
  length_m: figure("m", "length of the stack", { above: 0, max: 1000 }).optional(),
  height_m: figure("m", "height of the stack", { above: 0, max: 10 }).optional(),
  log_length_m: figure("m", "length of the logs; 0.33 when not given", { above: 0, max: 6 }).optional(),
  length_ft: figure("ft", "length of the stack", { above: 0, max: 3000 }).optional(),
  height_ft: figure("ft", "height of the stack", { above: 0, max: 30 }).optional(),
  log_length_in: figure("in", "length of the logs; 13 when not given", { above: 0, max: 240 }).optional(),
  species: species().optional(),
  moisture_pct_wet: moisturePctWet().optional(),
  solid_share: figure(
    "share",
    "solid wood / stacked volume; without it measured shares: 0.62 hardwood, 0.64 softwood at 33 cm, 0.50 and 0.56 at 1 m",
    {
      above: 0,
      max: 1,
      source: TFZ,
    },
  ).optional(),
  stacked_per_loose: figure("share", "stacked / loose volume; without it measured: 0.68 hardwood, 0.62 softwood", {
    above: 0,
    max: 1,
    source: TFZ,
  }).optional(),
};

export const stack = calculator({
  name: "stack",
  about: "A pile in stacked, loose and solid cubic metres and cords; with tree and moisture also its weight and net heat.",
  source: `${TFZ}; NIST Handbook 130; basic densities of knowledge/species.yaml; ISO 18125`,
  inputs,
  outputs: {
    volume_m3_stacked: result("m3", "stacked volume"),
    volume_m3_loose: result("m3", "loose volume"),
    volume_m3_solid: result("m3", "wood alone"),
    cords: result("cord", "full cords"),
    mass_kg: result("kg", "weight at the moisture given").optional(),
    energy_kWh: result("kWh", "net heat at the moisture given").optional(),
  },
  run: (given) => {
    const wood = given.species === undefined ? undefined : findWood(given.species);
    const measured = MEASURED_SHARES[wood?.kind ?? "unknown"];
    const log_m = given.log_length_m ?? (given.log_length_in === undefined ? SHORT_LOG_M : convert(given.log_length_in, "in", "m"));
    const solid = given.solid_share ?? solidShare(measured, log_m);
    const per_loose = given.stacked_per_loose ?? 1 / measured.loose_per_stacked;
    const pile = pileOf(given, wood, solid, per_loose);
    const solids = given.solid_share === undefined ? SOLID_SPREAD.map((factor) => Math.min(1, solid * factor)) : [solid];
    const looses = given.stacked_per_loose === undefined ? STACKED_PER_LOOSE : [per_loose];
    const corners = solids.flatMap((one) => looses.map((other) => pileOf(given, wood, one, other)));
    return {
      ...pile,
      range: rangeOf(pile, corners, wood?.density_spread ?? 0),
      warnings: [
        ...woodWarnings(wood),
        ...(given.solid_share === undefined && given.volume_m3_solid === undefined
          ? [
              `Sellers often count ${TRADE_SOLID_SHARE} solid in a stacked cubic metre of short splits; ` +
                `measured it is ${solid.toFixed(2)}, so ask how they measured.`,
            ]
          : []),
      ],
    };
  },
});

interface Pile {
  readonly volume_m3_stacked: number;
  readonly volume_m3_loose: number;
  readonly volume_m3_solid: number;
  readonly cords: number;
  readonly mass_kg?: number;
  readonly energy_kWh?: number;
}

type Given = { [K in keyof typeof inputs]?: unknown } & { readonly [key: string]: unknown };

function stackedVolume(given: Given, solid: number, per_loose: number): number {
  const number = (key: keyof typeof inputs): number => given[key] as number;
  const way = oneOf("stack", given, [
    ["volume_m3_stacked"],
    ["volume_m3_loose"],
    ["volume_m3_solid"],
    ["cords"],
    ["length_m", "height_m"],
    ["length_ft", "height_ft"],
  ]);
  if (given.log_length_m !== undefined && given.log_length_in !== undefined)
    throw new BadInput("log_length_m and log_length_in say the same thing twice; give only one.");
  if (way === 4 && given.log_length_m === undefined)
    throw new BadInput("length_m and height_m also need log_length_m, the length of the logs in m (0.33 for short ones).");
  if (way === 5 && given.log_length_in === undefined)
    throw new BadInput("length_ft and height_ft also need log_length_in, the length of the logs in inches (16 is usual).");
  switch (way) {
    case 0:
      return number("volume_m3_stacked");
    case 1:
      return number("volume_m3_loose") * per_loose;
    case 2:
      return number("volume_m3_solid") / solid;
    case 3:
      return stackedFromCords_m3(number("cords"));
    case 4:
      return stackVolume_m3(number("length_m"), number("height_m"), number("log_length_m"));
    default:
      return stackVolume_m3(
        convert(number("length_ft"), "ft", "m"),
        convert(number("height_ft"), "ft", "m"),
        convert(number("log_length_in"), "in", "m"),
      );
  }
}

function pileOf(given: Given, wood: Wood | undefined, solid: number, per_loose: number): Pile {
  const stacked = stackedVolume(given, solid, per_loose);
  const volumes = {
    volume_m3_stacked: stacked,
    volume_m3_loose: stacked / per_loose,
    volume_m3_solid: stacked * solid,
    cords: cordsFromStacked(stacked),
  };
  const moisture = given.moisture_pct_wet as number | undefined;
  if (!wood || moisture === undefined) return volumes;
  const mass_kg = solidMass_kg(volumes.volume_m3_solid, wood.basic_density_g_per_cm3, moisture);
  return {
    ...volumes,
    mass_kg,
    energy_kWh: loadEnergy_kWh(mass_kg, Math.max(0, ncv_kWh_per_kg(NCV_DRY_MJ_PER_KG[wood.kind].typical, moisture))),
  };
}

/** Lowest and highest of each result over the corners; weight and heat also vary with the single tree. Only results that vary. */
function rangeOf(pile: Pile, corners: readonly Pile[], tree_spread: number): Record<string, [number, number]> | undefined {
  const bands = (Object.keys(pile) as (keyof Pile)[]).flatMap((key) => {
    const values = corners.map((corner) => corner[key] ?? 0);
    const spread = key === "mass_kg" || key === "energy_kWh" ? tree_spread : 0;
    const [low, high] = [Math.min(...values) * (1 - spread), Math.max(...values) * (1 + spread)];
    return high - low > 1e-9 * high ? [[key, [low, high] as [number, number]] as const] : [];
  });
  return bands.length > 0 ? Object.fromEntries(bands) : undefined;
}
