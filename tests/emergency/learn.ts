/** Learns the weights of the emergency leaf's second look from labelled messages: logistic regression, Adagrad, seeded. */
import {
  BUCKETS, bucketsOf, KIND_BUCKETS, kindBucketsOf, numbered, type Numbered,
} from "../../src/emergency/learnt/features.ts";
import { stretches } from "../../src/emergency/learnt/likelihood.ts";
import { sceneOf } from "../../src/emergency/scene.ts";
import { sense } from "../../src/emergency/senses.ts";
import { seeded, shuffled } from "../training/seeded.ts";
import { framed } from "./framed.ts";

export interface Labelled {
  readonly text: string;
  /** Which kind of danger, or -1 for none. */
  readonly kind: number;
  readonly weight: number;
  /** Whose: the file, or EVERYDAY. */
  readonly hand: string;
}

interface Example {
  readonly kind: number;
  readonly weight: number;
  readonly buckets: Int32Array;
  readonly kindBuckets: readonly number[];
}

const EPOCHS = 12;
const KIND_EPOCHS = 8;
const RATE = 0.3;
const SHRINK = 1e-4;
const SEED = 7;
/** Weights kept of those learnt. */
const KEPT = 150_000;
/** What a stretch of a calm message weighs, beside the message. */
const WORTH_OF_STRETCH = 0.3;
/** The hand whose messages are everyday questions, and the longest of them put beside another message. */
export const EVERYDAY = "training";
const LONGEST_COMPANY = 90;
const SHARE_IN_COMPANY = 0.6;
const WORTH_IN_COMPANY = 0.5;

function exampleOf(message: Numbered, from: number, to: number, kind: number, weight: number): Example {
  const met = bucketsOf(message, from, to);
  return { kind, weight, buckets: met.buckets.slice(0, met.count), kindBuckets: kind < 0 ? [] : kindBucketsOf(message, from, to) };
}

function wholeOf({ text, kind, weight }: Labelled): Example {
  const message = numbered(sceneOf(sense(text)));
  return exampleOf(message, 0, message.words.length, kind, weight);
}

/** The message; if it is calm, each of its stretches as well. */
function examplesOf({ text, kind, weight }: Labelled): Example[] {
  const message = numbered(sceneOf(sense(text)));
  const length = message.words.length;
  const parts = kind >= 0 ? [] : stretches(message).filter(({ from, to }) => to - from < length);
  return [
    exampleOf(message, 0, length, kind, weight),
    ...parts.map(({ from, to }) => exampleOf(message, from, to, kind, weight * WORTH_OF_STRETCH)),
  ];
}

export interface Learnt {
  readonly weights: Float32Array;
  readonly kindWeights: Float32Array;
}

/** Messages with a short everyday sentence before or after them: neither danger nor calm is changed by it. */
export function inCompany(labelled: readonly Labelled[]): Labelled[] {
  const random = seeded(SEED);
  const everyday = labelled.filter(({ text, hand }) => hand === EVERYDAY && text.length < LONGEST_COMPANY).map(({ text }) => text);
  return labelled.flatMap(({ text, kind, weight, hand }) => {
    if (everyday.length === 0 || hand === EVERYDAY || random() > SHARE_IN_COMPANY) return [];
    const other = everyday[Math.floor(random() * everyday.length)] as string;
    const both = random() < 0.5 ? `${text}. ${other}` : `${other}. ${text}`;
    return [{ text: both, kind, weight: weight * WORTH_IN_COMPANY, hand }];
  });
}

export function learn(labelled: readonly Labelled[], kinds: number): Learnt {
  const examples = [...labelled.flatMap(examplesOf), ...[...inCompany(labelled), ...framed(labelled)].map(wholeOf)];
  const messages = new Int32Array(BUCKETS);
  for (const { buckets } of examples) for (const bucket of buckets) messages[bucket] = (messages[bucket] as number) + 1;
  return {
    weights: pruned(learnDanger(examples), messages, KEPT),
    kindWeights: learnKinds(examples.filter(({ kind }) => kind >= 0), kinds),
  };
}

function learnDanger(examples: readonly Example[]): Float32Array {
  const weights = new Float32Array(BUCKETS);
  const squares = new Float32Array(BUCKETS).fill(0.01);
  const random = seeded(SEED);
  for (let epoch = 0; epoch < EPOCHS; epoch += 1) {
    for (const { kind, weight, buckets } of shuffled(examples, random)) {
      const value = 1 / Math.sqrt(buckets.length);
      let score = 0;
      for (const bucket of buckets) score += (weights[bucket] as number) * value;
      const error = (1 / (1 + Math.exp(-score)) - (kind < 0 ? 0 : 1)) * weight;
      for (const bucket of buckets) step(weights, squares, bucket, error * value);
    }
  }
  return weights;
}

function learnKinds(examples: readonly Example[], kinds: number): Float32Array {
  const weights = new Float32Array(KIND_BUCKETS * kinds);
  const squares = new Float32Array(weights.length).fill(0.01);
  const random = seeded(SEED);
  const scores = new Float64Array(kinds);
  for (let epoch = 0; epoch < KIND_EPOCHS; epoch += 1) {
    for (const { kind, weight, kindBuckets } of shuffled(examples, random)) {
      const value = 1 / Math.sqrt(kindBuckets.length);
      scores.fill(0);
      for (const bucket of kindBuckets) for (let k = 0; k < kinds; k += 1) scores[k]! += (weights[bucket * kinds + k] as number) * value;
      const top = Math.max(...scores);
      const shares = scores.map((score) => Math.exp(score - top));
      const all = shares.reduce((sum, share) => sum + share, 0);
      for (let k = 0; k < kinds; k += 1) {
        const error = ((shares[k] as number) / all - (k === kind ? 1 : 0)) * weight;
        for (const bucket of kindBuckets) step(weights, squares, bucket * kinds + k, error * value);
      }
    }
  }
  return weights;
}

function step(weights: Float32Array, squares: Float32Array, at: number, gradient: number): void {
  const shrunk = gradient + SHRINK * (weights[at] as number);
  squares[at] = (squares[at] as number) + shrunk * shrunk;
  weights[at] = (weights[at] as number) - (RATE * shrunk) / Math.sqrt(squares[at] as number);
}

/** The weights that tell most, by size and by how many messages they spoke in. */
function pruned(weights: Float32Array, messages: Int32Array, most: number): Float32Array {
  const worth = weights.map((weight, at) => Math.abs(weight) * Math.sqrt(messages[at] as number));
  const least = Float32Array.from(worth).sort()[Math.max(0, weights.length - most)] as number;
  return weights.map((weight, at) => ((worth[at] as number) >= least ? weight : 0));
}
