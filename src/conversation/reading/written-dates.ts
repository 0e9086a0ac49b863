/** Dates as written: 2026-10-03, 3.10.2026, "1 August", "Nov 3rd"; others, such as "March 2018", by chrono-node, once it is loaded. */
import type { Chrono } from "chrono-node/en";
import { followedByUnit } from "./clock.ts";
import { clockOrDate, figuresIn } from "./figures.ts";
import { MONTHS } from "./months.ts";
import type { Moment, TimeOptions } from "./moment.ts";
import { isSign, isWord, wordAt, type Token, type WordToken } from "./tokens.ts";

let chrono: { readonly american: Chrono; readonly other: Chrono } | null = null;

/** Loads the reader of written dates; everything else works without it. */
export async function loadTimes(): Promise<void> {
  if (chrono) return;
  const { GB, casual } = await import("chrono-node/en");
  chrono = { american: casual, other: GB };
}

export const timesLoaded = (): boolean => chrono !== null;

/** chrono-node is shown the surroundings of a few words that name a date, never a wall of text: some of its patterns are slow. */
const MOST_DATES = 8;
const DATE_LEADS = ["in", "on", "since", "by", "from", "last", "until", "till", "of", "next", "this", "during"];
const ALSO_WORDS = new Set(["may", "mar", "march", "sun", "sat", "wed", "mon", "fri", "dec", "jan", "sec", "second", "tue", "thu", "now",
  "week", "month", "year"]);

/** All of them in tokens that went through `readNumberWords`. */
export function writtenDates(text: string, tokens: readonly Token[], now: Temporal.ZonedDateTime, options: TimeOptions): Moment[] {
  const american = /^en[-_]us/i.test(options.locale ?? "");
  const iso = [...numberDates(tokens, american), ...monthDates(tokens, now.toPlainDate(), options.lean ?? "nearest")];
  if (!chrono) return iso;
  const reader = american ? chrono.american : chrono.other;
  const reference = { instant: new Date(now.epochMilliseconds), timezone: now.offsetNanoseconds / 60e9 };
  const out = [...iso];
  const figures = figuresIn(tokens).filter(({ figure }) => figure.dimension !== null);
  for (const [first, end] of dateWindows(tokens)) {
    const start_at = (tokens[first] as Token).at[0];
    for (const { start, index, text: words } of reader.parse(text.slice(start_at, (tokens[end - 1] as Token).at[1]), reference,
      { forwardDate: options.lean === "future" })) {
      if (!start.isCertain("day") && !start.isCertain("month") && !start.isCertain("weekday")) continue;
      let from = first;
      while (from < end && (tokens[from] as Token).at[1] <= start_at + index) from += 1;
      let to = from;
      while (to < end && (tokens[to] as Token).at[0] < start_at + index + words.length) to += 1;
      // "Nov 20: 12 kg" is a day before a weight
      to = Math.min(to, figures.find((placed) => placed.from > from && placed.from < to)?.from ?? to);
      if (to === from || !believable(tokens, from, to) || figures.some((placed) => placed.from < to && from < placed.to)) continue;
      const [year, month, day] = [start.get("year"), start.get("month"), start.get("day")];
      if (!year || !month || !day || year < 1 || year > 9999) continue;
      let date = Temporal.PlainDate.from({ year, month, day });
      if (options.lean === "past" && !start.isCertain("year") && Temporal.PlainDate.compare(date, now.toPlainDate()) > 0) {
        date = start.isCertain("month") ? date.subtract({ years: 1 }) : start.isCertain("weekday") ? date.subtract({ days: 7 }) : date;
      }
      if (!out.some((known) => known.from < to && from < known.to)) out.push({ from, to, day: date });
    }
  }
  return out;
}

/** Stretches of tokens around each word that names a date, apart from each other. */
function dateWindows(tokens: readonly Token[]): [number, number][] {
  const windows: [number, number][] = [];
  for (let i = 0; i < tokens.length && windows.length < MOST_DATES; i += 1) {
    const slashed = isSign(tokens[i], "/") && tokens[i - 1]?.kind === "number" && tokens[i + 1]?.kind === "number";
    if (!slashed && !MONTHS.has(wordAt(tokens[i])) && !isWord(tokens[i], "weekend")) continue;
    const last = windows.at(-1);
    const from = Math.max(last?.[1] ?? 0, i - 5);
    windows.push([from, Math.min(tokens.length, i + 5)]);
    i += 4;
  }
  return windows;
}

/** "may" is rarely the month, "3/4" rarely the date. */
function believable(tokens: readonly Token[], from: number, to: number): boolean {
  const led = isWord(tokens[from - 1], ...DATE_LEADS) || isWord(tokens[from], ...DATE_LEADS);
  const words = tokens.slice(from, to).map(wordAt).filter(Boolean);
  const numbers = tokens.slice(from, to).filter((token) => token.kind === "number").length;
  if (words.length === 0) return numbers >= 3 || clockOrDate(tokens, from) === 5 || (led && numbers === 2 && isSign(tokens[from + 1], "/"));
  if (words.length === 1 && numbers === 0 && ALSO_WORDS.has(words[0] as string)) return led && words[0] !== "second" && words[0] !== "now";
  return true;
}

/**
 * "Nov 20", "20th of November", "3 March 2018": chrono-node takes the 20 of "Nov 20" for a year. Without a year the nearest that `lean`
 * allows.
 */
function monthDates(tokens: readonly Token[], today: Temporal.PlainDate, lean: "past" | "future" | "nearest"): Moment[] {
  const out: Moment[] = [];
  const whole = (i: number): number => {
    const token = tokens[i];
    return token?.kind === "number" && Number.isInteger(token.value) && token.decimals === 0 && clockOrDate(tokens, i) !== 3 ? token.value
      : 0;
  };
  for (let i = 0; i < tokens.length; i += 1) {
    const month = MONTHS.get(wordAt(tokens[i]));
    if (month === undefined) continue;
    const ordinal = isWord(tokens[i - 1], "st", "nd", "rd", "th") || isWord(tokens[i - 1], "of") ? 1 : 0;
    const of = ordinal && isWord(tokens[i - 1], "of") && isWord(tokens[i - 2], "st", "nd", "rd", "th") ? 2 : ordinal;
    let from = i;
    let to = i + 1;
    let day = whole(i - 1 - of);
    if (day >= 1 && day <= 31) from = i - 1 - of;
    else {
      // "it may 5 kg do"
      if (isWord(tokens[i], "may") && !(tokens[i] as WordToken).capital && !isWord(tokens[i - 1], ...DATE_LEADS)) continue;
      day = whole(i + 1);
      if (day < 1 || day > 31 || followedByUnit(tokens, i + 2)) continue;
      to = isWord(tokens[i + 2], "st", "nd", "rd", "th") ? i + 3 : i + 2;
    }
    const comma = isSign(tokens[to], ",") ? 1 : 0;
    const year = whole(to + comma) >= 1900 && whole(to + comma) <= 2100 ? whole(to + comma) : null;
    try {
      let date = Temporal.PlainDate.from({ year: year ?? today.year, month, day }, { overflow: "reject" });
      if (year === null) {
        const days = today.until(date).days;
        if (lean === "past" && days > 0) date = date.subtract({ years: 1 });
        else if (lean === "future" && days < 0) date = date.add({ years: 1 });
        else if (lean === "nearest" && Math.abs(days) > 182) date = days > 0 ? date.subtract({ years: 1 }) : date.add({ years: 1 });
      }
      out.push({ from, to: year === null ? to : to + comma + 1, day: date });
    } catch {
      // 31 November is none
    }
  }
  return out;
}

/** 2026-10-03, 3.10.2026, 3/10/26 (month first for American readers). A date that does not exist is none. */
function numberDates(tokens: readonly Token[], american: boolean): Moment[] {
  const out: Moment[] = [];
  for (let i = 0; i + 4 < tokens.length; i += 1) {
    if (clockOrDate(tokens, i) !== 5 || isSign(tokens[i + 1], ":")) continue;
    const [a, b, c] = [tokens[i], tokens[i + 2], tokens[i + 4]].map((token) => (token?.kind === "number" ? token.value : 0)) as [number,
      number, number];
    const [year, month, day] = a > 1900 ? [a, b, c] : american && isSign(tokens[i + 1], "/") ? [c, a, b] : [c, b, a];
    try {
      const date = Temporal.PlainDate.from({ year: year < 100 ? 2000 + year : year, month, day }, { overflow: "reject" });
      out.push({ from: i, to: i + 5, day: date });
    } catch {
      continue;
    }
    i += 4;
  }
  return out;
}
