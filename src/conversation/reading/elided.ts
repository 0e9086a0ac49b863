/** What a figure takes from its neighbours: the unit of a side, of the figure it is compared with, the scale, the basis. */
import { alike, closes } from "./closes.ts";
import { andThen, asUsual, contrasted, insteadOf, outOf, replaced } from "./contrasts.ts";
import type { FigureOptions, PlacedFigure } from "./figure.ts";
import { furtherPrices, furtherSides, PRICING, rowsAlike, sidesAlike } from "./side-by-side.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";

export { closes } from "./closes.ts";

/** All figures of a text, each with what its neighbours lend it. */
export function withNeighbours(tokens: readonly Token[], list: readonly PlacedFigure[], options: FigureOptions): PlacedFigure[] {
  if (list.every(({ figure }) => figure.dimension === null)) return bareTemperatures(tokens, list, options);
  const measured = comparedUnits(tokens, furtherPrices(tokens, furtherSides(tokens, rowsAlike(tokens, sidesAlike(tokens, list)))));
  return sharedBasis(tokens, sharedScale(pricedInPounds(tokens, bareTemperatures(tokens, measured, options))));
}

const COMPARED = new Set(["mass", "temperature", "share", "length", "volume", "duration"]);
const COMPARING = new Set(["not", "says", "say", "said", "reads", "shows", "showed", "takes", "fits", "allows", "wants", "needs",
  "want", "wanted",
  "limits", "limit", "got", "over", "under", "above", "below", "than"]);
/** Before a bare number these only soften it: "got maybe five". */
const HEDGES = new Set(["maybe", "about", "around", "roughly", "only", "just", "nearly", "almost", "really", "more", "like"]);
const ALLOWING = new Set(["takes", "fits", "allows", "wants", "needs"]);
const FARTHEST = 12;

/** "down to 13 kg from 16", "13 kg, up from 10", "rather than 16" */
function comparedBefore(tokens: readonly Token[], lender: PlacedFigure | undefined, from: number): boolean {
  if (isWord(tokens[from - 1], "than")) return isWord(tokens[from - 2], "rather", "more", "less");
  return isWord(tokens[from - 1], "from") && lender !== undefined
    && (isWord(tokens[from - 2], "up", "down") || isWord(tokens[lender.from - 1], "to"));
}

/**
 * "down to 13 kg from 16", "the bag says 10 kg but my scales say 8.7", "from 58 to 67 F": a bare number takes the unit it is
 * compared with.
 */
function comparedUnits(tokens: readonly Token[], given: readonly PlacedFigure[]): PlacedFigure[] {
  const list = [...given];
  list.forEach((bare, i) => {
    // "6 kilos now and 6 more before bed"
    const more = isWord(tokens[bare.to], "more") && closes(tokens, bare.to + 1);
    const judged = isWord(tokens[bare.to], "doesnt", "didnt", "wont", "didn", "doesn", "does", "fits", "would");
    const next = given[i + 1];
    // "one of 14 kg or two of 7"
    const each = isWord(tokens[bare.from - 1], "of") && list[i - 1]?.to === bare.from - 1 && list[i - 1]?.figure.dimension === null;
    const before = list[each ? i - 2 : i - 1];
    // "8 of 14 kg", "6 out of the 15 kilos"
    const share = next !== undefined && (outOf(tokens, bare.to, next.from) || insteadOf(tokens, bare.to, next.from)
      || replaced(tokens, bare, next.from));
    const left = (isWord(tokens[bare.to], "left", "remaining", "remain", "gone") && closes(tokens, bare.to + 1))
      || (isWord(tokens[bare.to], "to") && isWord(tokens[bare.to + 1], "go"));
    if (bare.figure.dimension !== null || !(more || judged || share || left || closes(tokens, bare.to))) return;
    const towards = isWord(tokens[bare.from - 1], "from") && next !== undefined && next.from <= bare.to + 2
      && isWord(tokens[next.from - 1], "to");
    const corrected = isWord(tokens[bare.from - 1], "but") && before !== undefined && isWord(tokens[before.from - 1], "not");
    // "12 kg from 7 to 9" tells the time
    const ends = bare.figure.low === undefined || ALLOWING.has(wordAt(tokens[bare.from - 1]));
    const word = wordAt(tokens[bare.from - (HEDGES.has(wordAt(tokens[bare.from - 1])) ? 2 : 1)]);
    const limited = isWord(tokens[bare.from - 1], "is", "was")
      && isWord(tokens[bare.from - 2], "limit", "max", "maximum", "minimum", "card", "sheet");
    const onCondition = isSign(tokens[bare.from - 1], ",") && isWord(tokens[bare.to], "if", "when", "unless");
    const said = (more || judged || limited || onCondition || left || contrasted(tokens, bare, before) || corrected
      || asUsual(tokens, bare.from) || andThen(tokens, bare) || COMPARING.has(word) || comparedBefore(tokens, before, bare.from)
      || (isWord(tokens[bare.from - 1], "of") && isWord(tokens[bare.from - 2], "instead"))
      || (isWord(tokens[bare.from - 1], "at") && isWord(tokens[bare.from - 2], "was", "is", "sits", "sat", "stays")
        && before?.figure.dimension === "temperature")) && ends;
    const lender = towards || share ? next : said && before && bare.from - before.to <= FARTHEST ? before : undefined;
    if (!lender || (!towards && !share && ofAnother(tokens, lender, bare)) || lender.figure.unit === null || (lender.times ?? 1) !== 1
      || !COMPARED.has(lender.figure.dimension ?? "")
      || !alike(bare.figure, lender.figure)) return;
    const { dimension, unit, unscaled } = lender.figure;
    list[i] = { ...bare, figure: { ...bare.figure, dimension, unit, ...(unscaled ? { unscaled } : {}),
      ...(dimension === "share" ? { basis: bare.figure.basis ?? null } : {}) } };
  });
  return list;
}

/** What a meter, a thermometer or an alarm says is compared with its like alone: "12 kg birch, meter says 17" is no mass. */
function ofAnother(tokens: readonly Token[], lender: PlacedFigure, bare: PlacedFigure): boolean {
  const { dimension } = lender.figure;
  if (dimension !== "temperature" && dimension !== "volume" && dimension !== "length" && isWord(tokens[bare.to], ...PLACES)) return true;
  return tokens.slice(lender.to, bare.from).some((token) => {
    const measured = INSTRUMENTS.get(wordAt(token));
    return measured !== undefined && measured !== dimension;
  });
}

const PLACES = ["outside", "inside", "in", "out", "here", "overnight", "today", "yesterday", "now"];
const INSTRUMENTS: ReadonlyMap<string, string> = new Map([
  ["meter", "share"], ["moisture", "share"], ["mc", "share"], ["hygrometer", "share"], ["thermometer", "temperature"], ["probe",
    "temperature"],
  ["gauge", "temperature"], ["temp", "temperature"], ["temperature", "temperature"], ["flue", "temperature"], ["outside", "temperature"],
  ["inside", "temperature"], ["room", "temperature"], ["alarm", "ppm"], ["detector", "ppm"], ["co", "ppm"], ["clock", "time"], ["watch",
    "time"],
]);

/** "the temp dropped from 23 to 17", "temperature inside 19" */
function bareTemperatures(tokens: readonly Token[], given: readonly PlacedFigure[], options: FigureOptions): PlacedFigure[] {
  const out: PlacedFigure[] = [];
  const measured = given.some(({ figure }) => figure.dimension === "temperature");
  for (const one of given) {
    const before = out.at(-1);
    const beside = measured && inAPlace(tokens, one.from, before?.to ?? 0);
    const carriedOn = before?.figure.unscaled === true && one.from - before.to === 1 && isWord(tokens[before.to], "to");
    const { dimension, value } = one.figure;
    const reads = dimension === null && value > -60 && value < 1500 && closes(tokens, one.to)
      && (carriedOn || beside || temperatureNamed(tokens, one.from, before?.to ?? 0));
    out.push(reads ? { ...one, figure: { ...one.figure, dimension: "temperature", unit: options.degrees ?? "C", unscaled: true } } : one);
  }
  return out;
}

const ROOMS = new Set(["room", "bench", "bedroom", "kitchen", "bathroom", "hall", "house", "upstairs", "downstairs", "indoors",
  "outdoors", "lounge",
  "wall", "face", "cellar", "outside", "inside"]);

/** "20 below zero F and the north room is 58" */
const inAPlace = (tokens: readonly Token[], from: number, floor: number): boolean => isWord(tokens[from - 1], "is", "was", "at", "only",
  "still",
  "stays", "stayed", "held", "holds", "hit", "reads", "shows")
  && tokens.slice(Math.max(floor, from - 4), from - 1).some((token) => ROOMS.has(wordAt(token)));

function temperatureNamed(tokens: readonly Token[], from: number, floor: number): boolean {
  for (let i = from - 1; i >= Math.max(floor, from - 6); i -= 1) {
    if (isSign(tokens[i], ".") || isSign(tokens[i], "?") || isSign(tokens[i], ",")) return false;
    if (isWord(tokens[i], "temp", "temps", "temperature", "temperatures")) return true;
    if (isWord(tokens[i], "high", "low", "highs", "lows") && i >= from - 2 && (i === from - 1
      || isWord(tokens[i + 1], "of", "around", "near"))) return true;
  }
  return false;
}

/** "spent 1,450 pounds on it" is money, "40 pounds of oak" is not. */
function pricedInPounds(tokens: readonly Token[], list: readonly PlacedFigure[]): PlacedFigure[] {
  return list.map((one) => {
    const { figure, from, to } = one;
    if (figure.unit !== "lb" || !isWord(tokens[to - 1], "pound", "pounds") || isWord(tokens[to], "of")) return one;
    const priced = tokens.slice(Math.max(0, from - 4), from).some((token) => PRICING.has(wordAt(token)));
    return priced ? { ...one, figure: { ...figure, dimension: "money", unit: null, money: "GBP" } } : one;
  });
}

/** Where one temperature names Fahrenheit and none Celsius, plain degrees are Fahrenheit too. */
function sharedScale(list: readonly PlacedFigure[]): PlacedFigure[] {
  const named = list.filter(({ figure }) => figure.dimension === "temperature" && !figure.unscaled);
  if (named.length === 0 || named.some(({ figure }) => figure.unit !== "F")) return [...list];
  return list.map((one) => (one.figure.unscaled ? { ...one, figure: { ...one.figure, unit: "F" } } : one));
}

/** "is 25 % dry basis the same as 20 % wet?": once a basis is spoken of, "wet" and "dry" after a share are bases. */
function sharedBasis(tokens: readonly Token[], list: readonly PlacedFigure[]): PlacedFigure[] {
  if (!list.some(({ figure }) => figure.basis)) return [...list];
  return list.map((one) => {
    const on = isWord(tokens[one.to], "on") ? 1 : 0;
    const word = tokens[one.to + on];
    const basis = isWord(word, "wet") ? "wet" : isWord(word, "dry") ? "dry" : null;
    if (!basis || one.figure.basis || !closes(tokens, one.to + on + 1)) return one;
    if (one.figure.dimension === null && on > 0) return { ...one, figure: { ...one.figure, dimension: "share", unit: "pct", basis } };
    return one.figure.dimension === "share" ? { ...one, figure: { ...one.figure, basis } } : one;
  });
}
