/**
 * A small text net: each word a sum of rows of a table, filters over one, two and three neighbouring words, the most each filter finds
 * anywhere, and from that how likely each kind of danger is. Sees what words of like meaning have in common, which the linear model cannot.
 * A filter is linear in the words it lies over, so what a word adds to every filter is reckoned once and kept.
 */

import type { Numbered } from "./features.ts";
import { FILTERS_IN_ALL, FILTERS_OVER, OUTCOMES, SHARES, WIDTH } from "./net-shape.ts";
import { BIASES, FILTERS, OUTPUTS, STEPS, TABLE } from "./net-weights.ts";
import { numbersOf, type Rows, rowsOf } from "./packed.ts";
import { ROWS, type Take, takePlace, takeSenses, takeSentence, takeWord } from "./rows.ts";

export interface Net {
  readonly table: Rows;
  /** For each filter in turn the numbers of its first word, of its second... */
  readonly filters: ArrayLike<number>;
  readonly biases: ArrayLike<number>;
  /** For each outcome a weight for every filter, then one for none; the last outcome is calm. */
  readonly outputs: ArrayLike<number>;
}

const SHIPPED: Net = {
  table: rowsOf(TABLE, STEPS.table, ROWS, WIDTH),
  filters: numbersOf(FILTERS, STEPS.filters),
  biases: numbersOf(BIASES, STEPS.biases),
  outputs: numbersOf(OUTPUTS, STEPS.outputs),
};

/** Words and rows whose shares are kept; more would only cost memory. */
const MOST_KEPT = 4000;

export interface Judge {
  /** Above 0 when the words from `from` up to `to` are more likely danger than not. */
  score(from: number, to: number): number;
}

type Shares = Float32Array;

/** Judges stretches of a message by a net; the shares of its words are reckoned when first asked for. */
export function judgeOf(net: Net = SHIPPED): (message: Numbered) => Judge {
  const kept = new Map<string, Shares>();
  const keptRows = new Map<number, Shares>();
  const vector = new Float64Array(WIDTH);

  const addRow: Take = (row, times) => {
    const { values, steps } = net.table;
    const start = row * WIDTH;
    const weight = times * (steps[row] as number);
    for (let i = 0; i < WIDTH; i += 1) vector[i] = (vector[i] as number) + weight * (values[start + i] as number);
  };

  const sharesOfVector = (): Shares => {
    const shares = new Float32Array(SHARES);
    for (let share = 0; share < SHARES; share += 1) {
      let sum = 0;
      const start = share * WIDTH;
      for (let i = 0; i < WIDTH; i += 1) sum += (net.filters[start + i] as number) * (vector[i] as number);
      shares[share] = sum;
    }
    return shares;
  };

  const sharesOfRow = (row: number): Shares => {
    const known = keptRows.get(row);
    if (known) return known;
    vector.fill(0);
    addRow(row, 1);
    const shares = sharesOfVector();
    if (keptRows.size >= MOST_KEPT) keptRows.clear();
    keptRows.set(row, shares);
    return shares;
  };

  const sharesOfWord = (message: Numbered, at: number): Shares => {
    // the English of a word depends on its sentence
    const key = `${message.words[at]} ${message.sensed.tokens[at]?.word}`;
    const known = kept.get(key);
    if (known) return known;
    vector.fill(0);
    takeWord(message, at, addRow);
    const shares = sharesOfVector();
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(key, shares);
    return shares;
  };

  return (message) => {
    const { tokens } = message.sensed;
    /** The shares of each word, one word after the other; the last sentence's, and where words are reckoned already. */
    const all = new Float32Array(tokens.length * SHARES);
    const isReckoned = new Uint8Array(tokens.length);
    const ofSentence = new Float32Array(SHARES);
    let sentence = -1;
    let into: Shares = ofSentence;
    let start = 0;
    const addShares: Take = (row, times) => addTo(into, start, sharesOfRow(row), times);

    const reckon = (at: number): void => {
      isReckoned[at] = 1;
      const own = tokens[at]?.sentence ?? 0;
      if (own !== sentence) {
        sentence = own;
        ofSentence.fill(0);
        [into, start] = [ofSentence, 0];
        takeSentence(message, own, addShares);
      }
      [into, start] = [all, at * SHARES];
      const ofWord = sharesOfWord(message, at);
      all.set(ofWord, start);
      addTo(all, start, ofSentence, 1);
      takeSenses(message, at, addShares);
      takePlace(message, at, addShares);
    };

    return {
      score: (from, to) => {
        for (let at = from; at < to; at += 1) if (isReckoned[at] === 0) reckon(at);
        find(net, all, from, to);
        return scoreOfFound(net, found);
      },
    };
  };
}

function addTo(into: Shares, start: number, shares: Shares, times: number): void {
  for (let i = 0; i < SHARES; i += 1) into[start + i] = (into[start + i] as number) + times * (shares[i] as number);
}

const found = new Float32Array(FILTERS_IN_ALL);
const sums = new Float32Array(Math.max(...FILTERS_OVER));

/** The most each filter finds in the words from `from` up to `to`, what lies beyond them being nothing. */
function find({ biases }: Net, all: Shares, from: number, to: number): void {
  found.fill(Number.NEGATIVE_INFINITY);
  let filter = 0;
  let share = 0;
  for (let over = 0; over < FILTERS_OVER.length; over += 1) {
    const count = FILTERS_OVER[over] as number;
    for (let first = from - over; first < to; first += 1) {
      sums.fill(0);
      const last = Math.min(over, to - 1 - first);
      for (let i = Math.max(0, from - first); i <= last; i += 1) {
        let at = (first + i) * SHARES + share + i;
        for (let k = 0; k < count; k += 1, at += over + 1) sums[k] = (sums[k] as number) + (all[at] as number);
      }
      for (let k = 0; k < count; k += 1) {
        if ((sums[k] as number) > (found[filter + k] as number)) found[filter + k] = sums[k] as number;
      }
    }
    filter += count;
    share += count * (over + 1);
  }
  for (let i = 0; i < FILTERS_IN_ALL; i += 1) found[i] = Math.max(0, (found[i] as number) + (biases[i] as number));
}

function scoreOfFound({ outputs }: Net, most: Float32Array): number {
  let danger = 0;
  let calm = 0;
  for (let outcome = 0; outcome < OUTCOMES; outcome += 1) {
    const start = outcome * (FILTERS_IN_ALL + 1);
    let sum = outputs[start + FILTERS_IN_ALL] as number;
    for (let i = 0; i < FILTERS_IN_ALL; i += 1) sum += (outputs[start + i] as number) * (most[i] as number);
    if (outcome < OUTCOMES - 1) danger += Math.exp(sum);
    else calm = sum;
  }
  return Math.log(danger) - calm;
}
