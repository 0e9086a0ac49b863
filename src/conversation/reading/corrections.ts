/** Corrections of what was just said: "no, 14 not 40", "sorry I meant spruce", "make that 12 kg", "not birch, oak". */
import { isSign, isWord, scan, wordAt, type Span, type Token } from "./tokens.ts";

export interface Correction {
  readonly kind: "correction";
  /** what was wrong, in the person's words */
  readonly from?: string;
  /** what is right, in the person's words */
  readonly to: string;
  readonly to_at: Span;
}

const OPENERS: readonly string[] = [
  "sorry i meant", "sorry meant", "i meant", "i mean", "meant", "make that", "make it", "should be", "should have been", "should read",
    "it was", "its actually", "it is actually", "actually its", "actually it was",
  "actually", "correction", "rather", "no its", "no it was", "no it is", "no", "nope", "sorry", "oops", "wait", "scratch that",
    "change that to", "change it to", "correct that to", "typo", "no i meant", "no wait", "i said", "that should be", "oops i meant",
    "that last one was", "the last one was", "last one was", "the last was", "my mistake", "my bad", "ups", "nein", "no sorry", "er", "no make that", "my mistake its",
];
/** These alone are too common to be a correction without "not" or another of them. */
const WEAK = new Set(["no", "nope", "actually", "wait", "it was", "i mean", "rather", "i said", "sorry", "er", "make it", "should be",
  "no it is", "no its", "nein", "that last one was", "the last one was", "last one was", "the last was"]);
const OPENING = new Set(OPENERS);
const LONGEST_OPENER = 4;
const LONGEST_WORDS = 10;

/** Reads a correction, or null. Only the beginning of a message is looked at. */
export function readCorrection(text: string): Correction | null {
  const shown = text.slice(0, 300);
  const tokens = scan(shown);
  let i = skipSigns(tokens, 0);
  let opened = false;
  let strong = false;
  for (;;) {
    const length = openerAt(tokens, i);
    if (length === 0) break;
    opened = true;
    const phrase = tokens.slice(i, i + length).map(wordAt).join(" ");
    strong ||= !WEAK.has(phrase);
    i = skipSigns(tokens, i + length);
  }
  const rest = trimmed(tokens, i, tokens.length);
  if (rest.from >= rest.to || rest.to - rest.from > LONGEST_WORDS * 2) return null;
  const pair = aNotB(tokens, rest) ?? notAB(tokens, rest) ?? insteadOf(tokens, rest);
  if (pair) {
    const named = isWord(tokens[pair.to.from], "its") ? 1 : isWord(tokens[pair.to.from], "it", "that")
      && isWord(tokens[pair.to.from + 1], "is", "was") ? 2 : 0;
    const right = { from: pair.to.from + named, to: pair.to.to };
    const plain = pair.to.from > rest.from || named > 0 || (holdsFigure(tokens, right) && holdsFigure(tokens, pair.from));
    if (right.from >= right.to || (!opened && !(plain && shortEnough(right, pair.from)))) return null;
    return made(shown, tokens, right, pair.from);
  }
  if (!strong && !(opened && rest.to - rest.from <= 4 && holdsFigure(tokens, rest))) return null;
  return rest.to - rest.from > LONGEST_WORDS ? null : made(shown, tokens, rest);
}

interface Range {
  readonly from: number;
  readonly to: number;
}

function openerAt(tokens: readonly Token[], i: number): number {
  let phrase = "";
  let length = 0;
  for (let n = 0; n < LONGEST_OPENER; n += 1) {
    const word = wordAt(tokens[i + n]);
    if (!word) break;
    phrase = n === 0 ? word : `${phrase} ${word}`;
    if (OPENING.has(phrase)) length = n + 1;
  }
  return length;
}

const isMinus = (tokens: readonly Token[], i: number): boolean => isSign(tokens[i], "-") && tokens[i + 1]?.kind === "number"
  && tokens[i + 1]?.gap === false;

function skipSigns(tokens: readonly Token[], from: number): number {
  let i = from;
  while (tokens[i]?.kind === "sign" && !isMinus(tokens, i) && !isSign(tokens[i], "€") && !isSign(tokens[i], "$")
    && !isSign(tokens[i], "£")) i += 1;
  return i;
}

function trimmed(tokens: readonly Token[], from: number, to: number): Range {
  const start = skipSigns(tokens, from);
  let end = to;
  while (end > start && (isSign(tokens[end - 1], ".") || isSign(tokens[end - 1], "!") || isSign(tokens[end - 1], ",")
    || isSign(tokens[end - 1], ";") || isSign(tokens[end - 1], ")") || isWord(tokens[end - 1], "sorry", "oops", "please", "lol"))) end -= 1;
  return { from: start, to: end };
}

/** "14 not 40", "14, not 40 kg". */
function aNotB(tokens: readonly Token[], { from, to }: Range): { to: Range; from: Range } | null {
  const not = tokens.findIndex((token, i) => i > from && i < to - 1 && isWord(token, "not"));
  if (not < 0) return null;
  const right = trimmed(tokens, from, not);
  const wrong = trimmed(tokens, not + 1, to);
  return right.to > right.from && wrong.to > wrong.from ? { to: right, from: wrong } : null;
}

/** "not 40 but 14", "not birch, oak". */
function notAB(tokens: readonly Token[], { from, to }: Range): { to: Range; from: Range } | null {
  if (!isWord(tokens[from], "not")) return null;
  const split = tokens.findIndex((token, i) => i > from + 1 && i < to - 1
    && (isWord(token, "but") || isSign(token, ",") || isSign(token, ";") || isSign(token, "–")));
  if (split < 0) return null;
  const right = trimmed(tokens, isWord(tokens[split + 1], "but", "its") ? split + 2 : split + 1, to);
  return right.to > right.from ? { to: right, from: trimmed(tokens, from + 1, split) } : null;
}

/** "14 instead of 40". */
function insteadOf(tokens: readonly Token[], { from, to }: Range): { to: Range; from: Range } | null {
  const at = tokens.findIndex((token, i) => i > from && i < to - 2 && isWord(token, "instead") && isWord(tokens[i + 1], "of"));
  return at < 0 ? null : { to: trimmed(tokens, from, at), from: trimmed(tokens, at + 2, to) };
}

const shortEnough = (a: Range, b: Range): boolean => a.to - a.from <= 4 && b.to - b.from <= 4;

const NUMBER_WORDS = new Set(["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
  "thirteen", "fourteen", "fifteen", "twenty", "thirty", "forty", "half"]);
const holdsFigure = (tokens: readonly Token[], { from, to }: Range): boolean =>
  tokens.slice(from, to).some((token) => token.kind === "number" || NUMBER_WORDS.has(wordAt(token)));

function made(text: string, tokens: readonly Token[], right: Range, wrong?: Range): Correction {
  const slice = ({ from, to }: Range): string => text.slice((tokens[from] as Token).at[0], (tokens[to - 1] as Token).at[1]);
  return {
    kind: "correction", to: slice(right), to_at: [(tokens[right.from] as Token).at[0], (tokens[right.to - 1] as Token).at[1]],
    ...(wrong && wrong.to > wrong.from ? { from: slice(wrong) } : {}),
  };
}
