/**
 * Is somebody in danger now? How much a message is like the labelled reports of danger (learnt/) decides; rules over senses (rules.ts,
 * symptoms.ts) say which danger and how sure, and tip the scales where it is a near thing.
 */

import type { Danger, EmergencyKind } from "./index.ts";
import { numbered } from "./learnt/features.ts";
import { type Learnt, type Likeness, likeliestKind, LEANING, likeness } from "./learnt/likelihood.ts";
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

/** What a rule adds to the likeness. Rules find little that was not learnt, and are fooled by what was. */
const WORTH_OF_RULE = { sure: 0.5, possible: 0.5 };
const WORTH_OF_CRY = 1;

/** A shorter message that no rule reads, such as an answer to a question, says too little to lean on. */
const SHORTEST_TOLD = 4;

function isDanger(byRule: Danger | null, { score, peak }: Likeness, length: number): boolean {
  if (!byRule) return score >= (length < SHORTEST_TOLD ? LEANING : 0);
  return (byRule.certainty === "sure" ? peak : score) + WORTH_OF_RULE[byRule.certainty] >= 0;
}

/** Null when nothing in the text speaks of danger now. Linear in the length of the text; never throws. */
export function recogniseDanger(text: string): Danger | null {
  return recogniseBy(text);
}

/** The same with another learnt layer than the one shipped, to judge a way of learning by messages it has not seen. */
export function recogniseBy(text: string, learnt?: Learnt): Danger | null {
  const scene = sceneOf(sense(text));
  const byRule = dangerByRule(scene);
  if (scene.length === 0 || (!byRule && scene.circumstances({ from: 0, to: 0 }).has("flat battery"))) return null;
  const message = numbered(scene);
  const like = likeness(message, learnt);
  const cried = byRule ? null : cry(scene);
  if (cried && like.score + WORTH_OF_CRY >= 0) return { ...dangerOf(cried), certainty: "possible" };
  if (!isDanger(byRule, like, scene.length)) return null;
  if (byRule) return byRule;
  const kind = likeliestKind(message, like);
  return { kind, certainty: "possible", topic: TOPIC[kind], also: [] };
}

/** What the rules alone say. */
export function dangerByRule(scene: Scene): Danger | null {
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
