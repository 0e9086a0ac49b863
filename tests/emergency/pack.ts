/** Packs learnt weights as text, as src/emergency/learnt/packed.ts reads it. */
import { STEP_GROWTH } from "../../src/emergency/learnt/packed.ts";
import { FIRST_SIGN, SIGNS } from "../../src/emergency/learnt/signs.ts";

const HALF = SIGNS / 2;
const MOST_STEPS = HALF - 1;

const sign = (value: number): string => String.fromCharCode(FIRST_SIGN + value);

function digitsOf(gap: number): string {
  const digits = gap.toString(HALF).split("").map((digit) => Number.parseInt(digit, HALF));
  return digits.map((digit, i) => sign(i === digits.length - 1 ? digit : digit + HALF)).join("");
}

/** A weight is a whole number of steps, fewer than half of SIGNS up or down. */
export function packedWeights(weights: Float32Array): { text: string; step: number } {
  const largest = weights.reduce((most, weight) => Math.max(most, Math.abs(weight)), 0);
  const step = Number((largest / MOST_STEPS).toPrecision(6));
  const signs: string[] = [];
  let gap = 0;
  for (const weight of weights) {
    const level = Math.round(weight / step);
    if (level === 0) {
      gap += 1;
      continue;
    }
    signs.push(digitsOf(gap), sign(level + HALF));
    gap = 0;
  }
  return { text: signs.join(""), step };
}

/** Rows of so many numbers, each row with a step of its own; those of noughts are left out. */
export function packedRows(table: Float32Array, width: number): { text: string; step: number } {
  const largest = (row: number): number => table.subarray(row * width, (row + 1) * width).reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const rows = table.length / width;
  let all = 0;
  for (let row = 0; row < rows; row += 1) all = Math.max(all, largest(row));
  const step = Number((all / MOST_STEPS / STEP_GROWTH ** (SIGNS - 1)).toPrecision(6));
  const signs: string[] = [];
  let gap = 0;
  for (let row = 0; row < rows; row += 1) {
    const most = largest(row);
    const grown = Math.max(0, Math.min(SIGNS - 1, Math.ceil(Math.log(most / MOST_STEPS / step) / Math.log(STEP_GROWTH))));
    const levels = Array.from({ length: width }, (_, k) => Math.round((table[row * width + k] as number) / (step * STEP_GROWTH ** grown)));
    if (most === 0 || levels.every((level) => level === 0)) {
      gap += 1;
      continue;
    }
    signs.push(digitsOf(gap), sign(grown), ...levels.map((level) => sign(Math.max(-MOST_STEPS, Math.min(MOST_STEPS, level)) + HALF)));
    gap = 0;
  }
  return { text: signs.join(""), step };
}

/** Numbers of two signs each. */
export function packedNumbers(numbers: Float32Array): { text: string; step: number } {
  const largest = numbers.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const step = Number((largest / (HALF * SIGNS - 1)).toPrecision(6));
  const text = [...numbers].map((x) => {
    const level = Math.max(0, Math.min(SIGNS * SIGNS - 1, Math.round(x / step) + HALF * SIGNS));
    return sign(Math.floor(level / SIGNS)) + sign(level % SIGNS);
  }).join("");
  return { text, step };
}
