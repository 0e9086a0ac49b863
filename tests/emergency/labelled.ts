/** Every labelled message the learnt layer may learn from or be judged by, with the hand that wrote it. */
import { readdirSync, readFileSync } from "node:fs";
import { LEARNT_KINDS as KINDS } from "../../src/emergency/learnt/kinds.ts";
import { EVERYDAY, type Labelled } from "./learn.ts";

const HERE = new URL("./", import.meta.url);
const TOPICS = new URL("../training/", import.meta.url);

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

type Kind = (typeof KINDS)[number];

function lines<T>(folder: URL, file: string): T[] {
  return readFileSync(new URL(file, folder), "utf8").trim().split("\n").map((line) => JSON.parse(line) as T);
}

function dangers(file: string, weight: number): Labelled[] {
  return lines<{ text: string; kind: Kind }>(HERE, file).map(({ text, kind }) => ({ text, kind: KINDS.indexOf(kind), weight, hand: file }));
}

function calm(file: string): Labelled[] {
  return lines<{ text: string }>(HERE, file).map(({ text }) => ({ text, kind: -1, weight: WEIGHT.nearMiss, hand: file }));
}

/** Files in which one writer tells both danger and near misses. */
export const WRITERS = readdirSync(HERE).filter((file) => file.startsWith("writer-") && file.endsWith(".jsonl")).sort();

function both(file: string): Labelled[] {
  return lines<{ text: string; danger: boolean; kind: Kind | null }>(HERE, file).map(({ text, danger, kind }) => ({
    text, kind: danger && kind ? KINDS.indexOf(kind) : -1, weight: danger ? WEIGHT.danger : WEIGHT.nearMiss, hand: file,
  }));
}

function askedOfTopics(): Labelled[] {
  return readdirSync(TOPICS).filter((file) => file.endsWith(".jsonl")).sort()
    .flatMap((file) => lines<{ text: string; topic: string; also: string[] }>(TOPICS, file))
    .filter(({ text, topic, also }) => ![topic, ...also].some((each) => EITHER.has(each)) && !DANGER_AFTER_ALL.has(text))
    .map(({ text }) => ({ text, kind: -1, weight: WEIGHT.topic, hand: EVERYDAY }));
}

/** What is learnt from. */
export function labelledMessages(): Labelled[] {
  return [
    ...dangers("danger.jsonl", WEIGHT.developed), ...dangers("danger-more.jsonl", WEIGHT.danger),
    ...calm("near-misses.jsonl"), ...calm("near-misses-more.jsonl"), ...WRITERS.flatMap(both), ...askedOfTopics(),
  ];
}

/** What is never learnt from. */
export function unseenMessages(): Labelled[] {
  return [...dangers("danger-unseen.jsonl", WEIGHT.danger), ...calm("near-misses-unseen.jsonl")];
}
