/** What a figure takes from its neighbours: the unit of a side, of the figure it is compared with, the scale, the basis. */
import type { Figure, FigureOptions, PlacedFigure } from "./figure.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";

const FUNCTION_WORDS = new Set(["of", "and", "or", "but", "to", "from", "in", "at", "on", "for", "with", "per", "each", "a", "an", "the",
  "is", "was", "it", "i", "so", "then", "than", "after", "before", "until", "till", "by", "when", "if", "this", "that", "now",
  "overnight", "today", "yesterday", "outside", "inside", "here", "max", "min", "maximum", "minimum", "tops", "tall", "high", "long",
  "wide", "deep", "thick", "above", "below", "off", "away", "between", "across", "total", "ish", "too", "only", "again", "w", "my", "we",
  "which", "because", "instead"]);

/** Nothing that a number could count stands here: the end, a sign, or a word that is no thing. */
export function closes(tokens: readonly Token[], i: number): boolean {
  const token = tokens[i];
  if (token === undefined) return true;
  if (token.kind === "sign") return !"-–/x*:°'\"#".includes(token.sign);
  return token.kind === "word" && FUNCTION_WORDS.has(token.word);
}

/** All figures of a text, each with what its neighbours lend it. */
export function withNeighbours(tokens: readonly Token[], list: readonly PlacedFigure[], options: FigureOptions): PlacedFigure[] {
  if (list.every(({ figure }) => figure.dimension === null)) return bareTemperatures(tokens, list, options);
  const measured = comparedUnits(tokens, sidesAlike(tokens, list));
  return sharedBasis(tokens, sharedScale(pricedInPounds(tokens, bareTemperatures(tokens, measured, options))));
}

/** "4 x 1.5 x 0.33 m": the unit at the end is every side's; "33 cm x 41": so is the one at the start. */
function sidesAlike(tokens: readonly Token[], given: readonly PlacedFigure[]): PlacedFigure[] {
  const list = [...given];
  const joined = (a: PlacedFigure, b: PlacedFigure): boolean => a.to + 1 === b.from && (isWord(tokens[a.to], "x", "by")
    || isSign(tokens[a.to], "×") || isSign(tokens[a.to], "*"));
  const lend = (to: number, from: number, joint: boolean): void => {
    const [bare, side] = [list[to], list[from]];
    if (joint && bare?.figure.dimension === null && side?.figure.dimension === "length") {
      list[to] = { ...bare, figure: { ...bare.figure, dimension: "length", unit: side.figure.unit } };
    }
  };
  for (let i = list.length - 2; i >= 0; i -= 1) lend(i, i + 1, joined(list[i] as PlacedFigure, list[i + 1] as PlacedFigure));
  for (let i = 1; i < list.length; i += 1) {
    const [side, bare] = [list[i - 1] as PlacedFigure, list[i] as PlacedFigure];
    // "8 ft by 4 ft by 16" ends in inches
    if (side.figure.unit !== "ft" || bare.figure.value < 12) lend(i, i - 1, joined(side, bare));
  }
  return list;
}

const COMPARED = new Set(["mass", "temperature", "share", "length", "volume"]);
const COMPARING = new Set(["not", "says", "say", "said", "reads", "shows", "showed", "takes", "fits", "allows",
  "wants", "needs"]);
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
    if (bare.figure.dimension !== null || !(more || closes(tokens, bare.to))) return;
    const next = given[i + 1];
    const before = list[i - 1];
    const towards = isWord(tokens[bare.from - 1], "from") && next !== undefined && next.from <= bare.to + 2
      && isWord(tokens[next.from - 1], "to");
    const corrected = isWord(tokens[bare.from - 1], "but") && before !== undefined && isWord(tokens[before.from - 1], "not");
    // "12 kg from 7 to 9" tells the time
    const ends = bare.figure.low === undefined || ALLOWING.has(wordAt(tokens[bare.from - 1]));
    const said = (more || corrected || COMPARING.has(wordAt(tokens[bare.from - 1])) || comparedBefore(tokens, before, bare.from)
      || (isWord(tokens[bare.from - 1], "of") && isWord(tokens[bare.from - 2], "instead"))
      || (isWord(tokens[bare.from - 1], "at") && isWord(tokens[bare.from - 2], "was", "is", "sits", "sat", "stays")
        && before?.figure.dimension === "temperature")) && ends;
    const lender = towards ? next : said && before && bare.from - before.to <= FARTHEST ? before : undefined;
    if (!lender || (!towards && ofAnother(tokens, lender, bare)) || lender.figure.unit === null || (lender.times ?? 1) !== 1
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
  if (dimension !== "temperature" && isWord(tokens[bare.to], ...PLACES)) return true;
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

const alike = (a: Figure, b: Figure): boolean => (b.dimension === "temperature"
  || (a.value > 0 && a.value <= 5 * b.value && b.value <= 5 * a.value));

/** "the temp dropped from 23 to 17", "temperature inside 19" */
function bareTemperatures(tokens: readonly Token[], given: readonly PlacedFigure[], options: FigureOptions): PlacedFigure[] {
  const out: PlacedFigure[] = [];
  for (const one of given) {
    const before = out.at(-1);
    const carriedOn = before?.figure.unscaled === true && one.from - before.to === 1 && isWord(tokens[before.to], "to");
    const { dimension, value } = one.figure;
    const reads = dimension === null && value > -60 && value < 1500 && closes(tokens, one.to)
      && (carriedOn || temperatureNamed(tokens, one.from, before?.to ?? 0));
    out.push(reads ? { ...one, figure: { ...one.figure, dimension: "temperature", unit: options.degrees ?? "C", unscaled: true } } : one);
  }
  return out;
}

function temperatureNamed(tokens: readonly Token[], from: number, floor: number): boolean {
  for (let i = from - 1; i >= Math.max(floor, from - 6); i -= 1) {
    if (isSign(tokens[i], ".") || isSign(tokens[i], "?") || isSign(tokens[i], ",")) return false;
    if (isWord(tokens[i], "temp", "temps", "temperature", "temperatures")) return true;
  }
  return false;
}

const PRICING = new Set(["paid", "pay", "paying", "spent", "spend", "cost", "costs", "costing", "charged", "charges", "charging",
  "charge", "quoted", "quote", "price", "priced", "asked", "asking", "wants", "wanted", "bill"]);

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
