/** A smaller unit carries a larger one on: 5'6", "12 lb 8 oz", "2 h 15 min", "9 stone 4", "3 euro 50", "an hour and a quarter". */
import type { UnitId } from "../../quantities.ts";
import { closes } from "./elided.ts";
import type { PlacedFigure } from "./figure.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";
import { unitNamed } from "./units.ts";

interface Step {
  readonly unit: UnitId | null;
  readonly per: number;
  /** digits of a smaller part that needs no unit of its own: "6 ft 2", "1 h 30", "9 kg 400" */
  readonly bare?: readonly number[];
}
const SMALLER: Partial<Record<UnitId | "money", Step>> = {
  ft: { unit: "in", per: 12, bare: [1, 2] }, lb: { unit: "oz", per: 16 }, h: { unit: "min", per: 60, bare: [2] },
  st: { unit: "lb", per: 14, bare: [1, 2] }, m: { unit: "cm", per: 100, bare: [2] }, kg: { unit: "g", per: 1000, bare: [3] },
    t: { unit: "kg", per: 1000, bare: [3] },
  money: { unit: null, per: 100, bare: [2] },
};

/** @param second what stands after the first figure, or after "and" */
export function compound(tokens: readonly Token[], first: PlacedFigure, read: (from: number) => PlacedFigure | null): PlacedFigure | null {
  const { figure } = first;
  if (figure.dimension === "duration" && figure.unit === "day") return longer(tokens, first, read);
  const step = figure.dimension === "money" ? SMALLER.money : figure.unit ? SMALLER[figure.unit] : undefined;
  if (!step || !Number.isInteger(figure.value) || figure.value < 0 || tokens[first.to - 1]?.kind === "number") return null;
  const and = isWord(tokens[first.to], "and") ? 1 : 0;
  const next = first.to + and;
  const number = tokens[next];
  if (number?.kind !== "number") return null;
  const second = read(next);
  if (!second || second.figure.value < 0 || second.figure.value >= step.per || second.figure.low !== undefined) return null;
  const stuck = !number.gap && tokens[next - 1]?.gap === false;
  const digits = Number.isInteger(second.figure.value) && step.bare?.includes(String(second.figure.value).length);
  const bare = digits && second.figure.dimension === null && and === 0 && second.to === next + 1
    && (stuck || closes(tokens, second.to) || (figure.unit === "ft" && isWord(tokens[second.to], "in")));
  if (!bare && (step.unit === null || second.figure.unit !== step.unit)) return null;
  const value = figure.value + second.figure.value / step.per;
  return { figure: { ...figure, value, decimals: 2, at: [figure.at[0], second.figure.at[1]] }, from: first.from, to: second.to };
}

/** days in what a smaller period carries on: "2 years and 3 months", "a day and 6 hours" */
const CARRIES: readonly (readonly [number, readonly number[]])[] = [[365.25, [30.44, 7]], [30.44, [7, 1]], [7, [1]], [1, [1 / 24]]];

function longer(tokens: readonly Token[], first: PlacedFigure, read: (from: number) => PlacedFigure | null): PlacedFigure | null {
  const next = first.to + (isWord(tokens[first.to], "and") ? 1 : 0);
  if (tokens[next]?.kind !== "number") return null;
  const second = read(next);
  if (second?.figure.dimension !== "duration" || second.figure.low !== undefined) return null;
  const per = second.figure.unit === "h" ? 1 / 24 : second.figure.unit === "day" ? (second.times ?? 1) : 0;
  const size = first.times ?? 1;
  const [, smaller = []] = CARRIES.find(([days]) => days === size) ?? [];
  const more_days = second.figure.value * (second.figure.unit === "h" ? 1 / 24 : 1);
  if (!smaller.includes(per) || more_days >= size) return null;
  return { figure: { ...first.figure, value: first.figure.value + more_days, decimals: 2, at: [first.figure.at[0], second.figure.at[1]] },
    from: first.from, to: second.to };
}

const PARTS: Readonly<Record<string, number>> = { half: 1 / 2, third: 1 / 3, quarter: 1 / 4 };

/** The half of "a cord and a half", the quarter of "an hour and a quarter": its size and how many tokens it takes. */
export function partAfterUnit(tokens: readonly Token[], i: number): { readonly size: number; readonly length: number } | null {
  if (!isWord(tokens[i], "and", "n") && !isSign(tokens[i], "&")) return null;
  const number = tokens[i + 1];
  // "three quarters" is one number by now
  if (number?.kind === "number") {
    return number.spelled && number.value < 1 && !isWord(tokens[i + 2], "of") && !unitNamed(wordAt(tokens[i + 2]))
      ? { size: number.value, length: 2 } : null;
  }
  const size = isWord(number, "a") ? PARTS[wordAt(tokens[i + 2])] : PARTS[wordAt(number)];
  const length = isWord(number, "a") ? 3 : 2;
  const clock = isWord(tokens[i + length], "past", "to") && tokens[i + length + 1]?.kind === "number";
  return size === undefined || clock ? null : { size, length };
}
