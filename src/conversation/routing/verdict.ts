import { topicFacts, type TopicId } from "../topics.ts";

export interface Ranked {
  readonly topic: TopicId;
  /** Calibrated probability, 0 to 1. */
  readonly score: number;
}

/** sure: answer. two: ask which of the first two. unsure: say so and offer the nearest three. */
export type Verdict = "sure" | "two" | "unsure" | "out-of-scope";

/** Chosen on held-out messages with `tests/training/evaluate.ts`. */
export const THRESHOLDS = {
  /** A single topic is answered from here on, when it leads the next by `lead`. */
  sure: 0.5,
  lead: 0.2,
  /** Two topics are asked about when together they reach `together` and the lesser reaches `lesser`. */
  together: 0.55,
  lesser: 0.18,
  /** Refused only from here on; further up while a topic that can hurt someone is in the running. */
  outOfScope: 0.38,
  outOfScopeDespiteHazard: 0.5,
  hazardInTheRunning: 0.1,
} as const;

/** `ranked`: best first, at least two. */
export function verdictOf(ranked: readonly Ranked[]): Verdict {
  const [first, next] = ranked as [Ranked, Ranked];
  if (first.topic === "out-of-scope") {
    const hazard = ranked.some(({ topic, score }) => score >= THRESHOLDS.hazardInTheRunning && topicFacts(topic).careful);
    return first.score >= (hazard ? THRESHOLDS.outOfScopeDespiteHazard : THRESHOLDS.outOfScope) ? "out-of-scope" : "unsure";
  }
  if (first.score >= THRESHOLDS.sure && first.score - next.score >= THRESHOLDS.lead) return "sure";
  if (next.topic !== "out-of-scope" && next.score >= THRESHOLDS.lesser && first.score + next.score >= THRESHOLDS.together) return "two";
  return "unsure";
}
