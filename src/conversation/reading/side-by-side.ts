/** Figures side by side that share a unit: sides of a stack, a row of weights, prices of offers. */
import { alike, closes } from "./closes.ts";
import { contrasted } from "./contrasts.ts";
import type { PlacedFigure } from "./figure.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";
import { unitNamed } from "./units.ts";

/** tokens a price may stand from the one before */
const FARTHEST = 12;

/** "4 x 1.5 x 0.33 m": the unit at the end is every side's; "33 cm x 41": so is the one at the start. */
export function sidesAlike(tokens: readonly Token[], given: readonly PlacedFigure[]): PlacedFigure[] {
  const list = [...given];
  // "two metres high by five long"
  const joined = (a: PlacedFigure, b: PlacedFigure): boolean => {
    const joint = isWord(tokens[a.to], "high", "long", "wide", "deep", "tall") ? a.to + 1 : a.to;
    return joint + 1 === b.from && (isWord(tokens[joint], "x", "by") || isSign(tokens[joint], "×") || isSign(tokens[joint], "*"));
  };
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

const SIDES = ["length", "diameter", "width", "height", "depth", "thickness"];

/** "33 cm long and about 8 thick", "length 30, diameter 10 cm": a bare side takes the unit of the one beside it. */
export function furtherSides(tokens: readonly Token[], given: readonly PlacedFigure[]): PlacedFigure[] {
  const list = [...given];
  list.forEach((bare, i) => {
    const [before, next] = [list[i - 1], given[i + 1]];
    if (bare.figure.dimension === null && next?.figure.dimension === "length" && next.from - bare.to <= 4 && closes(tokens, bare.to)
      && isWord(tokens[bare.from - 1], ...SIDES)) {
      list[i] = { ...bare, figure: { ...bare.figure, dimension: "length", unit: next.figure.unit } };
      return;
    }
    if (bare.figure.dimension !== null || before?.figure.dimension !== "length" || bare.from - before.to > 6) return;
    if (!isWord(tokens[bare.to], "thick", "wide", "deep", "long", "high", "tall", "across") || !closes(tokens, bare.to + 1)) return;
    if (before.figure.unit === "ft" && bare.figure.value >= 12) return;
    list[i] = { ...bare, figure: { ...bare.figure, dimension: "length", unit: before.figure.unit } };
  });
  return list;
}

/** "200 euro a cord or 90 for a stere": a bare price beside another. */
export function furtherPrices(tokens: readonly Token[], given: readonly PlacedFigure[]): PlacedFigure[] {
  let before: PlacedFigure | undefined;
  return given.map((bare) => {
    if (bare.figure.dimension === "money") before = bare;
    if (bare.figure.dimension === null && askedFor(tokens, bare)) {
      before = { ...bare, figure: { ...bare.figure, dimension: "money", unit: null, money: before?.figure.money ?? "" } };
      return before;
    }
    if (bare.figure.dimension !== null || before === undefined || bare.from - before.to > FARTHEST) return bare;
    const per = isWord(tokens[bare.to], "per", "a", "an") || (isWord(tokens[bare.to], "for")
      && isWord(tokens[bare.to + 1], "a", "one", "the"));
    const measure = tokens.slice(bare.to, bare.to + 3).some((token) => ["volume",
      "mass"].includes(unitNamed(wordAt(token))?.dimension ?? ""));
    // "€1,150 + 200 for delivery", "90 € now, last year 75"
    const added = isSign(tokens[bare.from - 1], "+") || isWord(tokens[bare.from - 1], "plus") || contrasted(tokens, bare, before);
    if (!(per && measure) && !(added && closes(tokens, bare.to) && bare.figure.value >= before.figure.value / 20)) return bare;
    before = { ...bare, figure: { ...bare.figure, dimension: "money", unit: null, money: before.figure.money ?? "" } };
    return before;
  });
}

/** "asking 480 for 2 cords" */
const askedFor = (tokens: readonly Token[], { from, to, figure }: PlacedFigure): boolean => figure.value >= 5
  && PRICING.has(wordAt(tokens[from - 1]))
  && isWord(tokens[to], "for") && (tokens[to + 1]?.kind === "number" || isWord(tokens[to + 1], "a", "the", "my", "one", "it", "that"));

export const PRICING = new Set(["paid", "pay", "paying", "spent", "spend", "cost", "costs", "costing", "charged", "charges", "charging",
  "charge", "quoted", "quote", "price", "priced", "asked", "asking", "wants", "wanted", "bill"]);

/** "5.2, 6.1 and 5.7 kg", "4.1 + 3.9 + 4.4 kg": the unit at the end of a row is every one's. */
export function rowsAlike(tokens: readonly Token[], given: readonly PlacedFigure[]): PlacedFigure[] {
  const list = [...given];
  for (let i = list.length - 2; i >= 0; i -= 1) {
    const [bare, next] = [list[i] as PlacedFigure, list[i + 1] as PlacedFigure];
    // "in the morning 6 and in the evening 9 kg"
    const byDay = isWord(tokens[bare.from - 1], ...DAY_PARTS) && isWord(tokens[bare.to], "and")
      && isWord(tokens[next.from - 1], ...DAY_PARTS)
      && next.from - bare.to <= 5;
    // "at most 12, at least 7 kg", "was 140, now it is 165 euros"
    const against = isSign(tokens[bare.to], ",") && next.from - bare.to <= 5 && ((bare.figure.bound !== undefined
      && next.figure.bound !== undefined)
      || tokens.slice(bare.to + 1, next.from).some((token) => isWord(token, "now", "today", "currently")));
    if (bare.figure.dimension !== null || !ROWED.has(next.figure.dimension ?? "") || (next.times ?? 1) !== 1
      || !alike(bare.figure, next.figure)
      || !(byDay || against || rowJoint(tokens, bare.to, next.from))
        || isWord(tokens[bare.from - 1], "at", "around", "by", "since", "until", "page", "room", "no", "from")) continue;
    const { dimension, unit, unscaled, money } = next.figure;
    list[i] = { ...bare, figure: { ...bare.figure, dimension, unit, ...(unscaled ? { unscaled } : {}),
      ...(money === undefined ? {} : { money }),
      ...(dimension === "share" ? { basis: bare.figure.basis ?? next.figure.basis ?? null } : {}) } };
  }
  return list;
}

const DAY_PARTS = ["morning", "evening", "noon", "night", "today", "yesterday", "tonight"];
const ROWED = new Set(["mass", "temperature", "share", "length", "volume", "duration", "money"]);
const rowJoint = (tokens: readonly Token[], from: number, to: number): boolean => {
  if (to - from === 1) return isSign(tokens[from], "+") || isSign(tokens[from], "&") || isSign(tokens[from], ",")
    || isSign(tokens[from], "/")
    || isWord(tokens[from], "and", "plus", "then");
  return to - from === 2 && isSign(tokens[from], ",") && isWord(tokens[from + 1], "and", "then", "or");
};
