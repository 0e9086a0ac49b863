/**
 * A small convolutional net over word vectors: filters one and two words wide, each keeping its strongest answer in the
 * message, beside the mean vector; dropout, softmax, Adam. What it adds to the linear model: words never met in training are
 * understood through their vectors. Plain typed arrays, seeded, the same on every machine.
 */
import { seeded, shuffled } from "./seeded.ts";

export interface NetShape { readonly dimensions: number; readonly filters: number; readonly classes: number }

/** Widths 1 and 2: three word-to-filters matrices in all. */
export const WIDTHS = [1, 2] as const;
const MATRICES = 3;

export interface Net extends NetShape {
  /** [matrix][dimension][filter] */
  readonly conv: Float32Array;
  readonly convBias: Float32Array;
  /** [pooled feature][class]; the pooled features are the filters of each width, then the mean vector */
  readonly out: Float32Array;
  readonly outBias: Float32Array;
}

export interface NetExample { readonly sequence: Int32Array; readonly label: number }

export interface NetOptions { epochs: number; rate: number; batch: number; dropout: number; wordDropout: number; l2: number; seed: number }

export const pooledSize = (shape: NetShape): number => shape.filters * WIDTHS.length + shape.dimensions;

class Adam {
  readonly #m: Float32Array;
  readonly #v: Float32Array;
  #step = 0;
  constructor(size: number) {
    this.#m = new Float32Array(size);
    this.#v = new Float32Array(size);
  }
  update(weights: Float32Array, gradients: Float32Array, rate: number, l2: number): void {
    this.#step++;
    const fix = (rate * Math.sqrt(1 - 0.999 ** this.#step)) / (1 - 0.9 ** this.#step);
    const m = this.#m;
    const v = this.#v;
    for (let i = 0; i < weights.length; i++) {
      const g = gradients[i] as number;
      m[i] = 0.9 * (m[i] as number) + 0.1 * g;
      v[i] = 0.999 * (v[i] as number) + 0.001 * g * g;
      weights[i] = (weights[i] as number) * (1 - rate * l2) - (fix * (m[i] as number)) / (Math.sqrt(v[i] as number) + 1e-8);
      gradients[i] = 0;
    }
  }
}

export function trainNet(examples: readonly NetExample[], vectors: Float32Array, shape: NetShape, options: NetOptions): Net {
  const { dimensions: D, filters: F, classes: K } = shape;
  const P = pooledSize(shape);
  const random = seeded(options.seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const net: Net = {
    ...shape,
    conv: Float32Array.from({ length: MATRICES * D * F }, () => normal() * Math.sqrt(1 / D)),
    convBias: new Float32Array(WIDTHS.length * F),
    out: Float32Array.from({ length: P * K }, () => normal() * 0.05),
    outBias: new Float32Array(K),
  };
  const g = { conv: new Float32Array(net.conv.length), convBias: new Float32Array(net.convBias.length), out: new Float32Array(net.out.length), outBias: new Float32Array(K) };
  const adam = { conv: new Adam(net.conv.length), convBias: new Adam(net.convBias.length), out: new Adam(net.out.length), outBias: new Adam(K) };
  const state = netState(shape);
  const mask = new Float32Array(P);
  const dPooled = new Float32Array(P);
  for (let epoch = 0; epoch < options.epochs; epoch++) {
    const rate = options.rate * (epoch < options.epochs * 0.6 ? 1 : 1 - (epoch - options.epochs * 0.6) / (options.epochs * 0.45));
    let inBatch = 0;
    const order = shuffled(examples, random);
    for (let e = 0; e < order.length; e++) {
      const example = order[e] as NetExample;
      const kept = example.sequence.filter(() => random() >= options.wordDropout);
      pool(net, vectors, kept.length > 0 ? kept : example.sequence, state);
      const keep = 1 - options.dropout;
      for (let p = 0; p < P; p++) {
        mask[p] = random() < keep ? 1 / keep : 0;
        state.pooled[p] = (state.pooled[p] as number) * (mask[p] as number);
      }
      outScores(net, state.pooled, state.scores);
      softmax(state.scores);
      const dScores = state.scores;
      dScores[example.label] = (dScores[example.label] as number) - 1;
      for (let p = 0; p < P; p++) {
        const value = state.pooled[p] as number;
        let d = 0;
        for (let c = 0; c < K; c++) {
          const ds = dScores[c] as number;
          d += ds * (net.out[p * K + c] as number);
          if (value !== 0) g.out[p * K + c] = (g.out[p * K + c] as number) + ds * value;
        }
        dPooled[p] = d * (mask[p] as number);
      }
      for (let c = 0; c < K; c++) g.outBias[c] = (g.outBias[c] as number) + (dScores[c] as number);
      const sequence = state.sequence;
      let matrix = 0;
      for (let w = 0; w < WIDTHS.length; w++) {
        const width = WIDTHS[w] as number;
        for (let f = 0; f < F; f++) {
          const p = w * F + f;
          const at = state.where[p] as number;
          const d = dPooled[p] as number;
          if (at < -5 || d === 0) continue;
          g.convBias[p] = (g.convBias[p] as number) + d;
          for (let k = 0; k < width; k++) {
            const position = at + k;
            if (position < 0 || position >= sequence.length) continue;
            const row = (sequence[position] as number) * D;
            const base = (matrix + k) * D * F + f;
            for (let i = 0; i < D; i++) g.conv[base + i * F] = (g.conv[base + i * F] as number) + d * (vectors[row + i] as number);
          }
        }
        matrix += width;
      }
      if (++inBatch === options.batch || e === order.length - 1) {
        const scale = 1 / inBatch;
        for (const grads of Object.values(g)) for (let i = 0; i < grads.length; i++) grads[i] = (grads[i] as number) * scale;
        adam.conv.update(net.conv, g.conv, rate, options.l2);
        adam.convBias.update(net.convBias, g.convBias, rate, 0);
        adam.out.update(net.out, g.out, rate, options.l2);
        adam.outBias.update(net.outBias, g.outBias, rate, 0);
        inBatch = 0;
      }
    }
  }
  return net;
}

interface NetState { pooled: Float32Array; where: Int32Array; scores: Float32Array; sequence: Int32Array; sums: Float32Array }

export const netState = (shape: NetShape): NetState => ({
  pooled: new Float32Array(pooledSize(shape)),
  where: new Int32Array(shape.filters * WIDTHS.length),
  scores: new Float32Array(shape.classes),
  sequence: new Int32Array(0),
  sums: new Float32Array(shape.filters),
});

/** Fills state.pooled with each filter's strongest answer (0 at least) and the mean vector; `where` is -9 where nothing answered. */
export function pool(net: Net, vectors: Float32Array, sequence: Int32Array, state: NetState): void {
  const { dimensions: D, filters: F } = net;
  state.sequence = sequence;
  state.pooled.fill(0);
  state.where.fill(-9);
  let matrix = 0;
  for (let w = 0; w < WIDTHS.length; w++) {
    const width = WIDTHS[w] as number;
    for (let at = 1 - width; at < sequence.length; at++) {
      const sums = state.sums;
      for (let f = 0; f < F; f++) sums[f] = net.convBias[w * F + f] as number;
      for (let k = 0; k < width; k++) {
        const position = at + k;
        if (position < 0 || position >= sequence.length) continue;
        const row = (sequence[position] as number) * D;
        let base = (matrix + k) * D * F;
        for (let i = 0; i < D; i++) {
          const x = vectors[row + i] as number;
          for (let f = 0; f < F; f++) sums[f] = (sums[f] as number) + x * (net.conv[base + f] as number);
          base += F;
        }
      }
      for (let f = 0; f < F; f++) {
        const p = w * F + f;
        if ((sums[f] as number) > (state.pooled[p] as number)) {
          state.pooled[p] = sums[f] as number;
          state.where[p] = at;
        }
      }
    }
    matrix += width;
  }
  const meanAt = F * WIDTHS.length;
  for (const row of sequence) for (let i = 0; i < D; i++) state.pooled[meanAt + i] = (state.pooled[meanAt + i] as number) + (vectors[row * D + i] as number);
  const scale = 1 / Math.sqrt(sequence.length || 1);
  for (let i = 0; i < D; i++) state.pooled[meanAt + i] = (state.pooled[meanAt + i] as number) * scale;
}

export function outScores(net: Net, pooled: Float32Array, scores: Float32Array): void {
  const K = net.classes;
  for (let c = 0; c < K; c++) scores[c] = net.outBias[c] as number;
  for (let p = 0; p < pooled.length; p++) {
    const value = pooled[p] as number;
    if (value === 0) continue;
    const row = p * K;
    for (let c = 0; c < K; c++) scores[c] = (scores[c] as number) + value * (net.out[row + c] as number);
  }
}

function softmax(scores: Float32Array): void {
  let top = -Infinity;
  for (const score of scores) if (score > top) top = score;
  let sum = 0;
  for (let c = 0; c < scores.length; c++) sum += scores[c] = Math.exp((scores[c] as number) - top);
  for (let c = 0; c < scores.length; c++) scores[c] = (scores[c] as number) / sum;
}
