import { TOPICS, topicFacts, type TopicId } from "../topics.ts";

export interface Ranked {
  readonly topic: TopicId;
  /** Calibrated probability, 0 to 1. */
  readonly score: number;
}

export interface Route {
  readonly ranked: readonly Ranked[];
  readonly verdict: "sure" | "two" | "unsure" | "out-of-scope";
  readonly second?: TopicId;
}

export { TOPICS };

const words = (text: string): string[] => text.toLowerCase().normalize("NFKD").match(/[a-z]{3,}/g) ?? [];

/** Interim: overlap with the topic's own words, until the trained model is in place. */
export function route(text: string): Route {
  const asked = words(text.slice(0, 2000)).map((word) => word.slice(0, 5));
  const scored = TOPICS.map((topic) => {
    const own = new Set(words(`${topic} ${topicFacts(topic).about}`).map((word) => word.slice(0, 5)));
    return { topic, score: asked.filter((word) => own.has(word)).length / Math.sqrt(own.size) };
  });
  const total = scored.reduce((sum, { score }) => sum + score, 0) || 1;
  const ranked = scored.map(({ topic, score }) => ({ topic, score: score / total })).sort((a, b) => b.score - a.score).slice(0, 5);
  const best = ranked[0]?.score ?? 0;
  return { ranked, verdict: best === 0 ? "out-of-scope" : best > 0.4 ? "sure" : "unsure" };
}
