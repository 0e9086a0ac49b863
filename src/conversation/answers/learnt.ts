/**
 * The second reader of replies: learns from what people are known to have typed for each answer of a question (knowledge/said/), and from the
 * answer's own label and phrases. A logistic regression over the traits of a reply, fitted in some 7 ms at a question's first use.
 */
import type { Sign } from "../../knowledge/schemas.ts";
import { repliesOf } from "../../knowledge/said.ts";
import { clausesOf, type Clause } from "./claims.ts";
import { traitsOf, type Traits } from "./traits.ts";

/** Chance of each answer, and of `unknown` and `beside`, by the examples alone; all together 1. */
export type Chances = ReadonlyMap<string, number>;
export interface Example {
  readonly answer: string;
  readonly said: string;
}

/** fewer replies than this teach nothing */
const FEWEST = 8;
const ROUNDS = 4;
const RATE = 2;
const SLOWER = 0.1;
const BIAS_RATE = 0.1;
/** a rare answer learns faster, up to so much */
const RARE_MOST = 3;
/** steps through the examples in an order that mixes answers; prime, so every one comes once a round */
const STRIDE = 7919;
const MEANING = 0.7;
const DENIED_MEANING = 0.35;
/** a mark no example has leaves less for those that some have */
const STRANGE = 0.3;

/** A reply as the regression sees it: numbers and weights of its marks, then the direction of its words. */
interface Seen {
  readonly marks: Int32Array;
  readonly weights: Float32Array;
  readonly meaning: Float32Array;
}
export interface Learnt {
  readonly answers: readonly string[];
  readonly numbers: ReadonlyMap<string, number>;
  readonly rarity: Float32Array;
  /** how rare a mark is that no example has */
  readonly rarest: number;
  readonly byMark: readonly Float32Array[];
  readonly byMeaning: readonly Float32Array[];
  readonly bias: Float32Array;
}

const prepared = new WeakMap<object, Learnt | null>();

/** What is known of the answers to a question; null where there are no examples. */
export function learntOf(sign: Sign): Learnt | null {
  if (!sign.said) return null;
  const known = prepared.get(sign);
  if (known !== undefined) return known;
  const replies = repliesOf(sign);
  const own = (sign.answers ?? []).flatMap(({ id, label, words = [] }) => [label, ...words].filter(Boolean).map((said) => ({ answer: id, said })));
  const made = replies.length < FEWEST ? null : learn([...replies, ...own]);
  prepared.set(sign, made);
  return made;
}

export function learn(examples: readonly Example[]): Learnt {
  const answers = [...new Set(examples.map(({ answer }) => answer))];
  const traits = examples.map(({ said }) => traitsOf(clausesOf(said)));
  const numbers = new Map<string, number>();
  const count: number[] = [];
  for (const { marks } of traits) {
    for (const mark of marks.keys()) {
      const number = numbers.get(mark) ?? numbers.size;
      numbers.set(mark, number);
      count[number] = (count[number] ?? 0) + 1;
    }
  }
  const rare = (having: number): number => Math.log((examples.length + 1) / (having + 0.5));
  const learnt: Learnt = {
    answers, numbers, rarity: Float32Array.from(count, rare), rarest: rare(0),
    byMark: answers.map(() => new Float32Array(numbers.size)),
    byMeaning: answers.map(() => new Float32Array(2 * (traits[0]?.affirmed.length ?? 0))),
    bias: new Float32Array(answers.length),
  };
  const seen = traits.map((one) => see(learnt, one));
  const meant = examples.map(({ answer }) => answers.indexOf(answer));
  const pull = answers.map((_, a) => Math.sqrt(Math.min(RARE_MOST, examples.length / answers.length / meant.filter((one) => one === a).length)));
  for (let round = 0; round < ROUNDS; round++) {
    const rate = RATE / (1 + SLOWER * round);
    for (let i = 0; i < seen.length; i++) {
      const at = (i * STRIDE + round) % seen.length;
      step(learnt, seen[at] as Seen, meant[at] as number, rate, pull);
    }
  }
  return learnt;
}

function step(learnt: Learnt, seen: Seen, meant: number, rate: number, pull: readonly number[]): void {
  const { byMark, byMeaning, bias } = learnt;
  const chances = softmax(scores(learnt, seen));
  for (let a = 0; a < bias.length; a++) {
    const by = rate * (pull[a] as number) * ((a === meant ? 1 : 0) - (chances[a] as number));
    bias[a] = (bias[a] as number) + BIAS_RATE * by;
    const marks = byMark[a] as Float32Array;
    for (let k = 0; k < seen.marks.length; k++) marks[seen.marks[k] as number] = (marks[seen.marks[k] as number] as number) + by * (seen.weights[k] as number);
    const meaning = byMeaning[a] as Float32Array;
    for (let d = 0; d < meaning.length; d++) meaning[d] = (meaning[d] as number) + by * (seen.meaning[d] as number);
  }
}

function see({ numbers, rarity, rarest }: Learnt, { marks, affirmed, denied }: Traits): Seen {
  const found: number[] = [];
  const weights: number[] = [];
  let squares = 0;
  for (const [mark, by] of marks) {
    const number = numbers.get(mark);
    const weight = by * (number === undefined ? rarest : (rarity[number] as number));
    squares += (number === undefined ? STRANGE : 1) * weight * weight;
    if (number === undefined) continue;
    found.push(number);
    weights.push(weight);
  }
  const size = Math.sqrt(squares) || 1;
  const meaning = new Float32Array(2 * affirmed.length);
  for (let d = 0; d < affirmed.length; d++) {
    meaning[d] = MEANING * (affirmed[d] as number);
    meaning[affirmed.length + d] = DENIED_MEANING * (denied[d] as number);
  }
  return { marks: Int32Array.from(found), weights: Float32Array.from(weights, (weight) => weight / size), meaning };
}

function scores({ byMark, byMeaning, bias }: Learnt, { marks, weights, meaning }: Seen): Float64Array {
  const out = new Float64Array(bias.length);
  for (let a = 0; a < out.length; a++) {
    const [ofMarks, ofMeaning] = [byMark[a] as Float32Array, byMeaning[a] as Float32Array];
    let sum = bias[a] as number;
    for (let k = 0; k < marks.length; k++) sum += (ofMarks[marks[k] as number] as number) * (weights[k] as number);
    for (let d = 0; d < meaning.length; d++) sum += (ofMeaning[d] as number) * (meaning[d] as number);
    out[a] = sum;
  }
  return out;
}

function softmax(scored: Float64Array): Float64Array {
  const most = Math.max(...scored);
  const raised = scored.map((score) => Math.exp(score - most));
  const all = raised.reduce((a, b) => a + b, 0);
  return raised.map((one) => one / all);
}

export function chancesOf(learnt: Learnt, clauses: readonly Clause[]): Chances {
  const chances = softmax(scores(learnt, see(learnt, traitsOf(clauses))));
  return new Map(learnt.answers.map((answer, a) => [answer, chances[a] as number]));
}
