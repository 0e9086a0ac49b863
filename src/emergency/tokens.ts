/**
 * Text to words, in one pass and in linear time: no regular expression ever sees more than one character of what a person wrote.
 * Undone on the way: case, accents, full-width and look-alike letters, zero-width and direction marks, apostrophes.
 */

export interface Token {
  /** Folded: lower case, bare letters and digits, at most LONGEST_WORD long. */
  readonly word: string;
  /** As folded, before any repair of spelling. */
  readonly written: string;
  readonly sentence: number;
  /** Stretch between commas, dashes and sentence ends; a negation does not reach past it. */
  readonly clause: number;
}

export interface Reading {
  readonly tokens: readonly Token[];
  /** For each sentence, whether it ends in a question mark. */
  readonly asks: readonly boolean[];
  /** Holds an exclamation mark. */
  readonly shouts: boolean;
}

const LONGEST_WORD = 32;
/** "CO. Alarm. Going. Off." is one sentence. */
const FEWEST_WORDS = 2;
const APOSTROPHE = "'";
const ENDINGS = new Set(["s", "m", "re", "ve", "ll", "d", ""]);
const LETTER = /[\p{L}\p{N}]/u;
const MARK = /[\p{M}\p{Cf}]/u;

const LETTERS_WITHOUT_DECOMPOSITION: Readonly<Record<string, string>> = {
  ß: "ss", ø: "o", æ: "ae", œ: "oe", ł: "l", đ: "d", ð: "d", þ: "th", ı: "i",
};
const CYRILLIC_LIKE_LATIN: Readonly<Record<string, string>> = {
  а: "a", в: "b", е: "e", к: "k", м: "m", н: "h", о: "o", р: "p", с: "c", т: "t", у: "y", х: "x", і: "i", ѕ: "s", ј: "j", ԁ: "d",
};
const GREEK_LIKE_LATIN: Readonly<Record<string, string>> = { α: "a", ο: "o", ρ: "p", ε: "e", ι: "i", ν: "v", τ: "t", κ: "k", υ: "u" };
const INSIDE_WORD = new Set(["'", "’", "‘", "`", "´", "ʼ"]);
const SENTENCE_END = new Set([".", "!", "?", "\n", "…", "。", "！", "？", "¿", "¡"]);
const CLAUSE_END = new Set([",", ";", ":", "–", "—", "(", ")", "\"", "|"]);
const ASKING = new Set(["?", "？"]);
/** Stand in for letters inside a word, as in "$moke". */
const SIGNS_AS_LETTERS = new Set(["@", "$"]);

export function readWords(text: string): Reading {
  const tokens: Token[] = [];
  const asks: boolean[] = [];
  let sentence = 0;
  let clause = 0;
  let word = "";
  let latin = false;
  let foreign = false;
  let wordsInSentence = 0;

  const endWord = (): void => {
    for (const part of partsOf(latin && foreign ? asLatin(word) : word)) {
      const written = part.slice(0, LONGEST_WORD);
      tokens.push({ word: written, written, sentence, clause });
      wordsInSentence += 1;
    }
    word = "";
    latin = false;
    foreign = false;
  };

  for (const char of text.toLowerCase().normalize("NFKD")) {
    const code = char.codePointAt(0) ?? 0;
    const plain = (code >= 97 && code <= 122) || (code >= 48 && code <= 57);
    if (plain || (code > 127 && LETTER.test(char))) {
      if (word.length < LONGEST_WORD) word += LETTERS_WITHOUT_DECOMPOSITION[char] ?? char;
      if (code >= 97 && code <= 122) latin = true;
      else if (code > 0x36f && code < 0x530) foreign = true;
    } else if (code > 127 && MARK.test(char)) {
      // invisible or an accent: belongs to the word it stands in
    } else if (SIGNS_AS_LETTERS.has(char)) {
      if (word.length < LONGEST_WORD) word += char;
    } else if (INSIDE_WORD.has(char)) {
      if (word !== "") word += APOSTROPHE;
    } else if (SENTENCE_END.has(char)) {
      endWord();
      clause += 1;
      if (wordsInSentence >= FEWEST_WORDS) {
        asks[sentence] = ASKING.has(char);
        sentence += 1;
        wordsInSentence = 0;
      } else if (wordsInSentence === 0 && ASKING.has(char) && sentence > 0) {
        asks[sentence - 1] = true;
      }
    } else {
      endWord();
      if (CLAUSE_END.has(char)) clause += 1;
    }
  }
  endWord();
  for (let i = 0; i <= sentence; i += 1) asks[i] ??= false;
  return { tokens, asks, shouts: text.includes("!") || text.includes("！") };
}

/** "we're" is "we", "don't" is "dont", "l'alarme" is two words. */
function partsOf(word: string): readonly string[] {
  if (word === "") return [];
  const at = word.indexOf(APOSTROPHE);
  if (at < 0) return [word];
  const stem = word.slice(0, at);
  const ending = withoutApostrophes(word.slice(at + 1));
  if (ENDINGS.has(ending)) return [stem];
  return ending.length <= 2 || stem === "o" ? [stem + ending] : [stem, ending];
}

function withoutApostrophes(word: string): string {
  let out = "";
  for (const char of word) if (char !== APOSTROPHE) out += char;
  return out;
}

function asLatin(word: string): string {
  let out = "";
  for (const char of word) out += CYRILLIC_LIKE_LATIN[char] ?? GREEK_LIKE_LATIN[char] ?? char;
  return out;
}

/** For each word, the place just after its sentence. */
export function sentenceEnds(tokens: readonly Token[]): number[] {
  const ends: number[] = [];
  let end = tokens.length;
  for (let at = tokens.length - 1; at >= 0; at -= 1) {
    if (tokens[at]?.sentence !== tokens[at + 1]?.sentence) end = at + 1;
    ends[at] = end;
  }
  return ends;
}
