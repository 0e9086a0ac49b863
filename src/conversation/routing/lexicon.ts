import { hashText, letterGroups } from "./hash.ts";
import { stem } from "./stem.ts";

/** What the reader of a message knows about words; built from `knowledge/words.yaml`, the training messages and the word vectors. */
export interface LexiconData {
  /** sense id -> words and phrases, as written in knowledge/words.yaml */
  readonly senses: Readonly<Record<string, readonly string[]>>;
  readonly spellings: Readonly<Record<string, string>>;
  /** Words spelling repair may repair to. */
  readonly vocabulary: readonly string[];
}

interface PhraseNode {
  senses?: number[];
  next?: Map<string, PhraseNode>;
}

/** What is known of one word as written. */
export interface Entry {
  /** The word meant: shorthand spelt out, a slip mended towards the vocabulary, otherwise the word itself. */
  readonly word: string;
  readonly stem: string;
  readonly hash: number;
  /** Row of its vector, or -1. */
  readonly row: number;
  /** Hashes of the letter groups of the word as written. */
  readonly letters: Int32Array;
}

export interface Lexicon {
  /** One for each sense, in the order of its number. */
  readonly senseHashes: readonly number[];
  /** Senses that begin at a position of the stemmed words, pushed onto `found`. */
  sensesAt(stems: readonly string[], from: number, found: number[]): void;
  entry(written: string): Entry;
}

const MEND_FROM_LENGTH = 4;
/** Words remembered between messages, so that the commonest are worked out once. */
const REMEMBERED_WORDS = 6000;

/** @param mends to which words a slip is repaired: to all, or to those without a vector, which English lacks, so that "rohr" is no slip of "roar" */
export function buildLexicon(data: LexiconData, vectorWords: readonly string[], mends: "all" | "not-english" = "all"): Lexicon {
  const senseNames = Object.keys(data.senses);
  const root = new Map<string, PhraseNode>();
  const plain = (phrase: string): string[] => phrase.toLowerCase().replaceAll("'", "").split(/[\s-]/).filter(Boolean);
  const known = new Set<string>();
  senseNames.forEach((name, sense) => {
    for (const phrase of data.senses[name] ?? []) {
      let level = root;
      let node: PhraseNode | undefined;
      for (const word of plain(phrase)) {
        known.add(word);
        const key = stem(word);
        node = level.get(key);
        if (node === undefined) level.set(key, (node = {}));
        level = node.next ??= new Map();
      }
      if (node !== undefined && !node.senses?.includes(sense)) (node.senses ??= []).push(sense);
    }
  });
  const rows = new Map(vectorWords.map((word, row) => [word, row]));
  for (const word of data.vocabulary) known.add(word);
  const spellings = new Map(Object.entries(data.spellings));
  const targets = [...new Set([...data.vocabulary, ...known])].filter((word) => word.length >= MEND_FROM_LENGTH && (mends === "all" || !rows.has(word)));
  const targeted = new Set(targets);
  let deletions: Map<string, string> | undefined;
  const remembered = new Map<string, Entry>();

  /** One edit away (or two that shorten both words by one letter); nothing is guessed for a word English knows. */
  function repair(word: string): string {
    deletions ??= deletionIndex(targets);
    const near = deletions.get(word);
    if (near !== undefined) return near;
    for (let i = 0; i < word.length; i++) {
      const shorter = word.slice(0, i) + word.slice(i + 1);
      if (targeted.has(shorter)) return shorter;
      const candidate = deletions.get(shorter);
      if (candidate !== undefined && Math.abs(candidate.length - word.length) <= 1) return candidate;
    }
    return word;
  }

  function mend(word: string): string {
    const spelt = spellings.get(word);
    if (spelt !== undefined) return spelt;
    return word.length < MEND_FROM_LENGTH || known.has(word) || rows.has(word) ? word : repair(word);
  }

  return {
    senseHashes: senseNames.map(hashText),
    sensesAt(stems, from, found) {
      let level: Map<string, PhraseNode> | undefined = root;
      for (let i = from; i < stems.length && level !== undefined; i++) {
        const node: PhraseNode | undefined = level.get(stems[i] as string);
        if (node === undefined) return;
        if (node.senses !== undefined) for (const sense of node.senses) found.push(sense);
        level = node.next;
      }
    },
    entry(written) {
      const known = remembered.get(written);
      if (known !== undefined) return known;
      const word = mend(written);
      const root = stem(word);
      const entry = { word, stem: root, hash: hashText(root), row: rows.get(word) ?? -1, letters: letterGroups(written) };
      if (remembered.size >= REMEMBERED_WORDS) remembered.clear();
      remembered.set(written, entry);
      return entry;
    },
  };
}

/** Every word with one letter left out, and what it came from; the earlier (commoner) word wins. */
function deletionIndex(words: readonly string[]): Map<string, string> {
  const index = new Map<string, string>();
  for (const word of words) {
    for (let i = 0; i < word.length; i++) {
      const shorter = word.slice(0, i) + word.slice(i + 1);
      if (shorter.length >= MEND_FROM_LENGTH - 1 && !index.has(shorter)) index.set(shorter, word);
    }
  }
  return index;
}
