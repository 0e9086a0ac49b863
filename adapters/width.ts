/** How wide words stand in a fixed-width face, and how they break into lines. */
import { UNITS } from "../src/quantities.ts";
import { letters } from "./plain.ts";

const NARROW = /^[\x20-\x7E\u00A0-\u02FF\u2010-\u2027\u2212]*$/;
const EAST_ASIAN = /^[\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}\p{Script=Katakana}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]/u;
const EMOJI = /^\p{Emoji_Presentation}|\uFE0F/u;
const HALF = /^[\uFF61-\uFFDC\uFFE8-\uFFEE]/;
const NOTHING = /^[\p{M}\p{Cf}]+$/u;

function letterWidth(letter: string): number {
  if (NOTHING.test(letter)) return 0;
  // whatever marks follow a space
  if (letter.startsWith(" ")) return 1;
  return EMOJI.test(letter) || (EAST_ASIAN.test(letter) && !HALF.test(letter)) ? 2 : 1;
}

/** Columns taken by `words`: two for East Asian wide letters and emoji, none for marks. */
export function width(words: string): number {
  if (NARROW.test(words)) return words.length;
  return letters(words).reduce((sum, letter) => sum + letterWidth(letter), 0);
}

export const pad = (words: string, columns: number): string => words + " ".repeat(Math.max(0, columns - width(words)));
export const padStart = (words: string, columns: number): string => " ".repeat(Math.max(0, columns - width(words))) + words;

/** A figure and its unit stay on one line. */
const SYMBOLS = [...new Set(Object.values(UNITS).map((unit) => unit.symbol))].map((symbol) => symbol.replace(/[/.]/g, "\\$&")).join("|");
const BREAK = new RegExp(`(?<!\\d(?= (?:${SYMBOLS})(?:[^\\p{L}\\p{N}]|$))) `, "u");

/** Breaks at spaces; a word longer than the line breaks between letters. Line breaks in `words` stay. `columns` >= 1. */
export function wrap(words: string, columns: number): string[] {
  return words.split("\n").flatMap((paragraph) => wrapLine(paragraph, Math.max(1, columns)));
}

function wrapLine(paragraph: string, columns: number): string[] {
  if (width(paragraph) <= columns) return [paragraph];
  const lines: string[] = [];
  let line = "";
  let taken = 0;
  const add = (piece: string, wide: number, gap: string): void => {
    if (line !== "" && taken + gap.length + wide > columns) {
      lines.push(line);
      line = "";
      taken = 0;
    }
    const between = line === "" ? "" : gap;
    line += between + piece;
    taken += between.length + wide;
  };
  for (const word of paragraph.split(BREAK)) {
    const wide = width(word);
    if (wide <= columns) add(word, wide, " ");
    else letters(word).forEach((letter, at) => add(letter, letterWidth(letter), at === 0 ? " " : ""));
  }
  return [...lines, line];
}
