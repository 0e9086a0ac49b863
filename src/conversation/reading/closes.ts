/** Where a bare number ends, and which figures are near enough to be of one kind. */
import type { Figure } from "./figure.ts";
import { isSign, type Token } from "./tokens.ts";

const FUNCTION_WORDS = new Set(["of", "and", "or", "but", "to", "from", "in", "at", "on", "for", "with", "per", "each", "a", "an", "the",
  "is", "was", "it", "i", "so", "then", "than", "after", "before", "until", "till", "by", "when", "if", "this", "that", "now",
  "overnight", "today", "yesterday", "outside", "inside", "here", "max", "min", "maximum", "minimum", "tops", "tall", "high", "long",
  "wide", "deep", "thick", "above", "below", "off", "away", "between", "across", "total", "ish", "too", "only", "again", "w", "my", "we",
  "which", "because", "instead", "into"]);

/** Nothing that a number could count stands here: the end, a sign, or a word that is no thing. */
export function closes(tokens: readonly Token[], i: number): boolean {
  const token = tokens[i];
  if (token === undefined) return true;
  // ":(" and ":)"
  if (isSign(token, ":") && token.gap && tokens[i + 1]?.kind === "sign") return true;
  if (token.kind === "sign") return !"-–/x*:°'\"#".includes(token.sign);
  return token.kind === "word" && FUNCTION_WORDS.has(token.word);
}

export const alike = (a: Figure, b: Figure): boolean => (b.dimension === "temperature"
  || (a.value > 0 && a.value <= 5 * b.value && b.value <= 5 * a.value));
