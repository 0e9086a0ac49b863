/** The net of the emergency leaf while it learns: forwards through one message at a time, the slopes back, Adam after each batch. */
import { readFileSync } from "node:fs";
import { wordNumber } from "../../src/emergency/learnt/features.ts";
import { FILTERS_IN_ALL, FILTERS_OVER, OUTCOMES, SHARES, WIDTH } from "../../src/emergency/learnt/net-shape.ts";
import { rowOfWord, ROWS, WORD_ROWS } from "../../src/emergency/learnt/rows.ts";
import { FIRST_SIGN, SIGNS } from "../../src/emergency/learnt/signs.ts";
import { seeded } from "../training/seeded.ts";

export const BATCH = 32;
export const SEED = 1;
export const MOST_WORDS = 256;
const DECAY = 0.01;
const SHARE_DROPPED = { filters: 0.4, words: 0.25 };
const [BETA, BETA_SQUARES] = [0.9, 0.99];
/** English word vectors to begin with: see word-vectors.md. */
const VECTORS_FILE = new URL("word-vectors.txt", import.meta.url);
const VECTOR_STEP = 0.03;

/** What may be dropped in learning: a word is not always there to be known by itself. */
export const PART = { word: 0, letters: 1, sense: 2, place: 3 } as const;

export interface Example {
  /** For each word, where its rows begin; one more for the end. */
  readonly starts: Int32Array;
  readonly rows: Int32Array;
  readonly times: Float32Array;
  readonly parts: Uint8Array;
  readonly outcome: number;
  readonly weight: number;
}

export interface LearntNet {
  readonly table: Float32Array;
  readonly filters: Float32Array;
  readonly biases: Float32Array;
  readonly outputs: Float32Array;
}

function startingTable(): Float32Array {
  const table = new Float32Array(ROWS * WIDTH);
  const random = seeded(SEED + 99);
  for (let i = WORD_ROWS * WIDTH; i < table.length; i += 1) table[i] = bell(random) * 0.05;
  for (const line of readFileSync(VECTORS_FILE, "utf8").trim().split("\n")) {
    const [word = "", signs = ""] = line.split(" ");
    const start = rowOfWord(wordNumber(word)) * WIDTH;
    for (let i = 0; i < WIDTH; i += 1) table[start + i] = (signs.charCodeAt(i) - FIRST_SIGN - SIGNS / 2) * VECTOR_STEP;
  }
  return table;
}

/** Near enough to a normal deviate. */
function bell(random: () => number): number {
  return (random() + random() + random() - 1.5) * 2;
}

/** The filters, their biases and the outputs, one after the other in one array, with the means and squares Adam keeps of their slopes. */
class Dense {
  readonly values: Float32Array;
  readonly slopes: Float32Array;
  readonly #means: Float32Array;
  readonly #squares: Float32Array;
  static readonly biasesAt = SHARES * WIDTH;
  static readonly outputsAt = Dense.biasesAt + FILTERS_IN_ALL;
  static readonly length = Dense.outputsAt + OUTCOMES * (FILTERS_IN_ALL + 1);

  constructor(random: () => number) {
    this.values = new Float32Array(Dense.length);
    this.slopes = new Float32Array(Dense.length);
    this.#means = new Float32Array(Dense.length);
    this.#squares = new Float32Array(Dense.length);
    let at = 0;
    FILTERS_OVER.forEach((count, over) => {
      const spread = 1.2 / Math.sqrt((over + 1) * WIDTH);
      for (let end = at + count * (over + 1) * WIDTH; at < end; at += 1) this.values[at] = bell(random) * spread;
    });
    for (let outcome = 0; outcome < OUTCOMES; outcome += 1) {
      const start = Dense.outputsAt + outcome * (FILTERS_IN_ALL + 1);
      for (let i = 0; i < FILTERS_IN_ALL; i += 1) this.values[start + i] = bell(random) * 0.1;
    }
  }

  step(count: number, rate: number): void {
    const { values, slopes } = this;
    const [means, squares] = [this.#means, this.#squares];
    const [unbiased, unbiasedSquare] = [1 - BETA ** count, 1 - BETA_SQUARES ** count];
    for (let i = 0; i < values.length; i += 1) {
      const slope = slopes[i]! / BATCH;
      slopes[i] = 0;
      means[i] = BETA * means[i]! + (1 - BETA) * slope;
      squares[i] = BETA_SQUARES * squares[i]! + (1 - BETA_SQUARES) * slope * slope;
      values[i]! -= rate * (means[i]! / unbiased / (Math.sqrt(squares[i]! / unbiasedSquare) + 1e-8) + DECAY * values[i]!);
    }
  }
}

/** The table of rows; only those a batch has met are moved. */
class Table {
  readonly values = startingTable();
  readonly slopes = new Float32Array(ROWS * WIDTH);
  readonly #squares = new Float32Array(ROWS * WIDTH);
  readonly #isMet = new Uint8Array(ROWS);
  readonly #wasMet = new Uint8Array(ROWS);
  #met: number[] = [];

  meet(row: number): void {
    if (this.#isMet[row] === 1) return;
    this.#isMet[row] = 1;
    this.#wasMet[row] = 1;
    this.#met.push(row);
  }

  step(rate: number): void {
    for (const row of this.#met) {
      this.#isMet[row] = 0;
      for (let i = row * WIDTH; i < (row + 1) * WIDTH; i += 1) {
        const slope = this.slopes[i]! / BATCH;
        this.slopes[i] = 0;
        this.#squares[i] = BETA_SQUARES * this.#squares[i]! + (1 - BETA_SQUARES) * slope * slope;
        this.values[i]! -= (rate * slope) / (Math.sqrt(this.#squares[i]!) + 1e-6);
      }
    }
    this.#met = [];
  }

  /** What was learnt, and the words it began with: what no message had says nothing. */
  learnt(): Float32Array {
    return this.values.map((value, i) => (i < WORD_ROWS * WIDTH || this.#wasMet[Math.floor(i / WIDTH)] === 1 ? value : 0));
  }
}

/** Words of nothing before and after a message, for the filters to reach over. */
const PAD = Math.max(...FILTERS_OVER.map((_, over) => over));

export class Learner {
  readonly dense: Dense;
  readonly table = new Table();
  readonly #random: () => number;
  readonly #words = new Float32Array((MOST_WORDS + 2 * PAD) * WIDTH);
  readonly #wordSlopes = new Float32Array((MOST_WORDS + 2 * PAD) * WIDTH);
  readonly #found = new Float32Array(FILTERS_IN_ALL);
  readonly #foundAt = new Int32Array(FILTERS_IN_ALL);
  readonly #foundSlopes = new Float32Array(FILTERS_IN_ALL);
  readonly #kept = new Float32Array(FILTERS_IN_ALL);
  #dropped = new Uint8Array(4096);

  constructor(random: () => number) {
    this.#random = random;
    this.dense = new Dense(random);
  }

  /** Adds the slopes of one example to those of the batch. */
  learn(example: Example): void {
    this.#dropParts(example);
    const end = (example.starts.length - 1 + 2 * PAD) * WIDTH;
    this.#lookUp(example, end);
    this.#find(example.starts.length - 1);
    this.#judge(example);
    this.#wordSlopes.fill(0, 0, end);
    this.#backToWords();
    this.#backToRows(example);
  }

  #dropParts({ starts, parts }: Example): void {
    if (this.#dropped.length < parts.length) this.#dropped = new Uint8Array(2 * parts.length);
    for (let at = 0; at + 1 < starts.length; at += 1) {
      const noWord = this.#random() < SHARE_DROPPED.words;
      const noSense = this.#random() < SHARE_DROPPED.words;
      for (let i = starts[at]!; i < starts[at + 1]!; i += 1) {
        const drop = (noWord && noSense) || (noWord && parts[i] === PART.word) || (noSense && parts[i] === PART.sense);
        this.#dropped[i] = drop ? 1 : 0;
      }
    }
  }

  #lookUp({ starts, rows, times }: Example, end: number): void {
    const words = this.#words;
    const { values } = this.table;
    words.fill(0, 0, end);
    for (let at = 0; at + 1 < starts.length; at += 1) {
      const to = (at + PAD) * WIDTH;
      for (let i = starts[at]!; i < starts[at + 1]!; i += 1) {
        if (this.#dropped[i] === 1) continue;
        const from = rows[i]! * WIDTH;
        for (let k = 0; k < WIDTH; k += 1) words[to + k]! += times[i]! * values[from + k]!;
      }
    }
  }

  #find(count: number): void {
    const words = this.#words;
    const { values } = this.dense;
    let filter = 0;
    let weights = 0;
    FILTERS_OVER.forEach((filters, over) => {
      const length = (over + 1) * WIDTH;
      for (let last = filter + filters; filter < last; filter += 1, weights += length) {
        let most = Number.NEGATIVE_INFINITY;
        let place = 0;
        for (let at = PAD - over; at < count + PAD; at += 1) {
          let sum = 0;
          const start = at * WIDTH;
          for (let i = 0; i < length; i += 1) sum += values[weights + i]! * words[start + i]!;
          if (sum > most) {
            most = sum;
            place = at;
          }
        }
        most += values[Dense.biasesAt + filter]!;
        this.#found[filter] = Math.max(0, most);
        this.#foundAt[filter] = most > 0 ? place : -1;
      }
    });
  }

  /** Outcomes from what the filters found, some of them dropped, and the slopes back to it. */
  #judge({ outcome, weight }: Example): void {
    const { values, slopes } = this.dense;
    const kept = this.#kept;
    const dropped = SHARE_DROPPED.filters;
    for (let i = 0; i < FILTERS_IN_ALL; i += 1) kept[i] = this.#random() < dropped ? 0 : 1 / (1 - dropped);
    const start = (at: number): number => Dense.outputsAt + at * (FILTERS_IN_ALL + 1);
    const sums = Array.from({ length: OUTCOMES }, (_, at) => {
      let sum = values[start(at) + FILTERS_IN_ALL]!;
      for (let i = 0; i < FILTERS_IN_ALL; i += 1) sum += values[start(at) + i]! * this.#found[i]! * kept[i]!;
      return sum;
    });
    const top = Math.max(...sums);
    const shares = sums.map((sum) => Math.exp(sum - top));
    const all = shares.reduce((sum, share) => sum + share, 0);
    this.#foundSlopes.fill(0);
    shares.forEach((share, at) => {
      const error = weight * (share / all - (at === outcome ? 1 : 0));
      slopes[start(at) + FILTERS_IN_ALL]! += error;
      for (let i = 0; i < FILTERS_IN_ALL; i += 1) {
        slopes[start(at) + i]! += error * this.#found[i]! * kept[i]!;
        this.#foundSlopes[i]! += error * values[start(at) + i]! * kept[i]!;
      }
    });
  }

  #backToWords(): void {
    const { values, slopes } = this.dense;
    let filter = 0;
    let weights = 0;
    FILTERS_OVER.forEach((filters, over) => {
      const length = (over + 1) * WIDTH;
      for (let last = filter + filters; filter < last; filter += 1, weights += length) {
        const slope = this.#foundSlopes[filter]!;
        const start = this.#foundAt[filter]! * WIDTH;
        if (start < 0 || slope === 0) continue;
        slopes[Dense.biasesAt + filter]! += slope;
        for (let i = 0; i < length; i += 1) {
          slopes[weights + i]! += slope * this.#words[start + i]!;
          this.#wordSlopes[start + i]! += slope * values[weights + i]!;
        }
      }
    });
  }

  #backToRows({ starts, rows, times }: Example): void {
    const { slopes } = this.table;
    for (let at = 0; at + 1 < starts.length; at += 1) {
      const from = (at + PAD) * WIDTH;
      for (let i = starts[at]!; i < starts[at + 1]!; i += 1) {
        if (this.#dropped[i] === 1) continue;
        this.table.meet(rows[i]!);
        const to = rows[i]! * WIDTH;
        for (let k = 0; k < WIDTH; k += 1) slopes[to + k]! += times[i]! * this.#wordSlopes[from + k]!;
      }
    }
  }

  learnt(): LearntNet {
    const { values } = this.dense;
    return {
      table: this.table.learnt(),
      filters: values.slice(0, Dense.biasesAt),
      biases: values.slice(Dense.biasesAt, Dense.outputsAt),
      outputs: values.slice(Dense.outputsAt),
    };
  }
}
