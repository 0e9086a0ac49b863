/**
 * Figures in a person's words: value, unit as written, range, "about", moisture basis. Nothing is assumed that was not said:
 * a number without a unit has no dimension, a moisture without a basis has no basis.
 */
import { UNITS, convert, type UnitId } from "../../quantities.ts";
import { finish } from "./figure-context.ts";
import type { Figure, PlacedFigure } from "./figure.ts";
import { MONTHS } from "./months.ts";
import { readNumberWords } from "./number-words.ts";
import { isSign, isWord, scan, wordAt, type NumberToken, type Span, type Token } from "./tokens.ts";
import { LONGEST_UNIT_NAME, unitNamed, type UnitName } from "./units.ts";

export { basisAt, basisNear } from "./figure-context.ts";
export type { Figure, PlacedFigure } from "./figure.ts";

export interface FigureOptions {
  /** what "degrees" means when no scale is named; Celsius when absent */
  readonly degrees?: "C" | "F";
}

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
      i += skip;
      continue;
    }
    const one = single(tokens, i, options);
    if (!one) {
      i += 1;
      continue;
    }
    const ranged = range(tokens, one, options) ?? compound(tokens, one, options) ?? one;
    if (ranged === one && inWrittenDate(tokens, one)) {
      i += 1;
      continue;
    }
    const done = finish(tokens, ranged, out.at(-1)?.to ?? 0);
    out.push(done);
    i = done.to;
  }
  return sidesAlike(tokens, out);
}

/** The 1 of "1 August", the 20 and the 2026 of "Nov 20, 2026". */
function inWrittenDate(tokens: readonly Token[], { figure, from, to }: PlacedFigure): boolean {
  if (figure.dimension !== null || !Number.isInteger(figure.value) || figure.value < 1) return false;
  const day = figure.value <= 31;
  const after = isWord(tokens[to], "of") ? to + 1 : to;
  if (day && MONTHS.has(wordAt(tokens[after]))) return true;
  const before = isSign(tokens[from - 1], ",") && tokens[from - 2]?.kind === "number" ? from - 3 : from - 1;
  const year = figure.value >= 1900 && figure.value <= 2100;
  return (day || year) && MONTHS.has(wordAt(tokens[before])) && !isWord(tokens[before], "may", "mar");
}

/** "4 x 1.5 x 0.33 m": the unit at the end is every side's. */
function sidesAlike(tokens: readonly Token[], list: PlacedFigure[]): PlacedFigure[] {
  for (let i = list.length - 2; i >= 0; i -= 1) {
    const here = list[i] as PlacedFigure;
    const next = list[i + 1] as PlacedFigure;
    const joint = tokens[here.to];
    const times = here.to + 1 === next.from && (isWord(joint, "x", "by") || isSign(joint, "×") || isSign(joint, "*"));
    if (times && here.figure.dimension === null && next.figure.dimension === "length") {
      list[i] = { ...here, figure: { ...here.figure, dimension: "length", unit: next.figure.unit } };
    }
  }
  return list;
}

/** How many tokens of a clock time or a date begin here: 18:10, 6.30 pm, 3.10.2026, 2026-10-03, 1st. */
export function clockOrDate(tokens: readonly Token[], i: number): number {
  const first = tokens[i];
  if (first?.kind !== "number" || first.spelled) return 0;
  if (first.ordinal) return 2;
  if (meridiem(tokens, i + 1) > 0 && first.value <= 23.59) return 1 + meridiem(tokens, i + 1);
  const mark = tokens[i + 1];
  const second = tokens[i + 2];
  if (mark?.kind !== "sign" || mark.gap || second?.kind !== "number" || second.gap) return 0;
  if (mark.sign === ":") {
    const seconds = isSign(tokens[i + 3], ":") && tokens[i + 4]?.kind === "number" ? 2 : 0;
    return first.value <= 24 && second.value < 60 ? 3 + seconds + meridiem(tokens, i + 3 + seconds) : 0;
  }
  const third = tokens[i + 4];
  const dated = isSign(tokens[i + 3], mark.sign) && third?.kind === "number" && !third.gap && tokens[i + 3]?.gap === false;
  return dated && (mark.sign === "-" || mark.sign === "/" || mark.sign === ".") && looksLikeDate(first, second, third) ? 5 : 0;
}

const looksLikeDate = (a: NumberToken, b: NumberToken, c: NumberToken): boolean =>
  a.decimals === 0 && b.decimals === 0 && ((a.value > 1900 && b.value <= 12 && c.value <= 31)
    || (a.value <= 31 && b.value <= 31 && (c.value > 1900 || (c.value <= 99 && c.at[1] - c.at[0] === 2))));

function meridiem(tokens: readonly Token[], i: number): number {
  if (isWord(tokens[i], "am", "pm", "uhr", "oclock")) return 1;
  return isWord(tokens[i], "a", "p") && (isSign(tokens[i + 1], ".") || tokens[i]?.gap === false) && isWord(tokens[i + 2], "m")
    ? (isSign(tokens[i + 3], ".") ? 4 : 3) : 0;
}

/** A number with its sign before and its unit after (or its currency before). */
function single(tokens: readonly Token[], i: number, options: FigureOptions): PlacedFigure | null {
  let at = i;
  let negative = false;
  const before = unitSign(tokens[i]);
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
  // "8ish kilos", "8-ish kg"
  const ish = isWord(tokens[at + 1], "ish") ? 1 : isSign(tokens[at + 1], "-") && isWord(tokens[at + 2], "ish") ? 2 : 0;
  const named = unitAfter(tokens, at + 1 + ish, number);
  const unit = named?.name ?? (currency?.money ? currency : null);
  let to = at + 1 + (named ? ish + named.length : 0);
  // "a cord and a half"
  const half = named !== null && Number.isInteger(number.value) && isWord(tokens[to], "and") && isWord(tokens[to + 1], "a")
    && isWord(tokens[to + 2], "half") ? 0.5 : 0;
  if (half > 0) to += 3;
  if (!negative && (!unit || unit.dimension === "temperature")) {
    const below = belowZero(tokens, to);
    if (below > 0) {
      negative = true;
      to += below;
    }
  }
  const sized = (negative ? -1 : 1) * (number.value + half);
  const figure = withUnit(sized, unit, number, options, [(tokens[i] as Token).at[0], (tokens[to - 1] as Token).at[1]]);
  return { figure: named && ish > 0 ? { ...figure, about: true } : figure, from: i, to };
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
  return isWord(tokens[i], "of") && isWord(tokens[i + 1], "frost") ? 2 : 0;
}

function withUnit(value: number, unit: UnitName | null, number: NumberToken, options: FigureOptions, at: Span): Figure {
  const times = unit?.times ?? 1;
  const spread = unit?.uncertain;
  const id = unit?.unscaled ? (options.degrees ?? "C") : (unit?.unit ?? null);
  // nobody writes thousandths of a euro: "1.250 €" is twelve hundred and fifty
  const whole = unit?.money && number.alt !== undefined && number.decimals === 3 ? number.alt : value;
  return {
    dimension: unit?.dimension ?? null,
    value: whole * times,
    unit: id,
    ...(spread ? { low: value * spread.low, high: value * spread.high, uncertain: spread.name, about: true } : {}),
    ...(number.loose ? { about: true, low: number.value * times, high: (number.value + (number.value > 2 ? 2 : 1)) * times } : {}),
    ...(unit?.filling ? { filling: unit.filling } : {}),
    ...(unit?.unscaled ? { unscaled: true } : {}),
    ...(unit?.money ? { money: unit.money } : {}),
    ...(number.alt === undefined ? {} : { alt: (value < 0 ? -1 : 1) * number.alt * times }),
    decimals: number.decimals,
    at,
  };
}

const unitSign = (token: Token | undefined): string => (token?.kind === "sign" && "€£$%°".includes(token.sign) ? token.sign : "");

/** The unit that begins at a token, the longest name first. */
function unitAfter(tokens: readonly Token[], from: number, number: NumberToken): { name: UnitName; length: number } | null {
  const mark = lengthMark(tokens, from);
  if (mark) return mark;
  const hyphen = isSign(tokens[from], "-") && tokens[from]?.gap === false && tokens[from + 1]?.kind === "word"
    && tokens[from + 1]?.gap === false ? 1 : 0;
  const start = from + hyphen;
  let best: { name: UnitName; length: number } | null = null;
  let phrase = "";
  let dot = 0;
  for (let n = 0; n < LONGEST_UNIT_NAME; n += 1) {
    // "sq. ft.", "cu. m"
    if (n === 1 && (phrase === "sq" || phrase === "cu") && isSign(tokens[start + 1], ".")) dot = 1;
    const token = tokens[start + n + dot];
    const sign = isSign(token, "/") ? "/" : unitSign(token);
    const word = sign || wordAt(token);
    if (!word || (n === 0 && sign === "/")) break;
    phrase += phrase === "" || sign === "/" || phrase.endsWith("/") ? word : ` ${word}`;
    const name = unitNamed(phrase);
    if (name && (n > 0 || fits(tokens, start, word, number))) best = { name, length: hyphen + n + 1 + dot };
  }
  if (!best && isWord(tokens[start], "in") && fits(tokens, start, "in", number)) best = { name: { unit: "in", dimension: "length" },
    length: hyphen + 1 };
  if (!best && isSign(tokens[from], "#") && tokens[from]?.gap === false) best = { name: { unit: "lb", dimension: "mass" }, length: 1 };
  return best;
}

/** 6' and 16" right after the number; "''" is an inch too. A closing quotation mark is not. */
function lengthMark(tokens: readonly Token[], i: number): { name: UnitName; length: number } | null {
  if (tokens[i]?.gap !== false) return null;
  if (isSign(tokens[i], '"')) return isSign(tokens[i - 2], '"') ? null : { name: { unit: "in", dimension: "length" }, length: 1 };
  if (!isSign(tokens[i], "'")) return null;
  if (isSign(tokens[i + 1], "'") && tokens[i + 1]?.gap === false) return { name: { unit: "in", dimension: "length" }, length: 2 };
  return isSign(tokens[i - 2], "'") ? null : { name: { unit: "ft", dimension: "length" }, length: 1 };
}

const AFTER_INCH = ["long", "wide", "high", "deep", "thick", "logs", "log", "pieces", "splits", "x", "by", "wall", "flue", "pipe"];

/** Short unit names that are also everyday words: "12 in two hours", "the 5 a day", "9 c". */
function fits(tokens: readonly Token[], i: number, word: string, number: NumberToken): boolean {
  const token = tokens[i] as Token;
  if (word === "in") return !token.gap || isWord(tokens[i + 1], ...AFTER_INCH) || tokens[i + 1] === undefined
    || (tokens[i + 1]?.kind === "sign" && !isSign(tokens[i + 1], "-"));
  if (word === "k") return token.kind === "word" && token.capital === true;
  if (word === "st") return number.decimals === 0 && !(number.ordinal && !token.gap);
  if (word === "min" || word === "mins") return !(isWord(tokens[i + 1], "load", "fire") || (isSign(tokens[i + 1], ":")));
  if (word === "stone") return !isWord(tokens[i + 1], "heater", "stove", "wall", "walls", "facing", "house", "steps");
  return true;
}

const RANGE_MARKS = new Set(["-", "–", "~", "…"]);

/** "12-14 kg", "12 kg to 14 kg", "between 6 and 8", "6 or 7"; a range has its middle as value. */
function range(tokens: readonly Token[], first: PlacedFigure, options: FigureOptions): PlacedFigure | null {
  const joint = tokens[first.to];
  const between = isWord(tokens[first.from - 1], "between") || isWord(tokens[first.from - 2], "between");
  let next = first.to + 1;
  if (joint?.kind === "sign") {
    if (joint.sign === "." && isSign(tokens[first.to + 1], ".")) next += 1;
    else if (joint.sign === "/") {
      // "-12/-5": only between temperatures
      if (first.figure.value >= 0) return null;
    } else if (joint.sign === "±") return within(tokens, first, next, options);
    else if (!RANGE_MARKS.has(joint.sign)) return null;
    else if (joint.gap !== (tokens[next]?.gap ?? true) && joint.sign === "-") return null;
  } else if (!(isWord(joint, "to", "or", "til", "till", "bis", "thru", "through", "until")
    || (between && isWord(joint, "and")))) return null;
  const second = single(tokens, next, options);
  if (!second) return null;
  const a = first.figure;
  const b = second.figure;
  if (a.uncertain || (a.dimension !== null && b.dimension !== null && a.dimension !== b.dimension)) return null;
  // "8 to 22:00", "shut at 8 or so" never come here; "6 or 7" must be near each other to be one figure
  if (joint?.kind === "word" && joint.word === "or" && !(a.value < b.value && b.value <= a.value * 2 + 2)) return null;
  const unit = b.dimension === null ? a : b;
  const turned = a.unit !== null && b.unit !== null && a.unit !== b.unit && a.money === undefined ? convert(a.value, a.unit, b.unit)
    : a.value;
  // "five to six hundred"
  const hundreds = a.dimension === null && a.value < 10 && b.value >= 100 && b.value % 100 === 0 && spelled(tokens, next) ? 100 : 1;
  const start = turned * hundreds;
  const [low, high] = start <= b.value ? [start, b.value] : [b.value, start];
  return {
    figure: {
      ...unit, value: (low + high) / 2, low, high, decimals: Math.max(a.decimals, b.decimals), at: [a.at[0], b.at[1]],
      ...(b.filling ?? a.filling ? { filling: b.filling ?? a.filling } : {}),
    },
    from: first.from,
    to: second.to,
  };
}

/** "10 ± 0.5 kg" */
function within(tokens: readonly Token[], first: PlacedFigure, next: number, options: FigureOptions): PlacedFigure | null {
  const second = single(tokens, next, options);
  if (!second || second.figure.value < 0) return null;
  const unit = second.figure.dimension === null ? first.figure : second.figure;
  const { value } = first.figure;
  return { figure: { ...unit, value, low: value - second.figure.value, high: value + second.figure.value,
    at: [first.figure.at[0], second.figure.at[1]] }, from: first.from, to: second.to };
}

const spelled = (tokens: readonly Token[], i: number): boolean => {
  const token = tokens[i];
  return token?.kind === "number" && (token.spelled === true || token.at[1] - token.at[0] > 4);
};

/** "5'6\"", "12 lb 8 oz", "2 h 15 min", "9 st 4": a smaller unit carries the larger one on. */
const SMALLER: Partial<Record<UnitId, { readonly unit: UnitId; readonly per: number; readonly bare?: true }>> = {
  ft: { unit: "in", per: 12, bare: true }, lb: { unit: "oz", per: 16 }, h: { unit: "min", per: 60, bare: true },
    st: { unit: "lb", per: 14, bare: true }, m: { unit: "cm", per: 100 },
};

function compound(tokens: readonly Token[], first: PlacedFigure, options: FigureOptions): PlacedFigure | null {
  const step = first.figure.unit ? SMALLER[first.figure.unit] : undefined;
  if (!step || !Number.isInteger(first.figure.value) || first.figure.value < 0) return null;
  const next = isWord(tokens[first.to], "and") ? first.to + 1 : first.to;
  if (tokens[next]?.kind !== "number") return null;
  const second = single(tokens, next, options);
  if (!second || second.figure.value < 0 || second.figure.value >= step.per) return null;
  const stuck = step.bare && second.figure.unit === null && tokens[next]?.gap === false && tokens[next - 1]?.gap === false;
  // "1 m 20"
  const centimetres = first.figure.unit === "m" && second.figure.unit === null && second.figure.value >= 10
    && Number.isInteger(second.figure.value);
  if (second.figure.unit !== step.unit && !stuck && !centimetres) return null;
  const value = first.figure.value + second.figure.value / step.per;
  return { figure: { ...first.figure, value, decimals: 2, at: [first.figure.at[0], second.figure.at[1]] }, from: first.from,
    to: second.to };
}

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
