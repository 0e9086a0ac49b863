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

export function limits(heater: HeaterFacts, rules: readonly HeaterRule[] = []): Limits {
  const { source, own } = ownMaximum(heater);
  const ruled = least(...rules.map((rule) => rule.max_load_kg));
  const max_load_kg = least(own, ruled);
  const max_source = max_load_kg === null ? null : ruled !== null && ruled === max_load_kg && ruled !== own ? tightest(rules, ruled) : source;

  const low = Math.max(
    heater.min_load_kg ?? (max_load_kg === null ? 0 : MIN_SHARE * (own ?? max_load_kg)),
    ...rules.map((rule) => rule.min_load_kg ?? 0),
  );
  // A rule that lowers the maximum below the clean minimum leaves no load that is both; the maximum stands and the minimum gives way to it.
  const min_load_kg = max_load_kg === null ? null : Math.min(low, max_load_kg);

  const heating_h = heater.nominal_heating_time_h;
  const byHeatingTime = heating_h && max_load_kg !== null ? Math.max(1, Math.floor(24 / Math.max(heating_h, LEAST_SPACING_H))) * max_load_kg : null;
  const byLoad = max_load_kg === null ? null : 2 * max_load_kg;
  const byDay = heating_h ? least(heater.max_day_kg, byHeatingTime) : (heater.max_day_kg ?? byLoad);
  const max_day_kg = least(byDay, ...rules.map((rule) => rule.max_day_kg));

  const spacing_h = Math.max(heating_h ? Math.max(heating_h, LEAST_SPACING_H) : USUAL_SPACING_H, ...rules.map((rule) => rule.spacing_h ?? 0));
  return { max_load_kg, max_source, min_load_kg, max_day_kg, spacing_h, guessed: max_source === "guess" };
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

/** What the fires of the last day leave of the limits. A fire without a weight counts as a full load. */
export function roomFor(known: Limits, fires: readonly Pick<Fire, "lit_at_ms" | "facts">[], now_ms: number, bans: readonly HeaterRule[] = []): Room {
  const counted = fires.filter((fire) => fire.lit_at_ms <= now_ms && fire.lit_at_ms > now_ms - 24 * HOUR_MS);
  const weight = (fire: Pick<Fire, "facts">): number => fire.facts.load_kg ?? known.max_load_kg ?? 0;
  const burnt_24h_kg = counted.reduce((sum, fire) => sum + weight(fire), 0);
  const ban = bans.find((rule) => rule.no_fire && now_ms >= Date.parse(rule.no_fire.from) && now_ms < Date.parse(rule.no_fire.to));
  if (ban?.no_fire) return { next_load_kg: 0, burnt_24h_kg, not_before_ms: Date.parse(ban.no_fire.to), because: "ban" };

  const last = counted.reduce((latest, fire) => Math.max(latest, fire.lit_at_ms), 0);
  if (last > 0 && now_ms < last + known.spacing_h * HOUR_MS) {
    return { next_load_kg: 0, burnt_24h_kg, not_before_ms: last + known.spacing_h * HOUR_MS, because: "spacing" };
  }
  if (known.max_load_kg === null) return { next_load_kg: null, burnt_24h_kg, not_before_ms: null, because: null };
  const left = known.max_day_kg === null ? known.max_load_kg : known.max_day_kg - burnt_24h_kg;
  if (left < (known.min_load_kg ?? 0)) {
    const oldest = counted.reduce((first, fire) => Math.min(first, fire.lit_at_ms), Number.POSITIVE_INFINITY);
    return { next_load_kg: 0, burnt_24h_kg, not_before_ms: oldest + 24 * HOUR_MS, because: "day" };
  }
  return { next_load_kg: Math.min(known.max_load_kg, left), burnt_24h_kg, not_before_ms: null, because: null };
}
