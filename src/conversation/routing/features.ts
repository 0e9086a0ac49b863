import type { Lexicon } from "./lexicon.ts";
import { normalise } from "./normalise.ts";
import { stem } from "./stem.ts";
import { type QuantityKind, tokenise } from "./tokens.ts";

/** Hash buckets of the sparse features: words, pairs and senses below, letter groups above. */
export const WORD_BUCKETS = 1 << 14;
export const LETTER_BUCKETS = 1 << 13;
export const BUCKETS = WORD_BUCKETS + LETTER_BUCKETS;

/** A word that has a vector is its row; a quantity of kind k is -1 - k. */
export const QUANTITY_KINDS: readonly QuantityKind[] = [
  "mass", "share", "temperature", "below-zero", "clock", "volume", "length", "small-length", "area", "power", "energy", "pressure",
  "duration", "money", "ppm", "number",
];

/** Words beyond this many are not read; a question has been asked by then. */
const READ_WORDS = 120;

export interface Reading {
  readonly indices: Int32Array;
  readonly values: Float32Array;
  /** Vector rows and quantities in order. */
  readonly sequence: Int32Array;
  readonly wordCount: number;
  /** Words neither English nor of the trade, as a share of all words: high for other languages and noise. */
  readonly strangeShare: number;
}

const GROUP_WEIGHTS = { word: 1, pair: 0.7, sense: 1, sensePair: 0.7, quantity: 0.5, shape: 0.35, letters: 0.9 };

const FNV_START = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

function hash(text: string, seed: number): number {
  let h = FNV_START ^ seed;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), FNV_PRIME);
  h ^= h >>> 15;
  return h >>> 0;
}

/** Everything the classifier sees of a message. Linear in the text up to the caps of normalise() and READ_WORDS. */
export function read(text: string, lexicon: Lexicon): Reading {
  const tokens = tokenise(normalise(text));
  const stems: string[] = [];
  const raw: string[] = [];
  const sequence: number[] = [];
  const quantities = new Set<QuantityKind>();
  let question = 0;
  let emoji = 0;
  let strange = 0;
  for (const token of tokens) {
    if (stems.length >= READ_WORDS) break;
    if (token.kind === "word") {
      const word = lexicon.mend(token.text);
      const row = lexicon.vectorRow(word);
      if (row >= 0) sequence.push(row);
      else if (word.length > 3) strange++;
      raw.push(token.text);
      stems.push(stem(word));
    } else if (token.kind === "quantity") {
      quantities.add(token.of);
      sequence.push(-1 - QUANTITY_KINDS.indexOf(token.of));
      stems.push(`#${token.of}`);
      raw.push("");
    } else if (token.text === "?") question++;
    else if (token.text === "emoji") emoji++;
  }

  const words: number[] = [];
  const pairs: number[] = [];
  const found: number[] = [];
  for (let i = 0; i < stems.length; i++) {
    const here = stems[i] as string;
    words.push(hash(here, 1));
    if (i + 1 < stems.length) pairs.push(hash(`${here} ${stems[i + 1]}`, 2));
    if (i + 2 < stems.length) pairs.push(hash(`${here} ${stems[i + 2]}`, 3));
    lexicon.sensesAt(stems, i, found);
  }
  const senses = [...new Set(found)].sort((a, b) => a - b);
  const senseHashes = senses.map((sense) => hash(lexicon.senseNames[sense] as string, 4));
  const sensePairs: number[] = [];
  for (let i = 0; i < senses.length && i < 14; i++) {
    for (let j = i + 1; j < senses.length && j < 14; j++) {
      sensePairs.push(hash(`${lexicon.senseNames[senses[i] as number]}+${lexicon.senseNames[senses[j] as number]}`, 5));
    }
  }
  const quantityHashes = [...quantities].map((kind) => hash(kind, 6));
  const shape = [
    hash(`length ${Math.min(6, Math.ceil(Math.log2(stems.length + 1)))}`, 7),
    hash(`question ${question > 0 ? 1 : 0}`, 7),
    hash(`first ${stems[0] ?? ""}`, 7),
    hash(`first two ${stems[0] ?? ""} ${stems[1] ?? ""}`, 7),
    hash(`last ${stems[stems.length - 1] ?? ""}`, 7),
  ];
  shape.push(hash(`senses ${Math.min(4, senses.length)}`, 7), hash(`strange ${Math.round((4 * strange) / (stems.length || 1))}`, 7));
  if (emoji > 0) shape.push(hash("emoji", 7));
  if (stems.length === 0) shape.push(hash("empty", 7));

  const letters = new Set<number>();
  for (const word of raw) letterGroups(word, letters);

  const total = words.length + pairs.length + senseHashes.length + sensePairs.length + quantityHashes.length + shape.length + letters.size;
  const indices = new Int32Array(total);
  const values = new Float32Array(total);
  let at = 0;
  const put = (hashes: readonly number[], weight: number): void => {
    const value = weight / Math.sqrt(hashes.length || 1);
    for (const h of hashes) {
      indices[at] = h % WORD_BUCKETS;
      values[at++] = value;
    }
  };
  put(words, GROUP_WEIGHTS.word);
  put(pairs, GROUP_WEIGHTS.pair);
  put(senseHashes, GROUP_WEIGHTS.sense);
  put(sensePairs, GROUP_WEIGHTS.sensePair);
  put(quantityHashes, GROUP_WEIGHTS.quantity);
  put(shape, GROUP_WEIGHTS.shape);
  const letterValue = GROUP_WEIGHTS.letters / Math.sqrt(letters.size || 1);
  for (const bucket of letters) {
    indices[at] = WORD_BUCKETS + bucket;
    values[at++] = letterValue;
  }
  return { indices, values, sequence: Int32Array.from(sequence), wordCount: stems.length, strangeShare: strange / (stems.length || 1) };
}

/** Groups of 3 to 5 letters of `<word>`, hashed as they are scanned. */
function letterGroups(word: string, into: Set<number>): void {
  const end = word.length + 2;
  const code = (i: number): number => (i === 0 ? 60 : i === end - 1 ? 62 : word.charCodeAt(i - 1));
  for (let from = 0; from + 3 <= end; from++) {
    let h = FNV_START;
    for (let i = 0; i < 5 && from + i < end; i++) {
      h = Math.imul(h ^ code(from + i), FNV_PRIME);
      if (i >= 2) into.add(((h ^ (h >>> 15)) >>> 0) % LETTER_BUCKETS);
    }
  }
}
