import { readFileSync } from "node:fs";
import type { EmergencyKind } from "../../src/emergency/index.ts";

function lines<T>(file: string): T[] {
  return readFileSync(new URL(file, import.meta.url), "utf8").trim().split("\n").map((line) => JSON.parse(line) as T);
}

/** Somebody may be in danger now; the kind is the emergency that must be answered, first or among others. */
export const DANGER = lines<{ text: string; kind: EmergencyKind }>("danger.jsonl");
/** The same words, and no danger now. */
export const NEAR_MISSES = lines<{ text: string; why: string }>("near-misses.jsonl");
/** Many more of both, from which the learnt layer learns. */
export const DANGER_MORE = lines<{ text: string; kind: EmergencyKind; oblique?: boolean }>("danger-more.jsonl");
export const NEAR_MISSES_MORE = lines<{ text: string; why: string }>("near-misses-more.jsonl");
/** Written in a sitting of their own and never learnt from; oblique ones hold none of the words of their emergency. */
export const DANGER_UNSEEN = lines<{ text: string; kind: EmergencyKind; oblique: boolean }>("danger-unseen.jsonl");
export const NEAR_MISSES_UNSEEN = lines<{ text: string }>("near-misses-unseen.jsonl");
export const KINDS: readonly EmergencyKind[] = [
  "co-alarm", "chimney-fire", "house-fire", "room-smoke", "burn", "back-puff", "damper-over-embers", "hot-ash",
];
