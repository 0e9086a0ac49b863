/** "How much wood tonight?" From the weather and the house where they are known, always through `limits()`, never below a clean load. */
import { ask, numbers, say, text, type Block, type Text } from "../../answer.ts";
import { lightBy } from "../../firing/times.ts";
import { roomFor } from "../../limits.ts";
import { q } from "../../quantities.ts";
import { findWood } from "../../calculators/reference-data.ts";
import { MASONRY_HEATER_EFFICIENCY, NCV_DRY_MJ_PER_KG, ncv_kWh_per_kg } from "../../reckoning/fuel.ts";
import { heatNeeded_kWh, woodForHeat_kg } from "../../reckoning/house-heat.ts";
import type { WoodFacts } from "../../records/schemas.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { inUnit, readFigures } from "../reading/figures.ts";
import { readSpecies } from "../reading/species.ts";
import { reckonAs } from "./calculate.ts";
import { ladderBlocks, rungLoad } from "./first-fires.ts";
import { perhapsNew } from "./new-heater.ts";

export interface LoadGiven {
  readonly low_C?: number;
  readonly high_C?: number;
  readonly moisture_pct_wet?: number;
  readonly species?: string;
}

/** A day's range when only the low is known; common practice, no source. */
const USUAL_DAY_RANGE_K = 7;
const TOO_WET_PCT = 25;
const DAMP_PCT = 20;
/** Below this share of the smallest clean load a fire is not worth lighting. */
const SKIP_SHARE = 0.55;

export interface LoadAdvice {
  /** kilograms for the next fire; null when nothing is known to rest on, 0 when none should be lit */
  readonly load_kg: number | null;
  readonly range_kg: readonly [number, number] | null;
  readonly fires: 0 | 1 | 2;
  readonly need_kg: number | null;
  readonly verdict: "reckoned" | "between" | "skip" | "wait" | "no-figure" | "too-wet" | "more-than-heater" | "ladder";
}

export function adviseLoad(context: Context, given: LoadGiven): LoadAdvice & { wood: WoodFacts | null; outside: { low_C: number; high_C: number } | null } {
  const { limits, snapshot, now_ms } = context;
  const wood = woodMeant(context, given);
  const room = roomFor(limits, snapshot.fires, now_ms, context.rules);
  const outside = outsideOf(context, given);
  const base = { wood, outside, need_kg: null, range_kg: null };
  const moisture = given.moisture_pct_wet ?? wood?.moisture_pct_wet;
  const need_kg = needOf(context, given, moisture, outside);
  if (limits.max_load_kg === null) return { ...base, need_kg, load_kg: null, fires: 0, verdict: "no-figure" };
  if (moisture !== undefined && moisture > TOO_WET_PCT) return { ...base, need_kg, load_kg: 0, fires: 0, verdict: "too-wet" };
  if (room.next_load_kg === 0) return { ...base, need_kg, load_kg: 0, fires: 0, verdict: "wait" };

  const rung = rungLoad(context);
  if (rung) {
    const high_kg = Math.min(rung.high_kg, room.next_load_kg ?? rung.high_kg);
    return { ...base, need_kg, load_kg: high_kg, range_kg: [Math.min(rung.low_kg, high_kg), high_kg], fires: high_kg > 0 ? 1 : 0, verdict: "ladder" };
  }

  const most = room.next_load_kg ?? limits.max_load_kg;
  const min = Math.min(limits.min_load_kg ?? 0, most);
  if (need_kg === null) {
    const middle = min + 0.6 * (most - min);
    return { ...base, load_kg: down(middle), range_kg: [down(min), down(most)], fires: 1, verdict: "between" };
  }
  if (need_kg < SKIP_SHARE * min) return { ...base, need_kg, load_kg: 0, fires: 0, verdict: "skip" };
  const day_kg = (limits.max_day_kg ?? 2 * limits.max_load_kg) - room.burnt_24h_kg;
  const fires = need_kg > most && day_kg >= 0.75 * Math.min(need_kg, 2 * most) && day_kg >= 2 * min ? 2 : 1;
  const each = Math.min(most, day_kg / fires, Math.max(min, need_kg / fires));
  const verdict = need_kg > fires * most + 0.5 ? "more-than-heater" : "reckoned";
  const { low, high, typical } = MASONRY_HEATER_EFFICIENCY;
  return {
    ...base, need_kg, fires, verdict, load_kg: down(each),
    range_kg: [down(clamp((each * typical) / high, min, most)), down(clamp((each * typical) / low, min, most))],
  };
}

/** To the half kilogram below: a scale shows no more, and a limit is not rounded up over. */
const down = (kg: number): number => Math.floor(kg * 2 + 1e-9) / 2;
const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

function needOf(context: Context, given: LoadGiven, moisture: number | undefined, outside: { low_C: number; high_C: number } | null): number | null {
  const { house } = context.snapshot.home;
  if (house.heat_loss_W_per_K === undefined || !outside) return null;
  const mean_C = (outside.low_C + outside.high_C) / 2;
  const heat_kWh = heatNeeded_kWh(house.heat_loss_W_per_K, house.wanted_C ?? 20, mean_C, 24, house.other_heat_W ?? 0);
  const ncv = ncv_kWh_per_kg(ncvDry(given.species), moisture ?? 17);
  return woodForHeat_kg(heat_kWh, ncv, MASONRY_HEATER_EFFICIENCY.typical);
}

function ncvDry(species: string | undefined): number {
  if (!species) return NCV_DRY_MJ_PER_KG.hardwood.typical;
  try {
    return findWood(species).kind === "softwood" ? NCV_DRY_MJ_PER_KG.softwood.typical : NCV_DRY_MJ_PER_KG.hardwood.typical;
  } catch {
    return NCV_DRY_MJ_PER_KG.hardwood.typical;
  }
}

function outsideOf(context: Context, given: LoadGiven): { low_C: number; high_C: number } | null {
  const today = context.snapshot.home.weather[0];
  const low_C = given.low_C ?? today?.low_C;
  if (low_C === undefined) return null;
  return { low_C, high_C: given.high_C ?? (given.low_C === undefined ? today?.high_C : undefined) ?? low_C + USUAL_DAY_RANGE_K };
}

const woodMeant = (context: Context, given: LoadGiven): WoodFacts | null =>
  context.snapshot.home.wood.find((wood) => given.species !== undefined && wood.species === given.species) ?? context.snapshot.home.wood[0] ?? null;

export function loadOutcome(context: Context, given: LoadGiven = {}): Outcome {
  const counted = countOutcome(context, given);
  if (counted) return counted;
  const { limits, snapshot, now_ms } = context;
  const advice = adviseLoad(context, given);
  const { load_kg, verdict, range_kg, outside, wood } = advice;
  const kg = (value: number): Text["args"] => ({ load: q(value, "kg", { digits: 1 }) });
  const room = roomFor(limits, snapshot.fires, now_ms, context.rules);
  const by = lightBy(snapshot.person.facts.asleep, context.reader.timezone, now_ms, snapshot.fires, load_kg || limits.max_load_kg || 12);

  const headline: Text =
    verdict === "no-figure" ? text("load.no-figure")
    : verdict === "too-wet" ? text("load.too-wet", { moisture: q(given.moisture_pct_wet ?? wood?.moisture_pct_wet ?? 0, "pct") })
    : verdict === "wait" ? text(`load.wait.${room.because ?? "spacing"}`, { until: { at_ms: room.not_before_ms ?? now_ms, show: "day-time" } })
    : verdict === "ladder" ? text(load_kg ? "load.ladder" : "load.ladder-stop", kg(load_kg ?? 0))
    : verdict === "skip" ? text("load.skip", { min: q(limits.min_load_kg ?? 0, "kg", { digits: 1 }) })
    : verdict === "between" ? text("load.between", { ...kg(load_kg ?? 0), low: q(range_kg?.[0] ?? 0, "kg", { digits: 1 }), high: q(range_kg?.[1] ?? 0, "kg", { digits: 1 }) })
    : text(advice.fires === 2 ? "load.two" : "load.one", { ...kg(load_kg ?? 0), spacing: q(limits.spacing_h, "h") });

  return {
    draft: {
      topic: "load-size",
      cautions: ["over-firing", ...(verdict === "skip" || verdict === "between" ? [] : ["close-flue"])],
      headline,
      blocks: blocks(
        load_kg !== null && numbers({ key: "load_kg", label: text("number.load"), quantity: q(load_kg, "kg", { digits: 1, ...(range_kg && load_kg > 0 ? { low: range_kg[0], high: range_kg[1] } : {}) }) }),
        ...(verdict === "ladder" ? ladderBlocks(context) : [...(load_kg ? perhapsNew(context) : []), reason(context, advice)]),
        verdict === "more-than-heater" && say(text("load.more-than-heater", { need: q(advice.need_kg ?? 0, "kg", { digits: 0 }) }), "over-firing", "close-flue"),
        heardTree(context) && verdict !== "wait" && say(text("load.species"), "over-firing"),
        limitLine(context),
        load_kg ? (PIECES.test(context.text) ? piecesLine(load_kg, given.species ?? wood?.species) : basketLine(load_kg, wood)) : null,
        wood?.moisture_pct_wet !== undefined && wood.moisture_pct_wet > DAMP_PCT && verdict !== "too-wet" && say(text("load.damp", { moisture: q(wood.moisture_pct_wet, "pct") })),
        load_kg && by ? say(text(by.too_late ? "light-by.late" : by.to_black.fires > 0 ? "light-by.own" : "light-by.usual", {
          latest: { at_ms: by.latest_ms, show: "time" }, bedtime: { at_ms: by.bedtime_ms, show: "time" }, hours: q(by.to_black.hours, "h"), fires: by.to_black.fires,
        }), "close-flue") : null,
        sharpen(context, outside !== null),
      ),
    },
    state: { reckoned: { topic: "load-size", inputs: { ...given, load_kg }, at_ms: now_ms } },
  };
}

/** "And if it is spruce?": the kilograms hardly move, and that is the answer. */
const heardTree = ({ text: words }: Context): boolean => words.length <= 60 && /^\W*(?:and|or|what|how|but|if)\b/i.test(words) && !/\bhow (?:much|many)\b/i.test(words) && readSpecies(words).some(({ weak }) => !weak);

function reason(context: Context, advice: ReturnType<typeof adviseLoad>): Block | null {
  const { house } = context.snapshot.home;
  if (advice.need_kg === null || !advice.outside || house.heat_loss_W_per_K === undefined) return null;
  return say(text("load.reason", {
    low: q(advice.outside.low_C, "C"), high: q(advice.outside.high_C, "C"), wanted: q(house.wanted_C ?? 20, "C"),
    loss: q(house.heat_loss_W_per_K, "W/K"), need: q(advice.need_kg, "kg", { digits: 0 }),
  }));
}

export function limitLine(context: Context): Block | null {
  const { limits } = context;
  if (limits.max_load_kg === null) return say(text("load.half-firebox"), "over-firing");
  return say(text(`load.limit.${limits.max_source === "guess" && context.heater?.facts.masonry_kg === undefined ? "guess-said" : (limits.max_source ?? "guess")}`, {
    max: q(limits.max_load_kg, "kg", { digits: 1 }), min: q(limits.min_load_kg ?? 0, "kg", { digits: 1 }), day: q(limits.max_day_kg ?? 0, "kg", { digits: 1 }),
  }), "over-firing");
}

const PIECES = /\bhow (?:many|much) (?:logs?|pieces?|splits?|sticks?|billets?|chunks?)\b/i;
/** A split of the usual size: 33 cm long, 9 cm thick, its section 0.7 of the square. Common practice, no source. */
const PIECE_M3 = 0.33 * 0.7 * 0.09 ** 2;

/** Of a weight, as a whole number of pieces: "how many logs is 12 kg". */
const OF_A_WEIGHT = /\bhow (?:many|much) (?:logs?|pieces?|splits?|sticks?|billets?|chunks?)\b.{0,12}\b(?:is|are|makes?|in|equals?)\b(?!.*\b(?:tonight|today|burn|need|should)\b)/i;

function piecesOf(load_kg: number, species: string): { count: number; piece_kg: number } | null {
  const done = reckonAs(species, "stack", { volume_m3_solid: 1, moisture_pct_wet: 17 });
  if (!done.ok) return null;
  const piece_kg = PIECE_M3 * Number(done.result.mass_kg);
  return { count: Math.round(load_kg / piece_kg), piece_kg };
}

function piecesLine(load_kg: number, species = "hardwood"): Block | null {
  const pieces = piecesOf(load_kg, species);
  return pieces && say(text("load.pieces", { count: pieces.count, piece: q(pieces.piece_kg, "kg", { digits: 1 }) }));
}

/** What a weight is in pieces; null for more than the heater takes, which the answer on loads says first. */
function countOutcome(context: Context, given: LoadGiven): Outcome | null {
  if (!OF_A_WEIGHT.test(context.text)) return null;
  const weight = readFigures(context.text).find(({ dimension }) => dimension === "mass");
  const load_kg = weight ? (inUnit(weight, "kg") ?? 0) : 0;
  if (load_kg > (context.limits.max_load_kg ?? Infinity)) return null;
  const species = given.species ?? woodMeant(context, given)?.species;
  const pieces = piecesOf(load_kg, species ?? "hardwood");
  if (!pieces || pieces.count < 1) return null;
  return {
    draft: {
      topic: "load-size", cautions: ["over-firing"],
      headline: text("load.pieces", { count: pieces.count, piece: q(pieces.piece_kg, "kg", { digits: 1 }) }),
      blocks: blocks(limitLine(context)),
    },
  };
}

/** Baskets through the person's own weighing; a basket varies by a tenth or so. */
function basketLine(load_kg: number, wood: WoodFacts | null): Block | null {
  if (!wood?.basket_kg) return say(text("load.weigh"));
  const count = load_kg / wood.basket_kg;
  return say(text("load.baskets", { count: Math.round(count * 4) / 4, basket: q(wood.basket_kg, "kg", { digits: 1, low: wood.basket_kg * 0.9, high: wood.basket_kg * 1.1 }) }));
}

/** What is not known and would make the figure better, one thing at a time. */
function sharpen(context: Context, weather: boolean): Block | null {
  const { house } = context.snapshot.home;
  const missing: Text[] = [];
  if (context.limits.max_load_kg === null || context.limits.guessed) missing.push(text("sharpen.max-load"));
  if (!weather) missing.push(text("sharpen.weather"));
  if (house.heat_loss_W_per_K === undefined) missing.push(text("sharpen.house"));
  if (context.snapshot.home.wood[0]?.moisture_pct_wet === undefined) missing.push(text("sharpen.moisture"));
  if (missing.length === 0) return null;
  return missing[0]?.id === "sharpen.max-load" && context.limits.max_load_kg === null
    ? ask("max-load", text("load.ask-max"), [], "over-firing")
    : say(text("sharpen", { what: missing.slice(0, 2) }));
}
