/**
 * The trained model as it is shipped: a linear model on words, pairs, senses and letter groups, and two small nets of filters
 * over word vectors. All were trained by `npm run train` from tests/training and knowledge/words.yaml.
 */
import { readFileSync } from "node:fs";
import type { TopicId } from "../topics.ts";
import { buildLexicon, type Lexicon, type LexiconData } from "./lexicon.ts";
import { unpack } from "./pack.ts";
import type { Known } from "./weigh.ts";

export const VECTORS_FILE = new URL("./model/vectors.gz", import.meta.url);
export const WEIGHTS_FILE = new URL("./model/weights.gz", import.meta.url);
/** German messages have a model of their own, trained on the English ones too. */
export const GERMAN_WEIGHTS_FILE = new URL("./model/weights.de.gz", import.meta.url);

/** Word vectors: one byte a dimension, VECTOR_SCALE to the unit. */
export const VECTOR_SCALE = 32;

export interface VectorsHeader { readonly source: string; readonly dimensions: number; readonly words: string }

/** How the two parts are put together; fitted on messages the parts had not seen. */
export interface Calibration {
  /** Which topic, when it is one of them: softmax of linear margin and the nets' log odds with these weights. */
  readonly linear: number;
  readonly net: number;
  /** Whether it is out of scope at all: logistic weights of outsideSigns(). */
  readonly outside: readonly number[];
}

export interface WeightsHeader {
  readonly topics: readonly TopicId[];
  readonly lexicon: LexiconData;
  /** Features the linear model knows. */
  readonly rows: number;
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

export interface Linear {
  readonly known: Known;
  /** One for each row: a weight is its byte times its row's step. */
  readonly steps: Float32Array;
  /** [row][topic] */
  readonly weights: Int8Array;
  readonly bias: Float32Array;
}

export interface Model {
  readonly topics: readonly TopicId[];
  readonly lexicon: Lexicon;
  readonly calibration: Calibration;
  readonly linear: Linear;
  /** Alike but for the seed they were trained from; their mean counts. */
  readonly nets: readonly RunningNet[];
  readonly filters: number;
  readonly dimensions: number;
  readonly vectors: Int8Array;
}

/** The arrays of a model in the order they are shipped. */
export const modelParts = ({ linear, nets }: Model): (Float32Array | Int32Array | Int8Array)[] =>
  [linear.known.buckets, linear.known.rarity, linear.steps, linear.bias, ...nets.flatMap((net) => [net.conv, net.convBias, net.out, net.outBias]), linear.weights];

export function loadModel(file: URL = WEIGHTS_FILE): Model {
  const vectors = unpack<VectorsHeader>(readFileSync(VECTORS_FILE));
  const { header, bytes } = unpack<WeightsHeader>(readFileSync(file));
  const { topics, filters, rows, calibration } = header;
  const { dimensions } = vectors.header;
  let at = 0;
  const take = (count: number): ArrayBuffer => {
    const from = bytes.byteOffset + at;
    at += count;
    return bytes.buffer.slice(from, from + count) as ArrayBuffer;
  };
  const floats = (count: number): Float32Array => new Float32Array(take(count * 4));
  const known = { buckets: new Int32Array(take(rows * 4)), rarity: floats(rows) };
  const steps = floats(rows);
  const bias = floats(topics.length);
  const nets = Array.from({ length: header.nets }, () => ({
    conv: floats(3 * dimensions * filters),
    convBias: floats(2 * filters),
    out: floats((filters * 2 + dimensions) * topics.length),
    outBias: floats(topics.length),
  }));
  const weights = new Int8Array(take(rows * topics.length));
  return {
    topics, calibration, nets, filters, dimensions,
    linear: { known, steps, bias, weights },
    lexicon: buildLexicon(header.lexicon, vectors.header.words.split(" "), file.href === GERMAN_WEIGHTS_FILE.href ? "not-english" : "all"),
    vectors: new Int8Array(vectors.bytes),
  };
}
