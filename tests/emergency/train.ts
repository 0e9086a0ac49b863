/**
 * Trains the emergency leaf's second look and writes src/emergency/learnt/weights.ts. Deterministic; seconds on one core.
 * Learns from danger*.jsonl and near-misses*.jsonl here, but for those named unseen, and from what owners ask of topics that are no
 * emergency (tests/training).
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { learn, packed, type Labelled } from "./learn.ts";
import { LEARNT_KINDS as KINDS } from "../../src/emergency/learnt/kinds.ts";

const HERE = new URL("./", import.meta.url);
const TOPICS = new URL("../training/", import.meta.url);
const WEIGHTS_FILE = new URL("../../src/emergency/learnt/weights.ts", import.meta.url);

/** Topics whose messages may be danger now or not; those judged by hand stand in the files here. */
const EITHER = new Set(
  ("co-alarm chimney-fire back-puff ash-removal close-down children-and-clearance smoke-at-lighting smoke-mid-burn over-firing "
    + "stuck-damper cracks").split(" "),
);
/** Danger after all, in a message that is out of scope for everything else. */
const DANGER_AFTER_ALL = new Set([
  "Der Schornstein brennt", "Mitä teen kun häkävaroitin soi?",
  "the electric fire in the bedroom smells of burning", "the wall socket sparks",
]);

const WEIGHT = { danger: 1, developed: 0.7, nearMiss: 1.5, topic: 1 };

function lines<T>(folder: URL, file: string): T[] {
  return readFileSync(new URL(file, folder), "utf8").trim().split("\n").map((line) => JSON.parse(line) as T);
}

export function labelledMessages(): Labelled[] {
  const dangers = (file: string, weight: number): Labelled[] =>
    lines<{ text: string; kind: (typeof KINDS)[number] }>(HERE, file)
      .map(({ text, kind }) => ({ text, kind: KINDS.indexOf(kind), weight }));
  const calm = (file: string): Labelled[] =>
    lines<{ text: string }>(HERE, file).map(({ text }) => ({ text, kind: -1, weight: WEIGHT.nearMiss }));
  const asked = readdirSync(TOPICS).filter((file) => file.endsWith(".jsonl")).sort()
    .flatMap((file) => lines<{ text: string; topic: string; also: string[] }>(TOPICS, file))
    .filter(({ text, topic, also }) => ![topic, ...also].some((each) => EITHER.has(each)) && !DANGER_AFTER_ALL.has(text))
    .map(({ text }) => ({ text, kind: -1, weight: WEIGHT.topic }));
  return [
    ...dangers("danger.jsonl", WEIGHT.developed), ...dangers("danger-more.jsonl", WEIGHT.danger),
    ...calm("near-misses.jsonl"), ...calm("near-misses-more.jsonl"), ...asked,
  ];
}

if (import.meta.main) {
  const labelled = labelledMessages();
  const { weights, kindWeights } = learn(labelled, KINDS.length);
  const [danger, kinds] = [packed(weights), packed(kindWeights)];
  writeFileSync(WEIGHTS_FILE, [
    "// Written by tests/emergency/train.ts.",
    `export const STEP = ${danger.step};`,
    `export const WEIGHTS = "${danger.text}";`,
    `export const KIND_WEIGHTS = "${kinds.text}";`,
    "",
  ].join("\n"));
  console.log(`${labelled.length} messages, ${labelled.filter(({ kind }) => kind >= 0).length} of danger`);
}
