/** Wood in the measures of the hand: "one basket", "twelve splits", "to the mark", "two armfuls". */
import { readNumberWords } from "./number-words.ts";
import { isWord, scan, wordAt, type Span, type Token } from "./tokens.ts";

export type HandMeasure = "basket" | "split" | "mark" | "armful";
export interface Amount {
  readonly count: number;
  readonly low?: number;
  readonly high?: number;
  readonly measure: HandMeasure;
  readonly at: Span;
}

const MEASURES: Readonly<Record<string, HandMeasure>> = {
  basket: "basket", baskets: "basket", basketful: "basket", basketfuls: "basket", basketsful: "basket", carrier: "basket",
    bucket: "basket", buckets: "basket", crate: "basket", crates: "basket", trug: "basket",
  split: "split", splits: "split", log: "split", logs: "split", piece: "split", pieces: "split", stick: "split", sticks: "split",
    billet: "split", billets: "split", chunks: "split", quarters: "split",
  armful: "armful", armfuls: "armful", armsful: "armful", armload: "armful", armloads: "armful", armfull: "armful", armfulls: "armful",
};
const BETWEEN = new Set(["big", "small", "large", "good", "full", "heaped", "wood", "log", "more", "medium", "thick", "thin", "birch",
  "oak", "pine", "of", "dry", "split", "whole", "nice", "heaping", "level", "firewood"]);
const MARKS = ["mark", "line", "throat", "brim"];

/** All amounts of a text in order. */
export const readAmounts = (text: string): Amount[] => amountsIn(readNumberWords(scan(text)));

export function amountsIn(tokens: readonly Token[]): Amount[] {
  const out: Amount[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    const amount = counted(tokens, i) ?? marked(tokens, i);
    if (!amount) continue;
    out.push(amount.amount);
    i = amount.to - 1;
  }
  return out;
}

function counted(tokens: readonly Token[], i: number): { amount: Amount; to: number } | null {
  const token = tokens[i];
  let count: number;
  let at = i + 1;
  let range: { low: number; high: number } | null = null;
  if (token?.kind === "number" && !token.ordinal) {
    count = token.value;
    const joint = tokens[at];
    const second = tokens[at + 1];
    if (second?.kind === "number" && (isWord(joint, "or", "to") || (joint?.kind === "sign" && (joint.sign === "-" || joint.sign === "–")))
      && second.value > count) {
      range = { low: count, high: second.value };
      count = (count + second.value) / 2;
      at += 2;
    }
    if (token.loose) range ??= { low: 2, high: 4 };
  } else if (isWord(token, "a", "an", "one", "another", "single")) count = 1;
  else if (isWord(token, "half") && isWord(tokens[at], "a", "the")) {
    count = 0.5;
    at += 1;
  } else return null;
  for (let skipped = 0; skipped < 2 && tokens[at]?.kind === "word" && BETWEEN.has(wordAt(tokens[at]))
    && !(wordAt(tokens[at]) in MEASURES && !(wordAt(tokens[at + 1]) in MEASURES)); skipped += 1) at += 1;
  const measure = MEASURES[wordAt(tokens[at])];
  // "one split" is a log, "a log entry" and "one log: 12 kg" are none
  const article = token?.kind === "word" && !isWord(token, "one", "half");
  if (!measure || !(count > 0) || count > 500 || (article && measure === "split")) return null;
  if (isWord(tokens[at + 1], "and") && isWord(tokens[at + 2], "a") && isWord(tokens[at + 3], "half") && Number.isInteger(count)) {
    count += 0.5;
    at += 3;
  }
  const span: Span = [(tokens[i] as Token).at[0], (tokens[at] as Token).at[1]];
  return { amount: { count, ...(range ?? {}), measure, at: span }, to: at + 1 };
}

/** "to the mark", "up to the line", "filled to the mark". */
function marked(tokens: readonly Token[], i: number): { amount: Amount; to: number } | null {
  if (!isWord(tokens[i], "to") || !isWord(tokens[i + 1], "the", "its", "my")) return null;
  const at = isWord(tokens[i + 2], "max", "maximum", "upper", "top", "usual", "builders", "fill") ? i + 3 : i + 2;
  if (!isWord(tokens[at], ...MARKS)) return null;
  const half = isWord(tokens[i - 1], "halfway", "half") || (isWord(tokens[i - 1], "way") && isWord(tokens[i - 2], "half"));
  return { amount: { count: half ? 0.5 : 1, measure: "mark", at: [(tokens[i] as Token).at[0], (tokens[at] as Token).at[1]] }, to: at + 1 };
}
