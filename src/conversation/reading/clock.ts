/** Times of day in a person's words: "18:10", "6.30 pm", "half past six", "half six", "quarter to seven", "at eight". */
import { isSign, isWord, wordAt, type NumberToken, type Token } from "./tokens.ts";
import { unitNamed } from "./units.ts";

export interface Clock {
  readonly hour: number;
  readonly minute: number;
  /** could be twelve hours later: nobody said morning or evening */
  readonly twelve: boolean;
}
export interface PlacedClock extends Clock {
  readonly from: number;
  readonly to: number;
}

const AT = ["at", "around", "about", "by", "till", "til", "until", "since", "from", "before", "after", "@", "klo", "um", "a", "kl", "vid",
  "gegen"];
const HOUR_WORDS: Readonly<Record<string, number>> = {
  one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, eleven: 11, twelve: 12,
};

export interface ClockOptions {
  /** words after which a bare hour is a time: "lit 6" */
  readonly hour_after?: ReadonlySet<string>;
  /** "18.10" is a time wherever no unit follows */
  readonly points?: boolean;
}

/** Every time of day in tokens that went through `readNumberWords`. */
export function clocksIn(tokens: readonly Token[], options: ClockOptions = {}): PlacedClock[] {
  const out: PlacedClock[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    const clock = clockAt(tokens, i, options);
    if (!clock) continue;
    const withPart = partAfter(tokens, clock);
    out.push(withPart);
    i = withPart.to - 1;
  }
  return out;
}

function clockAt(tokens: readonly Token[], i: number, options: ClockOptions): PlacedClock | null {
  const token = tokens[i] as Token;
  if (isWord(token, "noon", "midday")) return { hour: 12, minute: 0, twelve: false, from: i, to: i + 1 };
  if (isWord(token, "midnight")) return { hour: 0, minute: 0, twelve: false, from: i, to: i + 1 };
  return spoken(tokens, i) ?? (token.kind === "number" && !token.ordinal ? written(tokens, i, token, options) : null);
}

const hourOf = (token: Token | undefined): number | null => {
  const value = token?.kind === "number" && token.decimals === 0 ? token.value : HOUR_WORDS[wordAt(token)];
  return value !== undefined && Number.isInteger(value) && value >= 0 && value <= 24 ? value : null;
};

/** "half past six", "half six", "quarter to 7", "ten past eight", "twenty to nine". */
function spoken(tokens: readonly Token[], i: number): PlacedClock | null {
  const past = isWord(tokens[i + 1], "past", "after", "gone");
  const to = isWord(tokens[i + 1], "to", "til", "till", "before");
  const first = tokens[i] as Token;
  const minutes = isWord(first, "half") ? 30 : isWord(first, "quarter") ? 15 : first.kind === "number" && first.spelled && first.value > 0
    && first.value < 30 ? first.value : null;
  if (minutes === null) return null;
  if (past || (to && minutes < 30)) {
    const hour = hourOf(tokens[i + 2]);
    if (hour === null || hour > 12 || (first.kind === "number" && minutes % 5 !== 0) || followedByUnit(tokens, i + 3)) return null;
    // "ten to twelve kilos" is a range; "from six to eight" too
    if (to && first.kind === "number" && !isWord(tokens[i - 1], "at", "around", "about", "since", "by", "until", "till",
      "lit")) return null;
    return clock(past ? hour : hour - 1, past ? minutes : 60 - minutes, true, i, i + 3);
  }
  if (!isWord(first, "half")) return null;
  const hour = hourOf(tokens[i + 1]);
  return hour !== null && hour >= 1 && hour <= 12 && !followedByUnit(tokens, i + 2) ? clock(hour, 30, true, i, i + 2) : null;
}

/** A unit or its sign stands here, so that the number before is no time. */
export function followedByUnit(tokens: readonly Token[], i: number): boolean {
  const token = tokens[i];
  if (token?.kind === "sign") return "%€£$°".includes(token.sign);
  const word = wordAt(token);
  return word !== "" && !["in", "c", "f", "t", "h", "uhr", "st"].includes(word) && unitNamed(word) !== null;
}

function written(tokens: readonly Token[], i: number, token: NumberToken, options: ClockOptions): PlacedClock | null {
  const mark = tokens[i + 1];
  const second = tokens[i + 2];
  const sized = isWord(tokens[i - 1], "by", "a") && tokens[i - 2]?.kind === "number";
  const introduced = (isWord(tokens[i - 1], ...AT) && !sized) || isSign(tokens[i - 1], "@")
    || (options.hour_after?.has(wordAt(tokens[i - 1])) ?? false);
  if (isSign(mark, ":") && !mark?.gap && second?.kind === "number" && !second.gap && second.at[1] - second.at[0] >= 2
    && token.decimals === 0) {
    const seconds = isSign(tokens[i + 3], ":") && tokens[i + 3]?.gap === false && tokens[i + 4]?.kind === "number" ? 2 : 0;
    return hoursAndMinutes(tokens, i, i + 3 + seconds, token.value, second.value, leadingZero(token));
  }
  if (isWord(mark, "h") && !mark?.gap && second?.kind === "number" && !second.gap && token.decimals === 0 && token.value >= 13) {
    return hoursAndMinutes(tokens, i, i + 3, token.value, second.value, false);
  }
  if (token.decimals === 2 && !token.spelled && !followedByUnit(tokens, i + 1)) {
    const minutes = Math.round((token.value % 1) * 100);
    if (token.value >= 1 && token.value < 24 && minutes < 60
      && (introduced || options.points || half(tokens, i + 1) || isWord(mark, "uhr"))) {
      return hoursAndMinutes(tokens, i, i + 1, Math.floor(token.value), minutes, leadingZero(token));
    }
  }
  if (token.decimals > 0 || !Number.isInteger(token.value)) return null;
  const led = introduced || (isSign(tokens[i - 1], "~") && (options.hour_after?.has(wordAt(tokens[i - 2])) ?? false));
  if (led && isWord(mark, "h") && !mark?.gap && token.value <= 24) return hoursAndMinutes(tokens, i, i + 2, token.value, 0, false);
  if (half(tokens, i + 1) && token.value >= 1 && token.value <= 12) return hoursAndMinutes(tokens, i, i + 1, token.value, 0, false);
  if (isWord(mark, "oclock", "uhr")) return hoursAndMinutes(tokens, i, i + 2, token.value, 0, false);
  if (isWord(mark, "o") && isWord(second, "clock")) return hoursAndMinutes(tokens, i, i + 3, token.value, 0, false);
  const four = token.at[1] - token.at[0] === 4 && !token.spelled;
  if (four && (isWord(mark, "hrs", "hours", "h") || (introduced
    && !isWord(tokens[i - 1], "since", "from", "by", "until", "till", "after", "before", "about", "around")))) {
    return hoursAndMinutes(tokens, i, i + (isWord(mark, "hrs", "hours", "h") ? 2 : 1), Math.floor(token.value / 100), token.value % 100,
      true);
  }
  const evening = isWord(mark, "in") && isWord(second, "the") && isWord(tokens[i + 3], "morning", "evening", "afternoon", "arvo");
  const dayBefore = isWord(tokens[i - 1], "tonight", "yesterday", "morning", "evening", "night", "tomorrow", "today")
    && (mark === undefined || mark.kind === "sign");
  if ((introduced || evening || dayBefore || (isWord(mark, "at") && isWord(second, "night"))) && token.value <= 24
    && !followedByUnit(tokens, i + 1) && !quantified(tokens, i)) {
    return hoursAndMinutes(tokens, i, i + 1, token.value, 0, leadingZero(token));
  }
  return null;
}

/** "about 12 of them", "at 12 - 14 kg", "by 4", "at 5 or 6 kg", "4x": no time. */
function quantified(tokens: readonly Token[], i: number): boolean {
  const before = wordAt(tokens[i - 1]);
  const next = tokens[i + 1];
  if (isWord(next, "of", "x", "percent", "per", "logs", "splits", "pieces", "baskets", "armfuls", "fires", "or", "times", "rows",
    "people")) return true;
  if (isSign(next, "-") || isSign(next, "/") || isSign(next, "x") || isSign(next, "–")) return true;
  if (before === "a") return true;
  // "at two points" counts things; "at 22 on the meter" is a reading
  const token = tokens[i] as NumberToken;
  if (token.spelled && token.value > 12) return true;
  if (token.spelled && next?.kind === "word" && next.word.endsWith("s") && !TIME_NEIGHBOURS.has(next.word)) return true;
  for (let n = i + 1; n < i + 5 && tokens[n]?.kind === "word"; n += 1) if (isWord(tokens[n], "meter", "scale", "gauge")) return true;
  return (before === "about" || before === "around" || before === "from" || before === "after" || before === "before"
    || before === "since") && next !== undefined && next.kind === "word" && !TIME_NEIGHBOURS.has(next.word);
}
const TIME_NEIGHBOURS = new Set([
  "in", "and", "air", "damper", "then", "till", "to", "until", "with", "last", "yesterday", "this", "today", "tonight", "tomorrow", "on",
    "shut", "closed", "but", "so", "o", "it", "the", "bed", "flames", "i", "we", "lit", "fire", "when",
]);

const leadingZero = (token: NumberToken): boolean => token.value < 10 && token.at[1] - token.at[0] >= 2 && token.decimals === 0
  && !token.spelled;

function hoursAndMinutes(tokens: readonly Token[], from: number, to: number, hour: number, minute: number,
  sure: boolean): PlacedClock | null {
  if (hour > 24 || minute > 59 || (hour === 24 && minute > 0)) return null;
  const marked = half(tokens, to);
  if (marked && hour <= 12) return clock((hour % 12) + (marked.pm ? 12 : 0), minute, false, from, marked.to);
  if (isWord(tokens[to], "uhr", "oclock")) return clock(hour % 24, minute, hour >= 1 && hour <= 12, from, to + 1);
  return clock(hour % 24, minute, !sure && hour >= 1 && hour <= 12, from, to);
}

const clock = (hour: number, minute: number, twelve: boolean, from: number, to: number): PlacedClock =>
  ({ hour: (hour + 24) % 24, minute, twelve, from, to });

function half(tokens: readonly Token[], i: number): { pm: boolean; to: number } | null {
  if (isWord(tokens[i], "am", "pm")) return { pm: isWord(tokens[i], "pm"), to: i + 1 };
  if (isWord(tokens[i], "a", "p")) {
    const dot = isSign(tokens[i + 1], ".") ? 1 : 0;
    if (isWord(tokens[i + 1 + dot], "m") && dot === 1) return { pm: isWord(tokens[i], "p"),
      to: i + 3 + (isSign(tokens[i + 3], ".") ? 1 : 0) };
    if (isWord(tokens[i], "p") && !tokens[i]?.gap) return { pm: true, to: i + 1 };
  }
  return null;
}

/** "six in the evening", "10 at night": settles the half of the day. */
function partAfter(tokens: readonly Token[], at: PlacedClock): PlacedClock {
  const the = isWord(tokens[at.to], "in") && isWord(tokens[at.to + 1], "the") ? at.to + 2 : isWord(tokens[at.to], "at")
    && isWord(tokens[at.to + 1], "night") ? at.to + 1 : -1;
  if (the < 0) return at;
  const part = wordAt(tokens[the]);
  if (part === "morning") return { ...inHalf(at, false), to: the + 1 };
  if (part === "evening" || part === "afternoon" || part === "arvo") return { ...inHalf(at, true), to: the + 1 };
  if (part === "night") return { ...inHalf(at, at.hour >= 6 && at.hour < 12), to: the + 1 };
  return at;
}

/** The same time in the named half of the day, when it was open. */
export const inHalf = <T extends Clock>(at: T, pm: boolean): T =>
  (at.twelve ? { ...at, hour: (at.hour % 12) + (pm ? 12 : 0), twelve: false } : at);
