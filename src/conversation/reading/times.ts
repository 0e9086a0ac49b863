/**
 * Moments in a person's words, in the person's own zone. Times of day and the days around today are read here; other dates
 * ("on 1 August", "3/10/2026", "last Friday") by chrono-node, which is loaded late. Until it is, those are simply not found.
 */
import { clocksIn, inHalf, type ClockOptions } from "./clock.ts";
import { dayWords } from "./day-words.ts";
import type { DayPart, Moment, TimeOptions } from "./moment.ts";
import { readNumberWords } from "./number-words.ts";
import { isSign, scan, type Span, type Token } from "./tokens.ts";
import { writtenDates } from "./written-dates.ts";

export { loadTimes, timesLoaded } from "./written-dates.ts";
export type { Moment, TimeOptions } from "./moment.ts";

export interface Time {
  /** for a day without a time of day: its noon, or the usual hour of the part of the day that was named */
  readonly at_ms: number;
  readonly kind: "instant" | "day";
  readonly words: string;
  readonly at: Span;
  /** "at six" without morning or evening: the other reading */
  readonly other_ms?: number;
}

const USUAL_HOUR: Readonly<Record<DayPart, number>> = { morning: 8, noon: 12, afternoon: 15, evening: 19, night: 22 };

/** A wall of text holds no more moments than its beginning. */
const LONGEST_READ = 4000;

/**
 * All moments of a text in order (its first 4000 characters). Times that nobody gave a day take the one said before, else the nearest that
 * `lean` allows.
 */
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
  moment: Moment, now: Temporal.ZonedDateTime, said: Temporal.PlainDate | null, last: Temporal.ZonedDateTime | null,
    lean: "past" | "future" | "nearest",
): { at: Temporal.ZonedDateTime; other?: Temporal.ZonedDateTime } {
  if (moment.instant_ms !== undefined) return { at: zoned(moment.instant_ms, now.timeZoneId) };
  const { clock, part } = moment;
  const day = moment.day ?? said;
  if (!clock) return { at: onDay(day ?? now.toPlainDate(), { hour: part ? USUAL_HOUR[part] : 12, minute: 0 }, now) };
  const ways = clock.twelve ? [clock, { ...clock, hour: (clock.hour + 12) % 24 }] : [clock];
  const options = ways.flatMap((way) => (day ? [onDay(day, way, now)]
    : [-1, 0, 1].map((shift) => onDay(now.toPlainDate().add({ days: shift }), way, now))));
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

export const onDay = (day: Temporal.PlainDate, clock: { readonly hour: number; readonly minute: number },
  now: Temporal.ZonedDateTime): Temporal.ZonedDateTime =>
  day.toZonedDateTime({ timeZone: now.timeZoneId, plainTime: new Temporal.PlainTime(clock.hour, clock.minute) });

/** Days and times of day of a text, joined where they belong together. */
export function momentsIn(
  text: string, tokens: readonly Token[], now: Temporal.ZonedDateTime, options: TimeOptions & ClockOptions = {},
): Moment[] {
  const clocks = clocksIn(tokens, options);
  const pieces: Moment[] = [...dayWords(tokens, now, options.lean ?? "nearest"),
    ...clocks.map((clock) => ({ from: clock.from, to: clock.to, clock }))];
  for (const date of writtenDates(text, tokens, now, options)) {
    if (!pieces.some((piece) => piece.day && piece.from < date.to && date.from < piece.to)) {
      // a date such as 3.10.2026 holds no time of day
      for (let i = pieces.length - 1; i >= 0; i -= 1) {
        const piece = pieces[i] as Moment;
        if (piece.clock && piece.from >= date.from && piece.to <= date.to && !isSign(tokens[piece.from + 1], ":")
          && piece.clock.twelve) pieces.splice(i, 1);
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
    if (near && before.clock && !before.day && piece.day && !piece.clock) out[out.length - 1] = settle({ ...piece, from: before.from,
      clock: before.clock });
    else if (near && before.day && !before.clock && piece.clock
      && !piece.day) out[out.length - 1] = settle({ ...before, to: piece.to, clock: piece.clock });
    else if (near && before.day && !before.part && piece.part && !piece.clock && !before.clock
      && piece.day?.equals(before.day)) out[out.length - 1] = { ...before, to: piece.to, part: piece.part };
    else out.push(piece);
  }
  return out;
}

/** "last night at 11", "last night at 1": the part of the day settles the half, and after midnight the day. */
function settle(moment: Moment): Moment {
  const { clock, part, day } = moment;
  if (!clock || !part || !day || !clock.twelve) return part === "night" && clock && day && clock.hour < 5
    ? { ...moment, day: day.add({ days: 1 }) } : moment;
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
