/**
 * A second look for what the rules have no words for: how much a message is like the labelled reports of danger, and of which kind.
 * A linear model, trained by tests/emergency/train.ts; it never makes a danger sure.
 */

import type { EmergencyKind } from "../index.ts";
import { BUCKETS, bucketsOf, KIND_BUCKETS, kindBucketsOf, type Numbered } from "./features.ts";
import { LEARNT_KINDS } from "./kinds.ts";
import { FIRST_SIGN, SIGNS } from "./signs.ts";
import { KIND_WEIGHTS, STEP, WEIGHTS } from "./weights.ts";

export interface Likeness {
  /** Above 0 is more likely danger now than not, among the labelled messages. */
  readonly score: number;
  /** The same of the most alarming stretch alone. */
  readonly peak: number;
  /** The stretch most like danger. */
  readonly from: number;
  readonly to: number;
}

/** A longer message is read in stretches, so that no tail dilutes a cry for help. */
const LONGEST_STRETCH = 32;
const STRETCH = 24;
const STRIDE = 12;
/** A shorter sentence says too little by itself. */
const SHORTEST_SENTENCE = 3;

/** Words before and after a stretch that are its company. */
const COMPANY = 200;
/** A wall of calm text outweighs a cry for help only so far. */
const CALMEST_COMPANY = -4;
/** Towards danger: a false alarm costs less than a miss. */
export const LEANING = 0.85;

const WEIGHT = unpacked(WEIGHTS, BUCKETS);
const kindWeights = unpacked(KIND_WEIGHTS, KIND_BUCKETS * LEARNT_KINDS.length);

/** Undoes `packed` of tests/emergency/learn.ts: for each weight that is not nought, how far on it stands and how large it is. */
function unpacked(text: string, count: number): Int8Array {
  const out = new Int8Array(count);
  let at = -1;
  let gap = 0;
  for (let i = 0; i < text.length; i += 1) {
    const digit = text.charCodeAt(i) - FIRST_SIGN;
    gap = gap * (SIGNS / 2) + (digit % (SIGNS / 2));
    if (digit >= SIGNS / 2) continue;
    at += gap + 1;
    gap = 0;
    i += 1;
    out[at] = text.charCodeAt(i) - FIRST_SIGN - SIGNS / 2;
  }
  return out;
}

/** How much the message is like danger: its most alarming stretch, weighed by the company it stands in. */
export function likeness(message: Numbered, weights?: ArrayLike<number>): Likeness {
  let most = Number.NEGATIVE_INFINITY;
  let [from, to] = [0, 0];
  for (const stretch of stretches(message)) {
    const score = scoreOf(message, stretch.from, stretch.to, weights);
    if (score <= most) continue;
    most = score;
    ({ from, to } = stretch);
  }
  const whole = scoreOf(message, Math.max(0, from - COMPANY), Math.min(message.words.length, to + COMPANY), weights);
  return { score: (most + Math.max(CALMEST_COMPANY, whole)) / 2 + LEANING, peak: most + LEANING, from, to };
}

/** The whole of a short message and each of its sentences; overlapping stretches of a long one. Every word is in three at most. */
export function stretches({ words, sensed: { tokens } }: Numbered): { from: number; to: number }[] {
  const length = words.length;
  const found: { from: number; to: number }[] = [];
  if (length > LONGEST_STRETCH) {
    for (let from = 0; from === 0 || from + STRETCH - STRIDE < length; from += STRIDE) {
      found.push({ from, to: Math.min(length, from + STRETCH) });
    }
    return found;
  }
  found.push({ from: 0, to: length });
  let from = 0;
  for (let at = 1; at <= length; at += 1) {
    if (tokens[at]?.sentence === tokens[from]?.sentence) continue;
    if (at - from >= SHORTEST_SENTENCE && at - from < length) found.push({ from, to: at });
    from = at;
  }
  return found;
}

export function scoreOf(message: Numbered, from: number, to: number, weights: ArrayLike<number> = WEIGHT): number {
  const met = bucketsOf(message, from, to);
  let sum = 0;
  for (let i = 0; i < met.count; i += 1) sum += weights[met.buckets[i] ?? 0] ?? 0;
  return (sum * STEP) / Math.sqrt(met.count);
}

/** The kind of danger a stretch is most like. */
export function likeliestKind(message: Numbered, { from, to }: Likeness): EmergencyKind {
  const scores = LEARNT_KINDS.map(() => 0);
  for (const bucket of kindBucketsOf(message, from, to)) {
    for (let kind = 0; kind < scores.length; kind += 1) {
      scores[kind] = (scores[kind] ?? 0) + (kindWeights[bucket * scores.length + kind] ?? 0);
    }
  }
  return LEARNT_KINDS[scores.indexOf(Math.max(...scores))] ?? "co-alarm";
}
