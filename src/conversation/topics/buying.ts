/** Buying: offers by cord, stere, loose volume or weight, put on one footing: the price of a kilowatt hour that reaches the room. */
import { numbers, say, steps, text, verbatim, type Block, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { convert, formatNumber, q } from "../../quantities.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { inUnit, type Figure } from "../reading/figures.ts";
import { readNumberWords } from "../reading/number-words.ts";
import { sizesIn } from "../reading/sizes.ts";
import { scan } from "../reading/tokens.ts";
import { assumedLine, climateOf } from "./around.ts";
import { reckonAs, shareHeard } from "./calculate.ts";

/** Heat to the room of the net heat of the wood; EN 15544 asks for 0.78 at least, masonry heaters reach 0.88. */
const EFFICIENCY = 0.8;
const USUAL_MOISTURE_PCT = 20;
/** Days are heated below this mean. Degree days to 15.5 °C are a usual base (from memory). */
const HEATED_BELOW_C = 15.5;
const DAYS_OF_MONTH = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

interface Offer {
  readonly price: number;
  readonly money: string;
  readonly words: string;
  /** null: a crate, a bag, a load: no measure */
  readonly amount: Readonly<Record<string, number>> | null;
  /** cubic metres without a word on how they are filled */
  readonly vague: boolean;
  /** water said of this offer, wet basis */
  readonly moisture_pct_wet: number;
}
interface Valued extends Offer {
  readonly useful_kWh: number;
  /** null for wood by weight */
  readonly stacked_m3: number | null;
  readonly low: number;
  readonly per_kWh: number;
  readonly high: number;
}

const BUYING = /\b(buy|buying|price[sd]?|cost|costs|cheap\w*|dear\w*|pay|paid|quot\w+|offer\w*|sell\w*|merchant|per (cord|stere|ton\w*|cubic|m3|m³))\b|[$€£]/i;

export const NEED = /\bhow much\b[^.?!]*\b(buy|order)\b/i;

/** Null when nothing in the words is about buying. */
export function buyingOutcome(context: Context, heard: Hearing): Outcome | null {
  if (!BUYING.test(context.text) && !heard.figures.some(({ dimension }) => dimension === "money")) return null;
  const offers = offersIn(context, heard);
  if (offers.length === 0) return NEED.test(context.text) ? needOutcome(context) : null;
  const share = shareHeard(heard);
  const wood = context.snapshot.home.wood[0];
  const species = heard.species ?? wood?.species ?? "hardwood";
  const valued = offers.flatMap((offer) => valueOf(offer, species) ?? []).sort((a, b) => a.per_kWh - b.per_kWh);
  const unmeasured = offers.filter((offer) => offer.amount === null);
  const [best, second] = valued;
  const price = (value: number, digits: number): string => formatNumber(value, context.reader, digits);
  const line = (offer: Valued): Text => text(offer.stacked_m3 === null ? "buy.line" : "buy.line-volume", { ...(offer.stacked_m3 === null ? {} : { stacked: price(offer.price / offer.stacked_m3, 0) }), offer: verbatim(offer.words), price: price(offer.per_kWh, 3), low: price(offer.low, 3), high: price(offer.high, 3), money: offer.money, useful: q(offer.useful_kWh, "kWh", { digits: 0 }) });
  const tonne = [20, 35].map((moisture_pct_wet) => reckon("fuel", { load_kg: 1000, moisture_pct_wet, species: "hardwood", efficiency: EFFICIENCY }));
  return {
    draft: {
      topic: "wood-volume",
      headline: !best ? text("buy.no-measure")
        : !second ? text("buy.one", { price: price(best.per_kWh, 3), money: best.money, low: price(best.low, 3), high: price(best.high, 3) })
        : best.high < second.low ? text("buy.cheaper", { offer: verbatim(best.words), share: q(100 * (1 - best.per_kWh / second.per_kWh), "pct") })
        : text("buy.close", { offer: verbatim(best.words) }),
      blocks: blocks(
        valued.length > 0 && steps(valued.map(line), { ordered: false, title: text("buy.title") }),
        unmeasured.length > 0 && say(text("buy.unmeasured", { offers: unmeasured.map((offer) => verbatim(offer.words)) })),
        valued.some((offer) => offer.vague) && say(text("buy.vague")),
        tonne.every((one) => one.ok) && say(text("buy.weight", { dry: q(usefulOf(tonne[0]), "kWh", { digits: 0 }), wet: q(usefulOf(tonne[1]), "kWh", { digits: 0 }) })),
        share && !share.basis && say(text("buy.basis", { value: q(share.value, "pct"), wet: q((100 * share.value) / (100 + share.value), "pct") })),
        best && numbers({ key: "useful_kWh", label: text("number.useful_kWh"), quantity: q(best.useful_kWh, "kWh", { digits: 0 }) }),
        assumedLine([
          ...(share ? [] : [text("assumed.moisture", { moisture: q(USUAL_MOISTURE_PCT, "pct") })]),
          ...(heard.species ?? wood?.species ? [] : [text("assumed.hardwood")]),
          text("assumed.efficiency", { share: q(EFFICIENCY * 100, "pct") }),
        ]),
      ),
    },
    state: { reckoned: { topic: "wood-volume", calculator: "stack", inputs: {}, at_ms: context.now_ms } },
  };
}

const usefulOf = (done: ReturnType<typeof reckon> | undefined): number => (done?.ok ? Math.round(Number(done.result.useful_kWh) / 10) * 10 : 0);

function valueOf(offer: Offer, species: string): Valued | null {
  const { moisture_pct_wet } = offer;
  if (!offer.amount) return null;
  const byWeight = "load_kg" in offer.amount;
  const done = reckonAs(species, byWeight ? "fuel" : "stack", { ...offer.amount, moisture_pct_wet });
  if (!done.ok) return null;
  const energy = Number(done.result.energy_kWh);
  const [low = energy, high = energy] = (done.result.range as Record<string, [number, number]> | undefined)?.energy_kWh ?? [];
  const useful_kWh = energy * EFFICIENCY;
  // "cubic metre" alone may be tipped: then a third less wood
  const least = offer.vague ? low * 0.62 : low;
  return { ...offer, useful_kWh, stacked_m3: byWeight ? null : Number(done.result.volume_m3_stacked), per_kWh: offer.price / useful_kWh, low: offer.price / (high * EFFICIENCY), high: offer.price / (least * EFFICIENCY) };
}

function offersIn(context: Context, heard: Hearing): Offer[] {
  const words = context.text.slice(0, 2000);
  const prices = heard.figures.filter((figure) => figure.dimension === "money" || (figure.dimension === null && isPrice(words, figure)));
  return prices.slice(0, 6).map((figure, i) => {
    const from = prices[i - 1]?.at[1] ?? 0;
    const to = prices[i + 1]?.at[0] ?? words.length;
    const after = words.slice(figure.at[1], to);
    const before = words.slice(from, figure.at[0]);
    const inside = (low: number, high: number): Figure | undefined => heard.figures.find((one) => (one.dimension === "volume" || one.dimension === "mass") && one.at[0] >= low && one.at[1] <= high);
    const alone = prices.length === 1;
    const found = measured(inside(figure.at[1], to)) ?? (alone ? sized(before, context) : null) ?? named(after, context) ?? measured(inside(from, figure.at[0])) ?? named(before, context);
    const share = heard.figures.find((one) => one.dimension === "share" && one.value <= 60 && (alone || (one.at[0] >= figure.at[1] && one.at[1] <= to)));
    const moisture_pct_wet = share?.basis === "dry" ? (100 * share.value) / (100 + share.value) : (share?.value ?? USUAL_MOISTURE_PCT);
    const tail = after.split(/\bor\b|\band\b|[,.;?!]/)[0]?.trim() ?? "";
    return { price: figure.value, money: figure.money ?? "", words: context.own(`${words.slice(figure.at[0], figure.at[1])} ${tail}`.trim()).slice(0, 60), amount: found?.amount ?? null, vague: found?.vague ?? false, moisture_pct_wet };
  });
}

/** A bare number is a price where the words around it say so. */
const isPrice = (words: string, figure: Figure): boolean =>
  figure.value > 1 && (/\b(price|priced|quoted|costs?|paid|pay|for|at|is|or)\s*$/i.test(words.slice(Math.max(0, figure.at[0] - 14), figure.at[0])) || /^\s*(a|an|per|each|for a|\/)\b/i.test(words.slice(figure.at[1])));

type Found = { amount: Record<string, number>; vague: boolean } | null;

function measured(figure: Figure | undefined): Found {
  if (!figure) return null;
  if (figure.dimension === "mass") return { amount: { load_kg: inUnit(figure, "kg") ?? 0 }, vague: false };
  const m3 = inUnit(figure, "m3") ?? 0;
  if (figure.unit === "cord") return { amount: { cords: figure.value }, vague: false };
  return figure.filling === "loose" ? { amount: { volume_m3_loose: m3 }, vague: false } : figure.filling === "solid" ? { amount: { volume_m3_solid: m3 }, vague: false } : { amount: { volume_m3_stacked: m3 }, vague: figure.filling === undefined };
}

/** "a cord", "per stere", "per loose cubic metre", "a ton". */
function named(words: string, context: Context): Found {
  const is = (pattern: RegExp): boolean => pattern.test(words);
  if (is(/\bface cords?\b|\bricks?\b/i)) return null;
  if (is(/\bcords?\b/i)) return { amount: { cords: 1 }, vague: false };
  if (is(/\b(kg|kilos?|kilograms?)\b/i)) return { amount: { load_kg: 1 }, vague: false };
  if (is(/\bton\b/i) && context.reader.system === "us") return { amount: { load_kg: convert(2000, "lb", "kg") }, vague: false };
  if (is(/\b(tons?|tonnes?)\b/i)) return { amount: { load_kg: 1000 }, vague: false };
  if (is(/\b(loose|tipped|tumbled|thrown|srm|schüttraummeter)\b/i)) return { amount: { volume_m3_loose: 1 }, vague: false };
  if (is(/\b(solid|festmeter|fm)\b/i)) return { amount: { volume_m3_solid: 1 }, vague: false };
  if (is(/\b(steres?|stères?|ster|stacked|rm|raummeter)\b/i)) return { amount: { volume_m3_stacked: 1 }, vague: false };
  return is(/cubic met|\bm3\b|m³|\bcubes?\b|\bmetres?\b|\bmeters?\b/i) ? { amount: { volume_m3_stacked: 1 }, vague: true } : null;
}

function sized(words: string, context: Context): Found {
  const size = sizesIn(readNumberWords(scan(words)), context.reader.system)[0];
  return size ? { amount: { length_m: size.length_m * size.rows, height_m: size.height_m, log_length_m: size.log_length_m }, vague: false } : null;
}

/** "How much do I need to buy?": a winter of the climate through the house's loss. */
export function needOutcome(context: Context): Outcome | null {
  const { house, wood } = context.snapshot.home;
  const climate = climateOf(context);
  if (house.heat_loss_W_per_K === undefined || !climate) return { draft: { topic: "wood-volume", headline: text("buy.need-ask"), blocks: [say(text("volume.kinds"))] } };
  const degree_days_Kd = climate.place.mean_C.reduce((sum, mean, month) => sum + Math.max(0, HEATED_BELOW_C - mean) * (DAYS_OF_MONTH[month] ?? 30), 0);
  const pile = reckon("stack", { volume_m3_stacked: 1, species: wood[0]?.species ?? "hardwood", moisture_pct_wet: wood[0]?.moisture_pct_wet ?? USUAL_MOISTURE_PCT });
  const done = reckon("season", { degree_days_Kd, heat_loss_W_per_K: house.heat_loss_W_per_K, ...(pile.ok ? { mass_kg_per_m3_stacked: Number(pile.result.mass_kg) } : {}) });
  if (!done.ok) return null;
  const m3 = Number(done.result.wood_m3_stacked);
  const kg = Number(done.result.wood_kg);
  const off = { low: 0.65, high: 1.35 };
  const list: (Block | null)[] = [
    say(text("buy.need-why", { place: climate.place.name, days: Math.round(degree_days_Kd / 50) * 50, loss: q(house.heat_loss_W_per_K, "W/K") })),
    say(text("volume.kinds")),
    numbers(
      { key: "wood_kg", label: text("number.wood_kg"), quantity: q(kg, "kg", { digits: 0, low: kg * off.low, high: kg * off.high }) },
      { key: "volume_m3_stacked", label: text("number.volume_m3_stacked"), quantity: q(m3, "m3", { digits: 1, low: m3 * off.low, high: m3 * off.high }) },
    ),
  ];
  return { draft: { topic: "wood-volume", headline: text("buy.need", { stacked: q(m3, "m3", { digits: 0, low: m3 * off.low, high: m3 * off.high }) }), blocks: blocks(...list) } };
}
