/**
 * What the linear model looks at: words (in English, whatever the language, and as written) with and without their endings, words near
 * each other, groups of four letters, how large numbers are, senses and pairs of senses, how a sentence opens and whether it asks. Each is
 * hashed to a bucket with a weight; a stretch of text costs time in proportion to its length.
 */

import type { Scene } from "../scene.ts";
import { type Sensed, sensesOfWord } from "../senses.ts";
import { inEnglish } from "./translated.ts";

export const BUCKETS = 2 ** 20;
/** Buckets for telling the kinds apart, which needs words and senses only. */
export const KIND_BUCKETS = 4096;

const STEMS_APART = 4;
const SENSES_APART = 6;
const LETTERS = 4;

const SALT = {
  word: 1, opens: 2, opensPair: 3, ends: 4, beside: 5, letters: 7, sense: 8, senses: 9, asks: 10, shouts: 11, size: 12,
  denied: 13, told: 14, askedOf: 15, stem: 16, stemsBeside: 17, stemsNear: 18, foreign: 19, foreignBeside: 20,
} as const;
const SIZES = [3, 6, 14];
/** Senses that turn what a sentence speaks of into another time, a question or an everyday matter. */
const TURNING: ReadonlySet<string> = new Set(
  ("hypothetical topical history past habit testing asking maybe joke laugh excuse excuse_plain admin cooking other_device resolved slight "
    + "on_opening neg now recent").split(" "),
);

/** Buckets met in a stretch of text, each once. */
export interface Met {
  readonly buckets: Int32Array;
  count: number;
}

const senseNumbers = new Map<string, number>();
/** Which buckets this stretch has met; all zero between calls. */
const seen = new Uint8Array(BUCKETS);

export function mixed(a: number, b: number): number {
  let h = Math.imul(a ^ Math.imul(b, 0x9e3779b1), 0x85ebca6b);
  h ^= h >>> 13;
  h = Math.imul(h, 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

export function wordNumber(word: string): number {
  let h = 2_166_136_261;
  for (let i = 0; i < word.length; i += 1) h = Math.imul(h ^ word.charCodeAt(i), 16_777_619);
  return h >>> 0;
}

function senseNumber(sense: string): number {
  let number = senseNumbers.get(sense);
  if (number === undefined) senseNumbers.set(sense, (number = wordNumber(sense)));
  return number;
}

/** A reading ready for any number of stretches. */
export interface Numbered {
  readonly words: Uint32Array;
  /** Words without their endings. */
  readonly stems: Uint32Array;
  /** Words as written where they were translated; 0 where not. */
  readonly foreign: Uint32Array;
  readonly senses: readonly (readonly number[])[];
  /** For each sentence, what turns it. */
  readonly turnings: readonly (readonly number[])[];
  readonly sensed: Sensed;
}

export function numbered({ sensed, denied }: Scene): Numbered {
  const { tokens, asks } = sensed;
  const english = inEnglish(tokens);
  const turnings: number[][] = asks.map((asked) => (asked ? [SALT.askedOf] : []));
  const senses = sensed.senses.map((own, at) => {
    const word = english[at];
    const all = word ? new Set([...own, ...sensesOfWord(word)]) : own;
    if (all.size === 0) return NO_SENSES;
    const turning = turnings[tokens[at]?.sentence ?? 0];
    return [...all].map((sense) => {
      const number = senseNumber(sense);
      if (TURNING.has(sense) && turning && turning.length < MOST_TURNINGS && !turning.includes(number)) turning.push(number);
      return denied(at) ? mixed(number, SALT.denied) : number;
    });
  });
  const words = Uint32Array.from(tokens, (token, at) => wordNumber(english[at] ?? sizeOfNumber(token.word) ?? token.word));
  const stems = Uint32Array.from(tokens, (token, at) => wordNumber(stemOf(english[at] ?? sizeOfNumber(token.word) ?? token.word)));
  const foreign = Uint32Array.from(tokens, ({ word }, at) => ((english[at] ?? word) === word ? 0 : wordNumber(word)));
  return { words, stems, foreign, senses, turnings, sensed };
}

const STEM_ENDINGS = ["ing", "ed", "es", "s", "ly", "er"];
const SHORTEST_STEM = 3;

function stemOf(word: string): string {
  const ending = STEM_ENDINGS.find((each) => word.endsWith(each) && word.length - each.length >= SHORTEST_STEM);
  return ending ? word.slice(0, -ending.length) : word;
}

/** "#2": a number of two digits, whatever its unit; "#year" for 1987. Null for a word. */
function sizeOfNumber(word: string): string | null {
  let digits = 0;
  while (digits < word.length && word.charCodeAt(digits) >= 48 && word.charCodeAt(digits) <= 57) digits += 1;
  if (digits === 0) return null;
  const year = digits === 4 && word.length === 4 && (word.startsWith("19") || word.startsWith("20"));
  return year ? "#year" : `#${Math.min(digits, MOST_DIGITS)}${word[0] ?? ""}`;
}

/** More of them in a sentence say little new, and would cost time. */
const MOST_TURNINGS = 6;
const MOST_DIGITS = 4;
const NO_SENSES: readonly number[] = [];

/** The most buckets a stretch of so many words can meet: each meets its letters, neighbours and, in the worst case, many senses. */
function room(words: number): number {
  return words * 400 + 8;
}

let met: Met = { buckets: new Int32Array(room(64)), count: 0 };

/** Buckets of the words from `from` up to `to`; the result is overwritten by the next call. */
export function bucketsOf({ words, stems, foreign, senses, turnings, sensed }: Numbered, from: number, to: number): Met {
  const { tokens, asks, shouts } = sensed;
  if (met.buckets.length < room(to - from)) met = { buckets: new Int32Array(room(to - from)), count: 0 };
  const { buckets } = met;
  let count = 0;
  const meet = (hash: number): void => {
    const bucket = hash % BUCKETS;
    if (seen[bucket] === 1 || count >= buckets.length) return;
    seen[bucket] = 1;
    buckets[count] = bucket;
    count += 1;
  };

  let asked = false;
  for (let at = from; at < to; at += 1) {
    const token = tokens[at];
    if (!token) break;
    const { sentence } = token;
    const word = words[at] ?? 0;
    asked ||= asks[sentence] ?? false;
    meet(mixed(word, SALT.word));
    const stem = stems[at] ?? 0;
    meet(mixed(stem, SALT.stem));
    for (let apart = 1; apart <= STEMS_APART && at + apart < to && tokens[at + apart]?.sentence === sentence; apart += 1) {
      meet(mixed(mixed(stem, stems[at + apart] ?? 0), apart === 1 ? SALT.stemsBeside : SALT.stemsNear));
    }
    if (at === from || tokens[at - 1]?.sentence !== sentence) {
      meet(mixed(word, SALT.opens));
      if (at + 1 < to) meet(mixed(mixed(word, words[at + 1] ?? 0), SALT.opensPair));
    }
    if (at === to - 1) meet(mixed(word, SALT.ends));
    if (token.word.length > LETTERS) meetLetters(token.word, meet);
    if (at + 1 < to && tokens[at + 1]?.sentence === sentence) meet(mixed(mixed(word, words[at + 1] ?? 0), SALT.beside));
    const written = foreign[at] ?? 0;
    if (written !== 0) {
      meet(mixed(written, SALT.foreign));
      if (at + 1 < to && tokens[at + 1]?.sentence === sentence) {
        meet(mixed(mixed(written, foreign[at + 1] || (words[at + 1] ?? 0)), SALT.foreignBeside));
      }
    }
    for (const sense of senses[at] ?? NO_SENSES) {
      meet(mixed(sense, SALT.sense));
      for (const turning of turnings[sentence] ?? NO_SENSES) meet(mixed(mixed(sense, turning), SALT.told));
      for (let apart = 1; apart <= SENSES_APART && at + apart < to; apart += 1) {
        for (const other of senses[at + apart] ?? NO_SENSES) {
          meet(mixed(sense < other ? mixed(sense, other) : mixed(other, sense), SALT.senses));
        }
      }
    }
  }
  if (asked) meet(mixed(1, SALT.asks));
  if (shouts) meet(mixed(1, SALT.shouts));
  meet(mixed(SIZES.filter((size) => to - from >= size).length, SALT.size));
  for (let i = 0; i < count; i += 1) seen[buckets[i] ?? 0] = 0;
  met.count = count;
  return met;
}

function meetLetters(word: string, meet: (hash: number) => void): void {
  // "^" before and "$" behind the word, so that beginnings and ends tell
  for (let start = -1; start + LETTERS <= word.length + 1; start += 1) {
    let h: number = SALT.letters;
    for (let i = start; i < start + LETTERS; i += 1) {
      const code = i < 0 ? 94 : i >= word.length ? 36 : word.charCodeAt(i);
      h = Math.imul(h ^ code, 16_777_619) ^ (h >>> 15);
    }
    meet(mixed(h >>> 0, SALT.letters));
  }
}

/** Buckets that tell the kinds apart, of the words from `from` up to `to`; the same one may come twice. */
export function kindBucketsOf({ words, senses }: Numbered, from: number, to: number): number[] {
  const found = [mixed(0, SALT.size) % KIND_BUCKETS];
  for (let at = from; at < to; at += 1) {
    found.push(mixed(words[at] ?? 0, SALT.word) % KIND_BUCKETS);
    for (const sense of senses[at] ?? NO_SENSES) found.push(mixed(sense, SALT.sense) % KIND_BUCKETS);
  }
  return found;
}
