/**
 * Drying of split firewood under cover, driven by the place's own climate: each day the moisture moves a share of the way to the
 * equilibrium of that day's air, faster in warm air, not at all in frost: dU/dt = -k (U - E), k = k20 p_sat(T) / p_sat(20 °C).
 * No published model of split firewood with coefficients is at hand. The rate is fitted to the Bavarian trials (split, covered, 33 cm and
 * 1 m, spruce and beech: below 20 % within 26 weeks near Munich) and the Upper Austrian ones (28 weeks near Salzburg); both are upper
 * bounds of the time and leave the start open, so 0.012 to 0.022 per day is as sure as it gets. Size, bark and species factors are
 * common practice, held against the board-drying exponent of 1.5.
 */
import { equilibriumMoisture_pct_dry, saturationPressure_Pa } from "./air-moisture.ts";

/** Monthly means of a place, January first. */
export interface Climate {
  readonly mean_C: readonly number[];
  readonly rh_pct: readonly number[];
}

export const MONTHS = 12;
/** Day of the year on which each month's mean is taken to hold: its middle. */
const MID_MONTH = [15.5, 45, 74.5, 105, 135.5, 166, 196.5, 227.5, 258, 288.5, 319, 349.5] as const;
const YEAR_D = 365;
/** Mean length of a calendar year: a long count of days stays within a day of the calendar. */
const CALENDAR_YEAR_D = 365.2425;
const CALENDAR_DAYS = Math.ceil(CALENDAR_YEAR_D);

/** Share of the moisture above equilibrium lost per day at 20 °C: 10 cm splits of beech with bark, top covered, airy. */
export const DRYING_RATE_PER_D = { slow: 0.012, typical: 0.016, quick: 0.022 } as const;

/** Above this humidity the monthly mean says nothing about sheltered wood; the equation is held here. */
const HUMIDITY_CEILING_PCT = 97;

/** Mean of a day of the year, linear between the middles of the months. @param day_of_year 0 at the start of January, any size */
export function onDay(monthly: readonly number[], day_of_year: number): number {
  const day = ((day_of_year % YEAR_D) + YEAR_D) % YEAR_D;
  let after = MID_MONTH.findIndex((middle) => day < middle);
  if (after === -1) after = 0;
  const before = (after + MONTHS - 1) % MONTHS;
  const start = MID_MONTH[before] ?? 0;
  const gap = ((MID_MONTH[after] ?? 0) - start + YEAR_D) % YEAR_D;
  const along = ((day - start + YEAR_D) % YEAR_D) / gap;
  const from = monthly[before] ?? Number.NaN;
  return from + ((monthly[after] ?? Number.NaN) - from) * along;
}

/** How a stack is kept and cut, as factors on the rate. */
export interface Stack {
  /** thickness of the splits, mm; 100 is the size the rate was fitted on */
  readonly split_mm: number;
  /** 1 one summer (spruce, alder, lime) to 4 two summers (oak, dense eucalypts); 2 beech, birch, ash */
  readonly seasoning_class: 1 | 2 | 3 | 4;
  readonly bark: boolean;
}

const FITTED_SPLIT_MM = 100;
const CLASS_FACTOR = { 1: 1.25, 2: 1, 3: 0.8, 4: 0.6 } as const;
/** Bark holds water back on one side of a split. The trials had it on. */
const BARE_FACTOR = 1.15;

/**
 * Rate per day at 20 °C for a stack: k20 (100 / split)^1.5, times the class and bark factors.
 * @param rate_per_d the fitted rate, one of {@link DRYING_RATE_PER_D}
 * @returns 1/d. Source: exponent from Simpson and Tschernitz (boards, 1.52); factors common practice, no source.
 * Worked example: beech, 100 mm, bark on is 0.016; the same split to 50 mm is 0.0453.
 */
export const stackRate_per_d = (rate_per_d: number, stack: Stack): number =>
  rate_per_d * (FITTED_SPLIT_MM / stack.split_mm) ** 1.5 * CLASS_FACTOR[stack.seasoning_class] * (stack.bark ? 1 : BARE_FACTOR);

/**
 * Equilibrium of covered wood in the air of one day.
 * @returns dry basis, %. Source: FPL-GTR-282 eq. 4-5 on interpolated monthly means.
 */
export const equilibriumOnDay_pct_dry = (climate: Climate, day_of_year: number): number =>
  equilibriumMoisture_pct_dry(onDay(climate.mean_C, day_of_year), Math.min(onDay(climate.rh_pct, day_of_year), HUMIDITY_CEILING_PCT));

/** Air in which nothing dries further than its surface: uncovered wood in rain goes toward this. */
const RAINED_ON_PCT_DRY = 30;

/**
 * Where uncovered wood goes on a day: between the equilibrium and rain-wet, by how damp the air is (from 60 % upward).
 * @returns dry basis, %. Source: none; an assumption, good for a warning, not for a date.
 */
export function uncoveredOnDay_pct_dry(climate: Climate, day_of_year: number): number {
  const dry = equilibriumOnDay_pct_dry(climate, day_of_year);
  const wet_share = Math.min(Math.max((onDay(climate.rh_pct, day_of_year) - 60) / 40, 0), 1);
  return dry + Math.max(0, RAINED_ON_PCT_DRY - dry) * wet_share;
}

/** What each calendar day does to a stack: where it pulls the moisture, and how fast relative to 20 °C. */
export interface DryingYear {
  readonly equilibrium_pct_dry: Float64Array;
  readonly speed: Float64Array;
}

/**
 * The drying year of a place.
 * @param covered false for wood in the rain
 * Source: equilibrium as above; speed p_sat(T) / p_sat(20 °C), 0 in frost.
 */
export function dryingYear(climate: Climate, covered = true): DryingYear {
  const pull = covered ? equilibriumOnDay_pct_dry : uncoveredOnDay_pct_dry;
  const at20 = saturationPressure_Pa(20);
  return {
    equilibrium_pct_dry: Float64Array.from({ length: CALENDAR_DAYS }, (_, day) => pull(climate, day)),
    speed: Float64Array.from({ length: CALENDAR_DAYS }, (_, day) => {
      const t = onDay(climate.mean_C, day);
      return t > 0 ? saturationPressure_Pa(t) / at20 : 0;
    }),
  };
}

/** Moisture after one more day, dry basis, %. Exact for the day. @param day days from any 1 January */
function nextDay_pct_dry(year: DryingYear, moisture_pct_dry: number, day: number, k20_per_d: number): number {
  const today = Math.floor(((day % CALENDAR_YEAR_D) + CALENDAR_YEAR_D) % CALENDAR_YEAR_D);
  const equilibrium = year.equilibrium_pct_dry[today] ?? Number.NaN;
  return equilibrium + (moisture_pct_dry - equilibrium) * Math.exp(-k20_per_d * (year.speed[today] ?? Number.NaN));
}

/** A stack as the course sees it. */
export interface Drying {
  readonly start_pct_dry: number;
  /** days from any 1 January to stacking; counted from one fixed day, a later start never gives an earlier end */
  readonly first_day: number;
  /** from {@link stackRate_per_d} */
  readonly k20_per_d: number;
}

/**
 * Moisture at the end of each day after stacking.
 * @returns dry basis, %, index 0 the moisture when stacked, days + 1 values
 * Source: first-order drying.
 * Worked example: constant 20 °C with equilibrium 14 %, from 100 %, 0.016 per day: 18.83 % after 180 d.
 */
export function dryingCourse_pct_dry(year: DryingYear, { start_pct_dry, first_day, k20_per_d }: Drying, days: number): Float64Array {
  const course = new Float64Array(days + 1);
  let moisture = start_pct_dry;
  course[0] = moisture;
  for (let day = 0; day < days; day++) {
    moisture = nextDay_pct_dry(year, moisture, first_day + day, k20_per_d);
    course[day + 1] = moisture;
  }
  return course;
}

/** How long after stacking a target is looked for, d. */
export const LONGEST_D = 5 * YEAR_D;

/**
 * Days after stacking until the target is first reached.
 * @returns d, or undefined when it is not reached within five years
 * Source: first-order drying. Worked example: constant 20 °C with equilibrium 14 %, from 100 to 25 %, 0.016 per day: 129 d.
 */
export function daysToTarget(
  year: DryingYear,
  { start_pct_dry, first_day, k20_per_d }: Drying,
  target_pct_dry: number,
): number | undefined {
  let moisture = start_pct_dry;
  for (let day = 0; day <= LONGEST_D; day++) {
    if (moisture <= target_pct_dry) return day;
    moisture = nextDay_pct_dry(year, moisture, first_day + day, k20_per_d);
  }
  return undefined;
}

/**
 * The driest that covered wood can become here: the lowest equilibrium among the months.
 * @returns dry basis, %
 */
export const driestEquilibrium_pct_dry = (climate: Climate): number =>
  Math.min(
    ...climate.mean_C.map((t, month) => equilibriumMoisture_pct_dry(t, Math.min(climate.rh_pct[month] ?? 100, HUMIDITY_CEILING_PCT))),
  );

/**
 * Days a board takes in moving air: t = -tau ln((U - E)/(U0 - E)), tau = L^1.52 / (0.0575 + 0.00142 p). A lower bound for a pile outdoors.
 * @param thickness_in inches; @param saturation_mmHg saturation pressure of water at the air's temperature, mmHg
 * @returns d. Source: Simpson and Tschernitz, red oak. Worked example: 1 in at 17.54 mmHg, 80 to 25 %, equilibrium 12 %: 20.1 d.
 */
export const boardDrying_d = (
  thickness_in: number,
  saturation_mmHg: number,
  start_pct_dry: number,
  end_pct_dry: number,
  equilibrium_pct_dry: number,
): number =>
  (-(thickness_in ** 1.52) / (0.0575 + 0.00142 * saturation_mmHg)) *
  Math.log((end_pct_dry - equilibrium_pct_dry) / (start_pct_dry - equilibrium_pct_dry));
