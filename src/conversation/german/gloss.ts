/**
 * A German message in the words that the English readers of figures, times, records and requests understand, piece by piece and in
 * German order. Never shown to anybody, and never what a gate of closing down or an emergency is decided by: those read the message itself.
 */
import { amountAt } from "./amounts.ts";
import { dateAt, monthNamed, timeAt } from "./clock.ts";
import { numberWord, ORDINALS } from "./numbers.ts";
import { DAY_PARTS, PARTS_OF_DAY, PHRASES, SHORT_WEEKDAYS, WEEKDAYS } from "./phrases.ts";
import { keyOf, piecesOf, type Piece } from "./pieces.ts";

export interface Gloss {
  readonly text: string;
  /** the person's own words behind words of the gloss, such as a reminder's; "" when they are not found in order */
  own(english: string): string;
}

export interface GlossOptions {
  /** ISO country: a Zentner is 50 kg, in Austria and Switzerland 100 kg */
  readonly country?: string;
}

const LONGEST_READ = 4000;
const LONGEST_PHRASE = 7;
const DICTIONARY = new Map<string, string>(
  PHRASES.split("\n").filter((line) => line.includes(" = ") && !line.startsWith("#")).flatMap((line) => {
    const [german = "", english = ""] = line.split(" = ");
    return german.split(" | ").map((phrase) => [phrase.trim().split(" ").map(keyOf).join(" "), english.trim()] as const);
  }),
);
const ENDINGS = ["en", "em", "er", "es", "e", "n", "s"];
const WOODEN = /^(.{3,}?)(holz|scheite|scheiten|scheit|brennholz|stapel)$/;
const DENIALS = new Set("nicht kein keine nie niemals kaum fast beinahe nahezu noch halb ziemlich".split(" "));
const CLAUSE_ENDS = new Set([",", ".", ";", ":", "!", "?", "(", ")", "–"]);
const TOO = new Set("viel wenig nass feucht kalt heiss warm spat fruh gross klein hoch schnell stark dick schwer trocken".split(" "));
/** written with a point: "ca. 12 kg" */
const ABBREVIATED = new Set("ca max min std mind hochst ungef ztr pfd".split(" "));
const TIME_UNITS: Readonly<Record<string, string>> = { minute: "minute", minuten: "minutes", stunde: "hour", stunden: "hours", tag: "day", tagen: "days", woche: "week", wochen: "weeks", monat: "month", monaten: "months", jahr: "year", jahren: "years" };

interface Part {
  readonly english: string;
  readonly from: number;
  readonly to: number;
  readonly gap: boolean;
}

export function gloss(whole: string, options: GlossOptions = {}): Gloss {
  const text = whole.slice(0, LONGEST_READ);
  const pieces = piecesOf(text);
  const reminding = pieces.some(({ key }) => key === "erinnern");
  const parts: Part[] = [];
  for (let i = 0; i < pieces.length; ) {
    const { english, length } = readAt(pieces, i, options, reminding);
    const [first, last] = [pieces[i] as Piece, pieces[i + length - 1] as Piece];
    parts.push({ english, from: first.from, to: last.to, gap: first.gap });
    i += length;
  }
  const placed: { readonly from: number; readonly part: Part }[] = [];
  let out = "";
  for (const part of parts) {
    if (part.english === "") continue;
    if (part.gap && out !== "") out += text.slice(0, part.from).endsWith("\n") ? "\n" : " ";
    placed.push({ from: out.length, part });
    out += part.english;
  }
  return { text: out, own: (english) => ownWords(text, out, placed, english) };
}

function readAt(pieces: readonly Piece[], i: number, options: GlossOptions, reminding: boolean): { english: string; length: number } {
  const piece = pieces[i] as Piece;
  const next = pieces[i + 1];
  if (piece.kind === "sign") return amountAt(pieces, i) ?? { english: piece.text, length: 1 };

  // "kannst du mich morgen daran erinnern, ..." is asked at its beginning in English
  if (reminding) {
    if ((piece.key === "kannst" || piece.key === "konntest" || piece.key === "wurdest") && next?.key === "du" && (pieces[i + 2]?.key === "mich" || pieces[i + 2]?.key === "uns")) return { english: `remind ${pieces[i + 2]?.key === "uns" ? "us" : "me"}`, length: 3 };
    if (piece.key === "daran" && next?.key === "erinnern") return { english: "", length: 2 };
    if (piece.key === "erinnern") return { english: "", length: 1 };
  }
  // "war im Oktober da" is "was here in October"
  if (piece.key === "war" && hereBehind(pieces, i)) return { english: "was here", length: 1 };
  if (piece.key === "im" && next && monthNamed(next.key)) return { english: "in", length: 1 };
  if (piece.key === "da" && (!next || next.kind === "sign")) return { english: pieces.some((one, at) => at < i && one.key === "war" && hereBehind(pieces, at)) ? "" : "here", length: 1 };
  // "zieh K7M2 zurück"
  if (piece.key === "zuruck" && pieces[0]?.key.startsWith("zieh")) return { english: "", length: 1 };
  const part = PARTS_OF_DAY[piece.key];
  if (part && (next?.key === "um" || next?.key === "gegen")) {
    const time = timeAt(pieces, i + 2) ?? bareHour(pieces, i + 2);
    if (time) return { english: `at ${time.english} ${part}`, length: 2 + time.length };
  }
  if (piece.key === "um" && next) {
    const time = timeAt(pieces, i + 1);
    if (time) return { english: `at ${time.english}`, length: 1 + time.length };
    if (next.kind === "number" || numberWord(next.key) !== null || next.key === "eins") return { english: "at", length: 1 };
    return { english: "", length: 1 };
  }
  const time = timeAt(pieces, i);
  if (time && (piece.key !== "viertel" || next?.key !== "liter")) return time;
  const date = dateAt(pieces, i);
  if (date) return date;
  // "vor drei Tagen"
  if (piece.key === "vor" && next) {
    const many = next.kind === "number" ? next.text : next.key === "einer" || next.key === "einem" ? "1" : numberWord(next.key);
    const unit = TIME_UNITS[pieces[i + 2]?.key ?? ""];
    if (many !== null && unit) return { english: `${many} ${unit} ago`, length: 3 };
  }
  const amount = amountAt(pieces, i, options.country);
  if (amount) return amount;
  const weekday = weekdayAt(pieces, i);
  if (weekday) return weekday;
  const ordinal = ORDINALS[piece.key];
  if (ordinal && next && (WEEKDAYS[next.key] || next.key === "tag")) return { english: ordinal, length: 1 };
  if (piece.key === "zwischen" || piece.key !== "zu") {
    const phrase = phraseAt(pieces, i);
    if (phrase) return ABBREVIATED.has(piece.key) && phrase.length === 1 && next?.text === "." && !next.gap ? { ...phrase, length: 2 } : phrase;
  }
  if (piece.key === "zu") return { english: next && TOO.has(next.key) ? "too" : !next || next.kind === "sign" || numberWord(next.key) !== null || next.kind === "number" || next.key === "um" ? "shut" : "to", length: 1 };
  if (piece.key === "schwarz") return { english: deniedHere(pieces, i) ? "not black" : "black", length: 1 };
  const month = piece.key.length > 2 ? monthNamed(piece.key) : undefined;
  if (month && (piece.key.length > 3 || pieces[i - 1]?.kind === "number")) return { english: month, length: 1 };
  return { english: wordOf(piece), length: 1 };
}

/** a "da" that ends the clause */
function hereBehind(pieces: readonly Piece[], i: number): boolean {
  const end = pieces.findIndex(({ kind }, at) => at > i && kind === "sign");
  const last = end < 0 ? pieces.length - 1 : end - 1;
  return last > i && last - i < 6 && pieces[last]?.key === "da";
}

/** "abends um 8": the hour alone. */
function bareHour(pieces: readonly Piece[], i: number): { english: string; length: number } | null {
  const piece = pieces[i];
  const hour = piece?.kind === "number" && /^\d{1,2}$/.test(piece.text) ? Number(piece.text) : piece ? numberWord(piece.key) : null;
  return hour !== null && Number.isInteger(hour) && hour <= 24 ? { english: String(hour), length: 1 } : null;
}

function weekdayAt(pieces: readonly Piece[], i: number): { english: string; length: number } | null {
  const piece = pieces[i] as Piece;
  const next = pieces[i + 1];
  const name = WEEKDAYS[piece.key];
  if (name) {
    const part = next ? DAY_PARTS[next.key] : undefined;
    return part ? { english: `${name} ${part}`, length: 2 } : { english: name, length: 1 };
  }
  if (piece.key.endsWith("s") && WEEKDAYS[piece.key.slice(0, -1)]) return { english: `every ${WEEKDAYS[piece.key.slice(0, -1)]}`, length: 1 };
  for (const [day, english] of Object.entries(WEEKDAYS)) {
    const rest = piece.key.startsWith(day) ? DAY_PARTS[piece.key.slice(day.length)] : undefined;
    if (rest) return { english: `${english} ${rest}`, length: 1 };
  }
  const short = SHORT_WEEKDAYS[piece.text];
  const listed = next !== undefined && (next.kind === "number" || ((next.text === "-" || next.text === "−" || next.text === ":" || next.text === ".") && pieces[i + 2]?.kind !== "word"));
  return short && listed ? { english: short, length: next?.text === "." ? 2 : 1 } : null;
}

/** The longest phrase that begins here; hyphens join as spaces do. */
function phraseAt(pieces: readonly Piece[], i: number): { english: string; length: number } | null {
  let phrase = "";
  let best: { english: string; length: number } | null = null;
  for (let n = 0, words = 0; words < LONGEST_PHRASE; n += 1) {
    const piece = pieces[i + n];
    if ((piece?.text === "-" || piece?.text === "'" || piece?.text === "’") && n > 0 && !piece.gap && pieces[i + n + 1]?.gap === false) continue;
    if (piece?.kind !== "word") break;
    words += 1;
    phrase = phrase === "" ? piece.key : `${phrase} ${piece.key}`;
    const english = DICTIONARY.get(phrase);
    if (english !== undefined && !(n === 0 && (piece.key === "gut" || piece.key === "schwarz"))) best = { english, length: n + 1 };
  }
  return best;
}

/** A word alone: with an ending taken off, or as wood of some tree; else as it stands. */
function wordOf({ key, text }: Piece): string {
  if (key.length >= 5) {
    for (const ending of ENDINGS) {
      const english = key.endsWith(ending) ? DICTIONARY.get(key.slice(0, -ending.length)) : undefined;
      if (english !== undefined && key.length - ending.length >= 4) return english;
    }
  }
  const [, tree = ""] = WOODEN.exec(key) ?? [];
  const known = tree && (DICTIONARY.get(tree) ?? DICTIONARY.get(tree.replace(/n$/, "")));
  return known ? `${known} wood` : text;
}

/** "schwarz war die Glut nicht", "fast schwarz", "noch nicht schwarz": whatever stands in the clause. */
function deniedHere(pieces: readonly Piece[], i: number): boolean {
  for (const step of [-1, 1] as const) {
    for (let at = i + step; at >= 0 && at < pieces.length; at += step) {
      const piece = pieces[at] as Piece;
      if (piece.kind === "sign" ? CLAUSE_ENDS.has(piece.text) : piece.key === "aber") break;
      if (DENIALS.has(piece.key)) return true;
    }
  }
  return false;
}

/** Words of the gloss found again one after the other, and the person's words from the first to the last of each run. */
function ownWords(text: string, glossed: string, placed: readonly { from: number; part: Part }[], english: string): string {
  const low = glossed.toLowerCase();
  const used = new Set<Part>();
  let at = 0;
  for (const word of english.toLowerCase().split(/\s+/).filter(Boolean)) {
    const found = low.indexOf(word, at);
    if (found < 0) continue;
    at = found + word.length;
    const holder = placed.findLast(({ from }) => from <= found);
    if (holder) used.add(holder.part);
  }
  let out = "";
  let end = -1;
  for (const { part } of placed) {
    if (!used.has(part)) continue;
    const between = end >= 0 ? text.slice(end, part.from) : "";
    out += out === "" ? "" : /^[\s-]*$/.test(between) ? between : " ";
    out += text.slice(part.from, part.to);
    end = part.to;
  }
  return out.replace(/\s+/g, " ").trim();
}
