/** seasoning: when split wood is dry enough, as a range, driven by the climate of the place. */
import { z } from "zod";
import {
  type Climate,
  DRYING_RATE_PER_D,
  type Drying,
  daysToTarget,
  driestEquilibrium_pct_dry,
  dryingCourse_pct_dry,
  dryingYear,
  stackRate_per_d,
} from "../reckoning/drying.ts";
import { dryFromWet_pct, greatestMoisture_pct_dry, wetFromDry_pct } from "../reckoning/moisture.ts";
import { BadInput, calculator, described, figure } from "./calculator.ts";
import { moisturePctWet, result, species } from "./keys.ts";
import { oneOf } from "./one-of.ts";
import { type Wood, findWood, nearestPlace, woodWarnings } from "./reference-data.ts";

const DAY_MS = 86_400_000;
/** Days are counted from here, a first of January, so that every stack of a place sees the same calendar. */
const EPOCH_MS = Date.UTC(2000, 0, 1);
const MONTHS_SHOWN = 24;
const FARTHEST_KM = 1500;
const NEAR_KM = 150;
/** A range wider than this has a winter in it. */
const A_WINTER_D = 100;

export const seasoning = calculator({
  name: "seasoning",
  about: "When split, stacked wood reaches a moisture: an early and a late date, month by month, and the driest it can get outdoors.",
  source:
    "drying towards FPL-GTR-282 eq. 4-5; rate fitted on the Bavarian (split, covered: below 20 % in 6 months) and " +
    "Upper Austrian (28 weeks) trials; size, bark and tree factors common practice, no source",
  inputs: {
    species: species(),
    split_mm: figure("mm", "thickness of the splits; the trials' wood is taken as 100", { min: 20, max: 500 }),
    start_pct_wet: moisturePctWet("moisture when stacked; fresh wood is near 50"),
    target_pct_wet: figure("% wet basis", "moisture wanted; most fuel rules ask 20", {
      min: 5,
      max: 60,
      source: "SI 2020/1095 (England), 1. BImSchV (Germany)",
    }),
    stacked_on: described(z.iso.date(), "day of stacking, YYYY-MM-DD"),
    climate: described(
      z.strictObject({
        mean_C: z.array(z.number().min(-60).max(50)).length(12),
        rh_pct: z.array(z.number().min(0).max(100)).length(12),
      }),
      "monthly means of the place, January first: 12 of mean_C, 12 of rh_pct",
    ).optional(),
    latitude: figure("°", "north positive; the nearest place of the climate table is used", {
      min: -90,
      max: 90,
      source: "knowledge/climates.yaml",
    }).optional(),
    longitude: figure("°", "east positive", { min: -180, max: 180 }).optional(),
    cover: described(
      z.enum(["none", "top", "shed"]),
      "none, only the top covered, or an airy shed; the trials do not tell the last two apart",
      { source: "Fairbanks 2011, Bavarian trials" },
    ).default("top"),
    bark: described(z.boolean(), "whether the bark is on", { source: "common practice, no source" }).default(true),
  },
  outputs: {
    ready_on: described(z.iso.date(), "likeliest day; absent when never, and for uncovered wood").optional(),
    moisture_pct_wet_by_month: described(z.array(z.number()).length(MONTHS_SHOWN), "moisture 1, 2, ... 24 months after stacking", {
      unit: "% wet basis",
    }),
    floor_pct_wet: result("% wet basis", "the driest the air of this place can make covered wood"),
  },
  run: (given) => {
    oneOf("seasoning", given, [["climate"], ["latitude", "longitude"]]);
    const wood = findWood(given.species);
    checkHolds(wood, given.species, given.start_pct_wet);
    const { climate, warnings: about } = given.climate
      ? { climate: given.climate, warnings: [] }
      : placeClimate(given.latitude ?? 0, given.longitude ?? 0);
    const covered = given.cover !== "none";
    const start_ms = Date.parse(given.stacked_on);
    const year = dryingYear(climate, covered);
    const cut = { split_mm: given.split_mm, seasoning_class: wood.seasoning_class, bark: given.bark };
    const drying = (pace: keyof typeof DRYING_RATE_PER_D): Drying => ({
      start_pct_dry: dryFromWet_pct(given.start_pct_wet),
      first_day: Math.round((start_ms - EPOCH_MS) / DAY_MS),
      k20_per_d: stackRate_per_d(DRYING_RATE_PER_D[pace], cut),
    });
    const readyOn = (pace: keyof typeof DRYING_RATE_PER_D): string | undefined => {
      const days = covered ? daysToTarget(year, drying(pace), dryFromWet_pct(given.target_pct_wet)) : undefined;
      return days === undefined ? undefined : isoDate(start_ms + days * DAY_MS);
    };
    const [ready_on, early, late] = [readyOn("typical"), readyOn("quick"), readyOn("slow")];
    const shown_d = Array.from({ length: MONTHS_SHOWN }, (_, month) => Math.round((monthsLater(start_ms, month + 1) - start_ms) / DAY_MS));
    const course = dryingCourse_pct_dry(year, drying("typical"), shown_d.at(-1) ?? 0);
    const floor_pct_wet = wetFromDry_pct(driestEquilibrium_pct_dry(climate));
    return {
      ready_on,
      moisture_pct_wet_by_month: shown_d.map((day) => wetFromDry_pct(course[day] ?? Number.NaN)),
      floor_pct_wet,
      range: ready_on && early ? { ready_on: [early, late ?? null] } : undefined,
      warnings: [
        ...woodWarnings(wood),
        ...about,
        ...verdict({ covered, ready_on, early, late, floor_pct_wet, target_pct_wet: given.target_pct_wet }),
      ],
    };
  },
});

function checkHolds(wood: Wood, word: string, start_pct_wet: number): void {
  const most = wetFromDry_pct(greatestMoisture_pct_dry(wood.basic_density_g_per_cm3 * (1 - wood.density_spread)));
  if (start_pct_wet > most)
    throw new BadInput(
      `start_pct_wet is ${start_pct_wet} % wet basis, but ${word} cannot hold more than ${most.toFixed(0)} %; ` +
        "it should be below that (140 % dry basis would be 58 %).",
    );
}

function placeClimate(latitude: number, longitude: number): { climate: Climate; warnings: string[] } {
  const { place, distance_km } = nearestPlace(latitude, longitude);
  if (distance_km > FARTHEST_KM) {
    throw new BadInput(
      `latitude ${latitude} and longitude ${longitude} are ${distance_km.toFixed(0)} km from ${place.name}, the nearest place known; ` +
        "give climate with 12 mean_C and 12 rh_pct instead.",
    );
  }
  return {
    climate: place,
    warnings: [
      ...(distance_km > NEAR_KM
        ? [`The nearest climate known is ${place.name}, ${distance_km.toFixed(0)} km away: better give your own monthly means.`]
        : [`Climate of ${place.name}.`]),
      ...(place.from_memory ? [`The climate of ${place.name} is recalled, good to about 1.5 °C and 7 % humidity.`] : []),
    ],
  };
}

function verdict(of: {
  covered: boolean;
  ready_on: string | undefined;
  early: string | undefined;
  late: string | undefined;
  floor_pct_wet: number;
  target_pct_wet: number;
}): string[] {
  if (!of.covered)
    return [
      "Uncovered wood gets no date: rain wets it again, most of all in autumn, and the months shown are a guess. " +
        "Cover the top and leave the sides open.",
    ];
  if (of.floor_pct_wet > of.target_pct_wet)
    return [
      `Outdoors here wood stays above ${of.floor_pct_wet.toFixed(0)} %: the last points come off indoors, in the days before burning.`,
    ];
  if (of.ready_on === undefined) return ["Not within five years at this size: split it smaller."];
  const splitFiner =
    "A little difference of wood, wind or weather costs a whole winter here: split finer, or measure before you count on the early date.";
  if (of.late === undefined) return [`A slow stack may never get there. ${splitFiner}`];
  return of.early && Date.parse(of.late) - Date.parse(of.early) > A_WINTER_D * DAY_MS
    ? [`Ready as early as ${of.early} or as late as ${of.late}. ${splitFiner}`]
    : [];
}

const isoDate = (ms: number): string => new Date(ms).toISOString().slice(0, 10);

/** The same day some months later, the last of the month where that day does not exist. */
function monthsLater(ms: number, months: number): number {
  const day = new Date(ms);
  const last = new Date(Date.UTC(day.getUTCFullYear(), day.getUTCMonth() + months + 1, 0)).getUTCDate();
  return Date.UTC(day.getUTCFullYear(), day.getUTCMonth() + months, Math.min(day.getUTCDate(), last));
}
