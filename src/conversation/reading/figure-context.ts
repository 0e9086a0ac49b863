/** What the words around a figure say of it: about, bounds, how a stack is filled, wet or dry basis. */
import type { PlacedFigure } from "./figure.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";

const ABOUT = new Set(["about", "around", "approx", "approximately", "roughly", "circa", "ca", "maybe", "almost", "nearly", "probably",
  "say", "guess", "perhaps", "likely", "bout", "abt", "noin"]);
const UPPER = [" up to", " at most", " no more than", " not more than", " less than", " under", " max of", " a maximum of", " below"];
const LOWER = [" at least", " over", " no less than", " not less than", " more than", " above", " a minimum of"];
const NOT_LESS = / (no|not) less than$/;
const BOUND_ENDS = new Set(["to", "most", "than", "under", "of", "below", "least", "over", "above"]);
const SLIGHTLY = new Set(["bit", "little", "touch", "shade", "just", "slightly", "tad"]);

/** Words around the figure: about, bounds, filling of a stack, wet or dry basis. */
export function finish(tokens: readonly Token[], placed: PlacedFigure, floor: number): PlacedFigure {
  const { from, to } = placed;
  const before: string[] = [];
  for (let i = from - 1; i >= Math.max(floor, from - 5); i -= 1) {
    const token = tokens[i] as Token;
    if (token.kind === "number") break;
    if (token.kind === "sign") {
      if (token.sign === "." && isWord(tokens[i - 1], "approx", "ca", "abt", "c")) continue;
      if (token.sign === "~") before.unshift("about");
      if (token.sign === "<") before.unshift("under");
      if (token.sign === ">") before.unshift("over");
      break;
    }
    before.unshift(token.word);
  }
  const near = before.slice(-2);
  let figure = placed.figure;
  const last = before.at(-1) ?? "";
  const said = BOUND_ENDS.has(last) ? ` ${before.join(" ")}` : "";
  const spread = Math.max(Math.abs(figure.value) * 0.12, figure.decimals > 0 ? 0.5 : 1);
  const slightly = said !== "" && before.some((word) => SLIGHTLY.has(word));
  if (slightly && (last === "over" || last === "above" || said.endsWith(" more than"))) {
    figure = { ...figure, about: true, low: figure.low ?? figure.value, high: figure.high ?? figure.value + spread };
  } else if (slightly && (last === "under" || last === "below" || said.endsWith(" less than") || said.endsWith(" short of"))) {
    figure = { ...figure, about: true, low: figure.low ?? figure.value - spread, high: figure.high ?? figure.value };
  } else {
    if (said && !NOT_LESS.test(said) && UPPER.some((words) => said.endsWith(words))) figure = { ...figure, bound: "max" };
    else if (said && LOWER.some((words) => said.endsWith(words))) figure = { ...figure, bound: "min" };
    if (near.some((word) => ABOUT.has(word)) || orSo(tokens, to)) figure = { ...figure, about: true };
  }
  if (figure.bound === undefined && isWord(tokens[to], "or")) {
    if (isWord(tokens[to + 1], "less", "under", "below", "lower", "fewer")) figure = { ...figure, bound: "max" };
    else if (isWord(tokens[to + 1], "more", "over", "above", "higher")) figure = { ...figure, bound: "min" };
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

/** "wet basis", "wb", "(dry basis)", "of the dry weight" within six tokens after, or "dry basis 26 %" before. Only what says basis. */
export function basisNear(tokens: readonly Token[], from: number, to: number): "wet" | "dry" | null {
  // the symbols of the standards: u (or MCdb) on dry, w (or MCwb) on wet basis, "u = 25 %"
  if (isSign(tokens[from - 1], "=") || isSign(tokens[from - 1], ":")) {
    if (isWord(tokens[from - 2], "u")) return "dry";
    if (isWord(tokens[from - 2], "w")) return "wet";
  }
  for (let i = to; i < Math.min(to + 6, tokens.length); i += 1) {
    if (tokens[i]?.kind === "number") break;
    const basis = basisAt(tokens, i);
    if (basis) return basis;
  }
  for (let i = from - 1; i >= Math.max(0, from - 5); i -= 1) {
    if (tokens[i]?.kind === "number") break;
    const basis = basisAt(tokens, i);
    if (basis) return basis;
  }
  return null;
}

/** A basis named at a token, or null. */
export function basisAt(tokens: readonly Token[], i: number): "wet" | "dry" | null {
  const word = wordAt(tokens[i]);
  if (word === "wb" || word === "mcwb") return "wet";
  if (word === "db" || word === "mcdb" || word === "atro") return "dry";
  if ((word === "w" || word === "d") && (isSign(tokens[i + 1], ".") || isSign(tokens[i + 1], "/"))
    && isWord(tokens[i + 2], "b")) return word === "w" ? "wet" : "dry";
  const hyphen = isSign(tokens[i + 1], "-") ? 1 : 0;
  const next = tokens[i + 1 + hyphen];
  if (word === "wet" || word === "green" || word === "fresh" || word === "total") return isWord(next, "basis", "base", "weight", "mass")
    ? (word === "wet" || !isWord(next, "basis", "base") ? "wet" : null) : null;
  if (word === "dry" || word === "ovendry") return isWord(next, "basis", "base", "weight", "mass", "matter") ? "dry" : null;
  return null;
}
