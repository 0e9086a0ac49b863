/**
 * Figures in a person's words: value, unit as written, range, "about", moisture basis. Nothing is assumed that was not said:
 * a number without a unit has no dimension, a moisture without a basis has no basis.
 */
import { UNITS, convert, type UnitId } from "../../quantities.ts";
import { compound, partAfterUnit } from "./compound.ts";
import { withNeighbours } from "./elided.ts";
import { finish } from "./figure-context.ts";
import type { Figure, FigureOptions, PlacedFigure } from "./figure.ts";
import { clockOrDate, hoursAndMinutes, inWrittenDate, isFigureOfSpeech } from "./not-figures.ts";
import { readNumberWords } from "./number-words.ts";
import { range } from "./ranges.ts";
import { isSign, isWord, scan, wordAt, type NumberToken, type Span, type Token } from "./tokens.ts";
import { fillerAt, unitAfter, unitSign } from "./unit-after.ts";
import { unitNamed, type UnitName } from "./units.ts";

export { basisAt, basisNear } from "./figure-context.ts";
export type { Figure, FigureOptions, PlacedFigure } from "./figure.ts";
export { clockOrDate } from "./not-figures.ts";

/** All figures of a text in order. Clock times and dates are left out. */
export const readFigures = (text: string, options: FigureOptions = {}): Figure[] =>
  figuresIn(readNumberWords(scan(text)), options).map(({ figure }) => figure);

/** The same on tokens that went through `readNumberWords`. */
export function figuresIn(tokens: readonly Token[], options: FigureOptions = {}): PlacedFigure[] {
  const out: PlacedFigure[] = [];
  let i = 0;
  while (i < tokens.length) {
    const skip = clockOrDate(tokens, i);
    if (skip > 0) {
      const hours = skip === 3 ? hoursAndMinutes(tokens, i) : null;
      if (hours !== null) {
        out.push({ from: i, to: i + 4, figure: { dimension: "duration", value: hours, unit: "h", decimals: 2,
          at: [(tokens[i] as Token).at[0], (tokens[i + 3] as Token).at[1]] } });
        i += 4;
        continue;
      }
      i += skip;
      continue;
    }
    const one = single(tokens, i, options);
    if (!one || isZeroMark(tokens, one)) {
      i += 1;
      continue;
    }
    const read = (from: number): PlacedFigure | null => single(tokens, from, options);
    const whole = compound(tokens, one, read) ?? one;
    const ranged = range(tokens, whole, (from) => {
      const end = read(from);
      return end && (compound(tokens, end, read) ?? end);
    }) ?? whole;
    if ((ranged === one && inWrittenDate(tokens, one)) || isFigureOfSpeech(tokens, ranged)) {
      i = Math.max(i + 1, isFigureOfSpeech(tokens, ranged) ? ranged.to : 0);
      continue;
    }
    const done = byItsBasis(tokens, finish(tokens, ranged, out.at(-1)?.to ?? 0), out.at(-1));
    out.push(done);
    i = done.to;
  }
  return withNeighbours(tokens, out, options);
}

/** "20 percent dry, so 17 wet" */
function byItsBasis(tokens: readonly Token[], placed: PlacedFigure, before: PlacedFigure | undefined): PlacedFigure {
  const basis = isWord(tokens[placed.to], "wet", "dry") ? (wordAt(tokens[placed.to]) as "wet" | "dry") : null;
  const shared = before?.figure.dimension === "share" && before.figure.basis && placed.from - before.to < 6;
  return basis && shared && placed.figure.dimension === null ? { ...placed, figure: { ...placed.figure, dimension: "share", unit: "pct", basis } } : placed;
}

/** "in the teens below zero": the mark itself, no reading */
const isZeroMark = (tokens: readonly Token[], { figure, from, to }: PlacedFigure): boolean => figure.value === 0
  && figure.dimension === null
  && to === from + 1 && (tokens[from] as NumberToken).spelled === true && isWord(tokens[from - 1], "below", "above", "under", "sub");

/** "EUR 480", "CHF 95" */
const CODES = new Set(["eur", "usd", "gbp", "chf", "sek", "nok", "dkk", "pln", "aud", "nzd", "cad", "kr"]);

/** A number with its sign before and its unit after (or its currency before). */
function single(tokens: readonly Token[], i: number, options: FigureOptions): PlacedFigure | null {
  let at = i;
  let negative = false;
  const before = unitSign(tokens[i]) || (CODES.has(wordAt(tokens[i])) && tokens[i + 1]?.kind === "number" ? wordAt(tokens[i]) : "");
  const currency = before ? unitNamed(before) : null;
  if (currency?.money) at += 1;
  const sign = tokens[at];
  if ((isSign(sign, "-") || isSign(sign, "–") || isSign(sign, "+")) && tokens[at + 1]?.gap === false && standsAlone(tokens, at)) {
    negative = !isSign(sign, "+");
    at += 1;
  } else if (isWord(sign, "minus", "negative", "miinus")) {
    negative = true;
    at += 1;
  }
  const number = tokens[at];
  if (number?.kind !== "number" || number.ordinal || clockOrDate(tokens, at) > 0) return null;
  const direct = unitAfter(tokens, at + 1, number);
  const filler = direct ? null : fillerAt(tokens, at + 1, number);
  const named = direct ?? (filler && filler.length > 0 ? unitAfter(tokens, at + 1 + filler.length, number) : null);
  // "£3 grand"
  const thousands = named?.name.money === "" ? named.name.times : undefined;
  const unit = (currency?.money ? { ...currency, ...(thousands ? { times: thousands } : {}) } : null) ?? named?.name ?? null;
  let to = at + 1 + (named && !(currency?.money && named.name.money === undefined) ? (filler?.length ?? 0) + named.length : 0);
  const part = to > at + 1 && Number.isInteger(number.value) ? partAfterUnit(tokens, to) : null;
  if (part) to += part.length;
  let scale = unit;
  if (!negative && (!unit || unit.dimension === "temperature")) {
    const below = belowZero(tokens, to);
    if (below > 0) {
      negative = true;
      to += below;
      // "20 below zero F"
      const after = unit ? null : unitAfter(tokens, to, number);
      if (after?.name.dimension === "temperature") {
        scale = after.name;
        to += after.length;
      }
    }
  }
  const sized = (negative ? -1 : 1) * (number.value + (part?.size ?? 0));
  const figure = withUnit(sized, scale, number, options, [(tokens[i] as Token).at[0], (tokens[to - 1] as Token).at[1]]);
  const said = named ? filler : null;
  return {
    figure: { ...figure, ...(said?.about ? { about: true } : {}), ...(said?.bound ? { bound: said.bound } : {}) }, from: i, to,
    ...(unit?.times ? { times: unit.times } : {}),
  };
}

/** "-" belongs to the number when nothing it could join stands right before it. */
function standsAlone(tokens: readonly Token[], i: number): boolean {
  const before = tokens[i - 1];
  return before === undefined || (tokens[i] as Token).gap || (before.kind === "sign" && !isSign(before, ")") && !isSign(before, '"'));
}

/** "twelve below", "5 below zero", "ten degrees of frost". */
function belowZero(tokens: readonly Token[], i: number): number {
  if (isWord(tokens[i], "below")) {
    if (isWord(tokens[i + 1], "zero", "freezing")) return 2;
    return tokens[i + 1]?.kind === "number" && tokens[i + 1]?.gap ? ((tokens[i + 1] as NumberToken).value === 0 ? 2 : 0)
      : isWord(tokens[i + 1], "the", "that", "my", "its") ? 0 : 1;
  }
  return (isWord(tokens[i], "of") && isWord(tokens[i + 1], "frost")) || (isWord(tokens[i], "under")
    && (isWord(tokens[i + 1], "zero", "freezing") || (tokens[i + 1]?.kind === "number" && (tokens[i + 1] as NumberToken).value === 0)))
    ? 2 : 0;
}

function withUnit(value: number, unit: UnitName | null, number: NumberToken, options: FigureOptions, at: Span): Figure {
  const times = unit?.times ?? 1;
  const spread = unit?.uncertain;
  const id = unit?.unscaled ? (options.degrees ?? "C") : (unit?.unit ?? null);
  const thousands = unit !== null && number.alt !== undefined && number.decimals === 3 && groupsThousands(unit, number.alt);
  const whole = thousands ? (value < 0 ? -1 : 1) * (number.alt as number) : value;
  return {
    dimension: unit?.dimension ?? null,
    value: whole * times,
    unit: id,
    ...(spread ? { low: value * spread.low, high: value * spread.high, uncertain: spread.name, about: true } : {}),
    ...(number.loose ? { about: true, low: number.value * times, high: (number.value + (number.value > 2 ? 2 : 1)) * times } : {}),
    ...(unit?.filling ? { filling: unit.filling } : {}),
    ...(unit?.unscaled ? { unscaled: true } : {}),
    ...(unit?.money === undefined ? {} : { money: unit.money }),
    ...(number.alt === undefined ? {} : { alt: (value < 0 ? -1 : 1) * (thousands ? number.value : number.alt) * times }),
    decimals: number.decimals,
    at,
  };
}

/** "1.250 €" and "1.200 kg" are twelve hundred and more: nobody writes thousandths of a euro, or weighs to the gram and ends in a nought. */
const groupsThousands = (unit: UnitName, thousands: number): boolean => unit.money !== undefined
  || (WHOLE_THOUSANDS.has(unit.unit) && thousands % 10 === 0 && thousands < 10_000);
const WHOLE_THOUSANDS: ReadonlySet<UnitId | null> = new Set<UnitId>(["kg", "lb", "l", "W", "kWh", "Btu"]);

/**
 * A figure that speaks of moisture as percent: "0.26" is 26 %, a bare "26" is 26 %. Only for a context that says moisture.
 * @returns null when it is another dimension
 */
export function asShare(figure: Figure): Figure | null {
  if (figure.dimension === "share") return figure.value > 0 && figure.value < 1 && figure.decimals > 0 && figure.value * 100 >= 5 ? null
    : figure;
  if (figure.dimension !== null) return null;
  const fraction = figure.value > 0 && figure.value < 1 && figure.decimals > 0;
  const turn = (v: number | undefined): number | undefined => (v === undefined ? undefined : fraction ? Math.round(v * 1e6) / 1e4 : v);
  const { low, high } = figure;
  return {
    ...figure, dimension: "share", unit: "pct", basis: figure.basis ?? null, value: turn(figure.value) as number,
    ...(low === undefined ? {} : { low: turn(low) }), ...(high === undefined ? {} : { high: turn(high) }),
  };
}

/** The value in another unit of its dimension, or null. */
export function inUnit(figure: Figure, unit: UnitId): number | null {
  return figure.unit !== null && UNITS[figure.unit].dimension === UNITS[unit].dimension ? convert(figure.value, figure.unit, unit) : null;
}
