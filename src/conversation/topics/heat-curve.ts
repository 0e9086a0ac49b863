/** "When is it warmest, how long will it last, what does an open damper cost?" One fire through the heater model, with its ranges. */
import { ask, numbers, say, text, type Block, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { pictureOf } from "../../pictures/charts.ts";
import { q } from "../../quantities.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { readTimes } from "../reading/times.ts";
import { absenceOutcome, absenceSaid } from "./absence.ts";
import { assumedLine, clockIso, figureOf, HOUR_MS, outdoors, type Outdoors, toTenMinutes, USUAL_MOISTURE_PCT, zonedAt } from "./around.ts";
import { failed } from "./calculate.ts";
import { closeDownOutcome } from "./close-down.ts";
import { fitOutcome, readingsSaid } from "./fit.ts";
import { adviseLoad } from "./load-size.ts";
import { touchOutcome, touchSaid } from "./touch.ts";

/** A fire of the log that is still the one meant. */
const RECENT_H = 36;
const SHOWN_H = 36;
const USUAL_ROOM_C = 20;
/** What the room may be off, as in the plan. Judgement. */
const ROOM_OFF_K = 1.5;
/** Heat to the room of the net heat of the wood; EN 15544 asks for 0.78 at least. */
const EFFICIENCY = 0.8;

const COST = /\b(costs?|lose|loses|waste|wastes)\b/i;

interface Point {
  readonly t_h: number;
  readonly output_kW: number;
  readonly facing_C: number;
  readonly room_C: number;
}
interface Fire {
  readonly load_kg: number;
  readonly moisture_pct_wet: number;
  readonly lit_at_ms: number;
  /** the first time of the message is when it is lit */
  readonly lit_said: boolean;
  readonly assumed: readonly Text[];
  /** more than the heater may take was asked for */
  readonly over_kg: number | null;
}

export function heatCurveOutcome(context: Context, heard: Hearing): Outcome {
  const readings = readingsSaid(context);
  if (readings.length > 1) return fitOutcome(context, readings);
  if (touchSaid(context.text)) return touchOutcome(context, heard);
  const absence = absenceSaid(context, heard);
  if (absence) return absenceOutcome(context, absence);
  const fire = fireMeant(context, heard);
  if (!fire && /\b(damper|flue)\b/i.test(context.text)) return closeDownOutcome(context, null);
  if (!fire) return { draft: { topic: "heat-curve", headline: text("curve.ask"), blocks: [ask("max-load", text("load.ask-max"), [], "over-firing")] } };
  return curveOutcome(context, heard, fire);
}

function fireMeant(context: Context, heard: Hearing): Fire | null {
  const { snapshot, limits, now_ms, text: words, reader } = context;
  const last = snapshot.fires.find((fire) => fire.lit_at_ms <= now_ms && fire.lit_at_ms > now_ms - RECENT_H * HOUR_MS);
  const assumed: Text[] = [];
  const lean = /\b(if|will|would|should|shall|going to)\b/i.test(words) ? "future" : "nearest";
  const times = readTimes(words, now_ms, reader.timezone, { lean, locale: reader.locale }).filter((time) => time.kind === "instant");
  const lit = /\b(lit|light|lighting|strike|fire|fired|start|burn|burning|burnt|burned)\b/i.test(words) ? times[0]?.at_ms : undefined;
  const meansLast = lit === undefined && heard.load_kg === undefined && last !== undefined;
  const said_kg = heard.load_kg ?? (meansLast ? last?.facts.load_kg : undefined);
  const advised_kg = said_kg === undefined ? adviseLoad(context, heard.load).load_kg || limits.max_load_kg : null;
  const wanted_kg = said_kg ?? advised_kg ?? null;
  if (wanted_kg === null) return null;
  if (said_kg === undefined) assumed.push(text("assumed.load", { load: q(wanted_kg, "kg", { digits: 1 }) }));
  const most_kg = limits.max_load_kg;
  const over_kg = most_kg !== null && wanted_kg > most_kg ? wanted_kg : null;
  const moisture = heard.load.moisture_pct_wet ?? (meansLast ? last?.facts.moisture_pct_wet : undefined) ?? snapshot.home.wood[0]?.moisture_pct_wet;
  if (moisture === undefined) assumed.push(text("assumed.moisture", { moisture: q(USUAL_MOISTURE_PCT, "pct") }));
  const lit_at_ms = lit ?? (meansLast ? last?.lit_at_ms : undefined) ?? zonedAt(context, now_ms).round({ smallestUnit: "hour", roundingMode: "ceil" }).epochMilliseconds;
  if (lit === undefined && !meansLast) assumed.push(text("assumed.lit", { at: { at_ms: lit_at_ms, show: "time" } }));
  return { load_kg: over_kg === null ? wanted_kg : (most_kg ?? wanted_kg), over_kg, moisture_pct_wet: Math.min(60, moisture ?? USUAL_MOISTURE_PCT), lit_at_ms, lit_said: lit !== undefined, assumed };
}

function curveOutcome(context: Context, heard: Hearing, asked: Fire): Outcome {
  const { house } = context.snapshot.home;
  const facts = context.heater?.facts ?? {};
  const outside = outdoors(context, outsideSaid(heard));
  const kept = keptWarm(house, asked, outside);
  const inputsFor = (lit_at_ms: number) => ({
    heater: facts, house: { ...houseKeys(house), ...kept }, load_kg: asked.load_kg, moisture_pct_wet: asked.moisture_pct_wet, lit_at: clockIso(context, lit_at_ms),
    outside: { low_C: outside.low_C, high_C: outside.high_C },
  });
  const when = timesAsked(context, asked.lit_at_ms, asked.lit_said);
  const tried = reckon("heat-curve", inputsFor(asked.lit_at_ms));
  if (!tried.ok) return failed("heat-curve", tried.error);
  const fire = when.backwards === null ? asked : { ...asked, lit_at_ms: toTenMinutes(when.backwards - Number(tried.result.peak_output_h) * HOUR_MS), assumed: asked.assumed.filter(({ id }) => id !== "assumed.lit") };
  const inputs = inputsFor(fire.lit_at_ms);
  const done = fire === asked ? tried : reckon("heat-curve", inputs);
  if (!done.ok) return failed("heat-curve", done.error);
  const { result } = done;
  const series = result.series as readonly Point[];
  const at = (t_h: number): number => toTenMinutes(fire.lit_at_ms + t_h * HOUR_MS);
  const spread = (key: string) => {
    const { value, low = value, high = value } = figureOf(result, key, "h", 1);
    return { low, value, high };
  };
  const peak = spread("peak_output_h");
  const black = spread("bed_black_h");
  const half_h = result.half_output_h as number | undefined;
  const damper = facts.shut_off_damper !== false && /\b(damper|plate|slide|flue)\b/i.test(context.text) ? damperCost(context, inputs, result) : null;
  const lasts = half_h === undefined ? text("curve.lasts-long") : text("curve.lasts", { half: figureOf(result, "half_output_h", "h", 0), at: { at_ms: at(half_h), show: "day-time" } });
  const warmest = text("curve.headline", { at: { at_ms: at(peak.value), show: "day-time" }, early: { at_ms: at(peak.low), show: "time" }, late: { at_ms: at(peak.high), show: "time" } });
  const isCost = damper !== null && COST.test(context.text);
  const isLast = !isCost && /\bhow long\b/i.test(context.text);
  const assumed = [
    ...fire.assumed,
    ...(facts.masonry_kg === undefined || (facts.wall_mm === undefined && facts.facing_m2 === undefined) ? [text("assumed.heater")] : []),
    ...(house.heat_loss_W_per_K === undefined ? [text("assumed.house")] : []),
    ...(kept ? [text("assumed.kept-warm", { wanted: q(house.wanted_C ?? USUAL_ROOM_C, "C") })] : []),
    ...(outside.from === "climate" ? [text("assumed.climate")] : outside.from === "assumed" ? [text("assumed.weather", { low: q(outside.low_C, "C"), high: q(outside.high_C, "C") })] : []),
  ];
  return {
    draft: {
      topic: "heat-curve",
      cautions: ["close-flue", ...(damper ? ["carbon-monoxide"] : []), ...(fire.over_kg === null ? [] : ["over-firing"])],
      headline: when.backwards !== null
        ? text("curve.light-at", { at: { at_ms: fire.lit_at_ms, show: "day-time" }, early: { at_ms: toTenMinutes(when.backwards - peak.high * HOUR_MS), show: "time" }, late: { at_ms: toTenMinutes(when.backwards - peak.low * HOUR_MS), show: "time" } })
        : isCost ? damper.cost : isLast ? lasts : warmest,
      blocks: blocks(
        fire.over_kg !== null && say(text("curve.over", { wanted: q(fire.over_kg, "kg", { digits: 1 }), most: q(fire.load_kg, "kg", { digits: 1 }) }), "over-firing"),
        damper && !isCost && say(damper.cost, "close-flue", "carbon-monoxide"),
        damper && say(text("curve.damper-price"), "close-flue", "carbon-monoxide"),
        (isCost || isLast) && say(warmest),
        !isLast && say(lasts),
        when.asked !== null && pointLine(series, fire.lit_at_ms, when.asked, house.heat_loss_W_per_K !== undefined),
        say(text("curve.black", { early: { at_ms: at(black.low), show: "time" }, late: { at_ms: at(black.high), show: "time" } }), "close-flue"),
        say(text("curve.face", { face: figureOf(result, "peak_facing_C", "C", 0) })),
        numbers(
          { key: "load_kg", label: text("number.load_kg"), quantity: q(fire.load_kg, "kg", { digits: 1 }) },
          { key: "peak_output_h", label: text("number.peak_output_h"), quantity: figureOf(result, "peak_output_h", "h", 1) },
          ...(half_h === undefined ? [] : [{ key: "half_output_h", label: text("number.half_output_h"), quantity: figureOf(result, "half_output_h", "h", 1) }]),
          { key: "given_24h_kWh", label: text("number.given_24h_kWh"), quantity: figureOf(result, "given_24h_kWh", "kWh", 0) },
          { key: "bed_black_h", label: text("number.bed_black_h"), quantity: figureOf(result, "bed_black_h", "h", 1) },
          { key: "peak_facing_C", label: text("number.peak_facing_C"), quantity: figureOf(result, "peak_facing_C", "C", 0) },
        ),
        {
          kind: "picture", cautions: [],
          picture: pictureOf("heat-curve", { lit_at_ms: fire.lit_at_ms, bed_black_h: black, peak_output_h: peak, series: thinned(series) }),
        },
        assumedLine(assumed),
      ),
    },
    state: { reckoned: { topic: "heat-curve", calculator: "heat-curve", inputs: { load_kg: fire.load_kg, lit_at_ms: fire.lit_at_ms }, at_ms: context.now_ms } },
  };
}

/** Half hours while much happens, whole hours later. */
const thinned = (series: readonly Point[]): Point[] => series.filter(({ t_h }) => t_h <= SHOWN_H && t_h % (t_h < 12 ? 0.5 : 1) === 0);

/** A bare "16 to 20" beside a load is no weather; degrees are, and a range below zero is. */
function outsideSaid(heard: Hearing): { low_C?: number; high_C?: number } {
  const range = heard.figures.find((figure) => figure.dimension === null && figure.low !== undefined && figure.low < 0 && (figure.high ?? 99) < 30);
  if (heard.load.low_C !== undefined && heard.load.low_C < 35) return { low_C: heard.load.low_C, ...(heard.load.high_C !== undefined && heard.load.high_C < 45 ? { high_C: heard.load.high_C } : {}) };
  return range ? { low_C: range.low as number, ...(range.high === undefined ? {} : { high_C: range.high }) } : {};
}

export const houseKeys = (house: Context["snapshot"]["home"]["house"]) => {
  const { vented_hood: _hood, hood_interlock: _interlock, ventilation: _ventilation, ...heat } = house;
  return heat;
};

/**
 * Other heat, beside this one fire, that keeps the room near what is wanted: nobody lives in a room that one small fire leaves cold.
 * Null where the fire and the other heat on record suffice, or the heat loss is unknown.
 */
function keptWarm(house: Context["snapshot"]["home"]["house"], fire: Fire, outside: Outdoors): { other_heat_W: number } | null {
  if (house.heat_loss_W_per_K === undefined) return null;
  const fuel = reckon("fuel", { load_kg: fire.load_kg, moisture_pct_wet: fire.moisture_pct_wet, efficiency: EFFICIENCY });
  if (!fuel.ok) return null;
  const need_W = house.heat_loss_W_per_K * ((house.wanted_C ?? USUAL_ROOM_C) - (outside.low_C + outside.high_C) / 2);
  const other_heat_W = Math.round(need_W - Number(fuel.result.useful_kWh) / 0.024);
  return other_heat_W > (house.other_heat_W ?? 0) ? { other_heat_W } : null;
}

/** "Nicest at nine, when do I light?" asks backwards from a time; "how warm at six?" asks forwards. */
function timesAsked(context: Context, lit_at_ms: number, lit_said: boolean): { backwards: number | null; asked: number | null } {
  const { text: words, now_ms, reader } = context;
  const times = readTimes(words, now_ms, reader.timezone, { lean: "future", locale: reader.locale });
  const backwards = /\b(when|what time)\b[^.?!]*\b(should|shall|must|do|need|have)\b[^.?!]*\b(i|we)\b[^.?!]*\b(light|strike|start|fire)\b/i.test(words) && /\b(warm\w*|hot\w*|nice\w*|best|peak)\b/i.test(words);
  const instant = times.find((time) => time.kind === "instant");
  if (backwards && instant) return { backwards: instant.at_ms, asked: null };
  const morning = /\b(morning|dawn|breakfast|wake|daybreak)\b/i.test(words);
  const instants = times.filter((time) => time.kind === "instant");
  const later = instants.slice(lit_said ? 1 : 0).find((time) => time.at_ms > lit_at_ms + HOUR_MS)?.at_ms;
  const dawn = zonedAt(context, lit_at_ms).add({ days: 1 }).withPlainTime(context.snapshot.person.facts.asleep?.to ?? "06:30").epochMilliseconds;
  return { backwards: null, asked: later ?? (morning ? dawn : null) };
}

function pointLine(series: readonly Point[], lit_at_ms: number, at_ms: number, withRoom: boolean): Block | null {
  const point = series[Math.round((4 * (at_ms - lit_at_ms)) / HOUR_MS)];
  if (!point) return null;
  const rise = point.facing_C - point.room_C;
  return say(text(withRoom ? "curve.at-room" : "curve.at", {
    at: { at_ms, show: "day-time" },
    face: q(point.facing_C, "C", { low: point.room_C + 0.75 * rise, high: point.room_C + 1.25 * rise }),
    output: q(point.output_kW, "kW", { digits: 1, low: point.output_kW * 0.75, high: point.output_kW * 1.25 }),
    ...(withRoom ? { room: q(point.room_C, "C", { low: point.room_C - ROOM_OFF_K, high: point.room_C + ROOM_OFF_K }) } : {}),
  }));
}

/** What the damper left open till morning costs, and that it is never a reason to close it early. */
function damperCost(context: Context, inputs: Record<string, unknown>, closed: Record<string, unknown>): { readonly cost: Text } | null {
  const lit_ms = Date.parse(String(inputs.lit_at));
  const morning_h = (zonedAt(context, lit_ms).add({ days: 1 }).withPlainTime(context.snapshot.person.facts.asleep?.to ?? "06:30").epochMilliseconds - lit_ms) / HOUR_MS;
  const open = reckon("heat-curve", { ...inputs, damper_closed_after_h: Math.min(48, Math.max(Number(closed.bed_black_h), morning_h)) });
  if (!open.ok) return null;
  const cost_kWh = Math.max(0, Number(open.result.flue_loss_kWh) - Number(closed.flue_loss_kWh));
  const share_pct = (100 * cost_kWh) / Number(closed.given_24h_kWh);
  return { cost: text("curve.damper", { cost: q(cost_kWh, "kWh", { low: cost_kWh * 0.5, high: cost_kWh * 2, digits: cost_kWh < 3 ? 1 : 0 }), share: q(share_pct, "pct", { low: share_pct * 0.5, high: share_pct * 2, digits: 0 }) }) };
}
