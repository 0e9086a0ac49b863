/** What the German model reads of a message: its own words without their endings, and behind them the English ones they stand for. */
import { gloss } from "../german/gloss.ts";
import { keyOf, piecesOf } from "../german/pieces.ts";
import { EVERYDAY } from "./german-words.ts";

const READ_CHARACTERS = 900;
const ENDINGS = ["erung", "ungen", "ern", "est", "ten", "tet", "ung", "em", "en", "er", "es", "st", "te", "e", "n", "s", "t"];
const SHORTEST_ROOT = 4;

/** "raucht", "rauchen", "geraucht": one root, good enough to be counted by. */
export function germanRoot(word: string): string {
  const participle = word.length > 7 && word.startsWith("ge") && (word.endsWith("t") || word.endsWith("en"));
  const bare = participle ? word.slice(2) : word;
  const ending = ENDINGS.find((one) => bare.endsWith(one) && bare.length - one.length >= SHORTEST_ROOT);
  return ending ? bare.slice(0, -ending.length) : bare;
}

const BY_ROOT = new Map(EVERYDAY.trim().split("\n").flatMap((line) => {
  const [german = "", english = ""] = line.split(" = ");
  return german.split(" ").map((word) => [germanRoot(word), english] as const);
}));

/** The roots, and behind them the message with everything in English that the gloss or the everyday words know. */
export function inBoth(text: string): string {
  const own = text.slice(0, READ_CHARACTERS);
  const pieces = piecesOf(own);
  const roots = pieces.map(({ kind, key, text: written, gap }) => `${gap ? " " : ""}${kind === "word" ? germanRoot(key) : written}`).join("");
  const left = new Set(pieces.filter(({ kind }) => kind === "word").map(({ text: written }) => written));
  const english = gloss(own).text.replace(/[\p{L}\p{M}]+/gu, (word) => (left.has(word) ? (BY_ROOT.get(germanRoot(keyOf(word))) ?? word) : word));
  return `${roots} ${english}`;
}

/** A phrase of the words file as `inBoth` shows it. */
export const germanPhrase = (phrase: string): string => piecesOf(phrase).map(({ kind, key, text }) => (kind === "word" ? germanRoot(key) : text)).join(" ");
