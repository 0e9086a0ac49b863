/** What a short reply is compared by: its words, pairs of them and groups of letters, what is denied in it, and the mean of its words' vectors. */
import { wordModel } from "../routing/route.ts";
import { isNegator, SLIGHT, type Clause } from "./claims.ts";
import { rootOf, tells } from "./nearness.ts";

export interface Traits {
  /** trait to how much it counts, before its rarity */
  readonly marks: ReadonlyMap<string, number>;
  /** mean direction of what is affirmed and of what is denied, of length 1, or 0 where there is nothing */
  readonly affirmed: Float32Array;
  readonly denied: Float32Array;
}

const WORD = 1;
const SLIGHT_WORD = 0.15;
const NEGATION = 0.4;
/** a denied word is also, faintly, the word itself */
const DENIED_TOO = 0.3;
const PAIR = 0.5;
const LETTERS = 0.35;
const GROUP = 4;
const LEAST_TELLING = 0.25;

export function traitsOf(clauses: readonly Clause[]): Traits {
  const { lexicon, vectors, dimensions } = wordModel("en");
  const marks = new Map<string, number>();
  const put = (mark: string, by: number): void => void ((marks.get(mark) ?? 0) < by && marks.set(mark, by));
  const affirmed = new Float32Array(dimensions);
  const deniedSum = new Float32Array(dimensions);
  for (const { claims } of clauses) {
    let before = "";
    for (const { word, denied } of claims) {
      const negates = isNegator(word);
      const slight = SLIGHT.has(word);
      const root = negates ? "not" : /^\d/.test(word) ? "#" : rootOf(word);
      const signed = denied ? `not ${root}` : root;
      put(signed, negates ? NEGATION : slight ? SLIGHT_WORD : WORD);
      if (denied) put(root, DENIED_TOO);
      put(`${before}>${root}`, PAIR);
      before = root;
      if (negates || slight) continue;
      const framed = `_${word}_`;
      if (root.length > 3) for (let i = 0; i + GROUP <= framed.length; i++) put(`${denied ? "!" : "~"}${framed.slice(i, i + GROUP)}`, LETTERS);
      const { row } = lexicon.entry(word);
      if (row >= 0) addUnit(denied ? deniedSum : affirmed, vectors.subarray(row * dimensions, (row + 1) * dimensions), Math.max(LEAST_TELLING, tells(word)));
    }
  }
  return { marks, affirmed: unit(affirmed), denied: unit(deniedSum) };
}

function addUnit(to: Float32Array, vector: Int8Array, by: number): void {
  const size = length(vector) || 1;
  for (let d = 0; d < to.length; d++) to[d] = (to[d] as number) + (by * (vector[d] as number)) / size;
}
function unit(vector: Float32Array): Float32Array {
  const size = length(vector);
  if (size > 0) for (let d = 0; d < vector.length; d++) vector[d] = (vector[d] as number) / size;
  return vector;
}
function length(vector: Float32Array | Int8Array): number {
  let sum = 0;
  for (const x of vector) sum += x * x;
  return Math.sqrt(sum);
}
