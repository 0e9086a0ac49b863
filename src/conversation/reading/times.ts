/**
 * Moments in a person's words, in the person's own zone. Times of day and the days around today are read here; other dates
 * ("on 1 August", "3/10/2026", "last Friday") by chrono-node, which is loaded late. Until it is, those are simply not found.
 */
import type { Chrono } from "chrono-node/en";
import { clocksIn, inHalf, type ClockOptions, type PlacedClock } from "./clock.ts";
import { clockOrDate, figuresIn } from "./figures.ts";
import { readNumberWords } from "./number-words.ts";
import { isSign, isWord, scan, wordAt, type Span, type Token } from "./tokens.ts";

export interface Time {
  /** for a day without a time of day: its noon, or the usual hour of the part of the day that was named */
  readonly at_ms: number;
  readonly kind: "instant" | "day";
  readonly words: string;
  readonly at: Span;
  /** "at six" without morning or evening: the other reading */
  readonly other_ms?: number;
}

export interface TimeOptions {
  /** which way an open time leans: what happened, what is planned, or whatever is nearest */
  readonly lean?: "past" | "future" | "nearest";
  /** language tag; decides whether 3/10 is in March or October. Day first unless the tag is of the United States */
  readonly locale?: string;
}

type DayPart = "morning" | "noon" | "afternoon" | "evening" | "night";
const USUAL_HOUR: Readonly<Record<DayPart, number>> = { morning: 8, noon: 12, afternoon: 15, evening: 19, night: 22 };

/** A moment as said, before it is placed in time. */
export interface Moment {
  readonly from: number;
  readonly to: number;
  readonly day?: Temporal.PlainDate;
  readonly part?: DayPart;
  readonly clock?: PlacedClock;
  readonly instant_ms?: number;
}

let chrono: { readonly american: Chrono; readonly other: Chrono } | null = null;

/** Loads the reader of written dates; everything else works without it. */
export async function loadTimes(): Promise<void> {
  if (chrono) return;
  const { GB, casual } = await import("chrono-node/en");
  chrono = { american: casual, other: GB };
}

export const timesLoaded = (): boolean => chrono !== null;

/** A wall of text holds no more moments than its beginning. */
const LONGEST_READ = 4000;

/** All moments of a text in order (its first 4000 characters). Times that nobody gave a day take the one said before, else the nearest that `lean` allows. */
export function readTimes(whole: string, now_ms: number, timezone: string, options: TimeOptions = {}): Time[] {
  const text = whole.slice(0, LONGEST_READ);
  const tokens = readNumberWords(scan(text));
  const now = zoned(now_ms, timezone);
  let said: Temporal.PlainDate | null = null;
  let last: Temporal.ZonedDateTime | null = null;
  return momentsIn(text, tokens, now, options).map((moment) => {
    const placed = place(moment, now, said, last, options.lean ?? "nearest");
    if (moment.day) said = moment.day;
    if (moment.clock) last = placed.at;
    const span: Span = [(tokens[moment.from] as Token).at[0], (tokens[moment.to - 1] as Token).at[1]];
    return {
      at_ms: placed.at.epochMilliseconds,
      kind: moment.clock || moment.instant_ms !== undefined ? "instant" as const : "day" as const,
      words: text.slice(span[0], span[1]),
      at: span,
      ...(placed.other ? { other_ms: placed.other.epochMilliseconds } : {}),
    };
  });
}

export function zoned(now_ms: number, timezone: string): Temporal.ZonedDateTime {
  const instant = Temporal.Instant.fromEpochMilliseconds(now_ms);
  try {
    return instant.toZonedDateTimeISO(timezone);
  } catch {
    return instant.toZonedDateTimeISO("UTC");
  }
}

function place(
  moment: Moment, now: Temporal.ZonedDateTime, said: Temporal.PlainDate | null, last: Temporal.ZonedDateTime | null, lean: "past" | "future" | "nearest",
): { at: Temporal.ZonedDateTime; other?: Temporal.ZonedDateTime } {
  if (moment.instant_ms !== undefined) return { at: zoned(moment.instant_ms, now.timeZoneId) };
  const { clock, part } = moment;
  const day = moment.day ?? said;
  if (!clock) return { at: onDay(day ?? now.toPlainDate(), { hour: part ? USUAL_HOUR[part] : 12, minute: 0 }, now) };
  const ways = clock.twelve ? [clock, { ...clock, hour: (clock.hour + 12) % 24 }] : [clock];
  const options = ways.flatMap((way) => (day ? [onDay(day, way, now)] : [-1, 0, 1].map((shift) => onDay(now.toPlainDate().add({ days: shift }), way, now))));
  const slack = 10 * 60_000;
  const distance = (at: Temporal.ZonedDateTime): number => {
    const ahead = at.epochMilliseconds - now.epochMilliseconds;
    const wrong = (lean === "past" && ahead > slack) || (lean === "future" && ahead < -slack) ? 1e12 : 0;
    const backwards = last && day && !moment.day && Temporal.ZonedDateTime.compare(at, last) < 0 ? 1e11 : 0;
    // among two open halves of a day already past, the evening is the usual time of a fire
    const evening = day && clock.twelve && at.hour < 12 ? 1 : 0;
    return wrong + backwards + (day ? evening : Math.abs(ahead));
  };
  const ranked = options.toSorted((a, b) => distance(a) - distance(b));
  let at = ranked[0] as Temporal.ZonedDateTime;
  if (last && day && !moment.day && Temporal.ZonedDateTime.compare(at, last) < 0) at = at.add({ days: 1 });
  const other = clock.twelve ? ranked.find((way) => way.hour !== at.hour) : undefined;
  return { at, ...(other ? { other } : {}) };
}

export const onDay = (day: Temporal.PlainDate, clock: { readonly hour: number; readonly minute: number }, now: Temporal.ZonedDateTime): Temporal.ZonedDateTime =>
  day.toZonedDateTime({ timeZone: now.timeZoneId, plainTime: new Temporal.PlainTime(clock.hour, clock.minute) });

/** Days and times of day of a text, joined where they belong together. */
export function momentsIn(
  text: string, tokens: readonly Token[], now: Temporal.ZonedDateTime, options: TimeOptions & ClockOptions = {},
): Moment[] {
  const clocks = clocksIn(tokens, options);
  const pieces: Moment[] = [...dayWords(tokens, now, options.lean ?? "nearest"), ...clocks.map((clock) => ({ from: clock.from, to: clock.to, clock }))];
  for (const date of writtenDates(text, tokens, now, options)) {
    if (!pieces.some((piece) => piece.day && piece.from < date.to && date.from < piece.to)) {
      // a date such as 3.10.2026 holds no time of day
      for (let i = pieces.length - 1; i >= 0; i -= 1) {
        const piece = pieces[i] as Moment;
        if (piece.clock && piece.from >= date.from && piece.to <= date.to && !isSign(tokens[piece.from + 1], ":") && piece.clock.twelve) pieces.splice(i, 1);
      }
      pieces.push(date);
    }
  }
  pieces.sort((a, b) => a.from - b.from);
  return join(tokens, pieces);
}

/** A day and a time of day beside each other are one moment: "yesterday at 18:10", "18:10 on Sunday". */
function join(tokens: readonly Token[], pieces: readonly Moment[]): Moment[] {
  const out: Moment[] = [];
  for (const piece of pieces) {
    const before = out.at(-1);
    const near = before && piece.from - before.to <= 3 && !stopBetween(tokens, before.to, piece.from);
    if (near && before.clock && !before.day && piece.day && !piece.clock) out[out.length - 1] = settle({ ...piece, from: before.from, clock: before.clock });
    else if (near && before.day && !before.clock && piece.clock && !piece.day) out[out.length - 1] = settle({ ...before, to: piece.to, clock: piece.clock });
    else if (near && before.day && !before.part && piece.part && !piece.clock && !before.clock && piece.day) out[out.length - 1] = { ...before, to: piece.to, part: piece.part };
    else out.push(piece);
  }
  return out;
}

/** "last night at 11", "last night at 1": the part of the day settles the half, and after midnight the day. */
function settle(moment: Moment): Moment {
  const { clock, part, day } = moment;
  if (!clock || !part || !day || !clock.twelve) return part === "night" && clock && day && clock.hour < 5 ? { ...moment, day: day.add({ days: 1 }) } : moment;
  if (part === "morning") return { ...moment, clock: inHalf(clock, false) };
  if (part !== "night") return { ...moment, clock: inHalf(clock, true) };
  const small = clock.hour === 12 || clock.hour < 5;
  return small ? { ...moment, clock: inHalf(clock, false), day: day.add({ days: 1 }) } : { ...moment, clock: inHalf(clock, true) };
}

function stopBetween(tokens: readonly Token[], from: number, to: number): boolean {
  for (let i = from; i < to; i += 1) {
    const token = tokens[i] as Token;
    if (token.kind === "number" || (token.kind === "sign" && ".;!?".includes(token.sign))) return true;
  }
  return false;
}

const PARTS: Readonly<Record<string, DayPart>> = {
  morning: "morning", mornin: "morning", am: "morning", noon: "noon", midday: "noon", afternoon: "afternoon", arvo: "afternoon", avo: "afternoon",
  evening: "evening", eve: "evening", evenin: "evening", night: "night", nite: "night",
};
const WEEKDAYS: Readonly<Record<string, number>> = { monday: 1, tuesday: 2, tues: 2, wednesday: 3, weds: 3, thursday: 4, thurs: 4, friday: 5, saturday: 6, sunday: 7, wensday: 3, wednsday: 3, thurday: 4, saterday: 6 };
const SHORT_WEEKDAYS: Readonly<Record<string, number>> = { mon: 1, tue: 2, wed: 3, thu: 4, thur: 4, fri: 5, sat: 6, sun: 7 };
type Period = "minutes" | "hours" | "days" | "weeks" | "months" | "years";
const AGO_UNITS: Readonly<Record<string, Period>> = {
  minute: "minutes", minutes: "minutes", min: "minutes", mins: "minutes", hour: "hours", hours: "hours", hr: "hours", hrs: "hours", h: "hours", day: "days", days: "days",
  week: "weeks", weeks: "weeks", month: "months", months: "months", year: "years", years: "years", yr: "years", yrs: "years",
};

function dayWords(tokens: readonly Token[], now: Temporal.ZonedDateTime, lean: "past" | "future" | "nearest"): Moment[] {
  const out: Moment[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    const moment = dayAt(tokens, i, now, lean);
    if (!moment) continue;
    out.push(moment);
    i = moment.to - 1;
  }
  return out;
}

function dayAt(tokens: readonly Token[], i: number, now: Temporal.ZonedDateTime, lean: "past" | "future" | "nearest"): Moment | null {
  const word = wordAt(tokens[i]);
  const today = now.toPlainDate();
  /** before dawn "last night" and "tonight" belong to the evening before */
  const smallHours = now.hour < 4;
  const span = (length: number, day: Temporal.PlainDate, part?: DayPart): Moment => ({ from: i, to: i + length, day, ...(part ? { part } : {}) });
  const next = PARTS[wordAt(tokens[i + 1])];
  if (word === "today") return span(1, today);
  if (word === "tonight" || word === "tonite" || word === "2nite") return span(1, smallHours && lean === "past" ? today.subtract({ days: 1 }) : today, "evening");
  if (word === "yesterday" || word === "yest" || word === "yday") return next ? span(2, today.subtract({ days: 1 }), next) : span(1, today.subtract({ days: 1 }));
  if (word === "tomorrow" || word === "tmrw" || word === "tomorow" || word === "tommorow") return next ? span(2, today.add({ days: 1 }), next) : span(1, today.add({ days: 1 }));
  if (word === "last" && next === "night") return span(2, today.subtract({ days: 1 }), "night");
  if (word === "last" && next === "evening") return span(2, today.subtract({ days: 1 }), "evening");
  const period = AGO_UNITS[wordAt(tokens[i + 1])];
  if ((word === "last" || word === "next") && (period === "weeks" || period === "months" || period === "years") && !wordAt(tokens[i + 1]).endsWith("s")) {
    return span(2, word === "last" ? today.subtract({ [period]: 1 }) : today.add({ [period]: 1 }));
  }
  if (word === "this" && next) return span(2, today, next);
  if (word === "day" && isWord(tokens[i + 1], "before") && isWord(tokens[i + 2], "yesterday")) return span(3, today.subtract({ days: 2 }));
  if (word === "day" && isWord(tokens[i + 1], "after") && isWord(tokens[i + 2], "tomorrow")) return span(3, today.add({ days: 2 }));
  if (word === "now") return isWord(tokens[i + 1], "and") ? null : { from: i, to: i + 1, instant_ms: now.epochMilliseconds };
  const weekday = WEEKDAYS[word.endsWith("s") && word.length > 7 ? word.slice(0, -1) : word] ?? (isWord(tokens[i - 1], "on", "since", "last", "next", "this", "until", "till", "by") ? SHORT_WEEKDAYS[word] : undefined);
  if (weekday !== undefined) {
    const past = isWord(tokens[i - 1], "since", "last") || (lean !== "future" && !isWord(tokens[i - 1], "next", "by", "until", "till"));
    const day = past ? today.subtract({ days: (today.dayOfWeek - weekday + 6) % 7 + 1 }) : today.add({ days: (weekday - today.dayOfWeek + 6) % 7 + 1 });
    return next ? span(2, day, next) : span(1, day);
  }
  return agoAt(tokens, i, now);
}

/** "3 days ago", "an hour ago", "half an hour ago", "nine years ago", "in 2 hours". */
function agoAt(tokens: readonly Token[], i: number, now: Temporal.ZonedDateTime): Moment | null {
  const token = tokens[i] as Token;
  const ahead = isWord(token, "in");
  const at = ahead ? i + 1 : i;
  const article = isWord(tokens[at], "a", "an") ? 1 : null;
  const number = tokens[at];
  const amount = article ?? (number?.kind === "number" && !number.ordinal ? number.value : null);
  if (amount === null || amount < 0 || amount > 100_000) return null;
  const unit = AGO_UNITS[wordAt(tokens[at + 1])];
  if (!unit || (!ahead && !isWord(tokens[at + 2], "ago", "back"))) return null;
  const to = at + (ahead ? 2 : 3);
  if (unit === "hours" || unit === "minutes") {
    const span_ms = amount * (unit === "hours" ? 3_600_000 : 60_000);
    return { from: i, to, instant_ms: now.epochMilliseconds + (ahead ? span_ms : -span_ms) };
  }
  if (ahead && amount > 1000) return null;
  const length = { [unit]: Math.min(Math.round(amount), 3000) };
  const today = now.toPlainDate();
  return { from: i, to, day: ahead ? today.add(length) : today.subtract(length) };
}

/** chrono-node takes 30 ms for 2,500 characters of the worst kind: it is shown no more than this. */
const SHOWN_TO_CHRONO = 1000;
const DATE_LEADS = ["in", "on", "since", "by", "from", "last", "until", "till", "of", "next", "this", "during"];
const ALSO_WORDS = new Set(["may", "mar", "march", "sun", "sat", "wed", "mon", "fri", "dec", "jan", "sec", "second", "tue", "thu", "now", "week", "month", "year"]);

function writtenDates(text: string, tokens: readonly Token[], now: Temporal.ZonedDateTime, options: TimeOptions): Moment[] {
  const american = /^en[-_]us/i.test(options.locale ?? "");
  const iso = numberDates(tokens, american);
  if (!chrono) return iso;
  const reader = american ? chrono.american : chrono.other;
  const reference = { instant: new Date(now.epochMilliseconds), timezone: now.offsetNanoseconds / 60e9 };
  const out = [...iso];
  const figures = figuresIn(tokens).filter(({ figure }) => figure.dimension !== null);
  for (const result of reader.parse(text.slice(0, SHOWN_TO_CHRONO), reference, { forwardDate: options.lean === "future" })) {
    const { start } = result;
    if (!start.isCertain("day") && !start.isCertain("month") && !start.isCertain("weekday")) continue;
    const from = tokens.findIndex((token) => token.at[1] > result.index);
    if (from < 0) continue;
    let to = from;
    while (to < tokens.length && (tokens[to] as Token).at[0] < result.index + result.text.length) to += 1;
    if (!believable(tokens, from, to) || figures.some((placed) => placed.from < to && from < placed.to)) continue;
    const [year, month, day] = [start.get("year"), start.get("month"), start.get("day")];
    if (!year || !month || !day || year < 1 || year > 9999) continue;
    let date = Temporal.PlainDate.from({ year, month, day });
    if (options.lean === "past" && !start.isCertain("year") && Temporal.PlainDate.compare(date, now.toPlainDate()) > 0) {
      date = start.isCertain("month") ? date.subtract({ years: 1 }) : start.isCertain("weekday") ? date.subtract({ days: 7 }) : date;
    }
    if (!out.some((known) => known.from < to && from < known.to)) out.push({ from, to, day: date });
  }
  return out;
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

/** 2026-10-03, 3.10.2026, 3/10/26 (month first for American readers). A date that does not exist is none. */
function numberDates(tokens: readonly Token[], american: boolean): Moment[] {
  const out: Moment[] = [];
  for (let i = 0; i + 4 < tokens.length; i += 1) {
    if (clockOrDate(tokens, i) !== 5 || isSign(tokens[i + 1], ":")) continue;
    const [a, b, c] = [tokens[i], tokens[i + 2], tokens[i + 4]].map((token) => (token?.kind === "number" ? token.value : 0)) as [number, number, number];
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
