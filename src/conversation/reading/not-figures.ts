/** Numbers that measure nothing: clock times, dates, "100 % sure". */
import type { PlacedFigure } from "./figure.ts";
import { MONTHS } from "./months.ts";
import { isSign, isWord, wordAt, type NumberToken, type Token } from "./tokens.ts";
import { unitAfter } from "./unit-after.ts";

/** The 1 of "1 August", the 20 and the 2026 of "Nov 20, 2026". */
export function inWrittenDate(tokens: readonly Token[], { figure, from, to }: PlacedFigure): boolean {
  if (figure.dimension !== null || !Number.isInteger(figure.value) || figure.value < 1) return false;
  const day = figure.value <= 31;
  const after = isWord(tokens[to], "of") ? to + 1 : to;
  if (day && MONTHS.has(wordAt(tokens[after]))) return true;
  const before = isSign(tokens[from - 1], ",") && tokens[from - 2]?.kind === "number" ? from - 3 : from - 1;
  const year = figure.value >= 1900 && figure.value <= 2100;
  return (day || year) && MONTHS.has(wordAt(tokens[before])) && !isWord(tokens[before], "may", "mar");
}

/** How many tokens of a clock time or a date begin here: 18:10, 6.30 pm, 3.10.2026, 2026-10-03, 1st. */
export function clockOrDate(tokens: readonly Token[], i: number): number {
  const first = tokens[i];
  const spoken = spokenClock(tokens, i);
  if (spoken > 0) return spoken;
  if (first?.kind !== "number" || first.spelled) return 0;
  if (first.ordinal) return 2;
  if (meridiem(tokens, i + 1) > 0 && first.value <= 23.59) return 1 + meridiem(tokens, i + 1);
  const mark = tokens[i + 1];
  const second = tokens[i + 2];
  if (mark?.kind !== "sign" || mark.gap || second?.kind !== "number" || second.gap) return 0;
  if (mark.sign === ":") {
    const seconds = isSign(tokens[i + 3], ":") && tokens[i + 4]?.kind === "number" ? 2 : 0;
    return first.value <= 24 && second.value < 60 ? 3 + seconds + meridiem(tokens, i + 3 + seconds) : 0;
  }
  const third = tokens[i + 4];
  const dated = isSign(tokens[i + 3], mark.sign) && third?.kind === "number" && !third.gap && tokens[i + 3]?.gap === false;
  return dated && (mark.sign === "-" || mark.sign === "/" || mark.sign === ".") && looksLikeDate(first, second, third) ? 5 : 0;
}

const PARTS_OF_HOUR: ReadonlySet<number> = new Set([5, 10, 20, 25]);
/** "half past six", "quarter to 7", "twenty past eight", "at ten to seven" */
function spokenClock(tokens: readonly Token[], i: number): number {
  const [part, mark, hour] = [tokens[i], tokens[i + 1], tokens[i + 2]];
  if (hour?.kind !== "number" || !Number.isInteger(hour.value) || hour.value < 1 || hour.value > 12 || unitAfter(tokens, i + 3, hour)) return 0;
  const size = part?.kind === "number" ? part.value : isWord(part, "half") ? 0.5 : isWord(part, "quarter") ? 0.25 : 0;
  if (isWord(mark, "past")) return size === 0.5 || size === 0.25 || PARTS_OF_HOUR.has(size) ? 3 : 0;
  return isWord(mark, "to") && (size === 0.25 || (PARTS_OF_HOUR.has(size) && isWord(tokens[i - 1], "at"))) ? 3 : 0;
}

const looksLikeDate = (a: NumberToken, b: NumberToken, c: NumberToken): boolean =>
  a.decimals === 0 && b.decimals === 0 && ((a.value > 1900 && b.value <= 12 && c.value <= 31)
    || (a.value <= 31 && b.value <= 31 && (c.value > 1900 || (c.value <= 99 && c.at[1] - c.at[0] === 2))));

function meridiem(tokens: readonly Token[], i: number): number {
  if (isWord(tokens[i], "am", "pm", "uhr", "oclock")) return 1;
  return isWord(tokens[i], "a", "p") && (isSign(tokens[i + 1], ".") || tokens[i]?.gap === false) && isWord(tokens[i + 2], "m")
    ? (isSign(tokens[i + 3], ".") ? 4 : 3) : 0;
}

/** "2:15 hours" is how long, "18:10 h" and "at 6:30 hours" when. Hours, or null. */
export function hoursAndMinutes(tokens: readonly Token[], i: number): number | null {
  const [hours, colon, minutes] = [tokens[i], tokens[i + 1], tokens[i + 2]];
  if (hours?.kind !== "number" || !isSign(colon, ":") || minutes?.kind !== "number" || hours.value > 12 || minutes.value >= 60) return null;
  return isWord(tokens[i + 3], "h", "hr", "hrs", "hour", "hours") && !isWord(tokens[i - 1], "at", "by", "from", "until", "till", "to",
    "since")
    ? hours.value + minutes.value / 60 : null;
}

/** "100 % sure", "110 percent with you": a way of speaking. */
export const isFigureOfSpeech = (tokens: readonly Token[], { figure, to }: PlacedFigure): boolean => figure.dimension === "share"
  && figure.value >= 90 && isWord(tokens[to], "sure", "certain", "agree", "agreed", "convinced", "positive", "correct", "right", "with");
