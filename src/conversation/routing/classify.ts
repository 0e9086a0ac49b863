import { combine, type Scores } from "./combine.ts";
import { QUANTITY_KINDS, type Reading } from "./features.ts";
import { type Model, type RunningNet, VECTOR_SCALE } from "./model.ts";
import { buildWeigher } from "./weigh.ts";

/** Filters one and two words wide read three places in all. */
const WIDEST = 2;
const PLACES = 3;
const REMEMBERED_WORDS = 4000;

/** Fixed stand-in vectors for quantities, which have no word vector: the same numbers in training and in use. */
export function quantityVectors(dimensions: number): Float32Array {
  let state = 99;
  return Float32Array.from({ length: QUANTITY_KINDS.length * dimensions }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state / 4294967296 - 0.5) * 2;
  });
}

export interface Classifier {
  /** Calibrated probability of each topic, in the model's order. The array is reused by the next call. */
  probabilities(reading: Reading): Float64Array;
  /** What each part of the model says, before it is put together. Reused by the next call. */
  scores(reading: Reading): Scores;
}

export function buildClassifier(model: Model): Classifier {
  const { topics, filters, dimensions, nets, calibration } = model;
  const { steps, weights, bias, known } = model.linear;
  const classes = topics.length;
  const quantities = quantityVectors(dimensions);
  const weigh = buildWeigher(known);
  const linear = new Float64Array(classes);
  const netScores = new Float64Array(classes);
  const total = new Float64Array(classes);
  const width = PLACES * filters;
  const silence = new Float32Array(width);
  const pooled = new Float64Array(filters * WIDEST + dimensions);
  const memories = nets.map(() => new Map<number, Float32Array>());
  const vector = new Float32Array(dimensions);

  function vectorOf(item: number): Float32Array {
    if (item < 0) return quantities.subarray((-1 - item) * dimensions, -item * dimensions);
    for (let i = 0; i < dimensions; i++) vector[i] = (model.vectors[item * dimensions + i] as number) / VECTOR_SCALE;
    return vector;
  }

  /** What every filter says to this word at each of its places; remembered, since words come again. */
  function answer(net: RunningNet, memory: Map<number, Float32Array>, item: number): Float32Array {
    const known = memory.get(item);
    if (known !== undefined) return known;
    const sums = new Float32Array(width);
    const x = vectorOf(item);
    for (let place = 0; place < PLACES; place++) {
      for (let i = 0; i < dimensions; i++) {
        const value = x[i] as number;
        const base = (place * dimensions + i) * filters;
        for (let f = 0; f < filters; f++) sums[place * filters + f] = (sums[place * filters + f] as number) + value * (net.conv[base + f] as number);
      }
    }
    if (memory.size >= REMEMBERED_WORDS) memory.clear();
    memory.set(item, sums);
    return sums;
  }

  /** Strongest answer of each filter anywhere in the message, 0 at least; then the mean vector. */
  function pool(net: RunningNet, memory: Map<number, Float32Array>, sequence: Int32Array): void {
    pooled.fill(0);
    const means = filters * WIDEST;
    let before: Float32Array = silence;
    for (let at = 0; at <= sequence.length; at++) {
      const here = at < sequence.length ? answer(net, memory, sequence[at] as number) : silence;
      if (at < sequence.length) {
        for (let f = 0; f < filters; f++) {
          const alone = (here[f] as number) + (net.convBias[f] as number);
          if (alone > (pooled[f] as number)) pooled[f] = alone;
        }
        const x = vectorOf(sequence[at] as number);
        for (let i = 0; i < dimensions; i++) pooled[means + i] = (pooled[means + i] as number) + (x[i] as number);
      }
      for (let f = filters; f < means; f++) {
        const together = (before[f] as number) + (here[f + filters] as number) + (net.convBias[f] as number);
        if (together > (pooled[f] as number)) pooled[f] = together;
      }
      before = here;
    }
    const scale = 1 / Math.sqrt(sequence.length || 1);
    for (let p = means; p < pooled.length; p++) pooled[p] = (pooled[p] as number) * scale;
  }

  /** Mean of the nets' scores. */
  function scoreByNets(sequence: Int32Array): void {
    netScores.fill(0);
    nets.forEach((net, n) => {
      pool(net, memories[n] as Map<number, Float32Array>, sequence);
      for (let c = 0; c < classes; c++) netScores[c] = (netScores[c] as number) + (net.outBias[c] as number);
      for (let p = 0; p < pooled.length; p++) {
        const value = pooled[p] as number;
        if (value === 0) continue;
        const row = p * classes;
        for (let c = 0; c < classes; c++) netScores[c] = (netScores[c] as number) + value * (net.out[row + c] as number);
      }
    });
    for (let c = 0; c < classes; c++) netScores[c] = (netScores[c] as number) / nets.length;
  }

  function scoreLinear(reading: Reading): void {
    const { rows, values, count } = weigh(reading);
    linear.set(bias);
    for (let f = 0; f < count; f++) {
      const row = rows[f] as number;
      const value = (values[f] as number) * (steps[row] as number);
      const from = row * classes;
      for (let c = 0; c < classes; c++) linear[c] = (linear[c] as number) + value * (weights[from + c] as number);
    }
  }

  function scores(reading: Reading): Scores {
    scoreLinear(reading);
    scoreByNets(reading.sequence);
    return { linear, net: netScores };
  }

  return { scores, probabilities: (reading) => combine(scores(reading), calibration, topics.indexOf("out-of-scope"), total) };
}
