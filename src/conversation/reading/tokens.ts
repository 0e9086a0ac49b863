/**
 * Text to words, numbers and signs with their places, in one pass and in linear time. Undone on the way: case, accents, full-width
 * letters, digits of other scripts, zero-width and direction marks. A number is read as people of several countries write it:
 * "12,5", "1,800", "1 800", "1'800", "1.234,5", "12½", "1 1/2", ".26".
 */
import { joinFractions } from "./fractions.ts";

/** From and to (exclusive), in UTF-16 units of the text as given. */
export type Span = readonly [number, number];

interface Placed {
  readonly at: Span;
  /** white space stands before it */
  readonly gap: boolean;
}
export interface WordToken extends Placed {
  readonly kind: "word";
  /** folded: lower case, bare letters, no apostrophes */
  readonly word: string;
  /** begins with a capital */
  readonly capital?: true;
}
export interface NumberToken extends Placed {
  readonly kind: "number";
  readonly value: number;
  /** digits after the decimal mark as written */
  readonly decimals: number;
  /** the other reading of "1.800", which is 1.8 in one country and 1800 in another */
  readonly alt?: number;
  /** written in words */
  readonly spelled?: true;
  /** "a couple", "a few": the value is only a centre */
  readonly loose?: true;
  /** "1st", "22nd": a date or a place in a row, no quantity */
  readonly ordinal?: true;
}
export interface SignToken extends Placed {
  readonly kind: "sign";
  readonly sign: string;
}
export type Token = WordToken | NumberToken | SignToken;

const LONGEST_WORD = 40;
const LONGEST_NUMBER = 18;
const ZEROS = [
  0x30, 0x660, 0x6f0, 0x7c0, 0x966, 0x9e6, 0xa66, 0xae6, 0xb66, 0xbe6, 0xc66, 0xce6, 0xd66, 0xe50, 0xed0, 0xf20, 0x1040, 0xff10,
];
const FRACTIONS: Readonly<Record<string, number>> = {
  "½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8, "⅕": 1 / 5, "⅖": 2 / 5,
};
const RAISED: Readonly<Record<string, string>> = { "²": "2", "³": "3" };
/** Letters that carry a raised 2 or 3: m², ft³. */
const RAISABLE = new Set(["m", "cm", "mm", "ft", "in", "yd", "dm"]);
const NARROW_SPACES = new Set(["\u00a0", "\u2009", "\u202f", "\u2007"]);
const APOSTROPHES = new Set(["'", "’", "‘", "ʼ", "`", "´"]);
const SIGN_LOOKALIKES: Readonly<Record<string, string>> = {
  "−": "-", "‒": "-", "‐": "-", "‑": "-", "﹣": "-", "－": "-", "—": "–", "×": "x", "✕": "x", "＋": "+", "％": "%", "٪": "%", "˚": "°",
    "º": "°",
  "“": '"', "”": '"', "″": '"', "’": "'", "‘": "'", "′": "'", "⁄": "/", "∕": "/", "：": ":", "，": ",", "．": ".", "≈": "~", "～": "~",
    "…": "…",
};
const LETTERS_WITHOUT_DECOMPOSITION: Readonly<Record<string, string>> = {
  ß: "ss", ø: "o", æ: "ae", œ: "oe", ł: "l", đ: "d", ð: "d", þ: "th", ı: "i",
};

const INVISIBLE = /[\p{Cf}\p{M}]/u;
const LETTER = /\p{L}/u;
const SPACE = /\s/u;
const MARKS = /\p{M}/gu;

const isInvisible = (char: string): boolean => char > "~" && INVISIBLE.test(char);
const isSpace = (char: string): boolean => char === " " || char === "\n" || char === "\t"
  || (char !== "" && (char < " " || char > "~") && SPACE.test(char));
const isLetter = (char: string): boolean => (char >= "a" && char <= "z") || (char >= "A" && char <= "Z")
  || (char > "~" && !(char in RAISED) && LETTER.test(char));

function digitOf(char: string): number {
  const code = char.codePointAt(0) ?? 0;
  if (code >= 0x30 && code <= 0x39) return code - 0x30;
  if (code < 0x660) return -1;
  if (code >= 0x1d7ce && code <= 0x1d7ff) return (code - 0x1d7ce) % 10;
  for (const zero of ZEROS) if (code >= zero && code < zero + 10) return code - zero;
  return -1;
}

/** One letter in lower case without accents; "º" and the like excepted, these are signs. */
function foldLetter(char: string): string {
  if (char >= "a" && char <= "z") return char;
  if (char < "\u0080") return char.toLowerCase();
  const low = char.toLowerCase();
  const bare = LETTERS_WITHOUT_DECOMPOSITION[low];
  // й and ё stay themselves in Russian words: folding keeps the base letter there too, and word lists are folded the same way
  return bare ?? low.normalize("NFKD").replace(MARKS, "").toLowerCase();
}

/** A word folded as `scan` folds it. */
export function fold(word: string): string {
  let out = "";
  for (const char of word) if (!isInvisible(char) && !APOSTROPHES.has(char)) out += foldLetter(char);
  return out;
}

/** The characters a reader sees, and where each stands. */
function visible(text: string): { readonly chars: readonly string[]; readonly places: readonly number[] } {
  const chars: string[] = [];
  const places: number[] = [];
  let at = 0;
  for (const char of text) {
    if (!isInvisible(char)) {
      chars.push(char);
      places.push(at);
    }
    at += char.length;
  }
  return { chars, places };
}

let latest: { readonly text: string; readonly tokens: readonly Token[] } = { text: "", tokens: [] };

/**
 * All words, numbers and signs of a text in order. Never throws; time grows with the length of the text alone. Every reader of a message
 * begins here, so the text read last is kept.
 */
export function scan(text: string): readonly Token[] {
  if (text !== latest.text) latest = { text, tokens: tokensOf(text) };
  return latest.tokens;
}

function tokensOf(text: string): Token[] {
  const { chars, places } = visible(text);
  const tokens: Token[] = [];
  const at = (i: number): number => places[i] ?? text.length;
  const char = (i: number): string => chars[i] ?? "";
  let i = 0;
  let gap = true;
  while (i < chars.length) {
    const c = char(i);
    if (isSpace(c)) {
      gap = true;
      i += 1;
      continue;
    }
    const start = i;
    const leadingPoint = (c === "." || c === ",") && digitOf(char(i + 1)) >= 0
      && (gap || (tokens.at(-1)?.kind === "sign" && !isSign(tokens.at(-1), c)));
    if (digitOf(c) >= 0 || c in FRACTIONS || leadingPoint) {
      const read = readNumber(char, i, listMark(tokens, gap));
      i = read.next;
      tokens.push({ kind: "number", value: read.value, decimals: read.decimals, ...(read.alt === undefined ? {} : { alt: read.alt }),
        at: [at(start), at(i - 1) + char(i - 1).length], gap });
    } else if (isLetter(c) && !(c in SIGN_LOOKALIKES)) {
      const read = readLetters(char, i);
      i = read.next;
      const capital = c !== c.toLowerCase();
      tokens.push({ kind: "word", word: read.word, ...(capital ? { capital: true as const } : {}),
        at: [at(start), at(i - 1) + char(i - 1).length], gap });
    } else {
      i += 1;
      tokens.push({ kind: "sign", sign: SIGN_LOOKALIKES[c] ?? c, at: [at(start), at(start) + c.length], gap });
    }
    gap = false;
  }
  return joinFractions(tokens);
}

function readLetters(char: (i: number) => string, from: number): { word: string; next: number } {
  let word = "";
  let i = from;
  for (;;) {
    const c = char(i);
    if (isLetter(c)) {
      if (word.length < LONGEST_WORD) word += foldLetter(c);
    } else if (!(APOSTROPHES.has(c) && isLetter(char(i + 1)))) break;
    i += 1;
  }
  // "constructor" would be found in every table of words
  if (word in Object.prototype) word += "-";
  if (RAISABLE.has(word)) {
    const raised = char(i) === "^" ? i + 1 : i;
    const power = RAISED[char(raised)] ?? char(raised);
    if ((power === "2" || power === "3") && digitOf(char(raised + 1)) < 0) return { word: word + power, next: raised + 1 };
  }
  return { word, next: i };
}

interface ReadNumber {
  readonly value: number;
  readonly decimals: number;
  readonly alt?: number;
  readonly next: number;
}

/** The mark that joins this number to the one before, as in "18,22,24" and "3.10.2026": there it is no decimal mark. */
function listMark(tokens: readonly Token[], gap: boolean): string {
  const mark = tokens.at(-1);
  const before = tokens.at(-2);
  return !gap && mark?.kind === "sign" && !mark.gap && (mark.sign === "." || mark.sign === ",") && before?.kind === "number" ? mark.sign
    : "";
}

function readNumber(char: (i: number) => string, from: number, list: string): ReadNumber {
  let i = from;
  const digits = (): string => {
    let run = "";
    for (let d = digitOf(char(i)); d >= 0; d = digitOf(char(i))) {
      if (run.length < LONGEST_NUMBER) run += d;
      i += 1;
    }
    return run;
  };
  const runLength = (start: number): number => {
    let n = 0;
    while (n < 5 && digitOf(char(start + n)) >= 0) n += 1;
    return n;
  };
  let whole = digits();
  const first = char(i);
  let groups = 0;
  if (whole.length >= 1 && whole.length <= 3 && whole[0] !== "0" && first !== list
    && (first === "," || first === "." || APOSTROPHES.has(first) || NARROW_SPACES.has(first))) {
    while (char(i) === first && runLength(i + 1) === 3) {
      i += 1;
      whole += digits();
      groups += 1;
      if (whole.length > LONGEST_NUMBER) break;
    }
  }
  const mark = char(i);
  if (groups === 1 && first === "." && !(mark === "," && runLength(i + 1) > 0)) {
    return { value: Number(whole) / 1000, decimals: 3, alt: Number(whole), next: i };
  }
  if ((mark === "." || mark === ",") && mark !== list && (groups === 0 || mark !== first)) {
    const after = runLength(i + 1);
    const end = endOfRun(char, i + 1);
    const then = char(end);
    // "18,22,24" and "3.10.2026" are several numbers, "4,1.5" are two
    const several = after > 0 && digitOf(char(end + 1)) >= 0 && (then === mark || (mark === "," && then === ".")) && groups === 0;
    if (after > 0 && !several) {
      i += 1;
      const part = digits();
      return { value: Number(`${whole || "0"}.${part}`), decimals: part.length, next: i };
    }
  }
  let value = Number(whole || "0");
  const fraction = FRACTIONS[char(i)];
  if (fraction !== undefined) {
    value += fraction;
    i += 1;
  }
  return { value, decimals: fraction === undefined ? 0 : 2, next: Math.max(i, from + 1) };
}

/** Ends looking after so many digits: a longer run is no decimal part anybody writes. */
function endOfRun(char: (i: number) => string, from: number): number {
  let i = from;
  while (i < from + LONGEST_NUMBER && digitOf(char(i)) >= 0) i += 1;
  return i;
}

export const isSign = (token: Token | undefined, sign: string): boolean => token?.kind === "sign" && token.sign === sign;
export const isWord = (token: Token | undefined, ...words: readonly string[]): boolean => token?.kind === "word"
  && words.includes(token.word);
export const wordAt = (token: Token | undefined): string => (token?.kind === "word" ? token.word : "");
