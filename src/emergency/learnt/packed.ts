/** Undoes the packing of tests/emergency/pack.ts: weights kept as text, in the signs named in signs.ts. */

import { FIRST_SIGN, SIGNS } from "./signs.ts";

const HALF = SIGNS / 2;

/** Weights most of which are nought: for each that is not, how far on it stands and how large it is, in whole steps. */
export function weightsOf(text: string, count: number): Int8Array {
  const out = new Int8Array(count);
  eachPlace(text, 1, (at, i) => {
    out[at] = text.charCodeAt(i) - FIRST_SIGN - HALF;
  });
  return out;
}

export interface Rows {
  readonly values: ArrayLike<number>;
  /** What one step of a row's values is worth. */
  readonly steps: ArrayLike<number>;
}

/** How much a row's step grows from one sign to the next. */
export const STEP_GROWTH = 1.2;

/** Rows most of which are nought: for each that is not, how far on it stands, how large its step is, and its values. */
export function rowsOf(text: string, smallestStep: number, count: number, width: number): Rows {
  const values = new Int8Array(count * width);
  const steps = new Float32Array(count);
  eachPlace(text, 1 + width, (row, i) => {
    steps[row] = smallestStep * STEP_GROWTH ** (text.charCodeAt(i) - FIRST_SIGN);
    for (let k = 0; k < width; k += 1) values[row * width + k] = text.charCodeAt(i + 1 + k) - FIRST_SIGN - HALF;
  });
  return { values, steps };
}

/** Each place that is not nought, and where in the text its `length` signs begin; before them stands the gap, in digits of base HALF. */
function eachPlace(text: string, length: number, take: (place: number, at: number) => void): void {
  let place = -1;
  let gap = 0;
  for (let i = 0; i < text.length; i += 1) {
    const digit = text.charCodeAt(i) - FIRST_SIGN;
    gap = gap * HALF + (digit % HALF);
    if (digit >= HALF) continue;
    place += gap + 1;
    gap = 0;
    take(place, i + 1);
    i += length;
  }
}

/** Numbers of two signs each. */
export function numbersOf(text: string, step: number): Float32Array {
  const out = new Float32Array(text.length / 2);
  for (let i = 0; i < out.length; i += 1) {
    const high = text.charCodeAt(2 * i) - FIRST_SIGN;
    const low = text.charCodeAt(2 * i + 1) - FIRST_SIGN;
    out[i] = (high * SIGNS + low - HALF * SIGNS) * step;
  }
  return out;
}
