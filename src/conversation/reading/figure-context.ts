/** What the words around a figure say of it: about, bounds, how a stack is filled, wet or dry basis. */
import { closes } from "./elided.ts";
import type { PlacedFigure } from "./figure.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";

const ABOUT = new Set(["about", "around", "approx", "approximately", "roughly", "circa", "ca", "maybe", "almost", "nearly", "probably",
  "say", "guess", "perhaps", "likely", "bout", "abt", "noin"]);
const UPPER = [" up to", " at most", " the most", " very most", " under", " max", " maximum", " max of", " maximum of", " below",
  " south of", " not quite", " sub"];
const LOWER = [" at least", " the least", " very least", " over", " above", " min", " minimum", " min of", " minimum of", " north of",
  " upwards of", " in excess of", " exceeding", " past"];
/** Comparatives before "than" and to which side they open. */
const LESS = new Set(["less", "fewer", "lower", "shorter", "smaller", "thinner", "drier", "cooler", "colder", "lighter", "closer",
  "nearer", "narrower"]);
const MORE = new Set(["more", "higher", "longer", "larger", "bigger", "greater", "thicker", "wetter", "hotter", "warmer", "heavier",
  "taller", "farther", "further", "wider", "deeper", "older"]);
const NOTHING = new Set(["nothing", "nowt", "none", "never", "not", "no"]);
const SHORT_OF = [" short of", " shy of"];
const BOUND_ENDS = new Set(["to", "most", "than", "under", "of", "below", "least", "over", "above", "max", "maximum", "min", "minimum",
  "quite", "as", "exceeding", "past", "sub"]);
const SLIGHTLY = new Set(["bit", "little", "touch", "shade", "just", "slightly", "tad", "smidge", "hair"]);

/** "not a single piece under 25 %" */
const PIECES = new Set(["piece", "pieces", "log", "logs", "split", "splits", "one", "stick"]);
const UNABLE = new Set(["cant", "cannot", "couldnt", "wont", "doesnt", "didnt", "never"]);

/** "less than", "no more than", "nothing under": on which side the figure ends, or null. `said` ends with the words before the figure. */
function boundOf(before: readonly string[], said: string, deniedAfter: boolean): "max" | "min" | null {
  const last = before.at(-1) ?? "";
  const than = last === "than" || last === "as";
  const compared = before.at(-2) ?? "";
  const side = than ? (LESS.has(compared) ? "max" : MORE.has(compared) ? "min" : null)
    : UPPER.some((words) => said.endsWith(words)) || SHORT_OF.some((words) => said.endsWith(words)) ? "max"
    : LOWER.some((words) => said.endsWith(words)) ? "min" : null;
  const never = ["never", "nothing"];
  const denied = than ? deniedAfter || before.slice(0, -2).some((word) => NOTHING.has(word) || UNABLE.has(word))
    : ["under", "over", "below", "above", "past"].includes(last) && (NOTHING.has(compared) || never.includes(before.at(-3) ?? "")
      || (PIECES.has(compared) && before.some((word) => NOTHING.has(word))) || before.slice(0, -1).some((word) => UNABLE.has(word)));
  return side === null || !denied ? side : side === "max" ? "min" : "max";
}

/** "more than 14 kg I never load", "more than 14 kg does not go in"; but "more than 20 % is not good" is more than 20 %. */
function deniedBehind(tokens: readonly Token[], to: number): boolean {
  let goes = false;
  let not = false;
  for (let i = to; i < to + 6 && tokens[i]?.kind === "word"; i += 1) {
    if (isWord(tokens[i], "never")) return true;
    goes ||= isWord(tokens[i], "go", "goes", "fit", "fits", "geht", "passt", "passen");
    not ||= isWord(tokens[i], "not", "wont", "doesnt", "dont");
  }
  return goes && not;
}

/** "10 kg over 12 h" spreads the wood over the hours; "took over 3 hours" is more than three. */
const spreadOver = (verb: string | undefined): boolean => verb !== undefined && !["took", "takes", "take", "last", "lasts", "lasted", "for",
  "just", "well", "bit", "little", "is", "was", "burned", "burnt", "burns", "waited", "wait", "after", "in", "its", "been",
    "slightly"].includes(verb);

/** "brought the bench up to 95 F", "back up to 20": where it ended, no bound. */
const REACHED = new Set(["brought", "bring", "brings", "went", "goes", "got", "gets", "came", "climbed", "climbs", "rose", "rises", "crept",
  "heated", "heats", "warmed", "warms", "jumped", "back", "raised", "shot", "cranked", "worked"]);
const reached = (before: readonly string[]): boolean => before.at(-1) === "to" && before.at(-2) === "up"
  && before.slice(0, -2).some((word) => REACHED.has(word));

/** "12 kg max", "25 lb per fire max", "3 cm minimum", "12 kg at most", "15 kg or less", "10 kg+" */
function boundAfter(tokens: readonly Token[], to: number): "max" | "min" | null {
  const at = isWord(tokens[to], "per", "a", "each") && tokens[to + 1]?.kind === "word" ? to + 2
    : isSign(tokens[to], ",") && isWord(tokens[to + 1], "tops", "max", "maximum", "min", "minimum") ? to + 1 : to;
  // "45 min. tops"
  if (isSign(tokens[to], ".") && tokens[to]?.gap === false && isWord(tokens[to + 1], "tops", "max",
    "min")) return isWord(tokens[to + 1], "min") ? "min" : "max";
  // "1800 kg max load 15 kg" speaks of the load
  if (isWord(tokens[at], "max", "maximum", "tops") && closes(tokens, at + 1)) return "max";
  if (isWord(tokens[at], "min", "minimum") && closes(tokens, at + 1)) return "min";
  if (isWord(tokens[to], "at")) {
    const next = tokens[isWord(tokens[to + 1], "the", "very") ? to + 2 : to + 1];
    return isWord(next, "most") ? "max" : isWord(next, "least") ? "min" : null;
  }
  if (isSign(tokens[to], "+") && tokens[to + 1]?.kind !== "number" && !isSign(tokens[to + 1], "/")
    && !isSign(tokens[to + 1], "-")) return "min";
  if (isWord(tokens[to], "plus") && tokens[to + 1]?.kind !== "number") return "min";
  if (!isWord(tokens[to], "or", "and")) return null;
  if (isWord(tokens[to + 1], "less", "under", "below", "lower", "fewer")) return "max";
  return isWord(tokens[to + 1], "more", "over", "above", "higher", "up", "upwards") ? "min" : null;
}

/** Words around the figure: about, bounds, filling of a stack, wet or dry basis. */
export function finish(tokens: readonly Token[], placed: PlacedFigure, floor: number): PlacedFigure {
  const { from, to } = placed;
  const before: string[] = [];
  for (let i = from - 1; i >= Math.max(floor, from - 5); i -= 1) {
    const token = tokens[i] as Token;
    if (token.kind === "number") break;
    if (token.kind === "sign") {
      if (token.sign === "." && isWord(tokens[i - 1], "approx", "ca", "abt", "c", "max", "min")) continue;
      // "<= 10 kg"
      if (token.sign === "=" && (isSign(tokens[i - 1], "<") || isSign(tokens[i - 1], ">"))) continue;
      if (token.sign === "~") before.unshift("about");
      if (token.sign === "<" || token.sign === "≤") before.unshift("under");
      if (token.sign === ">" || token.sign === "≥") before.unshift("over");
      break;
    }
    before.unshift(token.word);
  }
  const near = before.slice(-2);
  let figure = placed.figure;
  const last = before.at(-1) ?? "";
  const said = BOUND_ENDS.has(last) ? ` ${before.join(" ")}` : "";
  const spread = Math.max(Math.abs(figure.value) * 0.12, figure.decimals > 0 ? 0.5 : 1);
  // "half past two"
  const pastTime = last === "past" && figure.dimension !== "temperature";
  const bound = said === "" || reached(before) || pastTime || (figure.dimension === "duration" && last === "over"
    && spreadOver(before.at(-2))) ? null
    : boundOf(before, said, deniedBehind(tokens, to));
  const slightly = bound !== null && (before.some((word) => SLIGHTLY.has(word)) || SHORT_OF.some((words) => said.endsWith(words)));
  if (slightly && bound === "min") {
    figure = { ...figure, about: true, low: figure.low ?? figure.value, high: figure.high ?? figure.value + spread };
  } else if (slightly) {
    figure = { ...figure, about: true, low: figure.low ?? figure.value - spread, high: figure.high ?? figure.value };
  } else {
    const side = bound ?? figure.bound ?? boundAfter(tokens, to);
    if (side) figure = { ...figure, bound: side };
    if (near.some((word) => ABOUT.has(word)) || orSo(tokens, to)) figure = { ...figure, about: true };
  }
  if (figure.dimension === "volume" && !figure.filling) {
    const filling = fillingNear(tokens, to, near);
    if (filling) figure = { ...figure, filling };
  }
  if (figure.dimension === "share" || figure.dimension === null) {
    const basis = basisNear(tokens, from, to);
    if (basis || figure.dimension === "share") figure = { ...figure, basis };
  }
  return { figure, from, to };
}

const orSo = (tokens: readonly Token[], i: number): boolean =>
  (isWord(tokens[i], "or") && isWord(tokens[i + 1], "so", "thereabouts", "there"))
    || isWord(tokens[i], "ish", "approx", "roughly", "about") || (isSign(tokens[i], "-") && isWord(tokens[i + 1], "ish"));

const FILLING: Readonly<Record<string, "stacked" | "loose" | "solid">> = {
  stacked: "stacked", stack: "stacked", piled: "stacked", loose: "loose", tipped: "loose", thrown: "loose", bulk: "loose",
    heaped: "loose", dumped: "loose", solid: "solid", roundwood: "solid",
};

function fillingNear(tokens: readonly Token[], to: number, before: readonly string[]): "stacked" | "loose" | "solid" | undefined {
  for (let i = to; i < to + 3; i += 1) {
    const token = tokens[i];
    if (!token || token.kind === "number" || isSign(token, ".") || isSign(token, ";")) break;
    const filling = FILLING[wordAt(token)];
    if (filling) return filling;
  }
  for (const word of before) if (word in FILLING) return FILLING[word];
  return undefined;
}

/**
 * "wet basis", "wb", "(dry basis)", "of the dry weight" within six tokens after, "dry basis 26 %" before, or the symbol of the standards:
 * "u = 25 %", "w 18", "25 % (u)". Only what says basis.
 */
export function basisNear(tokens: readonly Token[], from: number, to: number): "wet" | "dry" | null {
  const symbol = symbolBefore(tokens, from) ?? symbolAfter(tokens, to);
  if (symbol) return symbol;
  const behind = nearestBasis(tokens, to, 1, 6);
  const ahead = nearestBasis(tokens, from - 1, -1, 5);
  return (ahead && (!behind || ahead.steps < behind.steps) ? ahead : behind)?.basis ?? null;
}

/** The basis named next to a token, as far as the next number. */
function nearestBasis(tokens: readonly Token[], from: number, way: 1 | -1, most: number): { basis: "wet" | "dry"; steps: number } | null {
  for (let steps = 0; steps < most; steps += 1) {
    const i = from + way * steps;
    if (tokens[i] === undefined || tokens[i]?.kind === "number") return null;
    const basis = basisAt(tokens, i);
    // "25 % dry weight would be 20 %": it belongs to the share before it
    if (basis && way < 0 && (isSign(tokens[i - 1], "%") || isWord(tokens[i - 1], "percent", "pct"))) return null;
    if (basis) return { basis, steps };
  }
  return null;
}

/** u (or MCdb) is on dry, w (or MCwb) on wet basis. */
const SYMBOLS: Readonly<Record<string, "wet" | "dry">> = { u: "dry", w: "wet" };
const SYMBOL_WORDS: Readonly<Record<string, "wet" | "dry">> = { u: "dry", w: "wet", wet: "wet", dry: "dry", d: "dry" };

/** "u = 25 %", "w: 18", "u 25 %", "u is 25 %", "MC(w) 18 %" */
function symbolBefore(tokens: readonly Token[], from: number): "wet" | "dry" | null {
  const linked = isSign(tokens[from - 1], "=") || isSign(tokens[from - 1], ":") || isSign(tokens[from - 1], ")")
    || isWord(tokens[from - 1], "is", "of");
  const at = from - (linked ? 2 : 1);
  const symbol = SYMBOLS[wordAt(tokens[at])];
  // "500 w 18 %" is watts
  return symbol && tokens[at - 1]?.kind !== "number" && !isSign(tokens[at - 1], "/") && !isSign(tokens[at - 1], "'") ? symbol : null;
}

/** "25 % u", "25 % (u)", "18 % (wet)" */
function symbolAfter(tokens: readonly Token[], to: number): "wet" | "dry" | null {
  if (isWord(tokens[to], "mc", "moisture", "water") && isSign(tokens[to + 1], "(")) return symbolAfter(tokens, to + 1);
  if (isSign(tokens[to], "(") && isSign(tokens[to + 2], ")")) return SYMBOL_WORDS[wordAt(tokens[to + 1])] ?? null;
  // "15.5 %u", "18 %w"
  const ends = (tokens[to]?.gap === false && isSign(tokens[to - 1], "%")) || tokens[to + 1] === undefined
    || (tokens[to + 1]?.kind === "sign" && !isSign(tokens[to + 1], "/"))
    || isWord(tokens[to + 1], "and", "or", "is", "are", "equals", "would");
  return ends ? (SYMBOLS[wordAt(tokens[to])] ?? null) : null;
}

/** A basis named at a token, or null. */
export function basisAt(tokens: readonly Token[], i: number): "wet" | "dry" | null {
  const word = wordAt(tokens[i]);
  if (word === "wb" || word === "mcwb") return "wet";
  if (word === "db" || word === "mcdb" || word === "atro" || word === "ovendry") return "dry";
  if ((word === "w" || word === "d") && (isSign(tokens[i + 1], ".") || isSign(tokens[i + 1], "/"))
    && isWord(tokens[i + 2], "b")) return word === "w" ? "wet" : "dry";
  if (word === "oven" && isWord(tokens[isSign(tokens[i + 1], "-") ? i + 2 : i + 1], "dry", "dried")) return "dry";
  if (word === "as" && isWord(tokens[i + 1], "received")) return "wet";
  const hyphen = isSign(tokens[i + 1], "-") ? 1 : 0;
  const filled = isWord(tokens[i + 1 + hyphen], "wood", "fuel", "weight") && isWord(tokens[i + 2 + hyphen], "basis", "mass", "weight")
    ? 1 : 0;
  const next = tokens[i + 1 + hyphen + filled];
  if (word === "wet" || word === "green" || word === "fresh" || word === "total") {
    if (isWord(next, "weight", "mass")) return "wet";
    return word !== "total" && word !== "green" && isWord(next, "basis", "base", "based") ? "wet" : null;
  }
  return word === "dry" && isWord(next, "basis", "base", "based", "weight", "mass", "matter") ? "dry" : null;
}
