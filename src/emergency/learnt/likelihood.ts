/**
 * A second look for what the rules have no words for: how much a message is like the labelled reports of danger, and of which kind.
 * A linear model and a small net together, trained by tests/emergency/train.ts; they never make a danger sure.
 */

import type { EmergencyKind } from "../index.ts";
import { BUCKETS, bucketsOf, KIND_BUCKETS, kindBucketsOf, type Numbered } from "./features.ts";
import { LEARNT_KINDS } from "./kinds.ts";
import { judgeOf, type Judge } from "./net.ts";
import { weightsOf } from "./packed.ts";
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
/** What the most alarming stretch counts beside the whole: of a longer message, and of one that can be taken in at once. */
const WORTH_OF_PEAK = { long: 0.5, short: 0.25 };
/** A wall of calm text outweighs a cry for help only so far. */
const CALMEST_COMPANY = -5.5;
/** Towards danger: a false alarm costs less than a miss. */
export const LEANING = 1;
/** What the net counts beside the linear model: where hands left out in turn were told apart best (evaluate.ts). */
const WORTH_OF_NET = 0.35;
/** However calm the net finds a message, it outweighs the linear model only so far. */
const CALMEST_NET = -5;

const WEIGHT = weightsOf(WEIGHTS, BUCKETS);
const kindWeights = weightsOf(KIND_WEIGHTS, KIND_BUCKETS * LEARNT_KINDS.length);

/** What was learnt. */
export interface Learnt {
  readonly weights: ArrayLike<number>;
  readonly judge: (message: Numbered) => Judge;
}

const SHIPPED: Learnt = { weights: WEIGHT, judge: judgeOf() };

/** How much the message is like danger: its most alarming stretch, weighed by the company it stands in. */
export function likeness(message: Numbered, { weights, judge }: Learnt = SHIPPED): Likeness {
  const { score: netScore } = judge(message);
  const scoreAt = (from: number, to: number): number =>
    scoreOf(message, from, to, weights) + WORTH_OF_NET * Math.max(CALMEST_NET, netScore(from, to));
  const { length } = message.words;
  let most = Number.NEGATIVE_INFINITY;
  let whole: number | null = null;
  let [from, to] = [0, 0];
  for (const stretch of stretches(message)) {
    const score = scoreAt(stretch.from, stretch.to);
    if (stretch.to - stretch.from === length) whole = score;
    if (score <= most) continue;
    most = score;
    ({ from, to } = stretch);
  }
  whole ??= scoreAt(Math.max(0, from - COMPANY), Math.min(length, to + COMPANY));
  const worth = length > LONGEST_STRETCH ? WORTH_OF_PEAK.long : WORTH_OF_PEAK.short;
  return { score: worth * most + (1 - worth) * Math.max(CALMEST_COMPANY, whole) + LEANING, peak: most + LEANING, from, to };
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

function scoreOf(message: Numbered, from: number, to: number, weights: ArrayLike<number>): number {
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
