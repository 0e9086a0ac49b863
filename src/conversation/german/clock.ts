/** German times and dates in the way English readers write them: "halb sieben" is 6:30, "18 Uhr 30" is 18:30, "3. Oktober" is 3 October. */
import { numberWord } from "./numbers.ts";
import type { Piece } from "./pieces.ts";

export interface Read {
  readonly english: string;
  /** pieces it took */
  readonly length: number;
}

const MONTHS = "januar februar marz april mai juni juli august september oktober november dezember".split(" ");
const ENGLISH_MONTHS = "January February March April May June July August September October November December".split(" ");
const MORE_MONTHS: Readonly<Record<string, number>> = { janner: 0, jan: 0, feber: 1, feb: 1, apr: 3, jun: 5, jul: 6, aug: 7, sept: 8, sep: 8, okt: 9, nov: 10, dez: 11 };
export const monthNamed = (key: string): string | undefined => ENGLISH_MONTHS[MONTHS.indexOf(key) >= 0 ? MONTHS.indexOf(key) : (MORE_MONTHS[key] ?? -1)];

const whole = (piece: Piece | undefined): number | null => {
  if (piece?.kind === "number") return /^\d{1,4}$/.test(piece.text) ? Number(piece.text) : null;
  const said = piece?.kind === "word" ? (piece.key === "ein" ? 1 : numberWord(piece.key)) : null;
  return said !== null && Number.isInteger(said) ? said : null;
};
const two = (value: number): string => String(value).padStart(2, "0");
const clock = (hour: number, minute: number): string => `${((hour % 24) + 24) % 24}:${two(minute)}`;
const isHour = (value: number | null): value is number => value !== null && value >= 0 && value <= 24;

/** A time of day that begins here, without its "um". */
export function timeAt(pieces: readonly Piece[], i: number): Read | null {
  const [first, second, third, fourth] = [pieces[i], pieces[i + 1], pieces[i + 2], pieces[i + 3]];
  if (!first) return null;
  const uhr = (at: number): number => (pieces[at]?.key === "uhr" ? 1 : 0);
  if (first.key === "mittag" && pieces[i - 1]?.key === "zu") return { english: "noon", length: 1 };
  if (first.key === "mitternacht") return { english: "midnight", length: 1 };
  // halb sieben, viertel vor sieben, dreiviertel sieben
  if (first.key === "halb" || first.key === "dreiviertel" || first.key === "viertel") {
    const near = second?.key === "nach" || second?.key === "vor" ? second.key : null;
    if (near && first.key !== "viertel") return null;
    const at = near ? i + 2 : i + 1;
    const hour = whole(pieces[at]);
    if (!isHour(hour) || hour > 24 || (hour === 0 && !near)) return null;
    const length = at - i + 1 + uhr(at + 1);
    if (near) return { english: near === "nach" ? clock(hour, 15) : clock(hour - 1, 45), length };
    if (unitBehind(pieces, at + 1)) return null;
    return { english: clock(hour - 1, first.key === "halb" ? 30 : first.key === "dreiviertel" ? 45 : 15), length };
  }
  // zehn nach acht, fünf vor halb sieben
  const minutes = whole(first);
  if (minutes !== null && minutes > 0 && minutes < 30 && (second?.key === "nach" || second?.key === "vor")) {
    const half = third?.key === "halb";
    const hour = whole(half ? fourth : third);
    const named = first.kind === "word" || pieces[i - 1]?.key === "um";
    if (named && isHour(hour) && hour > 0) {
      const at = half ? 30 : 0;
      const total = (half ? hour - 1 : hour) * 60 + at + (second.key === "nach" ? minutes : -minutes);
      const length = (half ? 4 : 3) + uhr(i + (half ? 4 : 3));
      return { english: clock(Math.floor(total / 60), ((total % 60) + 60) % 60), length };
    }
  }
  // 18.30 Uhr, 18:30 Uhr, 18 Uhr 30, acht Uhr
  if (first.kind === "number" && /^\d{1,2}\.\d{2}$/.test(first.text) && second?.key === "uhr") {
    const [hour = 0, minute = 0] = first.text.split(".").map(Number);
    return hour <= 24 && minute < 60 ? { english: clock(hour, minute), length: 2 } : null;
  }
  if (first.kind === "number" && second?.text === ":" && !second.gap && third?.kind === "number" && fourth?.key === "uhr") {
    return { english: clock(Number(first.text), Number(third.text)), length: 4 };
  }
  if (isHour(minutes) && second?.key === "uhr") {
    const minute = whole(third);
    const counted = minute !== null && minute < 60 && third?.kind === "number" && !third.text.includes(",") && !unitBehind(pieces, i + 3);
    return { english: clock(minutes, counted ? minute : 0), length: counted ? 3 : 2 };
  }
  return null;
}

const UNITS = new Set("kg kilo kilogramm % prozent grad raummeter rm ster festmeter scheit scheite korb korbe liter stunde stunden minuten tage wochen zentner pfund".split(" "));
const unitBehind = (pieces: readonly Piece[], i: number): boolean => UNITS.has(pieces[i]?.key ?? "");

/** "3. Oktober", "3.10.", "1. jeden Monats", "am 1.": a day of the month. */
export function dateAt(pieces: readonly Piece[], i: number): Read | null {
  const [first, dot, next, last] = [pieces[i], pieces[i + 1], pieces[i + 2], pieces[i + 3]];
  if (first?.kind !== "number") return null;
  const short = /^(\d{1,2})\.(\d{1,2})$/.exec(first.text);
  if (short && dot?.text === "." && !dot.gap && next?.kind !== "number") {
    const month = ENGLISH_MONTHS[Number(short[2]) - 1];
    return month && Number(short[1]) >= 1 && Number(short[1]) <= 31 ? { english: `${Number(short[1])} ${month}`, length: 2 } : null;
  }
  const day = /^\d{1,2}$/.test(first.text) ? Number(first.text) : 0;
  if (day < 1 || day > 31 || dot?.text !== "." || dot.gap) return null;
  const month = next?.kind === "word" ? monthNamed(next.key) : undefined;
  if (month) return { english: `${day} ${month}`, length: 3 };
  if (next?.key === "jeden" && (last?.key === "monats" || last?.key === "monat")) return { english: `the ${nth(day)} of every month`, length: 4 };
  if (next?.key === "des" && last?.key === "monats") return { english: `the ${nth(day)} of the month`, length: 4 };
  return pieces[i - 1]?.key === "am" || pieces[i - 1]?.key === "zum" || pieces[i - 1]?.key === "jeden" ? { english: nth(day), length: 2 } : null;
}

function nth(day: number): string {
  const end = day % 100 >= 11 && day % 100 <= 13 ? "th" : ({ 1: "st", 2: "nd", 3: "rd" }[day % 10] ?? "th");
  return `${day}${end}`;
}
