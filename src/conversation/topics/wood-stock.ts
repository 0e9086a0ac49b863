/** "Will it last?" The wood that is left against the days to come: own fires, or what was said, spread by the degree days of the climate. */
import { ask, numbers, say, text, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { pictureOf } from "../../pictures/charts.ts";
import { q } from "../../quantities.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { inUnit } from "../reading/figures.ts";
import { readAmounts } from "../reading/amounts.ts";
import { assumedLine, climateOf, DAY_MS, USUAL_MOISTURE_PCT, zonedAt, type Climate } from "./around.ts";
import { NEED, needOutcome } from "./buying.ts";
import { seasonPicture } from "./season-picture.ts";

/** What sun and people warm a house to by themselves: a usual base of degree days (from memory). */
const BASE_C = 15.5;
/** Days of a higher mean are not heated: the central European convention of degree days 20/12. */
const HEATED_BELOW_C = 12;
const RECENT_DAYS = 30;
const FEWEST_FIRES = 4;
const HORIZON_DAYS = 365;
/** Heat to the room per kg of dry wood. EN 15544, 4.2.1 (from memory). */
const USEFUL_KWH_PER_KG = 3.25;

interface Use {
  readonly per_day_kg: number;
  /** share it may be off either way */
  readonly off: number;
  readonly from: "fires" | "said" | "house";
}
interface Left {
  readonly low_kg: number;
  readonly kg: number;
  readonly high_kg: number;
}

export function woodStockOutcome(context: Context, heard: Hearing): Outcome {
  const need = NEED.test(context.text) ? needOutcome(context) : null;
  if (need) return need;
  const assumed: Text[] = [];
  const climate = climateOf(context);
  const left = leftOf(context, heard, assumed);
  if (!left) return { draft: { topic: "wood-stock", headline: text("stock.ask-left"), blocks: [ask("wood-left", text("stock.how-left"))] } };
  const use = useOf(context, heard, climate);
  if (!use) {
    return {
      draft: {
        topic: "wood-stock", headline: text("stock.ask-use", { left: q(left.kg, "kg", { digits: 0, low: left.low_kg, high: left.high_kg }) }),
        blocks: [ask("wood-use", text("stock.how-use")), numbers({ key: "wood_kg", label: text("number.wood_left_kg"), quantity: q(left.kg, "kg", { digits: 0, low: left.low_kg, high: left.high_kg }) })],
      },
    };
  }
  if (!climate) assumed.push(text("assumed.steady"));
  else assumed.push(text(climate.guessed ? "assumed.place" : "assumed.usual-winter", { place: climate.place.name }));
  const course = burnDown(context, left, use, climate);
  const season = seasonPicture(context);
  const { early, at, late } = course;
  const date = (at_ms: number) => ({ at_ms, show: "date" }) as const;
  const days = at === null ? null : (at - context.now_ms) / DAY_MS;
  return {
    draft: {
      topic: "wood-stock",
      headline: at === null
        ? text(early === null ? "stock.lasts" : "stock.lasts-maybe", { until: date(course.end), ...(early === null ? {} : { early: date(early) }) })
        : late === null ? text("stock.ends-open", { at: date(at), early: date(early ?? at) }) : text("stock.ends", { at: date(at), early: date(early ?? at), late: date(late) }),
      blocks: blocks(
        say(text(`stock.use-${use.from}`, { use: q(use.per_day_kg, "kg", { digits: 1, low: use.per_day_kg * (1 - use.off), high: use.per_day_kg * (1 + use.off) }), left: q(left.kg, "kg", { digits: 0, low: left.low_kg, high: left.high_kg }) })),
        at !== null && say(text("stock.buy")),
        numbers(
          { key: "wood_kg", label: text("number.wood_left_kg"), quantity: q(left.kg, "kg", { digits: 0, low: left.low_kg, high: left.high_kg }) },
          { key: "use_per_day_kg", label: text("number.use_per_day_kg"), quantity: q(use.per_day_kg, "kg", { digits: 1 }) },
          ...(days === null ? [] : [{ key: "lasts_day", label: text("number.lasts_day"), quantity: q(days, "day", { digits: 0, ...(early !== null && late !== null ? { low: (early - context.now_ms) / DAY_MS, high: (late - context.now_ms) / DAY_MS } : {}) }) }]),
        ),
        { kind: "picture", cautions: [], picture: pictureOf("pile", { points: course.points, ends: { early_ms: early, at_ms: at, late_ms: late } }) },
        season && { kind: "picture", cautions: [], picture: season },
        assumedLine(assumed),
      ),
    },
    state: { reckoned: { topic: "wood-stock", inputs: { left_kg: left.kg }, at_ms: context.now_ms } },
  };
}

const PER_DAY = /^\s*(?:\/|a|per|each|every)\s*(?:d\b|day|night|evening|fire)|^\s*daily/i;

/** What is left: said as a weight or a volume, else the piles on record. */
function leftOf(context: Context, heard: Hearing, assumed: Text[]): Left | null {
  const { wood } = context.snapshot.home;
  const pile = heard.figures.find((figure) => (figure.dimension === "mass" || figure.dimension === "volume") && !PER_DAY.test(context.text.slice(figure.at[1])));
  if (pile?.dimension === "mass") {
    const kg = inUnit(pile, "kg") ?? 0;
    return kg > 0 ? { low_kg: kg * 0.95, kg, high_kg: kg * 1.05 } : null;
  }
  const m3 = pile ? (inUnit(pile, "m3") ?? 0) : wood.reduce((sum, one) => sum + (one.volume_m3_stacked ?? 0), 0);
  if (!(m3 > 0)) return null;
  const species = heard.species ?? wood.find((one) => one.species !== undefined)?.species;
  const moisture_pct_wet = wood.find((one) => one.moisture_pct_wet !== undefined)?.moisture_pct_wet ?? USUAL_MOISTURE_PCT;
  const volume = pile?.filling === "loose" ? { volume_m3_loose: m3 } : pile?.filling === "solid" ? { volume_m3_solid: m3 } : { volume_m3_stacked: m3 };
  const of = (tree: string) => reckon("stack", { ...volume, species: tree, moisture_pct_wet });
  const named = species ? of(species) : null;
  if (named?.ok) {
    const [low_kg, high_kg] = (named.result.range as Record<string, [number, number]>).mass_kg ?? [];
    const kg = Number(named.result.mass_kg);
    return { low_kg: low_kg ?? kg * 0.85, kg, high_kg: high_kg ?? kg * 1.15 };
  }
  assumed.push(text("assumed.species"));
  const [hard, soft] = [of("hardwood"), of("softwood")];
  if (!hard.ok || !soft.ok) return null;
  return { low_kg: Number(soft.result.mass_kg), kg: (Number(hard.result.mass_kg) + Number(soft.result.mass_kg)) / 2, high_kg: Number(hard.result.mass_kg) };
}

/** What goes a day now: said, from the last month's fires, else what the house needs at this time of year. */
function useOf(context: Context, heard: Hearing, climate: Climate | null): Use | null {
  const said = heard.figures.find((figure) => figure.dimension === "mass" && PER_DAY.test(context.text.slice(figure.at[1])));
  if (said) return { per_day_kg: inUnit(said, "kg") ?? 0, off: 0.15, from: "said" };
  const basket_kg = context.snapshot.home.wood.find((one) => one.basket_kg !== undefined)?.basket_kg;
  const baskets = readAmounts(context.text).find((amount) => amount.measure === "basket" && PER_DAY.test(context.text.slice(amount.at[1])));
  if (baskets && basket_kg !== undefined) return { per_day_kg: baskets.count * basket_kg, off: 0.2, from: "said" };
  const recent = context.snapshot.fires.filter((fire) => fire.lit_at_ms > context.now_ms - RECENT_DAYS * DAY_MS && fire.lit_at_ms <= context.now_ms && fire.facts.load_kg !== undefined);
  if (recent.length >= FEWEST_FIRES) {
    const oldest = Math.min(...recent.map((fire) => fire.lit_at_ms));
    const days = Math.max(3, (context.now_ms - oldest) / DAY_MS);
    return { per_day_kg: recent.reduce((sum, fire) => sum + (fire.facts.load_kg ?? 0), 0) / days, off: Math.max(0.12, 0.4 / Math.sqrt(recent.length)), from: "fires" };
  }
  const loss = context.snapshot.home.house.heat_loss_W_per_K;
  const degrees = climate ? degreesAt(context, climate, context.now_ms) : 0;
  return loss === undefined || degrees <= 0 ? null : { per_day_kg: (loss * degrees * 0.024) / USEFUL_KWH_PER_KG, off: 0.35, from: "house" };
}

/** Degrees to the base on a day of the climate, between the middles of the months; 0 when nobody heats. */
function degreesAt(context: Context, { place }: Climate, at_ms: number): number {
  const day = zonedAt(context, at_ms);
  const along = day.month - 1 + (day.day - 0.5) / day.daysInMonth - 0.5;
  const before = Math.floor(along);
  const mean = (month: number): number => place.mean_C[(month + 12) % 12] ?? BASE_C;
  const mean_C = mean(before) + (along - before) * (mean(before + 1) - mean(before));
  return mean_C < HEATED_BELOW_C ? BASE_C - mean_C : 0;
}

interface Course {
  readonly points: { at_ms: number; low_kg: number; left_kg: number; high_kg: number }[];
  readonly early: number | null;
  readonly at: number | null;
  readonly late: number | null;
  /** last day looked at: when heating ends, or a year on */
  readonly end: number;
}

function burnDown(context: Context, left: Left, use: Use, climate: Climate | null): Course {
  const { now_ms } = context;
  const base = climate ? degreesAt(context, climate, now_ms) : 0;
  // said or logged on a day that hardly needs heat, the pace is no measure of winter
  const pace = (at_ms: number): number => (climate && base >= 2 ? degreesAt(context, climate, at_ms) / base : 1);
  const ends: (number | null)[] = [null, null, null];
  const kg = [left.low_kg, left.kg, left.high_kg];
  const rate = [1 + use.off, 1, 1 - use.off].map((times) => times * use.per_day_kg);
  const points = [{ at_ms: now_ms, low_kg: left.low_kg, left_kg: left.kg, high_kg: left.high_kg }];
  let end = now_ms;
  for (let day = 1; day <= HORIZON_DAYS; day++) {
    const at_ms = now_ms + day * DAY_MS;
    const today = pace(at_ms);
    if (climate && base >= 2 && today <= 0) break;
    end = at_ms;
    kg.forEach((amount, i) => {
      const next = amount - (rate[i] ?? 0) * today;
      if (amount > 0 && next <= 0) ends[i] = at_ms;
      kg[i] = Math.max(0, next);
    });
    if (day % 7 === 0 || ends[2] === at_ms) points.push({ at_ms, low_kg: kg[0]!, left_kg: kg[1]!, high_kg: kg[2]! });
    if (ends[2] !== null) break;
  }
  if (points.at(-1)!.at_ms !== end || points.length < 2) points.push({ at_ms: end + (end === now_ms ? DAY_MS : 0), low_kg: kg[0]!, left_kg: kg[1]!, high_kg: kg[2]! });
  return { points, early: ends[0] ?? null, at: ends[1] ?? null, late: ends[2] ?? null, end };
}
