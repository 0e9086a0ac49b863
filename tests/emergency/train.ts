/**
 * Trains the emergency leaf's second look and writes src/emergency/learnt/weights.ts. Deterministic; seconds on one core.
 * Learns from danger*.jsonl, near-misses*.jsonl and writer-*.jsonl here, but for those named unseen, and from what owners ask of topics
 * that are no emergency (tests/training).
 */
import { writeFileSync } from "node:fs";
import { LEARNT_KINDS } from "../../src/emergency/learnt/kinds.ts";
import { labelledMessages } from "./labelled.ts";
import { learn, packed } from "./learn.ts";

const WEIGHTS_FILE = new URL("../../src/emergency/learnt/weights.ts", import.meta.url);

const labelled = labelledMessages();
const { weights, kindWeights } = learn(labelled, LEARNT_KINDS.length);
const [danger, kinds] = [packed(weights), packed(kindWeights)];
writeFileSync(WEIGHTS_FILE, [
  "// Written by tests/emergency/train.ts.",
  `export const STEP = ${danger.step};`,
  `export const WEIGHTS = "${danger.text}";`,
  `export const KIND_WEIGHTS = "${kinds.text}";`,
  "",
].join("\n"));
console.log(`${labelled.length} messages, ${labelled.filter(({ kind }) => kind >= 0).length} of danger`);
