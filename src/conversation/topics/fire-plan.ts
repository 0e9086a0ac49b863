/** The coming days: when to fire and how much, for the least wood that keeps the room as wanted. Every load passes the heater's limits. */
import { ask, numbers, say, text, type Block, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { roomFor } from "../../limits.ts";
import { pictureOf } from "../../pictures/charts.ts";
import { q } from "../../quantities.ts";
import type { DayWeatherFacts, HeaterFacts } from "../../records/schemas.ts";
import type { Fire } from "../../records/types.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { readWeather } from "../reading/read-weather.ts";
import { absenceOutcome, absenceSaid } from "./absence.ts";
import { assumedLine, awakeHours, clockIso, dateAt, figureOf, USUAL_MOISTURE_PCT, zonedAt } from "./around.ts";
import { failed } from "./calculate.ts";
import { ladderBlocks, rungLoad } from "./first-fires.ts";
import { houseKeys } from "./heat-curve.ts";

const MOST_DAYS = 7;
const TOO_WET_PCT = 25;
/** Room left above the wanted temperature before it counts as too warm. Common practice, no source. */
const WARMER_K = 3;

/** Nobody feels less than this below the wanted temperature. Common practice, no source. */
const FELT_K = 0.5;

/** From here on a day's own weather says too little about what its last fire is for. */
const LATE_HOUR = 12;

interface Planned {
  readonly lit_at_ms: number;
  readonly load_kg: number;
}

export function firePlanOutcome(context: Context, heard: Hearing): Outcome {
  const absence = absenceSaid(context, heard);
  if (absence) return absenceOutcome(context, absence);
  const { limits, snapshot } = context;
  const { house, wood } = snapshot.home;
  const days = weatherDays(context);
  const missing: Text[] = [
    ...(limits.max_load_kg === null ? [text("sharpen.max-load")] : []),
    ...(days.length === 0 ? [text("plan.need-weather")] : []),
    ...(house.heat_loss_W_per_K === undefined && house.floor_m2 === undefined ? [text("sharpen.house")] : []),
  ];
  if (missing.length > 0) {
    return { draft: { topic: "fire-plan", headline: text("plan.missing", { what: missing }), blocks: [ask("plan-needs", text("plan.how"), [], "over-firing")] } };
  }
  const rung = rungLoad(context);
  if (rung) return { draft: { topic: "fire-plan", cautions: ["first-fires"], headline: text("plan.ladder"), blocks: ladderBlocks(context) } };
  const moisture = heard.load.moisture_pct_wet ?? wood[0]?.moisture_pct_wet;
  if (moisture !== undefined && moisture > TOO_WET_PCT) return { draft: { topic: "fire-plan", headline: text("load.too-wet", { moisture: q(moisture, "pct") }) } };
  return planned(context, heard, days, moisture);
}

function planned(context: Context, heard: Hearing, days: readonly DayWeatherFacts[], moisture: number | undefined): Outcome {
  const { snapshot, limits, now_ms, rules } = context;
  const { house, wood } = snapshot.home;
  const start_ms = Math.max(now_ms, roomFor(limits, snapshot.fires, now_ms, rules).not_before_ms ?? 0);
  const left = days.filter((day) => day.date >= dateAt(context, start_ms));
  const only = left[0];
  // what is left of one day alone would be planned at the expense of the next morning
  const isRest = left.length === 1 && only?.date === dateAt(context, start_ms) && zonedAt(context, start_ms).hour >= LATE_HOUR;
  const weather = isRest ? [only, { ...only, date: Temporal.PlainDate.from(only.date).add({ days: 1 }).toString() }] : left;
  if (weather.length === 0) return { draft: { topic: "fire-plan", headline: text("load.wait.spacing", { until: { at_ms: start_ms, show: "day-time" } }) } };
  const from_ms = weather[0]?.date === dateAt(context, start_ms) ? start_ms : Temporal.PlainDate.from(weather[0]!.date).toZonedDateTime(context.reader.timezone).epochMilliseconds;
  const awake = awakeHours(context);
  const wanted = wantedSaid(context) ?? { min_C: house.wanted_C ?? 20, max_C: (house.wanted_C ?? 20) + WARMER_K };
  const species = heard.species ?? wood[0]?.species;
  const inputs = {
    heater: boundHeater(context), house: houseKeys(house), wood: { ...(species ? { species } : {}), moisture_pct_wet: moisture ?? USUAL_MOISTURE_PCT },
    from: clockIso(context, from_ms), weather, wanted: [{ from: awake.from, to: awake.to, ...wanted }], awake: { from: awake.from, to: awake.to },
  };
  const first = reckon("fire-plan", inputs);
  const done = first.ok || !species ? first : reckon("fire-plan", { ...inputs, wood: { moisture_pct_wet: inputs.wood.moisture_pct_wet } });
  if (!done.ok) return failed("fire-plan", done.error);
  const raw = (done.result.fires as readonly { lit_at: string; load_kg: number }[]).map((fire) => ({ lit_at_ms: Date.parse(fire.lit_at), load_kg: fire.load_kg }));
  const { fires, cut } = withinLimits(context, raw);
  const wood_kg = fires.reduce((sum, fire) => sum + fire.load_kg, 0);
  const scale = Number(done.result.wood_kg) > 0 ? wood_kg / Number(done.result.wood_kg) : 1;
  const woodFigure = figureOf(done.result, "wood_kg", "kg", 0);
  const woodSpread = q(wood_kg, "kg", { digits: 0, low: (woodFigure.low ?? wood_kg) * scale, high: (woodFigure.high ?? wood_kg) * scale });
  const coldest = figureOf(done.result, "coldest_C", "C", 1);
  const warmest = figureOf(done.result, "warmest_C", "C", 1);
  const below_h = Number(done.result.hours_below_h);
  const tooCold = below_h > 0 && coldest.value < wanted.min_C - FELT_K;
  return {
    draft: {
      topic: "fire-plan",
      cautions: ["over-firing", "close-flue"],
      headline: fires.length === 0 ? text("plan.none", { days: weather.length }) : text("plan.headline", { fires: fires.length, days: weather.length, wood: q(wood_kg, "kg", { digits: 0 }) }),
      blocks: blocks(
        cut && say(text("plan.cut"), "over-firing"),
        fires.length > 0 && { kind: "table", cautions: ["over-firing", "close-flue"], columns: [text("plan.column.light"), text("plan.column.load")], rows: fires.map((fire) => [text("fires.when", { lit: { at_ms: fire.lit_at_ms, show: "day-time" } }), text("plain", { value: q(fire.load_kg, "kg", { digits: 1 }) })]) } satisfies Block,
        say(text(tooCold ? "plan.why-below" : "plan.why", {
          low: q(Math.min(...weather.map((day) => day.low_C)), "C"), wanted: q(wanted.min_C, "C"), coldest, warmest, hours: q(below_h, "h", { digits: 0 }),
        })),
        say(text("plan.bounds", {
          from: awake.from, to: awake.to, min: q(limits.min_load_kg ?? 0, "kg", { digits: 1 }), max: q(limits.max_load_kg ?? 0, "kg", { digits: 1 }), day: q(limits.max_day_kg ?? 0, "kg", { digits: 1 }), spacing: q(limits.spacing_h, "h"),
        }), "over-firing"),
        tooCold && say(text("plan.other-heat"), "over-firing", "close-flue"),
        numbers(
          ...(fires[0] ? [{ key: "load_kg", label: text("number.first_load_kg"), quantity: q(fires[0].load_kg, "kg", { digits: 1 }) }] : []),
          { key: "wood_kg", label: text("number.wood_kg"), quantity: woodSpread },
          { key: "coldest_C", label: text("number.coldest_C"), quantity: coldest },
          { key: "warmest_C", label: text("number.warmest_C"), quantity: warmest },
          { key: "hours_below_h", label: text("number.hours_below_h"), quantity: q(below_h, "h", { digits: 0 }) },
        ),
        { kind: "picture", cautions: [], picture: pictureOf("fire-plan", { days: weather.map((day) => span(context, day)), fires: [...fires], room: { coldest_C: coldest.value, warmest_C: warmest.value, wanted_C: wanted.min_C }, wood_kg }) },
        assumedLine([
          text("assumed.days-before"),
          ...(isRest ? [text("assumed.same-weather")] : []),
          ...(moisture === undefined ? [text("assumed.moisture", { moisture: q(USUAL_MOISTURE_PCT, "pct") })] : []),
          ...(awake.assumed ? [text("assumed.awake", { from: awake.from, to: awake.to })] : []),
          ...(house.heat_loss_W_per_K === undefined ? [text("assumed.house")] : []),
          ...(context.heater?.facts.masonry_kg === undefined ? [text("assumed.heater")] : []),
        ]),
      ),
    },
    state: { reckoned: { topic: "fire-plan", calculator: "fire-plan", inputs: {}, at_ms: now_ms } },
  };
}

/** The plan once more through the one gate: what is burnt already, bans, spacing and the day's limit, fire by fire. */
function withinLimits(context: Context, planned: readonly Planned[]): { fires: readonly Planned[]; cut: boolean } {
  const fires: Planned[] = [];
  const counted: Pick<Fire, "lit_at_ms" | "facts">[] = [...context.snapshot.fires];
  for (const one of planned) {
    const room = roomFor(context.limits, counted, one.lit_at_ms, context.rules);
    const load_kg = Math.floor(2 * Math.min(one.load_kg, room.next_load_kg ?? 0) + 1e-9) / 2;
    if (load_kg <= 0 || load_kg < (context.limits.min_load_kg ?? 0)) continue;
    fires.push({ lit_at_ms: one.lit_at_ms, load_kg });
    counted.push({ lit_at_ms: one.lit_at_ms, facts: { lit_at: new Date(one.lit_at_ms).toISOString(), load_kg } });
  }
  return { fires, cut: fires.length < planned.length || fires.some((fire) => planned.some((one) => one.lit_at_ms === fire.lit_at_ms && fire.load_kg < one.load_kg)) };
}

/** The heater's facts with every limit, rules included, written into them, so that the search itself stays inside. */
function boundHeater({ heater, limits, rules }: Context): HeaterFacts {
  const { max_load_kg, min_load_kg, max_day_kg, spacing_h } = limits;
  const spaced = rules.some((rule) => rule.spacing_h !== undefined);
  return {
    ...heater?.facts,
    ...(max_load_kg === null ? {} : { max_load_kg }),
    ...(min_load_kg ? { min_load_kg } : {}),
    ...(max_day_kg === null ? {} : { max_day_kg }),
    ...(spaced ? { nominal_heating_time_h: spacing_h } : {}),
  };
}

/** Days of weather from today on, one after another: said now, else on record. */
function weatherDays(context: Context): readonly DayWeatherFacts[] {
  const { text: words, now_ms, reader, snapshot } = context;
  const today = dateAt(context, now_ms);
  const said = readWeather(words, { now_ms, timezone: reader.timezone, system: reader.system, locale: reader.locale });
  const { low_C, high_C } = said.facts;
  const tonight: DayWeatherFacts[] = low_C === undefined ? [] : [{ date: today, low_C, high_C: Math.max(low_C, high_C ?? low_C + 7) }];
  const given = new Map([...snapshot.home.weather, ...tonight, ...said.days].map((day) => [day.date, day]));
  const sorted = [...given.values()].filter((day) => day.date >= today && day.low_C <= day.high_C).sort((a, b) => a.date.localeCompare(b.date));
  const fromToday = unbroken(sorted);
  const firstSaid = said.days.map((day) => day.date).sort().find((date) => date >= today);
  // days said for later, with a gap before them, are meant alone
  const isGap = firstSaid !== undefined && !fromToday.some((day) => day.date === firstSaid);
  return (isGap ? unbroken(sorted.filter((day) => day.date >= firstSaid)) : fromToday).slice(0, MOST_DAYS);
}

/** The days that follow one another from the first. */
function unbroken(sorted: readonly DayWeatherFacts[]): DayWeatherFacts[] {
  const run: DayWeatherFacts[] = [];
  for (const day of sorted) {
    const last = run.at(-1);
    if (last && Temporal.PlainDate.from(last.date).add({ days: 1 }).toString() !== day.date) break;
    run.push({ date: day.date, low_C: day.low_C, high_C: day.high_C });
  }
  return run;
}

/** "want 20-22", "keep it above 19", in the reader's scale. */
function wantedSaid(context: Context): { min_C: number; max_C: number } | null {
  const found = /\b(?:want|keep|hold|above|at least)\b[^\d.]{0,24}(\d{2})(?:\s*(?:-|–|to)\s*(\d{2}))?/i.exec(context.text);
  if (!found) return null;
  const inC = (value: number): number => (value > 45 ? ((value - 32) * 5) / 9 : value);
  const min_C = inC(Number(found[1]));
  const max_C = found[2] === undefined ? min_C + WARMER_K : inC(Number(found[2]));
  return min_C >= 8 && max_C <= 30 && min_C <= max_C ? { min_C, max_C } : null;
}

function span(context: Context, day: DayWeatherFacts): { from_ms: number; to_ms: number; low_C: number; high_C: number } {
  const from = Temporal.PlainDate.from(day.date).toZonedDateTime(context.reader.timezone);
  return { from_ms: from.epochMilliseconds, to_ms: from.add({ days: 1 }).epochMilliseconds, low_C: day.low_C, high_C: day.high_C };
}
