/**
 * What the net looks up for a word, as rows of its table: the word and its stem, its groups of four letters, its senses, what turns its
 * sentence, and whether it opens or closes a sentence or clause.
 */

import { mixed, type Numbered } from "./features.ts";

export const WORD_ROWS = 2 ** 17;
const LETTER_ROWS = 2 ** 14;
const MARK_ROWS = 2 ** 12;
export const ROWS = WORD_ROWS + LETTER_ROWS + MARK_ROWS;

const LETTERS = 4;
const LONGEST_SPELT = 20;
const WORTH_OF_TURNING = 0.5;
const SALT = { word: 1, letters: 7, sense: 8, turning: 14, stem: 16, place: 21 } as const;
const PLACE = { opens: 1, closes: 2, asks: 3, clause: 4 } as const;

/** A row is added to what a word is, so many times. */
export type Take = (row: number, times: number) => void;

export function rowOfWord(hash: number): number {
  return mixed(hash, SALT.word) % WORD_ROWS;
}

function rowOfMark(number: number, salt: number): number {
  return WORD_ROWS + LETTER_ROWS + mixed(number, salt) % MARK_ROWS;
}

/** The rows a word has wherever it stands. */
export function takeWord({ words, stems, sensed }: Numbered, at: number, take: Take): void {
  take(rowOfWord(words[at] ?? 0), 1);
  take(mixed(stems[at] ?? 0, SALT.stem) % WORD_ROWS, 1);
  const word = sensed.tokens[at]?.word.slice(0, LONGEST_SPELT) ?? "";
  if (word.length < LETTERS) return;
  const times = 1 / Math.sqrt(word.length - 1);
  for (let start = -1; start + LETTERS <= word.length + 1; start += 1) {
    let h = SALT.letters as number;
    for (let i = start; i < start + LETTERS; i += 1) {
      const code = i < 0 ? 94 : i >= word.length ? 36 : word.charCodeAt(i);
      h = Math.imul(h ^ code, 16_777_619) ^ (h >>> 15);
    }
    take(WORD_ROWS + mixed(h >>> 0, SALT.letters) % LETTER_ROWS, times);
  }
}

export function takeSenses({ senses }: Numbered, at: number, take: Take): void {
  for (const sense of senses[at] ?? []) take(rowOfMark(sense, SALT.sense), 1);
}

/** The rows every word of a sentence has. */
export function takeSentence({ turnings }: Numbered, sentence: number, take: Take): void {
  for (const turning of turnings[sentence] ?? []) take(rowOfMark(turning, SALT.turning), WORTH_OF_TURNING);
}

/** The rows it has from its place in a sentence. */
export function takePlace({ sensed: { tokens, asks } }: Numbered, at: number, take: Take): void {
  const token = tokens[at];
  if (!token) return;
  const [before, after] = [tokens[at - 1], tokens[at + 1]];
  if (before?.sentence !== token.sentence) take(rowOfMark(PLACE.opens, SALT.place), 1);
  else if (before.clause !== token.clause) take(rowOfMark(PLACE.clause, SALT.place), 1);
  if (after?.sentence !== token.sentence) take(rowOfMark(asks[token.sentence] ? PLACE.asks : PLACE.closes, SALT.place), 1);
}
