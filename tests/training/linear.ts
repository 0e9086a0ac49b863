/**
 * One linear yes-or-no model for each topic: squared hinge loss, L2, solved in the dual by coordinate descent (Hsieh and others,
 * "A dual coordinate descent method for large-scale linear SVM", 2008, algorithm 3 without random restarts). Seeded.
 */
import { BUCKETS, type Reading } from "../../src/conversation/routing/features.ts";
import { buildWeigher, type Known } from "../../src/conversation/routing/weigh.ts";
import { seeded, shuffled } from "./seeded.ts";

export interface Labelled { readonly reading: Reading; readonly label: number }

export interface LinearWeights { readonly known: Known; /** [row][class] */ readonly weights: Float32Array; readonly bias: Float32Array }

/** Features that at least `least` of the readings have, with smoothed inverse document frequency. */
export function knownFeatures(readings: readonly Reading[], least: number): Known {
  const count = new Uint16Array(BUCKETS);
  for (const { features } of readings) for (const bucket of new Set(features)) count[bucket] = (count[bucket] as number) + 1;
  const buckets = Int32Array.from(count.keys()).filter((bucket) => (count[bucket] as number) >= least);
  const rarity = Float32Array.from(buckets, (bucket) => 1 + Math.log((1 + readings.length) / (1 + (count[bucket] as number))));
  return { buckets, rarity };
}

export interface LinearOptions { readonly cost: number; readonly passes: number; readonly least: number; readonly seed: number }

export function trainLinear(examples: readonly Labelled[], classes: number, options: LinearOptions): LinearWeights {
  const known = knownFeatures(examples.map(({ reading }) => reading), options.least);
  const weigh = buildWeigher(known);
  const inputs = examples.map(({ reading }) => {
    const { rows, values, count } = weigh(reading);
    return { rows: rows.slice(0, count), values: values.slice(0, count) };
  });
  const slack = 1 / (2 * options.cost);
  const curve = Float64Array.from(inputs, ({ values }) => values.reduce((sum, value) => sum + value * value, 1 + slack));
  const rows = known.buckets.length;
  const weights = new Float32Array(rows * classes);
  const bias = new Float32Array(classes);
  const random = seeded(options.seed);
  const order = shuffled(inputs.map((_, i) => i), random);
  for (let c = 0; c < classes; c++) {
    const w = new Float64Array(rows);
    let b = 0;
    const alpha = new Float64Array(inputs.length);
    let active = order;
    let bound = Infinity;
    for (let pass = 0; pass < options.passes; pass++) {
      const kept: number[] = [];
      let steepest = 0;
      for (const i of active) {
        const { rows: at, values } = inputs[i] as { rows: Int32Array; values: Float32Array };
        const y = (examples[i] as Labelled).label === c ? 1 : -1;
        let sum = b;
        for (let f = 0; f < at.length; f++) sum += (w[at[f] as number] as number) * (values[f] as number);
        const before = alpha[i] as number;
        const gradient = y * sum - 1 + before * slack;
        if (before === 0 && gradient > bound) continue;
        kept.push(i);
        if (before === 0 && gradient >= 0) continue;
        steepest = Math.max(steepest, Math.abs(gradient));
        const after = Math.max(0, before - gradient / (curve[i] as number));
        if (after === before) continue;
        alpha[i] = after;
        const step = (after - before) * y;
        b += step;
        for (let f = 0; f < at.length; f++) w[at[f] as number] = (w[at[f] as number] as number) + step * (values[f] as number);
      }
      active = shuffled(kept, random);
      bound = Math.max(0.2, steepest);
      if (steepest < 0.05) break;
    }
    for (let row = 0; row < rows; row++) weights[row * classes + c] = w[row] as number;
    bias[c] = b;
  }
  return { known, weights, bias };
}
