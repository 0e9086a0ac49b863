import { readFileSync } from "node:fs";
import type { EmergencyKind } from "../../src/emergency/index.ts";

function lines<T>(file: string): T[] {
  return readFileSync(new URL(file, import.meta.url), "utf8").trim().split("\n").map((line) => JSON.parse(line) as T);
}

/** Somebody may be in danger now; the kind is the emergency that must be answered, first or among others. */
export const DANGER = lines<{ text: string; kind: EmergencyKind }>("danger.jsonl");
/** The same words, and no danger now. */
export const NEAR_MISSES = lines<{ text: string; why: string }>("near-misses.jsonl");
export const KINDS: readonly EmergencyKind[] = [
  "co-alarm", "chimney-fire", "house-fire", "room-smoke", "burn", "back-puff", "damper-over-embers", "hot-ash",
];
