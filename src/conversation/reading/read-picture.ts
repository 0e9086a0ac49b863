/** What words beside a picture say of it: what it shows, which spot, how wide the crack is. English and German. Common practice, no source. */
import type { AlbumEntry } from "../../records/types.ts";
import { convert } from "../../quantities.ts";
import { readFigures } from "./figures.ts";

export type What = AlbumEntry["what"];
const SHOWS: readonly (readonly [What, RegExp])[] = [
  ["crack", /crack|\briss|(?:haar|putz|fugen)riss|\bsplit (?:brick|tile)|\bgaps?\b|\bhairline|\bjoints?\b|\bfuge/],
  ["glass", /\bglass\b|\bpane\b|\bwindow\b|\bscheibe/],
  ["soot", /\bsoot|\btar\b|\bcreosote|\bcleanout|\bflakes\b|\bflue\b|\bchimney\b|\bruß|\bruss(?!\w*land)/],
];
export const shows = (words: string): What | null => SHOWS.find(([, pattern]) => pattern.test(words.toLowerCase()))?.[0] ?? null;

const BEFORE_A_PLACE = "above|over|below|under|underneath|beside|next to|left of|right of|behind|inside|in|on|at|near|around|oberhalb|unterhalb|über|unter|neben|links|rechts|hinter|innen|am|an|auf|im|in|bei|beim";
const ARTICLE = "the|my|our|a|von|vom|der|die|das|den|dem|des|meiner|meinem";
const SPOT = new RegExp(`(?<![\\p{L}])(?:${BEFORE_A_PLACE}) (?:(?:${ARTICLE}) )*(?:\\p{L}+)(?: (?:of|von|vom) (?:(?:${ARTICLE}) )*\\p{L}+| (?:side|wall|corner|edge|bench|frame|door|arch|lintel)(?!\\p{L}))?`, "iu");
/** a time, not a place: "in spring", "at last", "over the winter" */
const NO_PLACE = /\b(?:spring|summer|autumn|winter|morning|evening|night|weeks?|months?|days?|years?|last|first|least|most|all|monday|tuesday|wednesday|thursday|friday|saturday|sunday|fire|use|it|this|that|picture|photo|album|frühling|sommer|herbst|woche|monat|jahr|feuer|bild|foto|album)$/i;

/** "above the door"; undefined where no spot is named */
export function spotIn(words: string): string | undefined {
  const found = SPOT.exec(words)?.[0];
  return found === undefined || NO_PLACE.test(found) ? undefined : found.replace(/\s+/g, " ");
}

const ALIKE: Readonly<Record<string, string>> = { over: "above", oberhalb: "above", über: "above", under: "below", underneath: "below", unterhalb: "below", unter: "below", links: "left", rechts: "right", tür: "door" };
const SMALL = new Set([..."next to of in on at near inside around side am an auf im bei beim innen".split(" "), ...ARTICLE.split("|")]);
const wordsOf = (spot: string): Set<string> => new Set(spot.toLowerCase().split(/[^\p{L}]+/u).map((word) => ALIKE[word] ?? word).filter((word) => word !== "" && !SMALL.has(word)));

/** Whether two namings can mean one spot: all words of the shorter stand in the longer. */
export function sameSpot(one: string, other: string): boolean {
  const [few, many] = [wordsOf(one), wordsOf(other)].sort((a, b) => a.size - b.size);
  return few !== undefined && few.size > 0 && [...few].every((word) => many?.has(word));
}

/** What is wider than this is no crack's width. */
const WIDEST_MM = 60;
const WIDTH = /(?:\d+(?:[.,/]\d+)?|\bhalf an?|\ban?)\s*(?:mm|millimet\w*|cm|centimet\w*|inch(?:es)?|in\b|")(?!\s*(?:long|lang|deep|tief|high|hoch|above|below|from|left|right|away|über|unter|neben))/i;

/** Millimetres; undefined where no width is named. */
export function widthIn(words: string): number | undefined {
  const said = WIDTH.exec(words)?.[0];
  const figure = said === undefined ? undefined : readFigures(said.replace('"', " inch"))[0];
  if (figure?.dimension !== "length" || figure.unit === null) return undefined;
  const mm = convert(figure.value, figure.unit, "mm");
  return mm > 0 && mm <= WIDEST_MM ? Math.round(mm * 100) / 100 : undefined;
}
