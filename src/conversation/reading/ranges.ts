/** Two numbers that are one figure: "12-14 kg", "12 kg to 14 kg", "between 6 and 8", "6 or 7", "10 ± 0.5 kg". */
import { convert } from "../../quantities.ts";
import type { Figure, PlacedFigure } from "./figure.ts";
import { isSign, isWord, wordAt, type NumberToken, type Token } from "./tokens.ts";

type Read = (from: number) => PlacedFigure | null;
/** Where the second number begins, and what must hold of the two. */
interface Joint {
  readonly next: number;
  /** "or", "/", ",": only numbers near each other are one figure; "-" with a gap on one side could be a minus */
  readonly only?: "near" | "positive";
}

const MARKS = new Set(["-", "–", "~", "…"]);
const JOINING = new Set(["to", "or", "til", "till", "bis", "thru", "through", "until"]);
const HEDGES = new Set(["maybe", "about", "around", "perhaps", "say", "possibly", "nearly", "almost"]);
const CHANGES = new Set(["dropped", "drops", "drop", "fell", "falls", "went", "goes", "going", "gone", "rose", "climbed", "climbs", "up",
  "down", "sank", "jumped", "raised", "lowered", "changed", "switched", "moved", "cooled", "warmed", "increased", "reduced", "cut"]);

/** The range that begins with a figure; its value is the middle. */
export function range(tokens: readonly Token[], first: PlacedFigure, read: Read): PlacedFigure | null {
  const plusMinus = plusMinusAt(tokens, first.to);
  if (plusMinus > 0) return within(first, read(first.to + plusMinus));
  const joint = jointAt(tokens, first);
  const second = joint && read(joint.next);
  if (!joint || !second) return null;
  // "6 to 8 weeks", "6 weeks to 8": the bare one is in weeks too
  const a = first.figure.dimension === null ? scaled(first.figure, second.times) : first.figure;
  const b = second.figure.dimension === null ? scaled(second.figure, first.times) : second.figure;
  if (a.uncertain || (a.dimension !== null && b.dimension !== null && a.dimension !== b.dimension)) return null;
  const dimension = b.dimension ?? a.dimension;
  if (joint.only === "positive" && (dimension === null || dimension === "temperature")) return null;
  const unit = b.dimension === null ? a : b;
  const start = (a.unit !== null && b.unit !== null && a.unit !== b.unit && a.money === undefined ? convert(a.value, a.unit, b.unit)
    : a.value)
    * (a.dimension === null ? sharedMultiple(first.figure, second.figure, tokens[joint.next]) : 1);
  // "8 to 22:00", "shut at 8 or so" never come here
  if (joint.only === "near" && !nearEnough(start, b.value)) return null;
  // "dried from 42 % to 19 %"
  if (start > b.value && dimension !== null && isWord(tokens[first.from - 1], "from") && isWord(tokens[first.to], "to")) return null;
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

const scaled = (figure: Figure, times = 1): Figure => ({ ...figure, value: figure.value * times });
const nearEnough = (a: number, b: number): boolean => Math.abs(a) < Math.abs(b) && Math.sign(a) * Math.sign(b) >= 0
  && Math.abs(b) <= Math.abs(a) * 2 + 2;

function jointAt(tokens: readonly Token[], first: PlacedFigure): Joint | null {
  const { from, to } = first;
  const joint = tokens[to];
  const after = tokens[to + 1];
  if (joint?.kind === "sign") {
    if (joint.sign === "." && isSign(after, ".")) return { next: isSign(tokens[to + 2], ".") ? to + 3 : to + 2 };
    if (joint.sign === "/" && after?.kind === "number") {
      return first.figure.value < 0 ? { next: to + 1 } : joint.gap || after.gap ? null : { next: to + 1, only: "near" };
    }
    if (joint.sign === "/") return first.figure.value < 0 ? { next: to + 1 } : null;
    // "two, three inches"
    if (joint.sign === "," && after?.kind === "number" && after.spelled && inWords(tokens, first)) return { next: to + 1, only: "near" };
    if (!MARKS.has(joint.sign)) return null;
    if (joint.sign !== "-" || joint.gap === (after?.gap ?? true)) return { next: hedged(tokens, to + 1) };
    return { next: to + 1, only: "positive" };
  }
  // "ten twelve kilos"
  if (joint?.kind === "number") return joint.spelled && inWords(tokens, first) ? { next: to, only: "near" } : null;
  if (isWord(joint, "up") && isWord(after, "to")) return { next: hedged(tokens, to + 2) };
  const between = isWord(tokens[from - 1], "between") || isWord(tokens[from - 2], "between");
  if (!JOINING.has(wordAt(joint)) && !(between && isWord(joint, "and"))) return null;
  if (isWord(joint, "to") && changes(tokens, from)) return null;
  return { next: hedged(tokens, to + 1), ...(isWord(joint, "or") ? { only: "near" as const } : {}) };
}

const inWords = (tokens: readonly Token[], { from, to, figure }: PlacedFigure): boolean => to === from + 1 && figure.dimension === null
  && (tokens[from] as NumberToken).spelled === true && !(tokens[from] as NumberToken).loose;

/** "it dropped from 23 to 17" speaks of two figures. */
function changes(tokens: readonly Token[], from: number): boolean {
  if (!isWord(tokens[from - 1], "from")) return false;
  return [2, 3, 4].some((back) => {
    const token = tokens[from - back];
    return token?.kind === "word" && CHANGES.has(token.word);
  });
}

/** Passes "maybe", "about" and "~" before the second number. */
function hedged(tokens: readonly Token[], i: number): number {
  if (isWord(tokens[i], "at") && isWord(tokens[i + 1], "most")) return i + 2;
  return HEDGES.has(wordAt(tokens[i])) || isSign(tokens[i], "~") ? i + 1 : i;
}

/** The hundred of "five to six hundred", the thousand of "2-3k". */
function sharedMultiple(a: Figure, b: Figure, second: Token | undefined): number {
  if (second?.kind !== "number" || a.value <= 0 || a.value >= 100) return 1;
  const length = second.at[1] - second.at[0];
  const multiple = [1000, 100].find((size) => b.value % size === 0 && b.value / size >= a.value && a.value < size / 10);
  return multiple !== undefined && (second.spelled || length !== String(b.value).length) ? multiple : 1;
}

/** How many tokens "±", "+/-" or "+-" takes here. */
function plusMinusAt(tokens: readonly Token[], i: number): number {
  if (isSign(tokens[i], "±")) return 1;
  if (!isSign(tokens[i], "+")) return 0;
  return isSign(tokens[i + 1], "-") ? 2 : isSign(tokens[i + 1], "/") && isSign(tokens[i + 2], "-") ? 3 : 0;
}

/** "10 ± 0.5 kg" */
function within(first: PlacedFigure, second: PlacedFigure | null): PlacedFigure | null {
  if (!second || second.figure.value < 0) return null;
  const { value, dimension } = first.figure;
  // "10 kg ± 10 %"
  const ofIt = second.figure.dimension === "share" && dimension !== "share" && dimension !== null;
  const unit = second.figure.dimension === null || ofIt ? first.figure : second.figure;
  const spread = ofIt ? Math.abs(value) * second.figure.value / 100 : second.figure.value;
  return { figure: { ...unit, value, low: value - spread, high: value + spread,
    at: [first.figure.at[0], second.figure.at[1]] }, from: first.from, to: second.to };
}
