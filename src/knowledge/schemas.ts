/**
 * The shape of everything under `knowledge/`. Strict on purpose: a misspelt key is a mistake a builder wants to hear about.
 * Words here are English sentences in ICU MessageFormat: `{value}` stands for the figure a record or a person gave.
 */
import { z } from "zod";
import { TOPICS, type TopicId } from "../topics.ts";

export const id = z.string().regex(/^[a-z][a-z0-9-]*$/, "small letters, digits and hyphens, such as wet-wood");
const sentence = z.string().min(2).max(600);
export const Topic = z.enum(TOPICS as unknown as [TopicId, ...TopicId[]]);
/** A trouble may bring an id of its own; routing finds it by its words. */
const TroubleTopic = id as unknown as z.ZodType<TopicId, TopicId>;
export const Hazard = z.enum(["none", "low", "medium", "high", "emergency"]);
/** "common practice", or a source by name (standard, handbook, paper, authority) */
const source = z.string().min(4).max(400);

/** Facts of the heater that a cause, a step or a part depends on; all must hold. A list means any of them. */
export const HEATER_CONDITIONS = [
  "kind", "shut_off_damper", "bypass_damper", "grate", "outside_air", "lighting", "gas_exit", "oven", "facing_material", "flue_on_outside_wall",
] as const;
const conditionValue = z.union([z.boolean(), z.string(), z.array(z.union([z.boolean(), z.string()]))]);
export const When = z.partialRecord(z.enum(HEATER_CONDITIONS), conditionValue);

/** A weight by answer id, or by figure (weights between two figures are interpolated on a logarithmic scale). 1 changes nothing, 0 rules the cause out. */
const weights = z.record(z.string(), z.number().min(0).max(50));

/** Replies in own words by answer id, one a line. */
export const Replies = z.record(z.string(), z.string().max(20_000));

export const SIGN_KINDS = ["yes-no", "choice", "percent", "kilograms", "minutes", "hours", "days", "months", "years", "celsius", "millimetres", "centimetres", "count"] as const;
export const Sign = z.strictObject({
  /** the question; a sign without one is only ever read from the records */
  ask: sentence.optional(),
  kind: z.enum(SIGN_KINDS),
  /** id of the fact that answers it by itself (the list stands in DEVELOPERS.md) */
  record: id.optional(),
  /** a record older than this is asked about again */
  fresh_days: z.number().positive().optional(),
  /** how the record's own figure is quoted: "your last load read {value}" */
  says: sentence.optional(),
  /** what a person can pick; for figures each answer stands for a value */
  answers: z.array(z.strictObject({ id, label: sentence, value: z.number().optional(), says: sentence.optional(), words: z.array(z.string()).optional() })).optional(),
  /** an answer that ends the tree at once; `unknown` stands for "I don't know" */
  stop: z.record(z.string(), z.strictObject({ cause: id.optional(), emergency: z.string().optional() })).optional(),
  /** asked before every other sign */
  first: z.boolean().optional(),
  when: When.optional(),
  /** what people type who mean an answer; most of it stands in knowledge/said/ */
  said: Replies.optional(),
});

export const CALLS = ["emergency", "sweep", "builder", "ventilation", "doctor", "authority", "supplier", "roofer"] as const;
export const Cause = z.strictObject({
  title: sentence,
  /** weight before anything is known, in parts of the sum of all */
  prior: z.number().positive().max(100),
  /** only for heaters like this; unknown facts of the heater leave the cause in */
  when: When.optional(),
  weighs: z.record(id, weights).default({}),
  /** what goes on, in one or two sentences */
  why: sentence,
  /** by sign: why this answer speaks for the cause, instead of the sign's own `says` */
  because: z.record(id, sentence).default({}),
  now: z.array(sentence).default([]),
  before_next_fire: z.array(sentence).default([]),
  call: z.array(z.enum(CALLS)).default([]),
  no_fire: z.boolean().default(false),
  hazard: Hazard.default("low"),
  cautions: z.array(id).default([]),
  source,
});

export const Trouble = z.strictObject({
  id: TroubleTopic,
  title: sentence,
  symptom: sentence,
  hazard: Hazard,
  cautions: z.array(id).default([]),
  /** what is true whatever the cause; shown before the causes */
  first_of_all: z.array(sentence).default([]),
  words: z.array(z.string()).default([]),
  signs: z.record(id, Sign),
  causes: z.record(id, Cause),
  /** other topics that lie near */
  near: z.array(TroubleTopic).default([]),
  sources: z.array(source).min(1),
});

const Part = z.strictObject({
  title: sentence.optional(),
  when: When.optional(),
  /** what to do with a part whose heater fact is unknown: show it, leave it out, or ask for the fact */
  unknown: z.enum(["show", "hide", "ask"]).default("show"),
  /** for one situation of several: whoever names another one sees only the title of this part */
  about: z.array(z.string().min(3)).optional(),
  text: z.array(sentence).optional(),
  steps: z.array(sentence).optional(),
  /** false for a list without an order: things never to do, things to choose from */
  ordered: z.boolean().default(true),
  cautions: z.array(id).default([]),
  source,
});
export const HowTo = z.strictObject({
  id: Topic,
  title: sentence,
  headline: sentence,
  hazard: Hazard,
  cautions: z.array(id).default([]),
  words: z.array(z.string()).default([]),
  parts: z.array(Part).min(1),
  call: z.array(z.enum(CALLS)).default([]),
  near: z.array(Topic).default([]),
  sources: z.array(source).min(1),
});

export const CautionEntry = z.strictObject({ level: Hazard, say: sentence, source });
export const CautionsFile = z.record(id, CautionEntry);

export const CallEntry = z.strictObject({ title: sentence, tell: sentence, source });
export const CallsFile = z.record(z.enum(CALLS), CallEntry);

/** A word of the trade, explained in a breath; `words` are all names people use for it. */
export const GlossaryEntry = z.strictObject({ words: z.array(z.string().min(2)).min(1), title: sentence, say: sentence, topic: Topic.default("help"), cautions: z.array(id).default([]), source });
export const GlossaryFile = z.record(id, GlossaryEntry);

const GuideStep = z.strictObject({ id, text: sentence, when: When.optional(), unknown: z.enum(["show", "hide"]).default("show"), cautions: z.array(id).default([]) });

/** One stage of a walked-through fire. What follows a report is decided in firing/, from safety rules; words and minutes stand here. */
export const Stage = z.strictObject({
  says: sentence,
  steps: z.array(GuideStep).default([]),
  asks: sentence.optional(),
  /** minutes after entering the stage, for a load of 12 kg */
  check_in_min: z.number().positive().optional(),
  /** the minutes grow with (load / 12 kg) to this power */
  grows: z.number().min(0).max(1).default(0.35),
  choices: z.array(z.strictObject({ id, label: sentence })).default([]),
  cautions: z.array(id).default([]),
  source,
});
/** One rung of the first fires: how large, for how many days of firing. Shares of the heater's largest load. */
export const Rung = z.strictObject({ id, says: sentence, share_low: z.number().positive().max(1), share_high: z.number().positive().max(1), days: z.number().int().positive().max(30) });
/** A kind of fire. The everyday one has the stages; the others say what is different about theirs. */
export const Firing = z.strictObject({
  id,
  title: sentence,
  stages: z.record(id, Stage).default({}),
  /** said first when a fire of this kind is begun */
  says: sentence.optional(),
  /** what comes before the usual steps of getting ready */
  before_lighting: z.array(GuideStep).default([]),
  /** rungs by occasion: a new heater, a long rest */
  ladders: z.record(id, z.array(Rung).min(1)).default({}),
  stop_rule: sentence.optional(),
  cautions: z.array(id).default([]),
  /** what is said about a report, before the stage's own words */
  remarks: z.record(id, sentence).default({}),
  sources: z.array(source).min(1),
});

export type Trouble = z.output<typeof Trouble>;
export type Sign = z.output<typeof Sign>;
export type Cause = z.output<typeof Cause>;
export type HowTo = z.output<typeof HowTo>;
export type Firing = z.output<typeof Firing>;
export type Stage = z.output<typeof Stage>;
export type Rung = z.output<typeof Rung>;
export type When = z.output<typeof When>;
export type GlossaryEntry = z.output<typeof GlossaryEntry>;
export type CautionEntry = z.output<typeof CautionEntry>;
export type Call = (typeof CALLS)[number];
