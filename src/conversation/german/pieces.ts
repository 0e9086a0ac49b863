/** A German text cut into words, numbers and signs, each with its place; and German words folded so that "ä", "ae" and "a" meet. */
import { fold } from "../reading/tokens.ts";

export interface Piece {
  readonly kind: "word" | "number" | "sign";
  /** as written */
  readonly text: string;
  /** folded; numbers and signs as written */
  readonly key: string;
  readonly from: number;
  readonly to: number;
  /** white space stands before it */
  readonly gap: boolean;
}

/** "Zündet", "zuendet" and "zundet" are one key. */
export const keyOf = (word: string): string => fold(word.toLowerCase()).replaceAll("ß", "ss").replaceAll("ae", "a").replaceAll("oe", "o").replaceAll("ue", "u");

const PIECE = /[\p{L}\p{M}]+|\d+(?:[.,]\d+)*|[^\s\p{L}\p{M}\d]/gu;

export function piecesOf(text: string): Piece[] {
  const out: Piece[] = [];
  let end = 0;
  for (const found of text.matchAll(PIECE)) {
    const [words] = found;
    const kind = /^\d/.test(words) ? "number" : /^[\p{L}\p{M}]/u.test(words) ? "word" : "sign";
    out.push({ kind, text: words, key: kind === "word" ? keyOf(words) : words, from: found.index, to: found.index + words.length, gap: found.index > end });
    end = found.index + words.length;
  }
  return out;
}
