import { hashText, mix } from "./hash.ts";
import type { Lexicon } from "./lexicon.ts";
import { normalise } from "./normalise.ts";
import { type QuantityKind, tokenise } from "./tokens.ts";

/** Hash buckets of the sparse features: words, pairs, senses and shape below, letter groups above. */
const WORD_BUCKETS = 1 << 17;
const LETTER_BUCKETS = 1 << 17;
export const BUCKETS = WORD_BUCKETS + LETTER_BUCKETS;

/** A word that has a vector is its row; a quantity of kind k is -1 - k. */
export const QUANTITY_KINDS: readonly QuantityKind[] = [
  "mass", "share", "temperature", "below-zero", "clock", "volume", "length", "small-length", "area", "power", "energy", "pressure",
  "duration", "money", "ppm", "number",
];

/** Words beyond this many are not read; a question has been asked by then. */
export const READ_WORDS = 120;
const PAIRED_SENSES = 14;

/** Kinds of feature. Each weighs the same in every message however many features of the kind it has. */
export const GROUP_WEIGHTS = { words: 1, senses: 0.8, shape: 0.35, letters: 1 } as const;

export interface Reading {
  /** Buckets of the words and pairs, then the senses and quantities, then the shape, then the letter groups. May repeat. */
  readonly features: Int32Array;
  /** Where each kind ends in `features`, in the order of GROUP_WEIGHTS. */
  readonly ends: readonly number[];
  /** Vector rows and quantities in order. */
  readonly sequence: Int32Array;
  readonly wordCount: number;
}

const SEEDS = { word: 1, pair: 2, gap: 3, sense: 4, sensePair: 5, quantity: 6, shape: 7 };

/** The bucket of a word by itself. */
export const wordBucket = (hash: number): number => mix(hash, SEEDS.word) % WORD_BUCKETS;

/** Everything the classifier sees of a message. Linear in the text up to the caps of normalise() and READ_WORDS. */
export function read(text: string, lexicon: Lexicon): Reading {
  const stems: string[] = [];
  const hashes: number[] = [];
  const sequence: number[] = [];
  const letters: Int32Array[] = [];
  const quantities = new Set<QuantityKind>();
  let question = false;
  let emoji = false;
  let strange = 0;
  let letterCount = 0;
  for (const token of tokenise(normalise(text))) {
    if (stems.length >= READ_WORDS) break;
    if (token.kind === "word") {
      const entry = lexicon.entry(token.text);
      if (entry.row >= 0) sequence.push(entry.row);
      else if (entry.word.length > 3) strange++;
      stems.push(entry.stem);
      hashes.push(entry.hash);
      letters.push(entry.letters);
      letterCount += entry.letters.length;
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
  const words: number[] = [];
  const found: number[] = [];
  for (let i = 0; i < count; i++) {
    const here = hashes[i] as number;
    words.push(mix(here, SEEDS.word));
    if (i + 1 < count) words.push(mix(mix(here, SEEDS.pair), hashes[i + 1] as number));
    if (i + 2 < count) words.push(mix(mix(here, SEEDS.gap), hashes[i + 2] as number));
    lexicon.sensesAt(stems, i, found);
  }
  const senses = [...new Set(found)].sort((a, b) => a - b);
  const meant = senses.map((sense) => mix(lexicon.senseHashes[sense] as number, SEEDS.sense));
  const paired = Math.min(senses.length, PAIRED_SENSES);
  for (let i = 0; i < paired; i++) {
    const one = mix(lexicon.senseHashes[senses[i] as number] as number, SEEDS.sensePair);
    for (let j = i + 1; j < paired; j++) meant.push(mix(one, lexicon.senseHashes[senses[j] as number] as number));
  }
  for (const kind of quantities) meant.push(mix(hashText(kind), SEEDS.quantity));
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

  const features = new Int32Array(words.length + meant.length + shape.length + letterCount);
  const ends: number[] = [];
  let at = 0;
  for (const group of [words, meant, shape]) {
    for (const feature of group) features[at++] = feature % WORD_BUCKETS;
    ends.push(at);
  }
  for (const groups of letters) for (const group of groups) features[at++] = WORD_BUCKETS + (group % LETTER_BUCKETS);
  ends.push(at);
  return { features, ends, sequence: Int32Array.from(sequence), wordCount: count };
}
