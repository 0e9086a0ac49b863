/**
 * Words to senses: what is meant by a word, whichever word was used and however it was spelt.
 * The words themselves are data, in words/.
 */

import { sentenceEnds, readWords, type Token } from "./tokens.ts";
import { ENGLISH_COMPANY } from "./words/english-company.ts";
import { ENGLISH_EVENTS } from "./words/english-events.ts";
import { ENGLISH_PEOPLE } from "./words/english-people.ts";
import { ENGLISH_TOLD } from "./words/english-told.ts";
import { ENGLISH_WORDS } from "./words/english.ts";
import { ORDINARY_WORDS } from "./words/ordinary.ts";
import { GERMANIC_AND_FINNIC } from "./words/tongues-germanic-finnic.ts";
import { ROMANCE } from "./words/tongues-romance.ts";
import { SLAVIC } from "./words/tongues-slavic.ts";

/** Whitespace-separated words by sense. "vomit*" stands for every word that begins so. */
export type WordList = Readonly<Record<string, string>>;
/** One phrase a line by sense. "head is? aching/pounding": "?" may be missing, "/" is one or the other. */
export type PhraseList = Readonly<Record<string, string>>;

/** The danger words of one language. */
export interface Tongue {
  readonly words: WordList;
  readonly phrases: PhraseList;
}

type Senses = ReadonlySet<string>;

interface Slot {
  readonly choices: ReadonlySet<string>;
  readonly optional: boolean;
}

interface Phrase {
  readonly slots: readonly Slot[];
  readonly sense: string;
}

export interface Sensed {
  readonly tokens: readonly Token[];
  readonly asks: readonly boolean[];
  readonly shouts: boolean;
  /** Aligned to tokens. A phrase puts its senses on its first word; the words it covers have none of their own. */
  readonly senses: readonly Senses[];
}

/** Phrases that only add to what their words mean; every other phrase overrules its words. */
const ADDING: ReadonlySet<string> = new Set(
  ("four emerging fire_in sounds_like over behind beside bang on_opening "
    + "at_me caught damper_shut damper_shut_lit damper_open room fill too_hot ash now recent "
    + "stuck wrong_shut touched fell_on better_out asking habit litter windy").split(" "),
);
/** What makes a thing no danger is believed only when it is spelt right. */
const NOT_DANGER: ReadonlySet<string> = new Set(
  ("topical hypothetical history excuse excuse_plain admin neg past habit testing "
    + "other_device cooking metal safe_ash cold black norm tepid "
    + "calm_cause wood_name draught away smell link maybe silent next street call").split(" "),
);
const NONE: Senses = new Set();
const SHORTEST_STEM = 3;
const SHORTEST_REPAIRED = 5;
/** A longer one for other tongues, whose short words lie too near to English ones. */
const SHORTEST_REPAIRED_FOREIGN = 7;

const words = new Map<string, Set<string>>();
const stems = new Map<string, Set<string>>();
const phrasesByFirstWord = new Map<string, Phrase[]>();
/** Every word that must not be "repaired" into another. */
const ordinary: ReadonlySet<string> = new Set(ORDINARY_WORDS.split(/\s+/));
const known = new Set(ordinary);
const repairable = new Set<string>();
/** A word with one letter taken out, to the danger words it may have come from. */
const oneLetterLess = new Map<string, string[]>();

function add(map: Map<string, Set<string>>, word: string, sense: string): void {
  const senses = map.get(word);
  if (senses) senses.add(sense);
  else map.set(word, new Set([sense]));
}

function learnWords(list: WordList): void {
  for (const [sense, text] of Object.entries(list)) {
    for (const entry of text.split(/\s+/)) {
      if (entry === "") continue;
      if (entry.endsWith("*")) add(stems, bare(entry.slice(0, -1)), sense);
      else add(words, bare(entry), sense);
    }
  }
}

function learnPhrases(list: PhraseList): void {
  for (const [sense, text] of Object.entries(list)) {
    for (const line of text.split("\n")) {
      const slots = line.split(" ").filter((slot) => slot !== "").map(slotOf);
      if (slots.length > 0) learnPhrase({ slots, sense });
    }
  }
}

function slotOf(text: string): Slot {
  const optional = text.endsWith("?");
  const choices = new Set((optional ? text.slice(0, -1) : text).split("/").map(bare));
  for (const word of choices) known.add(word);
  return { choices, optional };
}

function learnPhrase(phrase: Phrase): void {
  for (const slot of phrase.slots) {
    for (const word of slot.choices) {
      const there = phrasesByFirstWord.get(word);
      if (there) there.push(phrase);
      else phrasesByFirstWord.set(word, [phrase]);
    }
    if (!slot.optional) return;
  }
}

/** Where the phrase ends when it begins at a word, the longest way; -1 when it does not fit. Phrases are short, so is the search. */
function endOf(slots: readonly Slot[], slot: number, at: number, meant: readonly string[], stop: number): number {
  const here = slots[slot];
  if (!here) return at;
  const word = meant[at];
  const taken = at < stop && word !== undefined && here.choices.has(word) ? endOf(slots, slot + 1, at + 1, meant, stop) : -1;
  return here.optional ? Math.max(taken, endOf(slots, slot + 1, at, meant, stop)) : taken;
}

/** The longest phrase that begins at a word; several of that length add up. */
function phraseAt(at: number, meant: readonly string[], stop: number): { end: number; senses: Senses } | null {
  let end = at;
  let senses = new Set<string>();
  for (const phrase of phrasesByFirstWord.get(meant[at] ?? "") ?? []) {
    const ends = endOf(phrase.slots, 0, at, meant, stop);
    if (ends <= at || ends < end) continue;
    if (ends > end) senses = new Set();
    end = ends;
    senses.add(phrase.sense);
  }
  return end > at ? { end, senses } : null;
}

export function bare(word: string): string {
  return readWords(word).tokens.map((token) => token.word).join("");
}

function learnRepairs(english: ReadonlySet<string>): void {
  for (const [word, senses] of words) {
    known.add(word);
    for (const sense of ofStem(word) ?? []) senses.add(sense);
    if (word.length < (english.has(word) ? SHORTEST_REPAIRED : SHORTEST_REPAIRED_FOREIGN)) continue;
    if ([...senses].every((sense) => NOT_DANGER.has(sense))) continue;
    repairable.add(word);
    for (let i = 0; i < word.length; i += 1) {
      const shorter = word.slice(0, i) + word.slice(i + 1);
      const origins = oneLetterLess.get(shorter);
      if (origins) origins.push(word);
      else oneLetterLess.set(shorter, [word]);
    }
  }
}

learnWords(ENGLISH_WORDS);
for (const list of [ENGLISH_PEOPLE, ENGLISH_EVENTS, ENGLISH_COMPANY, ENGLISH_TOLD]) learnPhrases(list);
const englishWords = new Set(words.keys());
const english = new Set([...known, ...englishWords]);
for (const tongue of [...GERMANIC_AND_FINNIC, ...ROMANCE, ...SLAVIC]) {
  learnWords(tongue.words);
  learnPhrases(tongue.phrases);
}
learnRepairs(englishWords);

const LETTER_FOR: Readonly<Record<string, string>> = { "0": "o", "1": "i", "3": "e", "4": "a", "5": "s", "7": "t", "@": "a", $: "s" };

/** "h3adache", "@larm": the letters meant by the digits and signs. A number, or one with a unit of a letter, stays what it is. */
function lettersFor(word: string): string {
  if (word.split("").filter((char) => LETTER_FOR[char] === undefined).length < 2) return word;
  let out = "";
  for (const char of word) out += LETTER_FOR[char] ?? char;
  return out;
}

/** "smoooke", "helllp": no letter more than `most` times running. */
function withoutRuns(word: string, most: number): string {
  let out = "";
  let run = 0;
  for (let i = 0; i < word.length; i += 1) {
    run = word[i] === word[i - 1] ? run + 1 : 1;
    if (run <= most) out += word[i];
  }
  return out;
}

const INFLECTIONS = ["s", "es", "ed", "d", "ing", "er", "ly"];

/** A word of everyday English or of the senses here. */
export function isEnglish(word: string): boolean {
  return english.has(word) || INFLECTIONS.some((ending) => isInflected(word, ending));
}

/** What an English word means by itself. */
export function sensesOfWord(word: string): ReadonlySet<string> {
  return words.get(word) ?? NONE;
}

function isKnown(word: string): boolean {
  return known.has(word) || ofStem(word) !== null || INFLECTIONS.some((ending) => isInflected(word, ending));
}

/** "banked", "baking": an everyday word with an ending. */
function isInflected(word: string, ending: string): boolean {
  if (!word.endsWith(ending)) return false;
  const base = word.slice(0, -ending.length);
  return ordinary.has(base) || (ending === "ing" && ordinary.has(`${base}e`));
}

function ofStem(word: string): Senses | null {
  for (let length = word.length; length >= SHORTEST_STEM; length -= 1) {
    const senses = stems.get(word.slice(0, length));
    if (senses) return senses;
  }
  return null;
}

/** The known word this was meant to be; the word itself when there is none. */
function repaired(word: string): string {
  if (isKnown(word)) return word;
  const letters = lettersFor(word);
  const drawnOut = withoutRuns(letters, 2);
  for (const guess of [letters, drawnOut, drawnOut === letters ? letters : withoutRuns(letters, 1)]) {
    if (guess !== word && guess.length > 1 && isKnown(guess)) return guess;
  }
  return word.length >= SHORTEST_REPAIRED - 1 ? oneSlipAway(letters) ?? word : word;
}

/** A danger word that differs by one letter added, dropped, changed, or two neighbours swapped. */
function oneSlipAway(word: string): string | null {
  const dropped = oneLetterLess.get(word)?.find((origin) => word.length >= SHORTEST_REPAIRED || !origin.startsWith(word));
  if (dropped !== undefined) return dropped;
  if (word.length < SHORTEST_REPAIRED) return null;
  for (let i = 0; i < word.length; i += 1) {
    const shorter = word.slice(0, i) + word.slice(i + 1);
    if (shorter.length >= SHORTEST_REPAIRED && repairable.has(shorter)) return shorter;
    for (const origin of oneLetterLess.get(shorter) ?? []) {
      if (isOneSlip(word, origin)) return origin;
    }
  }
  return null;
}

function isOneSlip(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  let first = -1;
  let differences = 0;
  for (let i = 0; i < a.length; i += 1) {
    if (a[i] === b[i]) continue;
    differences += 1;
    if (first < 0) first = i;
  }
  return (differences === 1 && first > 0) || (differences === 2 && a[first] === b[first + 1] && a[first + 1] === b[first]);
}

function sensesOf(word: string): Senses {
  return words.get(word) ?? (ordinary.has(word) ? null : ofStem(word)) ?? NONE;
}

export function sense(text: string): Sensed {
  const { tokens, asks, shouts } = readWords(text);
  const repairs = new Map<string, string>();
  const meant = tokens.map(({ word }) => {
    const before = repairs.get(word);
    if (before !== undefined) return before;
    const mended = repaired(word);
    repairs.set(word, mended);
    return mended;
  });
  const senses: Senses[] = [];
  const stops = sentenceEnds(tokens);
  let at = 0;
  while (at < tokens.length) {
    const own = sensesOf(meant[at] ?? "");
    const phrase = phraseAt(at, meant, stops[at] ?? tokens.length);
    if (!phrase) {
      senses.push(own);
      at += 1;
    } else if ([...phrase.senses].every((each) => ADDING.has(each))) {
      senses.push(new Set([...phrase.senses, ...own]));
      at += 1;
    } else {
      senses.push(phrase.senses);
      for (at += 1; at < phrase.end; at += 1) senses.push(NONE);
    }
  }
  return { tokens: tokens.map((token, index) => ({ ...token, word: meant[index] ?? token.word })), asks, shouts, senses };
}
