import { TOPICS, topicFacts, type TopicId } from "../topics.ts";
import { buildClassifier, type Classifier } from "./classify.ts";
import { read } from "./features.ts";
import { loadModel, type Model } from "./model.ts";
import { parts } from "./parts.ts";

export interface Ranked {
  readonly topic: TopicId;
  /** Calibrated probability, 0 to 1. */
  readonly score: number;
}

export interface Route {
  /** Best first, at least three. */
  readonly ranked: readonly Ranked[];
  readonly verdict: "sure" | "two" | "unsure" | "out-of-scope";
  /** A second question, when the message really holds two. */
  readonly second?: TopicId;
}

export { TOPICS };

/** Tuned on held-out messages of tests/training by `evaluate.ts`. */
export const THRESHOLDS = {
  /** A single topic is answered from here on. */
  sure: 0.5,
  /** Two topics are asked about when together they reach this and the lesser reaches `lesser`. */
  together: 0.55,
  lesser: 0.2,
  /** Refused only from here on; further up while a topic that can hurt someone is in the running. */
  outOfScope: 0.5,
  outOfScopeDespiteHazard: 0.75,
  hazardInTheRunning: 0.08,
  /** Each half of a message must reach this to count as a question of its own. */
  ownQuestion: 0.6,
} as const;

const SHOWN = 5;
const NOTHING_SAID: Route = {
  ranked: [{ topic: "out-of-scope", score: 1 }, { topic: "help", score: 0 }, { topic: "light-fire", score: 0 }],
  verdict: "out-of-scope",
};

let loaded: { model: Model; classifier: Classifier } | undefined;

function ready(): { model: Model; classifier: Classifier } {
  if (loaded === undefined) {
    const model = loadModel();
    loaded = { model, classifier: buildClassifier(model) };
  }
  return loaded;
}

function rank(text: string): { ranked: Ranked[]; wordCount: number; strangeShare: number } {
  const { model, classifier } = ready();
  const reading = read(text, model.lexicon);
  const probabilities = classifier.probabilities(reading);
  const ranked: Ranked[] = [];
  for (let c = 0; c < probabilities.length; c++) {
    const score = probabilities[c] as number;
    let at = ranked.length;
    while (at > 0 && (ranked[at - 1] as Ranked).score < score) at--;
    if (at >= SHOWN) continue;
    ranked.splice(at, 0, { topic: model.topics[c] as TopicId, score });
    if (ranked.length > SHOWN) ranked.pop();
  }
  return { ranked, wordCount: reading.wordCount, strangeShare: reading.strangeShare };
}

/** Topic of a message, with how sure that is. Pure; the model is read from disk once, at the first call. Reads READ_CHARACTERS at most. */
export function route(text: string): Route {
  const { ranked, wordCount } = rank(text);
  if (wordCount === 0) return NOTHING_SAID;
  const verdict = judge(ranked);
  const second = verdict === "out-of-scope" ? undefined : secondQuestion(text, ranked);
  return second === undefined ? { ranked, verdict } : { ranked, verdict, second };
}

function judge(ranked: readonly Ranked[]): Route["verdict"] {
  const [first, next] = ranked as [Ranked, Ranked];
  if (first.topic === "out-of-scope") {
    const hazard = ranked.some(({ topic, score }) => score >= THRESHOLDS.hazardInTheRunning && topicFacts(topic).careful);
    return first.score >= (hazard ? THRESHOLDS.outOfScopeDespiteHazard : THRESHOLDS.outOfScope) ? "out-of-scope" : "unsure";
  }
  if (first.score >= THRESHOLDS.sure && first.score - next.score >= THRESHOLDS.lesser) return "sure";
  if (next.topic !== "out-of-scope" && next.score >= THRESHOLDS.lesser && first.score + next.score >= THRESHOLDS.together) return "two";
  return "unsure";
}

/** A later part of the message that is surely about something else than the first. */
function secondQuestion(text: string, ranked: readonly Ranked[]): TopicId | undefined {
  const sure: TopicId[] = [];
  for (const part of parts(text)) {
    const best = rank(part).ranked[0] as Ranked;
    if (best.topic !== "out-of-scope" && best.score >= THRESHOLDS.ownQuestion && !sure.includes(best.topic)) sure.push(best.topic);
  }
  if (sure.length < 2) return undefined;
  const main = (ranked[0] as Ranked).topic;
  return sure.includes(main) ? sure.find((topic) => topic !== main) : undefined;
}
