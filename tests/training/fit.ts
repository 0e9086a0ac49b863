/** From labelled messages to a model: what `train.ts` ships and what `evaluate.ts` measures are made here, by the same steps. */
import { readFileSync } from "node:fs";
import { buildClassifier, quantityVectors } from "../../src/conversation/routing/classify.ts";
import { read } from "../../src/conversation/routing/features.ts";
import { inBoth } from "../../src/conversation/routing/german.ts";
import { combine, type Scores } from "../../src/conversation/routing/combine.ts";
import { buildLexicon, type Lexicon, type LexiconData } from "../../src/conversation/routing/lexicon.ts";
import { type Calibration, type Linear, type Model, VECTOR_SCALE, VECTORS_FILE, type VectorsHeader } from "../../src/conversation/routing/model.ts";
import { normalise } from "../../src/conversation/routing/normalise.ts";
import { unpack } from "../../src/conversation/routing/pack.ts";
import { tokenise } from "../../src/conversation/routing/tokens.ts";
import type { Spoken } from "../../src/conversation/spoken.ts";
import { TOPICS } from "../../src/conversation/topics.ts";
import { loadWords, type Message } from "./data.ts";
import { type Labelled, type LinearOptions, type LinearWeights, trainLinear } from "./linear.ts";
import { type NetExample, trainNet } from "./net.ts";

export const FILTERS = 96;
export const LINEAR_OPTIONS: LinearOptions = { cost: 1, passes: 14, least: 2, seed: 7 };
const NET_SEEDS = [3, 4];
const OUTSIDE = TOPICS.indexOf("out-of-scope");

export interface Vectors { readonly words: readonly string[]; readonly dimensions: number; readonly bytes: Int8Array }

export function loadVectors(): Vectors {
  const { header, bytes } = unpack<VectorsHeader>(readFileSync(VECTORS_FILE));
  return { words: header.words.split(" "), dimensions: header.dimensions, bytes: new Int8Array(bytes) };
}

/** The words file compiled, with every word that at least two well-spelt messages use. */
export function lexiconData(messages: readonly Message[], language: Spoken = "en"): LexiconData {
  const count = new Map<string, number>();
  for (const message of messages) {
    if (message.style === "misspelt" || message.topic === "out-of-scope") continue;
    for (const token of tokenise(normalise(message.language === "de" ? inBoth(message.text) : message.text))) if (token.kind === "word") count.set(token.text, (count.get(token.text) ?? 0) + 1);
  }
  const vocabulary = [...count].filter(([word, times]) => times >= 2 && word.length > 2).sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  const words = loadWords(language);
  return { senses: Object.fromEntries(words.senses), spellings: Object.fromEntries(words.spellings), vocabulary: vocabulary.map(([word]) => word) };
}

export interface Example extends Labelled, NetExample { readonly message: Message }

/** @param german how a German message is read; by default in both languages, as in use */
export function examplesOf(messages: readonly Message[], lexicon: Lexicon, vectorRows: number, german: (text: string) => string = inBoth): Example[] {
  return messages.map((message) => {
    const reading = read(message.language === "de" ? german(message.text) : message.text, lexicon);
    return {
      message, reading,
      label: TOPICS.indexOf(message.topic),
      sequence: reading.sequence.map((item) => (item >= 0 ? item : vectorRows - 1 - item)),
    };
  });
}

/** A first guess, good enough to run a model whose parts are looked at one by one. */
export const UNCALIBRATED: Calibration = { linear: 4, net: 0.5, outside: [0, 2, -2, 0, 0.3] };

/** Trains on the examples and returns the model as it would be shipped, quantised. */
export function fit(examples: readonly Example[], lexicon: Lexicon, vectors: Vectors, calibration = UNCALIBRATED): Model {
  const classes = TOPICS.length;
  const quantities = quantityVectors(vectors.dimensions);
  const table = new Float32Array(vectors.bytes.length + quantities.length);
  for (let i = 0; i < vectors.bytes.length; i++) table[i] = (vectors.bytes[i] as number) / VECTOR_SCALE;
  table.set(quantities, vectors.bytes.length);
  const nets = NET_SEEDS.map((seed) => {
    const { conv, convBias, out, outBias } = trainNet(examples, table, { dimensions: vectors.dimensions, filters: FILTERS, classes },
      { epochs: 10, rate: 2e-3, batch: 16, dropout: 0.5, wordDropout: 0.1, l2: 0.02, seed });
    return { conv, convBias, out, outBias };
  });
  return {
    topics: TOPICS, lexicon, calibration,
    linear: quantised(trainLinear(examples, classes, LINEAR_OPTIONS), classes),
    nets,
    filters: FILTERS, dimensions: vectors.dimensions, vectors: vectors.bytes,
  };
}

function quantised({ known, weights, bias }: LinearWeights, classes: number): Linear {
  const steps = new Float32Array(known.buckets.length);
  const bytes = new Int8Array(weights.length);
  for (let row = 0; row < steps.length; row++) {
    const own = weights.subarray(row * classes, (row + 1) * classes);
    const step = own.reduce((most, weight) => Math.max(most, Math.abs(weight)), 0) / 127;
    steps[row] = step;
    if (step > 0) own.forEach((weight, c) => { bytes[row * classes + c] = Math.round(weight / step); });
  }
  return { known, bias, steps, weights: bytes };
}

export interface Held { readonly message: Message; readonly label: number; readonly scores: Scores }

/** Each message scored by a model that has not seen its fold; folds 0 to `run` - 1 are scored. */
export function crossValidate(examples: readonly Example[], lexicon: Lexicon, vectors: Vectors, foldOf: readonly number[], run: number): Held[] {
  const held: Held[] = [];
  for (let fold = 0; fold < run; fold++) {
    const classifier = buildClassifier(fit(examples.filter((_, i) => foldOf[i] !== fold), lexicon, vectors));
    for (const { message, label, reading } of examples.filter((_, i) => foldOf[i] === fold)) {
      const { linear, net } = classifier.scores(reading);
      held.push({ message, label, scores: { linear: linear.slice(), net: net.slice() } });
    }
  }
  return held;
}

export const judge = (scores: Scores, calibration: Calibration): Float64Array => combine(scores, calibration, OUTSIDE, new Float64Array(TOPICS.length));

export const prepare = (messages: readonly Message[], language: Spoken = "en"): { data: LexiconData; lexicon: Lexicon; vectors: Vectors; examples: Example[] } => {
  const vectors = loadVectors();
  const data = lexiconData(messages, language);
  const lexicon = buildLexicon(data, vectors.words, language === "de" ? "not-english" : "all");
  return { data, lexicon, vectors, examples: examplesOf(messages, lexicon, vectors.words.length) };
};
