/** The two tables the calculators look into, knowledge/species.yaml and knowledge/climates.yaml. Read once, when first asked. */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { z } from "zod";
import { BadInput } from "./calculator.ts";

const Kind = z.enum(["softwood", "hardwood"]);
const SeasoningClass = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]);
const Points = z.tuple([z.number(), z.number(), z.number()]);

const SpeciesFile = z.strictObject({
  sources: z.record(z.string(), z.string()),
  short_names: z.record(z.string(), z.string()),
  kinds: z.array(
    z.strictObject({
      name: z.string(),
      also: z.array(z.string()),
      kind: Kind,
      basic_density: z.number(),
      spread: z.number(),
      seasoning: SeasoningClass,
    }),
  ),
  never_burn: z.array(
    z.strictObject({ name: z.string(), also: z.array(z.string()).optional(), botanical: z.string(), why: z.string(), source: z.string() }),
  ),
  meter_corrections: z.record(z.string(), Points),
  species: z.array(
    z.strictObject({
      botanical: z.string(),
      name: z.string(),
      also: z.record(z.string(), z.array(z.string())).optional(),
      regions: z.array(z.string()),
      kind: Kind,
      basic_density: z.number().min(0.1).max(1.3),
      density_source: z.string(),
      split: z.string().optional(),
      resin: z.string().optional(),
      seasoning: SeasoningClass.optional(),
      green: z.strictObject({ heartwood: z.number().optional(), sapwood: z.number().optional() }).optional(),
      meter_points: Points.optional(),
      note: z.string().optional(),
      do_not_burn: z.string().optional(),
    }),
  ),
});

const Monthly = z.array(z.number()).length(12);
const ClimateFile = z.strictObject({
  places: z.array(
    z.strictObject({
      name: z.string(),
      latitude: z.number(),
      longitude: z.number(),
      elevation_m: z.number().optional(),
      mean_C: Monthly,
      rh_pct: Monthly,
      source: z.string(),
      from_memory: z.boolean().optional(),
    }),
  ),
});

export type Place = z.output<typeof ClimateFile>["places"][number];

/** A tree, or a kind of tree, as the calculators use it. */
export interface Wood {
  readonly name: string;
  readonly kind: "softwood" | "hardwood";
  readonly basic_density_g_per_cm3: number;
  /** share by which one tree differs from the table */
  readonly density_spread: number;
  readonly seasoning_class: 1 | 2 | 3 | 4;
  readonly meter_points?: readonly [number, number, number];
  readonly green?: { readonly heartwood?: number; readonly sapwood?: number };
  readonly do_not_burn?: string;
  /** said when a bare name was read as one tree of several */
  readonly read_as?: string;
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

const file = (name: string): unknown => parse(readFileSync(new URL(`../../knowledge/${name}`, import.meta.url), "utf8"));
const speciesFile = once(() => SpeciesFile.parse(file("species.yaml")));
const places = once((): readonly Place[] => ClimateFile.parse(file("climates.yaml")).places);

/** "European Beech", "Hêtre", "douglas-fir": how a name is compared. */
const plain = (name: string): string =>
  name
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[-_’']/g, " ")
    .replace(/\s+/g, " ")
    .trim();
const withoutBracket = (name: string): string => name.replace(/\s*\(.*\)$/, "");

const ONE_TREE_SPREAD = 0.1;

const woods = once((): ReadonlyMap<string, Wood> => {
  const data = speciesFile();
  const found = new Map<string, Wood>();
  const add = (name: string, wood: Wood): void => {
    const key = plain(name);
    if (!found.has(key)) found.set(key, wood);
  };
  const byBotanical = new Map<string, Wood>();
  for (const tree of data.species) {
    byBotanical.set(tree.botanical, {
      name: tree.name,
      kind: tree.kind,
      basic_density_g_per_cm3: tree.basic_density,
      density_spread: ONE_TREE_SPREAD,
      seasoning_class: tree.seasoning ?? 3,
      ...(tree.meter_points && { meter_points: tree.meter_points }),
      ...(tree.green && { green: tree.green }),
      ...(tree.do_not_burn && { do_not_burn: tree.do_not_burn }),
    });
  }
  const named = data.species.map((tree) => ({ tree, wood: byBotanical.get(tree.botanical) as Wood }));
  for (const { tree, wood } of named) for (const name of [tree.botanical, tree.name]) add(name, wood);
  for (const kind of data.kinds) {
    const wood = {
      name: kind.name,
      kind: kind.kind,
      basic_density_g_per_cm3: kind.basic_density,
      density_spread: kind.spread / kind.basic_density,
      seasoning_class: kind.seasoning,
    };
    for (const name of [kind.name, ...kind.also]) add(name, wood);
  }
  for (const [name, botanical] of Object.entries(data.short_names)) {
    const wood = byBotanical.get(botanical);
    if (!wood) throw new Error(`knowledge/species.yaml: short_names.${name} names ${botanical}, which is not among the species`);
    add(name, { ...wood, read_as: `"${name}" is read as ${wood.name} (${botanical}); name the tree if it is another.` });
  }
  for (const { tree, wood } of named) for (const name of Object.values(tree.also ?? {}).flat()) add(name, wood);
  for (const { tree, wood } of named)
    for (const name of [tree.name, ...Object.values(tree.also ?? {}).flat()]) add(withoutBracket(name), wood);
  return found;
});

/**
 * The tree behind a word: botanical, common or other name in any of the table's languages, or just softwood or hardwood.
 * @throws BadInput for a word the table does not have, and for growth that must not be burned at all
 */
export function findWood(word: string): Wood {
  const key = plain(word);
  const poison = speciesFile().never_burn.find((plant) =>
    [plant.name, plant.botanical, ...(plant.also ?? [])].some((name) => plain(name) === key),
  );
  if (poison) throw new BadInput(`species is "${word}": never burn it, ${poison.why}.`);
  const bare = key.replace(/\b(tree|wood|firewood|logs?)\b/g, "").trim();
  const wood = woods().get(key) ?? woods().get(bare) ?? woods().get(bare.replace(/s$/, ""));
  if (wood) return wood;
  const parts = bare.split(" ");
  const near = [
    ...new Set(
      [...woods()].filter(([name]) => parts.some((part) => part.length > 2 && name.includes(part))).map(([, other]) => other.name),
    ),
  ].slice(0, 5);
  throw new BadInput(
    `species is "${word}", a tree that is not in the table; it should be ${
      near.length > 0 ? `perhaps ${near.join(", ")}` : "a name such as beech, spruce or Quercus robur, or just softwood or hardwood"
    }.`,
  );
}

/** Pin meter correction of a tree or of a trade name on the Douglas-fir scale; undefined when none is published. */
export function meterPoints(word: string): readonly [number, number, number] | undefined {
  const corrections = Object.entries(speciesFile().meter_corrections);
  const trade = corrections.find(([name]) => plain(name) === plain(word));
  return trade ? trade[1] : findWood(word).meter_points;
}

/** What must be said about a wood before any figure: poison first, then how a bare name was read. */
export const woodWarnings = (wood: Wood | undefined): string[] => [
  ...(wood?.do_not_burn ? [`Do not burn ${wood.name}: ${wood.do_not_burn}.`] : []),
  ...(wood?.read_as ? [wood.read_as] : []),
];

const EARTH_KM = 6371;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Great-circle distance, km (haversine). */
export function distance_km(from: { latitude: number; longitude: number }, to: { latitude: number; longitude: number }): number {
  const across =
    Math.sin(radians(to.latitude - from.latitude) / 2) ** 2 +
    Math.cos(radians(from.latitude)) * Math.cos(radians(to.latitude)) * Math.sin(radians(to.longitude - from.longitude) / 2) ** 2;
  return 2 * EARTH_KM * Math.asin(Math.sqrt(across));
}

/** The place of the climate table that is nearest. */
export function nearestPlace(latitude: number, longitude: number): { place: Place; distance_km: number } {
  let nearest: { place: Place; distance_km: number } | undefined;
  for (const place of places()) {
    const km = distance_km({ latitude, longitude }, place);
    if (!nearest || km < nearest.distance_km) nearest = { place, distance_km: km };
  }
  if (!nearest) throw new Error("knowledge/climates.yaml holds no place");
  return nearest;
}

/** All trees and places, for whoever lists or checks them. */
export const allWoods = (): z.output<typeof SpeciesFile> => speciesFile();
export const allPlaces = (): readonly Place[] => places();
