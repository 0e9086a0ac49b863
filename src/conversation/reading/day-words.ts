/** Days around today in a person's words: "yesterday evening", "since Sunday", "3 days ago", "this arvo". */
import type { DayPart, Moment } from "./moment.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";

const PARTS: Readonly<Record<string, DayPart>> = {
  morning: "morning", mornin: "morning", am: "morning", noon: "noon", midday: "noon", afternoon: "afternoon", arvo: "afternoon",
    avo: "afternoon",
  evening: "evening", eve: "evening", evenin: "evening", night: "night", nite: "night",
};
const WEEKDAYS: Readonly<Record<string, number>> = { monday: 1, tuesday: 2, tues: 2, wednesday: 3, weds: 3, thursday: 4, thurs: 4,
  friday: 5, saturday: 6, sunday: 7, wensday: 3, wednsday: 3, thurday: 4, saterday: 6 };
const SHORT_WEEKDAYS: Readonly<Record<string, number>> = { mon: 1, tue: 2, wed: 3, thu: 4, thur: 4, fri: 5, sat: 6, sun: 7 };
type Period = "minutes" | "hours" | "days" | "weeks" | "months" | "years";
const AGO_UNITS: Readonly<Record<string, Period>> = {
  minute: "minutes", minutes: "minutes", min: "minutes", mins: "minutes", hour: "hours", hours: "hours", hr: "hours", hrs: "hours",
    h: "hours", day: "days", days: "days",
  week: "weeks", weeks: "weeks", month: "months", months: "months", year: "years", years: "years", yr: "years", yrs: "years",
};

/** All of them in tokens that went through `readNumberWords`. */
export function dayWords(tokens: readonly Token[], now: Temporal.ZonedDateTime, lean: "past" | "future" | "nearest"): Moment[] {
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
  const span = (length: number, day: Temporal.PlainDate, part?: DayPart): Moment =>
    ({ from: i, to: i + length, day, ...(part ? { part } : {}) });
  const next = PARTS[wordAt(tokens[i + 1])];
  if (word === "today") return span(1, today);
  if (word === "tonight" || word === "tonite" || word === "2nite") return span(1, smallHours && lean === "past"
    ? today.subtract({ days: 1 }) : today, "evening");
  if (word === "yesterday" || word === "yest" || word === "yday") return next ? span(2, today.subtract({ days: 1 }), next)
    : span(1, today.subtract({ days: 1 }));
  if (word === "tomorrow" || word === "tmrw" || word === "tomorow" || word === "tommorow") return next
    ? span(2, today.add({ days: 1 }), next) : span(1, today.add({ days: 1 }));
  if (word === "last" && next === "night") return span(2, today.subtract({ days: 1 }), "night");
  if (word === "last" && next === "evening") return span(2, today.subtract({ days: 1 }), "evening");
  const period = AGO_UNITS[wordAt(tokens[i + 1])];
  if ((word === "last" || word === "next") && (period === "weeks" || period === "months" || period === "years")
    && !wordAt(tokens[i + 1]).endsWith("s")) {
    return span(2, word === "last" ? today.subtract({ [period]: 1 }) : today.add({ [period]: 1 }));
  }
  if (word === "this" && next) return span(2, today, next);
  if (word === "day" && isWord(tokens[i + 1], "before") && isWord(tokens[i + 2], "yesterday")) return span(3, today.subtract({ days: 2 }));
  if (word === "day" && isWord(tokens[i + 1], "after") && isWord(tokens[i + 2], "tomorrow")) return span(3, today.add({ days: 2 }));
  if (word === "now") return isWord(tokens[i + 1], "and") ? null : { from: i, to: i + 1, instant_ms: now.epochMilliseconds };
  // "sat" and "sun" are days only where nothing else fits: "on sat", "sat night", "sat -10"
  const led = isWord(tokens[i - 1], "on", "since", "last", "next", "this", "until", "till", "by") || next !== undefined;
  const listed = lean === "future" && (isSign(tokens[i + 1], "-") || isSign(tokens[i + 1], ":"));
  const weekday = WEEKDAYS[word.endsWith("s") && word.length > 7 ? word.slice(0, -1) : word]
    ?? (led || listed ? SHORT_WEEKDAYS[word] : undefined);
  if (weekday !== undefined) {
    const coming = isWord(tokens[i - 1], "next") || (lean === "nearest" && isWord(tokens[i - 1], "by", "until", "till"));
    const past = isWord(tokens[i - 1], "since", "last") || (lean !== "future" && !coming);
    const day = past ? today.subtract({ days: (today.dayOfWeek - weekday + 6) % 7 + 1 })
      : today.add({ days: (weekday - today.dayOfWeek + 6) % 7 + 1 });
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
