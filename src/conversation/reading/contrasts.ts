/** Whether a bare number is set against the figure before it: "one of 14 kg or two of 7", "I usually do 18", "7.5 instead of 10 kg". */
import type { PlacedFigure } from "./figure.ts";
import { isWord, wordAt, type Token } from "./tokens.ts";

/** "7.5 instead of 10 kg" */
export const insteadOf = (tokens: readonly Token[], to: number, next: number): boolean =>
  (next === to + 2 && isWord(tokens[to], "instead", "rather") && isWord(tokens[to + 1], "of", "than"))
  || (next === to + 1 && isWord(tokens[to], "not", "versus", "vs", "against"));

/** "instead of 12 only 9 kg" */
export const replaced = (tokens: readonly Token[], { from, to }: PlacedFigure, next: number): boolean => isWord(tokens[from - 1], "of")
  && isWord(tokens[from - 2], "instead") && next - to <= 2;

export function outOf(tokens: readonly Token[], to: number, next: number): boolean {
  const of = isWord(tokens[to], "out") ? to + 1 : to;
  return isWord(tokens[of], "of") && next === of + (isWord(tokens[of + 1], "the", "my", "those", "these", "our") ? 2 : 1);
}

/** Words that set a second figure against the first one: "and an extra three", "this week only 12", "then twenty". */
const CONTRASTS = new Set(["extra", "then", "last", "only", "measured", "another", "usually", "normally", "instead", "earlier", "rest",
  "previous",
  "previously", "originally", "later", "afterwards"]);
const SPANS = new Set(["week", "year", "winter", "season", "month", "time", "year's"]);
const NO_MEASURE = ["at", "by", "from", "until", "till", "since", "before", "after", "lit", "shut", "closed", "page", "room", "no",
  "number", "fire",
  "step", "day", "load", "around"];

export function contrasted(tokens: readonly Token[], bare: PlacedFigure, lender: PlacedFigure | undefined): boolean {
  if (lender === undefined || lender.figure.dimension === "duration" || isWord(tokens[bare.from - 1], ...NO_MEASURE)) return false;
  if (isWord(tokens[bare.from - 1], "of") && tokens[bare.from - 2]?.kind === "number") return true;
  // "4 steres in the cellar, 6 outside"
  if ((lender.figure.dimension === "volume" || lender.figure.dimension === "length")
    && isWord(tokens[bare.to], "outside", "inside", "indoors", "outdoors")) return true;
  const from = Math.max(lender.to, bare.from - 4);
  const between = tokens.slice(from, bare.from).map(wordAt);
  // "12 kg measured 17" may be its moisture
  return between.some((word, n) => (CONTRASTS.has(word) && (word !== "measured" || lender.figure.dimension !== "mass"))
    || (word === "this" && SPANS.has(between[n + 1] ?? "")));
}

/** "I usually do 18" */
const DOING = ["do", "use", "put", "load", "burn", "did", "used", "doing", "using", "putting", "loading", "burning"];
const USUALLY = ["usually", "normally", "only", "mostly", "always", "i", "we", "never", "been"];
export const asUsual = (tokens: readonly Token[], from: number): boolean => (isWord(tokens[from - 1], ...DOING)
  && isWord(tokens[from - 2], ...USUALLY))
  || (isWord(tokens[from - 1], ...USUALLY) && isWord(tokens[from - 2], ...DOING))
  || (isWord(tokens[from - 1], "are", "is") && isWord(tokens[from - 2], "mine", "ours", "yours", "theirs"));

/** "10 kg in the morning and 8 at night" */
export const andThen = (tokens: readonly Token[], { from, to }: PlacedFigure): boolean => isWord(tokens[from - 1], "and", "then", "plus")
  && tokens.slice(to, to + 3).some((token) => isWord(token, "morning", "evening", "night", "afternoon", "tonight", "later", "bedtime"));
