/** "When will it be dry?" A range of dates from the climate of the place, the driest it can get there, and what one winter hangs on. */
import { ask, numbers, ours, say, text, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { pictureOf } from "../../pictures/charts.ts";
import { q } from "../../quantities.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { inUnit } from "../reading/figures.ts";
import { readTimes } from "../reading/times.ts";
import { assumedLine, climateOf, DAY_MS, dateAt, winterMonths } from "./around.ts";
import { failed, shareHeard } from "./calculate.ts";

const TARGET_PCT_WET = 20;
/** Fresh wood is near half water; common practice, no source. */
const FRESH_PCT_WET = 47;
const SPLIT_MM = 100;
/** Rounds, whatever they measure: thicker than any split of the trials. */
const ROUND_MM = 250;
/** A range longer than this has a winter in it. */
const A_WINTER_MS = 100 * DAY_MS;
/** "Before the winter, or else after it" is said of a date this near. */
const THIS_YEAR_MS = 300 * DAY_MS;
const SHOWN_MONTHS = 18;

export function seasoningOutcome(context: Context, heard: Hearing): Outcome {
  const { snapshot, text: words } = context;
  const assumed: Text[] = [];
  const wood = snapshot.home.wood.find((one) => heard.species !== undefined && one.species === heard.species) ?? (heard.species === undefined ? snapshot.home.wood[0] : undefined);
  const species = heard.species ?? wood?.species;
  const climate = climateOf(context);
  if (!climate) return { draft: { topic: "seasoning", headline: text("season.ask-place"), blocks: [ask("place", text("season.which-place")), say(text("season.rule"))] } };
  const rounds = /\b(rounds?|unsplit|not split|in the round|whole logs?|logs not)\b/i.test(words);
  const thick_mm = heard.figures.map((figure) => (figure.dimension === "length" ? inUnit(figure, "mm") : null)).find((mm) => mm !== null && mm >= 20 && mm <= 300);
  const share = shareHeard(heard);
  const start_pct = (share?.basis === "dry" ? (100 * share.value) / (100 + share.value) : share?.value) ?? FRESH_PCT_WET;
  if (thick_mm === undefined) assumed.push(text(rounds ? "assumed.rounds" : "assumed.split", { split: q(rounds ? ROUND_MM : SPLIT_MM, "mm", { digits: 0 }) }));
  if (share === undefined) assumed.push(text("assumed.fresh", { start: q(start_pct, "pct") }));
  else if (!share.basis) assumed.push(text("assumed.wet-basis"));
  if (species === undefined) assumed.push(text("assumed.species"));
  if (climate.guessed) assumed.push(text("assumed.place", { place: climate.place.name }));
  const stacked = stackedOn(context, wood?.split_on);
  if (!stacked.said) assumed.push(text("assumed.stacked", { on: { at_ms: stacked.at_ms, show: "date" } }));
  const cover = /\b(uncovered|no (cover|roof)|not covered|under nothing|in the rain|in the open)\b/i.test(words) ? "none" : /\b(shed|under (a |the )?roof|lean-to|barn|woodshed|carport)\b/i.test(words) ? "shed" : "top";
  const inputs = {
    species: species ?? "hardwood", split_mm: thick_mm ?? (rounds ? ROUND_MM : SPLIT_MM), start_pct_wet: Math.max(start_pct, 5), target_pct_wet: TARGET_PCT_WET,
    stacked_on: dateAt(context, stacked.at_ms), climate: { mean_C: climate.place.mean_C, rh_pct: climate.place.rh_pct }, cover,
  };
  const done = reckon("seasoning", inputs);
  if (!done.ok) return { ...failed("seasoning", done.error), draft: { ...failed("seasoning", done.error).draft, ...(/never burn/.test(done.error) ? { cautions: ["never-burn"] } : {}) } };
  const { result } = done;
  const [early, late] = ((result.range as { ready_on?: [string, string | null] } | undefined)?.ready_on ?? [null, null]).map((day) => (day ? noon(day) : null)) as [number | null, number | null];
  const ready = typeof result.ready_on === "string" ? noon(result.ready_on) : null;
  const floor = q(Number(result.floor_pct_wet), "pct", { digits: 0 });
  const straddles = early !== null && (late === null || (late - early > A_WINTER_MS && hasWinter(early, late, climate.place.latitude)));
  const months = (result.moisture_pct_wet_by_month as readonly number[]).slice(0, SHOWN_MONTHS);
  const poison = ((result.warnings as string[] | undefined) ?? []).filter((words) => /^Do not burn/.test(words));
  return {
    draft: {
      topic: "seasoning",
      ...(poison.length > 0 ? { cautions: ["poison-wood"] } : {}),
      headline: headline(context, { early, ready, late, straddles, cover }),
      blocks: blocks(
        ...poison.map((words) => say(ours(words), "poison-wood")),
        straddles && say(text("season.winter")),
        cover === "none" && say(text("season.uncovered")),
        rounds && say(text("season.rounds")),
        say(text(Number(result.floor_pct_wet) > TARGET_PCT_WET ? "season.floor-above" : "season.floor", { floor, target: q(TARGET_PCT_WET, "pct"), place: climate.place.name })),
        say(text("season.measure")),
        numbers(
          { key: "floor_pct_wet", label: text("number.floor_pct_wet"), quantity: floor },
          { key: "after_6_months_pct_wet", label: text("number.after_6_months_pct_wet"), quantity: q(months[5] ?? 0, "pct", { digits: 0 }) },
          { key: "after_12_months_pct_wet", label: text("number.after_12_months_pct_wet"), quantity: q(months[11] ?? 0, "pct", { digits: 0 }) },
        ),
        {
          kind: "picture", cautions: [],
          picture: pictureOf("drying", {
            points: [{ at_ms: noon(inputs.stacked_on), pct_wet: inputs.start_pct_wet }, ...months.map((pct_wet, i) => ({ at_ms: monthsAfter(inputs.stacked_on, i + 1), pct_wet }))],
            target_pct_wet: TARGET_PCT_WET, floor_pct_wet: Number(result.floor_pct_wet), ready: { early_ms: early, at_ms: ready, late_ms: late },
          }),
        },
        assumedLine(assumed),
      ),
    },
    state: { reckoned: { topic: "seasoning", calculator: "seasoning", inputs: { species: inputs.species }, at_ms: context.now_ms } },
  };
}

function headline(context: Context, { early, ready, late, straddles, cover }: { early: number | null; ready: number | null; late: number | null; straddles: boolean; cover: string }): Text {
  if (cover === "none") return text("season.headline-uncovered");
  if (early === null || ready === null) return text("season.headline-never");
  const date = (at_ms: number) => ({ at_ms, show: "date" }) as const;
  const args = { early: date(early), ready: date(ready), ...(late === null ? {} : { late: date(late) }) };
  if (late === null) return text("season.headline-open", args);
  if (late < context.now_ms) return text("season.headline-past", args);
  if (early < context.now_ms) return text("season.headline-perhaps", args);
  return text(!straddles ? "season.headline" : early - context.now_ms < THIS_YEAR_MS ? "season.headline-straddles" : "season.headline-straddles-later", args);
}

/** Whether a winter, in which nothing dries, lies between two days at a place. */
function hasWinter(from_ms: number, to_ms: number, latitude: number): boolean {
  const winter = winterMonths(latitude);
  for (let at_ms = from_ms; at_ms <= to_ms; at_ms += 15 * DAY_MS) {
    const day = new Date(at_ms);
    const [, middle, deep] = winter;
    if ([middle, deep].includes(day.getUTCMonth() + 1)) return true;
  }
  return false;
}

/** The day it was stacked: a day that was said and lies in the past, the day of the record, else today. */
function stackedOn(context: Context, split_on: string | undefined): { at_ms: number; said: boolean } {
  const { text: words, now_ms, reader } = context;
  const time = /\b(stacked|split|cut|felled|since|fell|came down|bought|in)\b/i.test(words) ? readTimes(words, now_ms, reader.timezone, { lean: "past", locale: reader.locale }).find((one) => one.kind === "day") : undefined;
  if (time) {
    // "20 April" without a year may be read as the next: a stack stands already, unless the words look ahead
    const ahead = /\b(will|going to|next|plan|if i)\b/i.test(words);
    const at = Temporal.Instant.fromEpochMilliseconds(time.at_ms).toZonedDateTimeISO(reader.timezone);
    return { at_ms: !ahead && time.at_ms > now_ms ? at.subtract({ years: 1 }).epochMilliseconds : time.at_ms, said: true };
  }
  return split_on ? { at_ms: noon(split_on), said: true } : { at_ms: now_ms, said: /\b(now|today|this week|just)\b/i.test(words) };
}

const noon = (day: string): number => Date.parse(`${day}T12:00:00Z`);
const monthsAfter = (day: string, months: number): number => noon(Temporal.PlainDate.from(day).add({ months }).toString());
