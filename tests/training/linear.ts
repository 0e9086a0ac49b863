/** Multinomial logistic regression on the sparse features: Adagrad, L2, fixed order from a seed. */
import type { Reading } from "../../src/conversation/routing/features.ts";
import { BUCKETS } from "../../src/conversation/routing/features.ts";
import { seeded, shuffled } from "./seeded.ts";

export interface Labelled { readonly reading: Reading; readonly label: number; readonly weight: number }

export interface LinearModel { readonly weights: Float32Array; readonly classes: number }

export function trainLinear(examples: readonly Labelled[], classes: number, options = { epochs: 14, rate: 0.35, l2: 2e-5, seed: 7 }): LinearModel {
  const weights = new Float32Array(BUCKETS * classes);
  const squares = new Float32Array(BUCKETS * classes).fill(1e-2);
  const random = seeded(options.seed);
  const scores = new Float32Array(classes);
  for (let epoch = 0; epoch < options.epochs; epoch++) {
    for (const example of shuffled(examples, random)) {
      const { indices, values } = example.reading;
      linearScores(weights, classes, example.reading, scores);
      softmax(scores);
      scores[example.label] = (scores[example.label] as number) - 1;
      for (let f = 0; f < indices.length; f++) {
        const row = (indices[f] as number) * classes;
        const value = (values[f] as number) * example.weight;
        for (let c = 0; c < classes; c++) {
          const at = row + c;
          const gradient = (scores[c] as number) * value + options.l2 * (weights[at] as number);
          squares[at] = (squares[at] as number) + gradient * gradient;
          weights[at] = (weights[at] as number) - (options.rate * gradient) / Math.sqrt(squares[at] as number);
        }
      }
    }
  }
  return { weights, classes };
}

export function linearScores(weights: Float32Array, classes: number, reading: Reading, out: Float32Array): void {
  out.fill(0);
  for (let f = 0; f < reading.indices.length; f++) {
    const row = (reading.indices[f] as number) * classes;
    const value = reading.values[f] as number;
    for (let c = 0; c < classes; c++) out[c] = (out[c] as number) + value * (weights[row + c] as number);
  }
}

export function softmax(scores: Float32Array): void {
  let top = -Infinity;
  for (const score of scores) if (score > top) top = score;
  let sum = 0;
  for (let c = 0; c < scores.length; c++) sum += scores[c] = Math.exp((scores[c] as number) - top);
  for (let c = 0; c < scores.length; c++) scores[c] = (scores[c] as number) / sum;
}
