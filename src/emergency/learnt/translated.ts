/**
 * English for the words of a message in another language, so that what was learnt from English messages tells there too. Word by word,
 * without grammar: good enough to see what a message speaks of, never shown to anybody.
 */

import { bare, isEnglish } from "../senses.ts";
import type { Token } from "../tokens.ts";
import { GERMANIC_AND_FINNIC_GLOSSARIES } from "../words/glossary-germanic-finnic.ts";
import { ROMANCE_GLOSSARIES } from "../words/glossary-romance.ts";
import { SLAVIC_GLOSSARIES } from "../words/glossary-slavic.ts";

/** "english: word word*; english: word". */
export type Glossary = string;

interface Dictionary {
  readonly words: ReadonlyMap<string, string>;
  readonly stems: ReadonlyMap<string, string>;
}

/** A longer word that begins with one of the glossary is taken for a form or a compound of it. */
const SHORTEST_BEGINNING = 4;
const SHORTEST_STEM = 3;
/** Enough to tell the language of a sentence. */
const WORDS_LOOKED_AT = 60;

function dictionaryOf(glossary: Glossary): Dictionary {
  const words = new Map<string, string>();
  const stems = new Map<string, string>();
  for (const entry of glossary.split(";")) {
    const [english = "", foreign = ""] = entry.split(":");
    for (const word of foreign.split(" ")) {
      const isStem = word.endsWith("*");
      const folded = bare(isStem ? word.slice(0, -1) : word.trim());
      if (folded === "") continue;
      const map = isStem ? stems : words;
      if (!map.has(folded)) map.set(folded, english.trim());
    }
  }
  return { words, stems };
}

const dictionaries = [...GERMANIC_AND_FINNIC_GLOSSARIES, ...ROMANCE_GLOSSARIES, ...SLAVIC_GLOSSARIES].map(dictionaryOf);

function translated(word: string, { words, stems }: Dictionary): string | null {
  const exact = words.get(word);
  if (exact !== undefined) return exact;
  for (let length = word.length; length >= SHORTEST_STEM; length -= 1) {
    const beginning = word.slice(0, length);
    const meant = stems.get(beginning) ?? (length >= SHORTEST_BEGINNING ? words.get(beginning) : undefined);
    if (meant !== undefined) return meant;
  }
  return null;
}

/** The dictionary of the language most of these words belong to; null when that is English, or none known here. */
function languageOf(written: readonly string[]): Dictionary | null {
  let most = written.filter(isEnglish).length;
  if (most === written.length) return null;
  let best: Dictionary | null = null;
  for (const dictionary of dictionaries) {
    const count = understood(written, dictionary);
    if (count <= most) continue;
    most = count;
    best = dictionary;
  }
  return best;
}

function understood(written: readonly string[], dictionary: Dictionary): number {
  return written.filter((word) => translated(word, dictionary) !== null).length;
}

/** For each word its English; null where there is none for it, or where the sentence is English or in no language known here. */
export function inEnglish(tokens: readonly Token[]): readonly (string | null)[] {
  const ofMessage = languageOf(tokens.slice(0, WORDS_LOOKED_AT).map((token) => token.written));
  const found: (string | null)[] = [];
  for (let from = 0; from < tokens.length;) {
    let to = from + 1;
    while (to < tokens.length && tokens[to]?.sentence === tokens[from]?.sentence) to += 1;
    const written = tokens.slice(from, to).map((token) => token.written);
    const looked = written.slice(0, WORDS_LOOKED_AT);
    const isForeign = ofMessage !== null && understood(looked, ofMessage) >= looked.filter(isEnglish).length;
    const language = isForeign ? ofMessage : languageOf(looked);
    for (const word of written) found.push(language && translated(word, language));
    from = to;
  }
  return found;
}
