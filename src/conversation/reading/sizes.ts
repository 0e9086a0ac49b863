/** Stacks given by their sides: "2 rows 4x1.5x0.33", "8 ft by 4 ft by 16 in", "4 m long, 1.5 m high". */
import { convert, type UnitId, type UnitSystem } from "../../quantities.ts";
import { figuresIn, type Figure, type PlacedFigure } from "./figures.ts";
import { isSign, isWord, type Span, type Token } from "./tokens.ts";

export interface StackSize {
  readonly length_m: number;
  readonly height_m: number;
  readonly log_length_m: number;
  /** rows of this size */
  readonly rows: number;
  /** no unit was written: metres, or feet and inches, were taken from the size of the figures */
  readonly unit_guessed: boolean;
  readonly at: Span;
}

const FEET_AND_INCHES = { wide: "ft" as UnitId, deep: "in" as UnitId };

/** Stacks of three sides in tokens that went through `readNumberWords`. */
export function sizesIn(tokens: readonly Token[], system: UnitSystem = "metric"): StackSize[] {
  const placed = figuresIn(tokens);
  const out: StackSize[] = [];
  for (let i = 0; i + 2 < placed.length; i += 1) {
    const [a, b, c] = [placed[i], placed[i + 1], placed[i + 2]];
    if (!a || !b || !c || !joined(tokens, a.to, b.from) || !joined(tokens, b.to, c.from)) continue;
    const sides = [a.figure, b.figure, c.figure];
    if (sides.some(({ dimension, value }) => !(dimension === null || dimension === "length") || value <= 0)) continue;
    const metres = inMetres(sides, system);
    if (!metres) continue;
    const before = placed[i - 1];
    const rows = before && before.figure.dimension === null && isWord(tokens[before.to], "row", "rows", "stack", "stacks", "piles",
      "pile", "rick", "ricks") && before.to >= a.from - 3 ? before.figure.value : 1;
    const [length_m, height_m, log_length_m] = metres.sides as [number, number, number];
    out.push({ length_m, height_m, log_length_m, rows, unit_guessed: metres.guessed, at: [a.figure.at[0], c.figure.at[1]] });
    i += 2;
  }
  const named = out.length === 0 ? namedSides(tokens, placed) : null;
  return named ? [named] : out;
}

const SIDES: readonly (readonly string[])[] = [["long", "length", "wide"], ["high", "height", "tall"], ["deep", "depth", "thick"]];

/** "3.5 m long, 1.2 high and 0.5 deep": each side beside its name; bare figures take the unit of the first. */
function namedSides(tokens: readonly Token[], placed: readonly PlacedFigure[]): StackSize | null {
  const found = SIDES.map((names) => placed.find(({ figure, from, to }) => (figure.dimension === "length" || figure.dimension === null)
    && figure.value > 0 && (isWord(tokens[to], ...names) || isWord(tokens[from - 1], ...names))));
  const [a, b, c] = found;
  const unit = found.find((one) => one?.figure.unit)?.figure.unit;
  if (!a || !b || !c || !unit) return null;
  const metres = (one: PlacedFigure): number => convert(one.figure.value, one.figure.unit ?? unit, "m");
  return { length_m: metres(a), height_m: metres(b), log_length_m: metres(c), rows: 1, unit_guessed: false,
    at: [Math.min(a.figure.at[0], b.figure.at[0], c.figure.at[0]), Math.max(a.figure.at[1], b.figure.at[1], c.figure.at[1])] };
}

const joined = (tokens: readonly Token[], from: number, to: number): boolean => to - from === 1
  && (isSign(tokens[from], "x") || isSign(tokens[from], "*") || isWord(tokens[from], "x", "by", "mal"));

/**
 * Sides in metres. A unit written at the last side holds for the bare ones ("4x1.5x0.33 m"); without any, sides of a stack in metres
 * have a log below 1.3, in feet and inches a log of 8 and more.
 */
function inMetres(sides: readonly Figure[], system: UnitSystem): { sides: number[]; guessed: boolean } | null {
  const last = sides[2] as Figure;
  const written = sides.find(({ unit }) => unit !== null)?.unit ?? null;
  if (written === null) {
    const longLog = last.value >= 8;
    if (system === "us" && longLog) return { sides: sides.map(({ value }, n) =>
      convert(value, n < 2 ? FEET_AND_INCHES.wide : FEET_AND_INCHES.deep, "m")), guessed: true };
    if (longLog) return { sides: sides.map(({ value }, n) => (n === 2 ? value / 100 : value > 30 ? value / 100 : value)), guessed: true };
    if (system === "us") return { sides: sides.map(({ value }) => convert(value, "ft", "m")), guessed: true };
    return last.value <= 3 ? { sides: sides.map(({ value }) => value), guessed: true } : null;
  }
  return {
    sides: sides.map(({ value, unit }, n) => {
      if (unit !== null) return convert(value, unit, "m");
      const inherited: UnitId = n < 2 && (written === "in" || written === "cm" || written === "mm") && value <= 30
        ? (written === "in" ? "ft" : "m") : written;
      return convert(value, inherited, "m");
    }),
    guessed: false,
  };
}
