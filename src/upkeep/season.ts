/**
 * When people at a place heat: from the fires of their own log, else from the place's climate, else from the hemisphere alone. Days, never
 * names of months, so that it holds on both sides of the equator. Pure.
 */
import type { FireStretch } from "../records/types.ts";

export interface Season {
  readonly start: Temporal.PlainDate;
  readonly end: Temporal.PlainDate;
}
export interface Seasons {
  /** what it rests on */
  readonly from: "log" | "climate" | "usual";
  /** the season today lies in, null between two */
  readonly now: Season | null;
  readonly last: Season;
  readonly next: Season;
  /** all around today, in order */
  readonly all: readonly Season[];
}

/** Where somebody heats, as far as it is known. */
export interface Climate {
  /** monthly means of outside air, January first, degrees Celsius */
  readonly mean_C?: readonly number[];
  readonly south?: boolean;
}
export interface SeasonFacts extends Climate {
  readonly today: Temporal.PlainDate;
  readonly timezone: string;
  readonly stretches: readonly FireStretch[];
}
export interface SeasonRules {
  readonly heating_limit_C: number;
  readonly north: { readonly start: string; readonly end: string };
  readonly south: { readonly start: string; readonly end: string };
}

const YEAR_DAYS = 365;
/** middle of each month, days after the year began */
const MIDDLES = [15, 45, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349] as const;
/** less than this between the warmest and the coldest month is no season at all (common practice, no source) */
const LEAST_SWING_C = 5;
/** a log's season that lies further from the climate's belongs to another place, or is no season */
const SAME_SEASON_DAYS = 75;
/** fires in a stretch that make it a season's */
const LEAST_FIRES = 3;
const ENDED_DAYS = 30;

/** Mean of a day of the year (0 to 364), degrees Celsius: straight between the middles of the months. */
export function meanOfDay_C(mean_C: readonly number[], day: number): number {
  const after = MIDDLES.findIndex((middle) => middle > day);
  const to = Math.max(0, after);
  const from = (to + 11) % 12;
  const start = MIDDLES[from] ?? 0;
  const length = ((MIDDLES[to] ?? 0) - start + YEAR_DAYS) % YEAR_DAYS;
  const share = ((day - start + YEAR_DAYS) % YEAR_DAYS) / length;
  return (mean_C[from] ?? 0) * (1 - share) + (mean_C[to] ?? 0) * share;
}

/**
 * Days of the year on which people at a place begin and end heating.
 * The limit is the usual heating limit, but no higher than somewhat below the warmest day (where it is never warm, the cooler part of the
 * year counts), and no lower than somewhat above the coldest (where winters are mild, people heat in them all the same).
 * @returns null where the year has no cold part
 */
export function heatingDays(mean_C: readonly number[], limit_C: number): { start: number; end: number } | null {
  const known = reckoned.get(mean_C);
  if (known && known.limit_C === limit_C) return known.days;
  const days = heatingDaysOf(mean_C, limit_C);
  reckoned.set(mean_C, { limit_C, days });
  return days;
}
/** by the table's own row, which never changes */
const reckoned = new WeakMap<readonly number[], { limit_C: number; days: { start: number; end: number } | null }>();

function heatingDaysOf(mean_C: readonly number[], limit_C: number): { start: number; end: number } | null {
  const days = Array.from({ length: YEAR_DAYS }, (_, day) => meanOfDay_C(mean_C, day));
  const [coldest, warmest] = [Math.min(...days), Math.max(...days)];
  if (warmest - coldest < LEAST_SWING_C) return null;
  const limit = Math.min(Math.max(limit_C, coldest + 2.5), warmest - 1.5);
  const warmest_day = days.indexOf(warmest);
  const from_top = Array.from({ length: YEAR_DAYS }, (_, i) => (warmest_day + i) % YEAR_DAYS);
  const cold = from_top.filter((day) => (days[day] ?? 0) < limit);
  const [start, end] = [cold[0], cold.at(-1)];
  return start === undefined || end === undefined ? null : { start, end };
}

/** @returns null where nothing tells when people heat: no place, no hemisphere, no log of a whole year */
export function seasons(facts: SeasonFacts, rules: SeasonRules): Seasons | null {
  const usual = aroundToday(facts, rules);
  const own = fromLog(facts, usual);
  const all = own ?? usual;
  if (!all) return null;
  const { today } = facts;
  const now = all.find(({ start, end }) => !before(today, start) && !before(end, today)) ?? null;
  const last = all.findLast(({ end }) => before(end, today));
  const next = all.find(({ start }) => before(today, start));
  return last && next ? { from: own ? "log" : facts.mean_C ? "climate" : "usual", now, last, next, all } : null;
}

const before = (a: Temporal.PlainDate, b: Temporal.PlainDate): boolean => Temporal.PlainDate.compare(a, b) < 0;
const days = (from: Temporal.PlainDate, to: Temporal.PlainDate): number => from.until(to).days;

/** The seasons of the years around today, as climate or hemisphere have them. */
function aroundToday({ mean_C, south, today }: SeasonFacts, rules: SeasonRules): Season[] | null {
  const found = mean_C ? heatingDays(mean_C, rules.heating_limit_C) : null;
  if (mean_C && !found) return null;
  if (!mean_C && south === undefined) return null;
  const given = south ? rules.south : rules.north;
  const start = found ? ofDay(found.start) : given.start;
  const end = found ? ofDay(found.end) : given.end;
  const over_new_year = end < start;
  return [-3, -2, -1, 0, 1, 2].map((shift) => {
    const year = today.year + shift;
    return { start: dayOf(year, start), end: dayOf(over_new_year ? year + 1 : year, end) };
  });
}

const dayOf = (year: number, month_day: string): Temporal.PlainDate => {
  const [month = 1, day = 1] = month_day.split("-").map(Number);
  return Temporal.PlainDate.from({ year, month, day });
};
const ofDay = (day: number): string => new Temporal.PlainDate(2025, 1, 1).add({ days: day }).toString().slice(5);

/**
 * The owner's own seasons: how much earlier or later than the climate they began and ended. Earliest of the last three beginnings, so that
 * what must be done before it is in time; latest of the ends. Without a climate, the year's longest rest from fires divides them.
 */
function fromLog(facts: SeasonFacts, usual: readonly Season[] | null): Season[] | null {
  const { today, timezone } = facts;
  const dateOf = (ms: number): Temporal.PlainDate => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timezone).toPlainDate();
  const stretches = facts.stretches.map(({ first_ms, last_ms, fires }) => ({ start: dateOf(first_ms), end: dateOf(last_ms), fires }));
  const firsts = beginnings(stretches);
  const lasts = endings(stretches, today);
  if (usual) {
    const early = nearest(firsts, usual.map(({ start }) => start));
    const late = nearest(lasts, usual.map(({ end }) => end));
    if (early.length === 0 && late.length === 0) return null;
    const [shift_start, shift_end] = [early.length > 0 ? Math.min(...early.slice(-3)) : 0, late.length > 0 ? Math.max(...late.slice(-3)) : 0];
    return usual.map(({ start, end }) => ({ start: start.add({ days: shift_start }), end: end.add({ days: shift_end }) }))
      .map((season, i, list) => ended(noOverlap(season, list[i + 1]), lasts));
  }
  const [first, last] = [firsts.at(-1), lasts.at(-1)];
  if (!first || !last || stretches.length < 2) return null;
  return [-3, -2, -1, 0, 1, 2].map((shift) => {
    const start = dayOf(today.year + shift, first.toString().slice(5));
    const end = dayOf(today.year + shift, last.toString().slice(5));
    return { start, end: before(end, start) ? end.add({ years: 1 }) : end };
  });
}

interface Stretch extends Season {
  readonly fires: number;
}

/** First fires after a long rest; the very first fire of a log may be anywhere in a season and counts only against a climate. */
const beginnings = (stretches: readonly Stretch[]): Temporal.PlainDate[] =>
  stretches.flatMap(({ start, fires }, i) => {
    const previous = stretches[i - 1];
    return fires >= LEAST_FIRES && previous && days(previous.end, start) >= SAME_SEASON_DAYS ? [start] : [];
  });

const endings = (stretches: readonly Stretch[], today: Temporal.PlainDate): Temporal.PlainDate[] =>
  stretches.flatMap(({ end, fires }, i) => {
    const next = stretches[i + 1];
    const rest = days(end, next ? next.start : today);
    return fires >= LEAST_FIRES && rest >= (next ? SAME_SEASON_DAYS : ENDED_DAYS) ? [end] : [];
  });

/** Days by which each date of the log lies off the nearest usual one; those far off say nothing about this place. */
function nearest(dates: readonly Temporal.PlainDate[], usual: readonly Temporal.PlainDate[]): number[] {
  return dates.flatMap((date) => {
    const off = usual.map((one) => days(one, date)).toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];
    return off !== undefined && Math.abs(off) <= SAME_SEASON_DAYS ? [off] : [];
  });
}

/** A season that is over by the log ended with its last fire. */
function ended(season: Season, lasts: readonly Temporal.PlainDate[]): Season {
  const last = lasts.find((one) => !before(one, season.start) && Math.abs(days(one, season.end)) <= SAME_SEASON_DAYS);
  return last ? { ...season, end: last } : season;
}

const noOverlap = (season: Season, next: Season | undefined): Season =>
  next && !before(season.end.add({ days: 14 }), next.start) ? { ...season, end: next.start.subtract({ days: 14 }) } : season;
