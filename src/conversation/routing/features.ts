import { hashText, mix } from "./hash.ts";
import type { Lexicon } from "./lexicon.ts";
import { normalise } from "./normalise.ts";
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
export const READ_WORDS = 120;
const PAIRED_SENSES = 14;

export interface Reading {
  readonly indices: Int32Array;
  readonly values: Float32Array;
  /** Vector rows and quantities in order. */
  readonly sequence: Int32Array;
  readonly wordCount: number;
}

const GROUP_WEIGHTS = { word: 1, pair: 0.7, sense: 1, sensePair: 0.7, quantity: 0.5, shape: 0.35, letters: 0.9 };

const SEEDS = { word: 1, pair: 2, gap: 3, sense: 4, sensePair: 5, quantity: 6, shape: 7 };

/** Everything the classifier sees of a message. Linear in the text up to the caps of normalise() and READ_WORDS. */
export function read(text: string, lexicon: Lexicon): Reading {
  const stems: string[] = [];
  const hashes: number[] = [];
  const sequence: number[] = [];
  const letters = new Set<number>();
  const quantities = new Set<QuantityKind>();
  let question = false;
  let emoji = false;
  let strange = 0;
  for (const token of tokenise(normalise(text))) {
    if (stems.length >= READ_WORDS) break;
    if (token.kind === "word") {
      const entry = lexicon.entry(token.text);
      if (entry.row >= 0) sequence.push(entry.row);
      else if (entry.word.length > 3) strange++;
      stems.push(entry.stem);
      hashes.push(entry.hash);
      for (const bucket of entry.letters) letters.add(bucket % LETTER_BUCKETS);
    } else if (token.kind === "quantity") {
      quantities.add(token.of);
      sequence.push(-1 - QUANTITY_KINDS.indexOf(token.of));
      const stand = `#${token.of}`;
      stems.push(stand);
      hashes.push(hashText(stand));
    } else if (token.text === "?") question = true;
    else if (token.text === "emoji") emoji = true;
  }

  const count = stems.length;
  const words = hashes.map((here) => mix(here, SEEDS.word));
  const pairs: number[] = [];
  const found: number[] = [];
  for (let i = 0; i < count; i++) {
    const here = hashes[i] as number;
    if (i + 1 < count) pairs.push(mix(mix(here, SEEDS.pair), hashes[i + 1] as number));
    if (i + 2 < count) pairs.push(mix(mix(here, SEEDS.gap), hashes[i + 2] as number));
    lexicon.sensesAt(stems, i, found);
  }
  const senses = [...new Set(found)].sort((a, b) => a - b);
  const sensePairs: number[] = [];
  const paired = Math.min(senses.length, PAIRED_SENSES);
  for (let i = 0; i < paired; i++) {
    const one = mix(lexicon.senseHashes[senses[i] as number] as number, SEEDS.sensePair);
    for (let j = i + 1; j < paired; j++) sensePairs.push(mix(one, lexicon.senseHashes[senses[j] as number] as number));
  }
  const first = hashes[0] ?? 0;
  const shape = [
    mix(SEEDS.shape, 10 + Math.min(6, Math.ceil(Math.log2(count + 1)))),
    mix(SEEDS.shape, question ? 21 : 20),
    mix(SEEDS.shape, 30 + Math.min(4, senses.length)),
    mix(SEEDS.shape, 40 + Math.round((4 * strange) / (count || 1))),
    mix(mix(SEEDS.shape, 50), first),
    mix(mix(mix(SEEDS.shape, 51), first), hashes[1] ?? 0),
    mix(mix(SEEDS.shape, 52), hashes[count - 1] ?? 0),
  ];
  if (emoji) shape.push(mix(SEEDS.shape, 60));
  const senseFeatures = senses.map((sense) => mix(lexicon.senseHashes[sense] as number, SEEDS.sense));
  const quantityFeatures = Array.from(quantities, (kind) => mix(hashText(kind), SEEDS.quantity));

  const total = words.length + pairs.length + senses.length + sensePairs.length + quantities.size + shape.length + letters.size;
  const indices = new Int32Array(total);
  const values = new Float32Array(total);
  let at = 0;
  const put = (features: readonly number[], weight: number): void => {
    const value = weight / Math.sqrt(features.length || 1);
    for (const feature of features) {
      indices[at] = feature % WORD_BUCKETS;
      values[at++] = value;
    }
  };
  put(words, GROUP_WEIGHTS.word);
  put(pairs, GROUP_WEIGHTS.pair);
  put(senseFeatures, GROUP_WEIGHTS.sense);
  put(sensePairs, GROUP_WEIGHTS.sensePair);
  put(quantityFeatures, GROUP_WEIGHTS.quantity);
  put(shape, GROUP_WEIGHTS.shape);
  const letterValue = GROUP_WEIGHTS.letters / Math.sqrt(letters.size || 1);
  for (const bucket of letters) {
    indices[at] = WORD_BUCKETS + bucket;
    values[at++] = letterValue;
  }
  return { indices, values, sequence: Int32Array.from(sequence), wordCount: count };
}
