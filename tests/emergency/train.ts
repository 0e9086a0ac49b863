/**
 * Trains the emergency leaf's second look and writes weights.ts and net-weights.ts of src/emergency/learnt. Deterministic; two minutes on
 * one core. Learns from danger*.jsonl, near-misses*.jsonl and writer-*.jsonl here, but for those named unseen, and from what owners ask
 * of topics that are no emergency (tests/training).
 */
import { writeFileSync } from "node:fs";
import { LEARNT_KINDS } from "../../src/emergency/learnt/kinds.ts";
import { WIDTH } from "../../src/emergency/learnt/net-shape.ts";
import { labelledMessages } from "./labelled.ts";
import { learn } from "./learn.ts";
import { learnNet } from "./learn-net.ts";
import { packedNumbers, packedRows, packedWeights } from "./pack.ts";

const FOLDER = new URL("../../src/emergency/learnt/", import.meta.url);

function write(file: string, lines: readonly string[]): void {
  writeFileSync(new URL(file, FOLDER), ["// Written by tests/emergency/train.ts.", ...lines, ""].join("\n"));
}

const labelled = labelledMessages();
console.log(`${labelled.length} messages, ${labelled.filter(({ kind }) => kind >= 0).length} of danger`);

const { weights, kindWeights } = learn(labelled, LEARNT_KINDS.length);
const [danger, kinds] = [packedWeights(weights), packedWeights(kindWeights)];
write("weights.ts", [
  `export const STEP = ${danger.step};`,
  `export const WEIGHTS = "${danger.text}";`,
  `export const KIND_WEIGHTS = "${kinds.text}";`,
]);

const net = learnNet(labelled, console.log);
const table = packedRows(net.table, WIDTH);
const [filters, biases, outputs] = [packedNumbers(net.filters), packedNumbers(net.biases), packedNumbers(net.outputs)];
write("net-weights.ts", [
  `export const STEPS = { table: ${table.step}, filters: ${filters.step}, biases: ${biases.step}, outputs: ${outputs.step} };`,
  `export const TABLE = "${table.text}";`,
  `export const FILTERS = "${filters.text}";`,
  `export const BIASES = "${biases.text}";`,
  `export const OUTPUTS = "${outputs.text}";`,
]);
