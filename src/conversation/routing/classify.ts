import { QUANTITY_KINDS, type Reading } from "./features.ts";
import { type Model, type RunningNet, VECTOR_SCALE } from "./model.ts";

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
}

export function buildClassifier(model: Model): Classifier {
  const { topics, filters, dimensions, nets, calibration } = model;
  const classes = topics.length;
  const quantities = quantityVectors(dimensions);
  const linear = new Float64Array(classes);
  const total = new Float64Array(classes);
  const scores = new Float64Array(classes);
  const width = PLACES * filters;
  const answers = nets.map(() => new Map<number, Float32Array>());
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

  function netScores(net: RunningNet, memory: Map<number, Float32Array>, sequence: Int32Array, out: Float64Array): void {
    const length = sequence.length;
    const said = Array.from(sequence, (item) => answer(net, memory, item));
    for (let c = 0; c < classes; c++) out[c] = net.outBias[c] as number;
    const addRow = (feature: number, value: number): void => {
      const row = feature * classes;
      for (let c = 0; c < classes; c++) out[c] = (out[c] as number) + value * (net.out[row + c] as number);
    };
    let place = 0;
    for (let w = 0; w < WIDEST; w++) {
      for (let f = 0; f < filters; f++) {
        let best = 0;
        for (let at = -w; at < length; at++) {
          let sum = net.convBias[w * filters + f] as number;
          for (let k = 0; k <= w; k++) {
            const words = said[at + k];
            if (words !== undefined) sum += words[(place + k) * filters + f] as number;
          }
          if (sum > best) best = sum;
        }
        if (best > 0) addRow(w * filters + f, best);
      }
      place += w + 1;
    }
    const scale = 1 / Math.sqrt(length || 1);
    const mean = new Float64Array(dimensions);
    for (const item of sequence) {
      const x = vectorOf(item);
      for (let i = 0; i < dimensions; i++) mean[i] = (mean[i] as number) + (x[i] as number);
    }
    for (let i = 0; i < dimensions; i++) addRow(filters * WIDEST + i, (mean[i] as number) * scale);
  }

  return {
    probabilities(reading) {
      linear.fill(0);
      const { indices, values } = reading;
      for (let f = 0; f < indices.length; f++) {
        const bucket = indices[f] as number;
        const value = (values[f] as number) * (model.linearSteps[bucket] as number);
        if (value === 0) continue;
        const row = bucket * classes;
        for (let c = 0; c < classes; c++) linear[c] = (linear[c] as number) + value * (model.linear[row + c] as number);
      }
      toLogProbabilities(linear);
      for (let c = 0; c < classes; c++) total[c] = (linear[c] as number) * calibration.linearShare;
      const share = (1 - calibration.linearShare) / nets.length;
      nets.forEach((net, n) => {
        netScores(net, answers[n] as Map<number, Float32Array>, reading.sequence, scores);
        toLogProbabilities(scores);
        for (let c = 0; c < classes; c++) total[c] = (total[c] as number) + share * (scores[c] as number);
      });
      for (let c = 0; c < classes; c++) total[c] = (total[c] as number) / calibration.temperature;
      toLogProbabilities(total);
      for (let c = 0; c < classes; c++) total[c] = Math.exp(total[c] as number);
      return total;
    },
  };
}

const FLOOR = -12;

/** In place; floored so that one part of the model cannot veto the other. */
function toLogProbabilities(scores: Float64Array): void {
  let top = -Infinity;
  for (const score of scores) if (score > top) top = score;
  let sum = 0;
  for (const score of scores) sum += Math.exp(score - top);
  const shift = top + Math.log(sum);
  for (let c = 0; c < scores.length; c++) scores[c] = Math.max(FLOOR, (scores[c] as number) - shift);
}
