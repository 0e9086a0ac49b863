/** Routing: which topic a message is about, by a model trained from tests/training, offline and in a fraction of a millisecond. */
import { guessLanguage } from "../language.ts";
import type { Spoken } from "../spoken.ts";
import { TOPICS, type TopicId } from "../topics.ts";
import { buildClassifier, type Classifier } from "./classify.ts";
import { read } from "./features.ts";
import { inBoth } from "./german.ts";
import { GERMAN_WEIGHTS_FILE, loadModel, type Model, WEIGHTS_FILE } from "./model.ts";
import { parts } from "./parts.ts";
import { type Ranked, type Verdict, verdictOf } from "./verdict.ts";

export type { Ranked, Verdict };
export { TOPICS };

export interface Route {
  /** Best first, at least three. */
  readonly ranked: readonly Ranked[];
  readonly verdict: Verdict;
  /** A second question, when the message really holds two. */
  readonly second?: TopicId;
}

const SHOWN = 5;
const SURE_WHATEVER_THE_LANGUAGE = 0.9;
/** Each part of a message must reach this to count as a question of its own. */
const OWN_QUESTION = 0.75;
const ROOM_FOR_ANOTHER = 0.01;
/** "What do I do?" after a trouble is no question of its own. */
const NEVER_SECOND: ReadonlySet<TopicId> = new Set(["out-of-scope", "help"]);

const NOTHING_SAID: Route = {
  ranked: [{ topic: "out-of-scope", score: 1 }, { topic: "help", score: 0 }, { topic: "light-fire", score: 0 }],
  verdict: "out-of-scope",
};

interface Ready { readonly model: Model; readonly classifier: Classifier }
const loaded = new Map<Spoken, Ready>();

/** Each language's model is read from disk once, at its first message. */
function ready(language: Spoken): Ready {
  const before = loaded.get(language);
  if (before) return before;
  const model = loadModel(language === "de" ? GERMAN_WEIGHTS_FILE : WEIGHTS_FILE);
  const made = { model, classifier: buildClassifier(model) };
  loaded.set(language, made);
  return made;
}

/** The words the router knows, for whoever weighs or compares words: their commonness and their vectors. */
export const wordModel = (language: Spoken): Model => ready(language).model;

/**
 * Topic of a message, with how sure that is. Pure and synchronous; the model is read from disk once, at the first call.
 * Reads the first READ_CHARACTERS of the text and at most READ_WORDS words, whatever its length.
 */
export function route(text: string, language: Spoken = guessLanguage(text) === "de" ? "de" : "en"): Route {
  const whole = rank(text, language);
  if (whole === undefined) return NOTHING_SAID;
  if (language === "en" && (whole[0] as Ranked).score < SURE_WHATEVER_THE_LANGUAGE && guessLanguage(text) !== "en") return notEnglish(whole);
  const verdict = verdictOf(whole);
  const two = verdict === "out-of-scope" ? undefined : twoQuestions(text, whole, language);
  return two ?? { ranked: whole, verdict };
}

/** The English model knows English only: what it makes of another language is kept, but far behind. */
function notEnglish(whole: readonly Ranked[]): Route {
  const rest = whole.filter(({ topic }) => topic !== "out-of-scope").map(({ topic, score }) => ({ topic, score: score / 10 }));
  return { ranked: [{ topic: "out-of-scope", score: 0.9 }, ...rest], verdict: "out-of-scope" };
}

/** The likeliest topics, best first; undefined for a message without a word or a figure. */
function rank(text: string, language: Spoken): Ranked[] | undefined {
  const { model, classifier } = ready(language);
  const reading = read(language === "de" ? inBoth(text) : text, model.lexicon);
  if (reading.wordCount === 0) return undefined;
  return best(model.topics, classifier.probabilities(reading), SHOWN);
}

/** The `count` highest, best first. */
export function best(topics: readonly TopicId[], probabilities: Float64Array, count: number): Ranked[] {
  const ranked: Ranked[] = [];
  for (let c = 0; c < probabilities.length; c++) {
    const score = probabilities[c] as number;
    let at = ranked.length;
    while (at > 0 && (ranked[at - 1] as Ranked).score < score) at--;
    if (at >= count) continue;
    ranked.splice(at, 0, { topic: topics[c] as TopicId, score });
    if (ranked.length > count) ranked.pop();
  }
  return ranked;
}

/**
 * When two parts of the message are each surely about something else, and the whole leaves room for both: the one the whole is
 * about (else the first part's) with the other as second question.
 */
function twoQuestions(text: string, whole: readonly Ranked[], language: Spoken): Route | undefined {
  const room = whole.filter(({ topic, score }) => score >= ROOM_FOR_ANOTHER && !NEVER_SECOND.has(topic)).map(({ topic }) => topic);
  if (room.length < 2) return undefined;
  const found: Ranked[][] = [];
  for (const part of parts(text)) {
    const ranked = rank(part, language);
    const first = ranked?.[0];
    if (ranked === undefined || first === undefined || first.score < OWN_QUESTION || !room.includes(first.topic)) continue;
    if (!found.some((each) => each[0]?.topic === first.topic)) found.push(ranked);
  }
  const main = found.findIndex((each) => each[0]?.topic === whole[0]?.topic);
  const ranked = main < 0 ? found[0] : whole;
  const second = found[main <= 0 ? 1 : 0]?.[0]?.topic;
  return ranked === undefined || second === undefined ? undefined : { ranked, verdict: verdictOf(ranked), second };
}
