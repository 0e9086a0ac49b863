/**
 * Is somebody in danger now? Rules over senses (rules.ts, symptoms.ts) decide; the learnt layer (learnt/) adds what they have no
 * words for, and takes back what they only thought possible in a message unlike any report of danger.
 */

import { TURNS } from "./circumstances.ts";
import type { Danger, EmergencyKind } from "./index.ts";
import { numbered } from "./learnt/features.ts";
import { likeliestKind, likeness } from "./learnt/likelihood.ts";
import { reading } from "./readings.ts";
import { RULES, type Rule } from "./rules.ts";
import { finds, type Scene, sceneOf } from "./scene.ts";
import { sense } from "./senses.ts";
import { symptoms } from "./symptoms.ts";

type Certainty = Danger["certainty"];

/** The kinds from the one that kills soonest to the one that leaves time; a message with several is answered in this order. */
const GRAVEST_FIRST: readonly EmergencyKind[] = [
  "co-alarm", "chimney-fire", "house-fire", "room-smoke", "burn", "back-puff", "damper-over-embers", "hot-ash",
];

const TOPIC: Readonly<Record<EmergencyKind, string>> = {
  "co-alarm": "co-alarm",
  "chimney-fire": "chimney-fire",
  "house-fire": "children-and-clearance",
  "room-smoke": "smoke-mid-burn",
  burn: "children-and-clearance",
  "back-puff": "back-puff",
  "damper-over-embers": "close-down",
  "hot-ash": "ash-removal",
};

/** A danger that is known from elsewhere, such as an answer in a talk. */
export const dangerOf = (kind: EmergencyKind): Danger => ({ kind, certainty: "sure", topic: TOPIC[kind], also: [] });

function certaintyOf(scene: Scene, rule: Rule): Certainty | null {
  let best: Certainty | null = null;
  for (const find of finds(scene, rule.want, rule.span, rule.across)) {
    const first = scene.sensed.tokens[find.from]?.sentence ?? 0;
    if (rule.butNot.some((sense) => scene.inSentence(first, sense))) continue;
    const seen = scene.circumstances(find);
    if (rule.unless.some((circumstance) => seen.has(circumstance))) continue;
    if (rule.sure && !rule.doubt.some((circumstance) => seen.has(circumstance))) return "sure";
    best = "possible";
  }
  return best;
}

const LONGEST_CRY = 3;
const CRIES: readonly (readonly [sense: string, kind: EmergencyKind])[] = [
  ["alarm", "co-alarm"], ["co", "co-alarm"], ["smoke", "room-smoke"],
  ["bang", "back-puff"], ["flame", "house-fire"], ["burnt", "burn"], ["burn_noun", "burn"],
];

/** "smoke!!!", "explosion", "help burned": a message of hardly more than the word itself. */
function cry(scene: Scene): EmergencyKind | null {
  if (scene.length > LONGEST_CRY || scene.sensed.asks.some((asks) => asks)) return null;
  const calm = [
    "neg", "admin", "testing", "ash", "black", "cooking", "other_device", "asking", "habit", "history", "topical", "hypothetical",
  ];
  if (calm.some((sense) => scene.inMessage(sense))) return null;
  const loud = scene.sensed.shouts || scene.inMessage("now");
  if (loud && scene.inMessage("fire")) return "house-fire";
  return CRIES.find(([sense]) => scene.inMessage(sense) && (loud || scene.length === 1))?.[1] ?? null;
}

/** Log odds from which a message is danger though no rule says so. */
const LIKELY = 0;
/** Log odds below which a rule's "possible" is none; lower where a message has more to say than one thing. */
const UNLIKELY = -1.5;
const UNLIKELY_OF_SEVERAL = -2.5;
const SPEAKS_OF_NOW = new Set("now today tonight again still".split(" "));

function isUnlikely({ sensed: { tokens }, inMessage }: Scene, score: number): boolean {
  if (inMessage("now") || tokens.some(({ word }) => TURNS.has(word) || SPEAKS_OF_NOW.has(word))) return false;
  return score < (tokens.at(-1)?.clause === tokens[0]?.clause ? UNLIKELY : UNLIKELY_OF_SEVERAL);
}

/** Null when nothing in the text speaks of danger now. Linear in the length of the text; never throws. */
export function recogniseDanger(text: string): Danger | null {
  const scene = sceneOf(sense(text));
  const byRule = dangerByRule(scene);
  if (byRule?.certainty === "sure") return byRule;
  if (!byRule && scene.circumstances({ from: 0, to: 0 }).has("flat battery")) return null;
  const message = numbered(scene);
  const like = likeness(message);
  if (byRule) return isUnlikely(scene, like.score) ? null : byRule;
  if (like.score < LIKELY) return null;
  const kind = likeliestKind(message, like);
  return { kind, certainty: "possible", topic: TOPIC[kind], also: [] };
}

/** What the rules alone say. */
function dangerByRule(scene: Scene): Danger | null {
  const certainty = new Map<EmergencyKind, Certainty>();
  const topics = new Map<EmergencyKind, string>();
  for (const found of [reading(scene), symptoms(scene)]) {
    if (found === "sure" || (found && !certainty.has("co-alarm"))) certainty.set("co-alarm", found);
  }
  for (const rule of RULES) {
    if (certainty.get(rule.kind) === "sure") continue;
    const found = certaintyOf(scene, rule);
    if (!found || (found === "possible" && certainty.has(rule.kind))) continue;
    certainty.set(rule.kind, found);
    if (rule.topic) topics.set(rule.kind, rule.topic);
  }
  const shouted = certainty.size === 0 ? cry(scene) : null;
  if (shouted) certainty.set(shouted, "possible");
  const kinds = GRAVEST_FIRST.filter((kind) => certainty.has(kind));
  // Gas from a shut flue is answered as gas as soon as anybody may be unwell.
  const gassed = certainty.has("co-alarm") && certainty.has("damper-over-embers");
  const kind = gassed ? "co-alarm" : kinds.find((each) => certainty.get(each) === "sure") ?? kinds[0];
  if (!kind) return null;
  return {
    kind,
    certainty: certainty.get(kind) ?? "possible",
    topic: topics.get(kind) ?? TOPIC[kind],
    also: kinds.filter((each) => each !== kind),
  };
}
