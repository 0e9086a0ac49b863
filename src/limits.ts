/**
 * The one gate for every kilogram Gleed ever names. The heater's own figures (builder's sheet, data plate, reckoned, guess) come first;
 * local law and the builder's rules narrow them, by minimum and AND only. Nothing widens a limit.
 */
import type { Fire, HeaterRule } from "./records/types.ts";
import type { HeaterFacts } from "./records/schemas.ts";

/** `said`: the owner named a figure and not where it comes from */
export type LimitSource = "said" | "sheet" | "plate" | "reckoned" | "guess" | "builder" | "law" | "group";

export interface Limits {
  /** null: nothing known that a kilogram could rest on; then half the firebox height is the only advice */
  readonly max_load_kg: number | null;
  readonly max_source: LimitSource | null;
  /** smallest load that still burns hot and clean */
  readonly min_load_kg: number | null;
  readonly max_day_kg: number | null;
  /** shortest time from lighting to lighting */
  readonly spacing_h: number;
  /** true when the maximum was guessed from the masonry's weight: half of firebox height stands beside it */
  readonly guessed: boolean;
  /** what a fire without a weight counts as: the heater's own full load, however small a rule has made the next one */
  readonly unweighed_kg: number | null;
  /** the heater's own day without any rule: a rule that makes fires smaller makes no room for one more */
  readonly own_day: { readonly max_day_kg: number; readonly min_load_kg: number } | null;
}

/** EN 15544: nominal output times heating time over 3.25 kWh/kg (4.16 kWh/kg at 78 %). From memory of clause 4.2.1. */
const KWH_PER_KG_EN15544 = 3.25;
/** One fire, kg of wood per kg of masonry: start figure for a heater without papers; common practice, no source. */
const GUESS_PER_MASONRY = 0.005;
/** Ceiling of one fire for any heater: 1.0 kg per 100 kg raises the mean by about 110 K; common practice, by heat balance. */
const CEILING_PER_MASONRY = 0.01;
/** EN 15544 smallest load: half the largest. From memory of clause 4.2.2. */
const MIN_SHARE = 0.5;
/** Start to start when nothing is said: usual 10 to 12 h, never under 8; common practice, no source. */
const USUAL_SPACING_H = 12;
const LEAST_SPACING_H = 8;

const least = (...values: (number | null | undefined)[]): number | null => {
  const known = values.filter((v): v is number => typeof v === "number" && Number.isFinite(v));
  return known.length > 0 ? Math.min(...known) : null;
};

/** A rule for a kind of heater stands on every heater of its builder and holds for those of that kind. */
export const holdsFor = (rule: HeaterRule, heater: HeaterFacts): boolean => rule.kind === undefined || rule.kind === heater.kind;

export function limits(heater: HeaterFacts, given: readonly HeaterRule[] = []): Limits {
  const rules = given.filter((rule) => holdsFor(rule, heater));
  const { source, own } = ownMaximum(heater);
  const ruled = least(...rules.map((rule) => rule.max_load_kg));
  const max_load_kg = least(own, ruled);
  const max_source = max_load_kg === null ? null : ruled !== null && ruled === max_load_kg && ruled !== own ? tightest(rules, ruled) : source;

  const low = heater.min_load_kg ?? (max_load_kg === null ? 0 : MIN_SHARE * (own ?? max_load_kg));
  // A rule that lowers the maximum below the clean minimum leaves no load that is both; the maximum stands and the minimum gives way to it.
  const min_load_kg = max_load_kg === null ? null : Math.min(Math.max(low, ...rules.map((rule) => rule.min_load_kg ?? 0)), max_load_kg);

  const max_day_kg = least(dayOf(heater, max_load_kg), ...rules.map((rule) => rule.max_day_kg));
  const own_day_kg = own === null ? null : dayOf(heater, own);
  const own_day = own === null || own_day_kg === null ? null : { max_day_kg: own_day_kg, min_load_kg: Math.min(low, own) };

  const heating_h = heater.nominal_heating_time_h;
  const spacing_h = Math.max(heating_h ? Math.max(heating_h, LEAST_SPACING_H) : USUAL_SPACING_H, ...rules.map((rule) => rule.spacing_h ?? 0));
  return { max_load_kg, max_source, min_load_kg, max_day_kg, spacing_h, guessed: max_source === "guess", unweighed_kg: own ?? max_load_kg, own_day };
}

function dayOf({ nominal_heating_time_h, max_day_kg }: HeaterFacts, max_load_kg: number | null): number | null {
  const fires = nominal_heating_time_h ? Math.max(1, Math.floor(24 / Math.max(nominal_heating_time_h, LEAST_SPACING_H))) : 2;
  const byLoad = max_load_kg === null ? null : fires * max_load_kg;
  return nominal_heating_time_h ? least(max_day_kg, byLoad) : (max_day_kg ?? byLoad);
}

function ownMaximum(heater: HeaterFacts): { own: number | null; source: LimitSource | null } {
  const { max_load_kg, max_load_source, masonry_kg, nominal_output_kW, nominal_heating_time_h } = heater;
  const ceiling = masonry_kg === undefined ? null : CEILING_PER_MASONRY * masonry_kg;
  const guess = masonry_kg === undefined ? null : GUESS_PER_MASONRY * masonry_kg;
  if (max_load_kg !== undefined) {
    const source = max_load_source ?? "said";
    if (source === "sheet" || source === "plate") return { own: max_load_kg, source };
    return { own: least(max_load_kg, source === "guess" ? guess : ceiling), source };
  }
  if (nominal_output_kW !== undefined && nominal_heating_time_h !== undefined) {
    return { own: least((nominal_output_kW * nominal_heating_time_h) / KWH_PER_KG_EN15544, ceiling), source: "reckoned" };
  }
  return { own: guess, source: guess === null ? null : "guess" };
}

const tightest = (rules: readonly HeaterRule[], value: number): LimitSource => rules.find((rule) => rule.max_load_kg === value)?.from ?? "builder";

export interface Room {
  /** what may still be burnt in the next fire, or 0 when it has to wait; null when nothing is known */
  readonly next_load_kg: number | null;
  readonly burnt_24h_kg: number;
  /** earliest lighting, or null when it may be now */
  readonly not_before_ms: number | null;
  /** what holds it back */
  readonly because: "spacing" | "day" | "ban" | null;
}

const HOUR_MS = 3_600_000;

/**
 * What the fires of the last day leave of the limits. A fire without a weight counts as a full load. Whatever holds the next fire back,
 * it waits for the latest of all: a ban that ends early shortens no spacing.
 */
export function roomFor(known: Limits, fires: readonly Pick<Fire, "lit_at_ms" | "facts">[], now_ms: number, bans: readonly HeaterRule[] = []): Room {
  const counted = fires.filter((fire) => fire.lit_at_ms <= now_ms && fire.lit_at_ms > now_ms - 24 * HOUR_MS);
  const weight = (fire: Pick<Fire, "facts">): number => fire.facts.load_kg ?? known.unweighed_kg ?? 0;
  const burnt_24h_kg = counted.reduce((sum, fire) => sum + weight(fire), 0);
  const left = known.max_load_kg === null ? null : known.max_day_kg === null ? known.max_load_kg : known.max_day_kg - burnt_24h_kg;

  const spaced_ms = counted.reduce((latest, { lit_at_ms }) => Math.max(latest, lit_at_ms), Number.NEGATIVE_INFINITY) + known.spacing_h * HOUR_MS;
  const own = known.own_day;
  const full = (left !== null && left < (known.min_load_kg ?? 0)) || (own !== null && own.max_day_kg - burnt_24h_kg < own.min_load_kg);
  const day_ms = full && counted.length > 0 ? Math.min(...counted.map(({ lit_at_ms }) => lit_at_ms)) + 24 * HOUR_MS : Number.NEGATIVE_INFINITY;
  const allowed_ms = Math.max(now_ms, spaced_ms, day_ms);
  const not_before_ms = afterBans(bans, allowed_ms);
  const banned = afterBans(bans, now_ms) > now_ms;
  if (not_before_ms > now_ms) {
    const because = banned || not_before_ms > allowed_ms ? "ban" : spaced_ms > now_ms ? "spacing" : "day";
    return { next_load_kg: 0, burnt_24h_kg, not_before_ms, because };
  }
  return { next_load_kg: left === null ? null : Math.max(0, Math.min(known.max_load_kg ?? 0, left)), burnt_24h_kg, not_before_ms: null, because: null };
}

/** The first instant from here on that no ban covers. */
function afterBans(bans: readonly HeaterRule[], from_ms: number): number {
  let at_ms = from_ms;
  for (let i = 0; i <= bans.length; i++) {
    const until = bans.flatMap(({ no_fire }) => (no_fire && at_ms >= Date.parse(no_fire.from) && at_ms < Date.parse(no_fire.to) ? [Date.parse(no_fire.to)] : []));
    if (until.length === 0) return at_ms;
    at_ms = Math.max(...until);
  }
  return at_ms;
}
