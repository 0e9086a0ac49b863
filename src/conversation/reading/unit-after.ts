/** The unit that stands after a number. */
import { isSign, isWord, wordAt, type NumberToken, type Token } from "./tokens.ts";
import { LONGEST_UNIT_NAME, unitNamed, type UnitName } from "./units.ts";

export const unitSign = (token: Token | undefined): string => (token?.kind === "sign" && "€£$%°".includes(token.sign) ? token.sign : "");

/** The unit that begins at a token, the longest name first. */
export function unitAfter(tokens: readonly Token[], from: number, number: NumberToken): { name: UnitName; length: number } | null {
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
    // "face-cord", "cubic-metre"
    if (n === 1 && isSign(tokens[start + 1], "-") && !tokens[start + 1]?.gap && tokens[start + 2]?.gap === false) dot = 1;
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
  if (isSign(tokens[i - 2], "'")) return null;
  return { name: timed(tokens, i) ? { unit: "min", dimension: "duration" } : { unit: "ft", dimension: "length" }, length: 1 };
}

const SPENDING = new Set(["took", "takes", "take", "taking", "lasts", "lasted", "wait", "waited", "waits", "within", "after", "for",
  "another",
  "every", "burns", "burned", "burnt", "burn", "needs", "needed", "only", "just", "about", "in", "until"]);
const THEN = new Set(["later", "after", "before", "until", "till", "burn", "then", "to", "from", "and", "for", "of", "in", "on"]);
const EXTENTS = new Set(["long", "tall", "high", "wide", "deep", "thick", "above", "below", "away", "off", "chimney", "flue", "pipe",
  "liner", "x",
  "by", "ceiling", "wall", "roof", "stack", "logs", "lengths", "clearance", "ladder", "room", "beam", "between", "short", "apart",
    "reach"]);

/** "took 20-30' to catch", "closed it after 90'": 6' is six feet where a length is spoken of, and minutes where something lasts. */
function timed(tokens: readonly Token[], mark: number): boolean {
  const number = tokens[mark - 1];
  const ranged = tokens[mark - 3]?.kind === "number" && (tokens[mark - 2]?.kind === "sign" || isWord(tokens[mark - 2], "to", "or"));
  const from = mark - (ranged ? 3 : 1);
  if (number?.kind !== "number" || number.value < 3 || tokens[mark + 1]?.kind === "number") return false;
  for (let i = Math.max(0, from - 4); i < Math.min(tokens.length, mark + 5); i += 1) if (EXTENTS.has(wordAt(tokens[i]))) return false;
  const before = [1, 2].some((back) => SPENDING.has(wordAt(tokens[from - back])));
  return before && (tokens[mark + 1]?.kind !== "word" || THEN.has(wordAt(tokens[mark + 1])) || number.value >= 15);
}

/** What stands after "12 in" when it means inches. */
const AFTER_INCH = new Set(["long", "wide", "high", "deep", "thick", "tall", "logs", "log", "pieces", "splits", "rounds", "chunks", "x",
  "by", "wall", "flue", "pipe", "liner", "stack", "stacks", "chimney", "firebox", "tile", "tiles", "brick", "bricks", "gap", "diameter",
  "dia", "apart", "away", "from", "off", "above", "below", "between", "clearance", "square", "of", "or", "max", "min"]);

/** Short unit names that are also everyday words: "12 in two hours", "the 5 a day", "9 c". */
function fits(tokens: readonly Token[], i: number, word: string, number: NumberToken): boolean {
  const token = tokens[i] as Token;
  const next = tokens[i + 1];
  // "28 F out and 70 in"
  if (word === "in" && token.gap && tokens.slice(Math.max(0, i - 8), i).some((one) => isWord(one, "out", "outside"))
    && (next === undefined || next.kind === "sign")) return false;
  if (word === "in") return !token.gap || AFTER_INCH.has(wordAt(next)) || next === undefined || (next.kind === "sign" && !isSign(next, "-"))
    || besideFeet(tokens, i);
  if (word === "k") return token.kind === "word" && token.capital === true;
  // "the 4G stick", "3D"
  if (word === "g") return token.gap || number.value > 9 || (token.kind === "word" && token.capital !== true);
  if (word === "d") return !token.gap && token.kind === "word" && token.capital !== true;
  if (word === "pc") return !isWord(next, "of");
  if (word === "p") return !token.gap && number.decimals === 0 && !isSign(next, ".") && !isWord(next, "m");
  if (word === "st") return number.decimals === 0 && !(number.ordinal && !token.gap);
  if (word === "min" || word === "mins") return !(isWord(next, "load", "fire") || isSign(next, ":"));
  if (word === "stone") return !isWord(next, "heater", "stove", "wall", "walls", "facing", "house", "steps");
  return true;
}

/** "6 ft 2 in", "4 ft x 16 in" */
function besideFeet(tokens: readonly Token[], i: number): boolean {
  const before = isWord(tokens[i - 2], "x", "by") || isSign(tokens[i - 2], "*") ? tokens[i - 3] : tokens[i - 2];
  return isWord(before, "ft", "foot", "feet") || isSign(before, "'");
}

/** Words that pass between a number and its unit: "8-ish kg", "twenty-odd kilos", "a dozen or so kilos", "10+ kg", "2 more hours". */
export interface Filler {
  readonly length: number;
  readonly about?: true;
  readonly bound?: "min";
}
const QUALITIES = new Set(["more", "extra", "full", "whole", "solid", "good", "long", "dry", "stacked", "loose", "seasoned", "split",
  "big", "small", "real", "straight", "bloody"]);
const SOFTENERS = new Set(["ish", "odd", "something"]);

export function fillerAt(tokens: readonly Token[], i: number, number: NumberToken): Filler {
  const hyphen = isSign(tokens[i], "-") && tokens[i]?.gap === false ? 1 : 0;
  if (SOFTENERS.has(wordAt(tokens[i + hyphen]))) return { length: hyphen + 1, about: true };
  if (isWord(tokens[i], "or") && isWord(tokens[i + 1], "so")) return { length: 2, about: true };
  if (isWord(tokens[i], "and") && isWord(tokens[i + 1], "a") && isWord(tokens[i + 2], "bit")) return { length: 3, about: true };
  if ((isSign(tokens[i], "+") && tokens[i]?.gap === false)
    || isWord(tokens[i + hyphen], "plus")) return { length: hyphen + 1, bound: "min" };
  // "480,- EUR"
  if ((isSign(tokens[i], ",") || isSign(tokens[i], ".")) && tokens[i]?.gap === false && tokens[i + 1]?.gap === false
    && (isSign(tokens[i + 1], "-") || isSign(tokens[i + 1], "–"))) return { length: 2 };
  // "3/4 of a cord", "1/2 an hour"
  if (number.value < 1) {
    const of = isWord(tokens[i], "of") ? 1 : 0;
    if (isWord(tokens[i + of], "a", "an") && (of > 0 || number.at[1] - number.at[0] <= 3)) return { length: of + 1 };
  }
  let length = 0;
  while (length < 2 && QUALITIES.has(wordAt(tokens[i + length]))) length += 1;
  return { length };
}
