/** From labelled messages to a model: what `train.ts` ships and what `evaluate.ts` measures are made here, by the same steps. */
import { readFileSync } from "node:fs";
import { buildClassifier, type Classifier, quantityVectors } from "../../src/conversation/routing/classify.ts";
import { BUCKETS, read } from "../../src/conversation/routing/features.ts";
import { buildLexicon, type Lexicon, type LexiconData } from "../../src/conversation/routing/lexicon.ts";
import { type Calibration, type Model, VECTOR_SCALE, VECTORS_FILE, type VectorsHeader } from "../../src/conversation/routing/model.ts";
import { normalise } from "../../src/conversation/routing/normalise.ts";
import { unpack } from "../../src/conversation/routing/pack.ts";
import { tokenise } from "../../src/conversation/routing/tokens.ts";
import { TOPICS } from "../../src/conversation/topics.ts";
import { loadWords, type Message } from "./data.ts";
import { type Labelled, trainLinear } from "./linear.ts";
import { type NetExample, trainNet } from "./net.ts";

export const FILTERS = 96;
export const UNCALIBRATED: Calibration = { temperature: 1, linearShare: 0.5 };

export interface Vectors { readonly words: readonly string[]; readonly dimensions: number; readonly bytes: Int8Array }

export function loadVectors(): Vectors {
  const { header, bytes } = unpack<VectorsHeader>(readFileSync(VECTORS_FILE));
  return { words: header.words.split(" "), dimensions: header.dimensions, bytes: new Int8Array(bytes) };
}

/** The words file compiled, with every word that at least two well-spelt messages use. */
export function lexiconData(messages: readonly Message[]): LexiconData {
  const count = new Map<string, number>();
  for (const message of messages) {
    if (message.style === "misspelt" || message.topic === "out-of-scope") continue;
    for (const token of tokenise(normalise(message.text))) if (token.kind === "word") count.set(token.text, (count.get(token.text) ?? 0) + 1);
  }
  const vocabulary = [...count].filter(([word, times]) => times >= 2 && word.length > 2).sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  const words = loadWords();
  return { senses: Object.fromEntries(words.senses), spellings: Object.fromEntries(words.spellings), vocabulary: vocabulary.map(([word]) => word) };
}

export interface Example extends Labelled, NetExample { readonly message: Message }

export function examplesOf(messages: readonly Message[], lexicon: Lexicon, vectorRows: number): Example[] {
  return messages.map((message) => {
    const reading = read(message.text, lexicon);
    return {
      message, reading,
      label: TOPICS.indexOf(message.topic),
      weight: 1,
      sequence: reading.sequence.map((item) => (item >= 0 ? item : vectorRows - 1 - item)),
    };
  });
}

/** Trains on the examples and returns the model as it would be shipped, quantised. */
export function fit(examples: readonly Example[], lexicon: Lexicon, vectors: Vectors, calibration = UNCALIBRATED): Model {
  const classes = TOPICS.length;
  const linear = trainLinear(examples, classes);
  const quantities = quantityVectors(vectors.dimensions);
  const table = new Float32Array(vectors.bytes.length + quantities.length);
  for (let i = 0; i < vectors.bytes.length; i++) table[i] = (vectors.bytes[i] as number) / VECTOR_SCALE;
  table.set(quantities, vectors.bytes.length);
  const net = trainNet(examples, table, { dimensions: vectors.dimensions, filters: FILTERS, classes },
    { epochs: 10, rate: 2e-3, batch: 16, dropout: 0.5, wordDropout: 0.1, l2: 0.02, seed: 3 });
  const steps = new Float32Array(BUCKETS);
  const quantised = new Int8Array(BUCKETS * classes);
  for (let bucket = 0; bucket < BUCKETS; bucket++) {
    const row = linear.weights.subarray(bucket * classes, (bucket + 1) * classes);
    const top = row.reduce((most, weight) => Math.max(most, Math.abs(weight)), 0);
    const step = top / 127;
    steps[bucket] = step;
    if (step > 0) row.forEach((weight, c) => { quantised[bucket * classes + c] = Math.round(weight / step); });
  }
  return {
    topics: TOPICS, lexicon, calibration,
    linearSteps: steps, linear: quantised,
    nets: [{ conv: net.conv, convBias: net.convBias, out: net.out, outBias: net.outBias }],
    filters: FILTERS, dimensions: vectors.dimensions, vectors: vectors.bytes, vectorRows: vectors.words.length,
  };
}

export interface Judged { readonly message: Message; readonly label: number; readonly probabilities: Float64Array }

/** Each message judged by a model that has not seen its fold; folds 0 to `run` - 1 are judged. */
export function crossValidate(examples: readonly Example[], lexicon: Lexicon, vectors: Vectors, foldOf: readonly number[], run: number): Judged[] {
  const judged: Judged[] = [];
  for (let fold = 0; fold < run; fold++) {
    const classifier: Classifier = buildClassifier(fit(examples.filter((_, i) => foldOf[i] !== fold), lexicon, vectors));
    for (const example of examples.filter((_, i) => foldOf[i] === fold)) {
      judged.push({ message: example.message, label: example.label, probabilities: Float64Array.from(classifier.probabilities(example.reading)) });
    }
  }
  return judged;
}

/** Temperature that makes the held-out probabilities tell the truth: least negative log likelihood over a grid. */
export function bestTemperature(judged: readonly Judged[]): number {
  let best = 1;
  let least = Infinity;
  for (let temperature = 0.3; temperature <= 2; temperature += 0.05) {
    let loss = 0;
    for (const { probabilities, label } of judged) {
      let sum = 0;
      for (const p of probabilities) sum += Math.max(p, 1e-9) ** (1 / temperature);
      loss -= Math.log(Math.max(probabilities[label] as number, 1e-9) ** (1 / temperature) / sum);
    }
    if (loss < least) { least = loss; best = temperature; }
  }
  return Math.round(best * 100) / 100;
}

export const prepare = (messages: readonly Message[]): { data: LexiconData; lexicon: Lexicon; vectors: Vectors; examples: Example[] } => {
  const vectors = loadVectors();
  const data = lexiconData(messages);
  const lexicon = buildLexicon(data, vectors.words);
  return { data, lexicon, vectors, examples: examplesOf(messages, lexicon, vectors.words.length) };
};
