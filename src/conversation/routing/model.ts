/**
 * The trained model as it is shipped: a linear model on hashed words, pairs, senses and letter groups, and a small net of
 * filters over word vectors. Both were trained by `npm run train` from tests/training and knowledge/words.yaml.
 */
import { readFileSync } from "node:fs";
import type { TopicId } from "../topics.ts";
import { buildLexicon, type Lexicon, type LexiconData } from "./lexicon.ts";
import { BUCKETS } from "./features.ts";
import { unpack } from "./pack.ts";

export const VECTORS_FILE = new URL("./model/vectors.gz", import.meta.url);
export const WEIGHTS_FILE = new URL("./model/weights.gz", import.meta.url);

/** Word vectors: one byte a dimension, VECTOR_SCALE to the unit. */
export const VECTOR_SCALE = 32;

export interface VectorsHeader { readonly source: string; readonly dimensions: number; readonly words: string }

export interface Calibration {
  /** Scores are divided by this before they become probabilities. */
  readonly temperature: number;
  /** Share of the linear model's log probability in the sum; the net has the rest. */
  readonly linearShare: number;
}

export interface WeightsHeader {
  readonly topics: readonly TopicId[];
  readonly lexicon: LexiconData;
  readonly filters: number;
  readonly nets: number;
  readonly calibration: Calibration;
}

/** One net, ready to run: [matrix][dimension][filter], then the layer that sums up. */
export interface RunningNet {
  readonly conv: Float32Array;
  readonly convBias: Float32Array;
  readonly out: Float32Array;
  readonly outBias: Float32Array;
}

export interface Model {
  readonly topics: readonly TopicId[];
  readonly lexicon: Lexicon;
  readonly calibration: Calibration;
  /** One step for each bucket. */
  readonly linearSteps: Float32Array;
  readonly linear: Int8Array;
  readonly nets: readonly RunningNet[];
  readonly filters: number;
  readonly dimensions: number;
  readonly vectors: Int8Array;
  readonly vectorRows: number;
}

export function loadModel(): Model {
  const vectors = unpack<VectorsHeader>(readFileSync(VECTORS_FILE));
  const weights = unpack<WeightsHeader>(readFileSync(WEIGHTS_FILE));
  const { topics, filters, lexicon, calibration } = weights.header;
  const { dimensions } = vectors.header;
  const words = vectors.header.words.split(" ");
  let at = 0;
  const bytes = (count: number): ArrayBuffer => {
    const from = weights.bytes.byteOffset + at;
    at += count;
    return weights.bytes.buffer.slice(from, from + count) as ArrayBuffer;
  };
  const floats = (count: number): Float32Array => new Float32Array(bytes(count * 4));
  const linearSteps = floats(BUCKETS);
  const linear = new Int8Array(bytes(BUCKETS * topics.length));
  const pooled = filters * 2 + dimensions;
  const nets = Array.from({ length: weights.header.nets }, () => ({
    conv: floats(3 * dimensions * filters),
    convBias: floats(2 * filters),
    out: floats(pooled * topics.length),
    outBias: floats(topics.length),
  }));
  return {
    topics, calibration, linearSteps, linear, nets, filters, dimensions,
    lexicon: buildLexicon(lexicon, words),
    vectors: new Int8Array(vectors.bytes),
    vectorRows: words.length,
  };
}
