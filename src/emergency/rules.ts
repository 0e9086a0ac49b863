/** What makes each emergency, in senses: which must stand together, how near, and which circumstances make it no danger now. */

import type { EmergencyKind } from "./index.ts";
import type { Circumstance } from "./circumstances.ts";
import { type Wanted, wanted } from "./scene.ts";

export interface Rule {
  readonly kind: EmergencyKind;
  readonly sure: boolean;
  readonly want: Wanted;
  /** Words between the first wanted sense and each of the others, at most. */
  readonly span: number;
  /** Sentence ends between them, at most. */
  readonly across: number;
  /** Circumstances that make it no danger. */
  readonly unless: readonly Circumstance[];
  /** Circumstances that leave it only possible. */
  readonly doubt: readonly Circumstance[];
  /** Senses whose presence in the same sentence makes it something else. */
  readonly butNot: readonly string[];
  readonly topic?: string;
}

interface Options {
  readonly span?: number;
  readonly across?: number;
  readonly unless?: readonly Circumstance[];
  readonly doubt?: readonly Circumstance[];
  readonly butNot?: readonly string[];
  readonly topic?: string;
}

const NOT_NOW: readonly Circumstance[] = ["unreal", "past", "joke", "habit"];

function rule(kind: EmergencyKind, certainty: "sure" | "possible", senses: readonly string[], options: Options = {}): Rule {
  return {
    kind, sure: certainty === "sure", want: wanted(...senses), span: options.span ?? 8, across: options.across ?? 0,
    unless: options.unless ?? NOT_NOW, doubt: options.doubt ?? ["maybe", "yesterday"], butNot: options.butNot ?? [], topic: options.topic,
  };
}

const NOT_AN_ALARM = ["setting_alarm", "other_device", "cooking"];
const NO_LONGER = [...NOT_NOW, "yesterday", "general"] as const;
const ALARM_TALK = ["unreal", "past", "joke", "testing"] as const;
const SMOKE_TALK = [...NOT_NOW, "yesterday"] as const;
const BURN_TALK = [...NOT_NOW, "yesterday", "general"] as const;
const ACT_NOT_DONE = [...NOT_NOW, "asking", "general"] as const;

export const RULES: readonly Rule[] = [
  rule("co-alarm", "sure", ["alarm", "sounding|beeps"], { unless: ALARM_TALK, butNot: NOT_AN_ALARM, across: 1 }),
  rule("co-alarm", "sure", ["co_alarm", "sounding|beeps"], { span: 12, unless: ALARM_TALK, across: 1 }),
  rule("co-alarm", "possible", ["alarm", "now"], { span: 7, across: 1, unless: ALARM_TALK, butNot: [...NOT_AN_ALARM, "admin", "put"] }),
  rule("co-alarm", "possible", ["warner", "co|gas", "sounding"], { span: 9, unless: ALARM_TALK }),
  rule("co-alarm", "possible", ["sounding", "four"], { span: 4, unless: ALARM_TALK, butNot: NOT_AN_ALARM }),
  rule("co-alarm", "possible", ["brigade", "call"], { span: 6, unless: [...ALARM_TALK, "habit"] }),
  rule("co-alarm", "possible", ["get_out"], { unless: ["unreal", "past", "joke"] }),
  rule("co-alarm", "possible", ["alarm", "heard"], { span: 5, unless: ALARM_TALK, butNot: NOT_AN_ALARM }),
  rule("co-alarm", "possible", ["one|many|i", "face", "flush|redhot"], { span: 6, butNot: ["burnt", "touched", "burn_on"] }),
  rule("co-alarm", "sure", ["detector_word|co", "sounding|beeps"], { span: 11, unless: ALARM_TALK, butNot: NOT_AN_ALARM }),
  rule("co-alarm", "possible", ["alarm", "chirp"], { unless: [...ALARM_TALK, "flat battery"], butNot: NOT_AN_ALARM }),
  rule("co-alarm", "possible", ["alarm", "woke"], { unless: ALARM_TALK, butNot: [...NOT_AN_ALARM, "admin"] }),
  rule("co-alarm", "possible", ["beeps"], { unless: ALARM_TALK, butNot: NOT_AN_ALARM }),
  rule("co-alarm", "sure", ["co", "leak|fill"], { unless: ["unreal", "past", "joke", "asking"] }),

  rule("chimney-fire", "sure", ["chimney_fire"], { unless: [...NO_LONGER, "testing"] }),
  rule("chimney-fire", "sure", ["chimney|roof", "flame|fire|spark|alight", "emerging"], { span: 10, unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["roof", "flame|spark"], { span: 7, unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["chimney|fireplace|roof", "outlet"], { span: 8, unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["chimney", "burns"], { span: 2, unless: NO_LONGER }),
  rule("chimney-fire", "possible", ["roof", "fire"], { span: 3, unless: [...NO_LONGER, "asks"] }),
  rule("chimney-fire", "sure", ["chimney", "alight"], { span: 5, unless: NO_LONGER, butNot: ["cooking"] }),
  rule("chimney-fire", "sure", ["chimney", "likeness", "torch"], { span: 8, unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["chimney|fireplace|pipe", "roar"], { span: 11, unless: NO_LONGER, butNot: ["windy"] }),
  rule("chimney-fire", "sure", ["chimney|fireplace|pipe|roar", "engine", "likeness"], {
    span: 9, unless: NO_LONGER, butNot: ["draught", "puff"],
  }),
  rule("chimney-fire", "sure", ["engine", "likeness", "heater|thing"], { span: 10, unless: NO_LONGER, butNot: ["puff"] }),
  rule("chimney-fire", "sure", ["chimney|pipe", "redhot"], { span: 6, unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["crackle", "chimney", "too_hot"], { span: 12, unless: NO_LONGER }),
  rule("chimney-fire", "possible", ["chimney", "crackle"], { span: 8, unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["pipe", "gleam"], { span: 4, unless: NO_LONGER, butNot: ["ash", "shut_done"] }),
  rule("chimney-fire", "sure", ["gleam", "emerging|over", "roof|chimney"], {
    span: 6, unless: NO_LONGER, butNot: ["ash", "shut_done", "damper"],
  }),
  rule("chimney-fire", "sure", ["spark|flame|fire", "over", "building|roof"], { span: 8, unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["deposit", "alight|redhot|engine|smoking"], { span: 6, unless: NO_LONGER }),
  rule("chimney-fire", "possible", ["chimney|roof", "flame"], {
    span: 5, unless: [...NO_LONGER, "asks", "asking"], butNot: ["damper", "neg", "draught"],
  }),
  rule("chimney-fire", "possible", ["bits", "alight|flame|redhot"], { span: 5, unless: NO_LONGER, butNot: ["ash"] }),
  rule("chimney-fire", "possible", ["chimney|pipe", "sounds_like"], { span: 4, unless: [...NO_LONGER, "asks"] }),
  rule("chimney-fire", "sure", ["roof", "torch"], { span: 7, unless: NO_LONGER }),
  rule("chimney-fire", "possible", ["chimney|pipe", "noise", "loud"], { span: 9, unless: [...NO_LONGER] }),
  rule("chimney-fire", "possible", ["flame|spark", "street"], { span: 7, unless: [...NO_LONGER, "asks"] }),
  rule("chimney-fire", "sure", ["burning_roof"], { unless: NO_LONGER }),
  rule("chimney-fire", "sure", ["warn", "chimney|roof", "flame|fire|spark|alight|glow|torch"], {
    span: 9, unless: NO_LONGER, butNot: ["smoking"],
  }),

  rule("house-fire", "sure", ["thing|building", "alight|burns"], { span: 3, unless: NO_LONGER }),
  rule("house-fire", "sure", ["thing", "alight|smoking"], { span: 9, unless: NO_LONGER, butNot: ["ash"] }),
  rule("house-fire", "possible", ["thing", "flame|spark|emberish"], { span: 5, unless: [...NO_LONGER, "asks", "asking"], butNot: ["neg"] }),
  rule("house-fire", "possible", ["thing", "caught"], { span: 3, unless: NO_LONGER }),
  rule("house-fire", "sure", ["fire|flame|smoke|gleam", "behind"], { span: 5, unless: [...NO_LONGER, "asks"], butNot: ["lit_inside"] }),
  rule("house-fire", "possible", ["alight|smoking|flame", "beside"], { span: 5, unless: [...NO_LONGER, "asks"] }),
  rule("house-fire", "possible", ["flame", "room"], { span: 4, unless: [...NO_LONGER, "asks"] }),
  rule("house-fire", "sure", ["under_hearth"], { unless: NO_LONGER }),

  rule("room-smoke", "sure", ["smoke", "fill", "room"], { span: 10, across: 1, unless: SMOKE_TALK }),
  rule("room-smoke", "possible", ["room", "hazy"], {
    span: 3, unless: [...SMOKE_TALK, "asks"], butNot: ["smell", "on_opening", "resolved"],
  }),
  rule("room-smoke", "possible", ["throat", "rough_air"], { span: 3, unless: SMOKE_TALK }),
  rule("room-smoke", "sure", ["smoke_filled"], { unless: SMOKE_TALK }),
  rule("room-smoke", "sure", ["smoke", "fill"], { span: 5, unless: SMOKE_TALK, butNot: ["away", "roof", "on_opening"] }),
  rule("room-smoke", "sure", ["smoke", "cough"], { span: 8, across: 1, unless: SMOKE_TALK }),
  rule("room-smoke", "possible", ["cough", "i|many|one|pet"], { span: 4, unless: SMOKE_TALK }),
  rule("room-smoke", "possible", ["smoke", "room|thing|leak|leak_place|many"], {
    span: 8, unless: [...SMOKE_TALK, "asks", "asking"], butNot: ["slight", "on_opening", "resolved", "away", "smell", "cooking", "silent"],
  }),
  rule("room-smoke", "possible", ["smoke", "leak", "room|thing"], {
    span: 10, unless: [...SMOKE_TALK, "asking"], butNot: ["slight", "on_opening", "resolved"],
  }),
  rule("room-smoke", "possible", ["smoke", "leak", "leak_place"], {
    span: 8, unless: [...SMOKE_TALK, "asking"], butNot: ["slight", "on_opening", "resolved", "away"],
  }),

  rule("hot-ash", "sure", ["ash", "soft_container|wood_place", "hot|smoking|scorch"], {
    span: 12, across: 1, unless: ACT_NOT_DONE, doubt: ["maybe"], butNot: ["safe_ash"],
  }),
  rule("hot-ash", "sure", ["ash", "soft_container|wood_place", "smoke|alight"], {
    span: 9, across: 1, unless: ACT_NOT_DONE, doubt: ["maybe"],
  }),
  rule("hot-ash", "possible", ["ash", "put", "soft_container|wood_place"], {
    span: 9, across: 1, unless: ACT_NOT_DONE, butNot: ["metal", "cold", "safe_ash"],
  }),
  rule("hot-ash", "possible", ["ash", "soft_container|wood_place"], {
    span: 10, unless: [...ACT_NOT_DONE, "asks"], butNot: ["metal", "cold", "safe_ash"],
  }),
  rule("hot-ash", "sure", ["vac", "ash|heater", "smoke|hot|smell|alight"], { span: 10, across: 1, unless: ACT_NOT_DONE }),
  rule("hot-ash", "sure", ["fire|flame|alight", "ash_bucket"], { span: 4, unless: ACT_NOT_DONE }),
  rule("hot-ash", "sure", ["ash", "scorch"], { span: 7, unless: ACT_NOT_DONE }),
  rule("hot-ash", "possible", ["empties", "heater|hot", "soft_container"], { span: 9, unless: ACT_NOT_DONE, butNot: ["metal", "cold"] }),
  rule("hot-ash", "sure", ["ash_bucket", "hot", "room|wood_place"], { span: 12, unless: ACT_NOT_DONE }),
  rule("hot-ash", "sure", ["ash_smoking"], { unless: ACT_NOT_DONE, butNot: ["heater"] }),

  rule("burn", "sure", ["burnt", "body"], { span: 5, unless: BURN_TALK }),
  rule("burn", "possible", ["child", "touched", "hot_part"], { span: 6, unless: [...BURN_TALK, "asks"], butNot: ["tepid", "cold"] }),
  rule("burn", "sure", ["emberish", "garment"], { span: 6, unless: BURN_TALK }),
  rule("burn", "sure", ["blister", "hot_part|touched"], { span: 6, unless: BURN_TALK }),
  rule("burn", "possible", ["burn_hurt"], { unless: BURN_TALK }),
  rule("burn", "sure", ["burn_noun", "one", "body"], { span: 5, unless: BURN_TALK, butNot: ["wood_name"] }),
  rule("burn", "sure", ["i|one|many", "arrest", "emberish"], { span: 5, unless: BURN_TALK }),
  rule("burn", "sure", ["body", "cry", "hot|heater"], { span: 6, unless: BURN_TALK }),
  rule("burn", "possible", ["put", "body", "hot_part"], { span: 6, unless: BURN_TALK, butNot: ["tepid"] }),
  rule("burn", "sure", ["burn_noun", "body"], { span: 2, unless: BURN_TALK }),
  rule("burn", "sure", ["burn_on", "body"], { span: 4, unless: BURN_TALK }),
  rule("burn", "sure", ["burn_noun", "remedy|touched"], { span: 9, across: 1, unless: BURN_TALK }),
  rule("burn", "sure", ["emberish", "body"], { span: 5, unless: BURN_TALK }),
  rule("burn", "sure", ["ash", "body", "hot|cry"], { span: 8, unless: BURN_TALK }),
  rule("burn", "sure", ["touched", "hot_part|heater", "cry|blister|body"], { span: 9, across: 1, unless: BURN_TALK }),
  rule("burn", "sure", ["body", "hot_part", "cry"], { span: 8, across: 1, unless: BURN_TALK }),
  rule("burn", "sure", ["fell_on", "hot_part|heater"], { span: 3, unless: BURN_TALK, butNot: ["thing", "ash", "litter"] }),
  rule("burn", "possible", ["flame", "body"], { span: 4, unless: [...BURN_TALK, "asks"] }),
  rule("burn", "sure", ["blister", "body"], { span: 5, unless: BURN_TALK }),
  rule("burn", "sure", ["garment", "alight|flame|caught"], { span: 6, unless: [...NOT_NOW, "yesterday"] }),

  rule("damper-over-embers", "sure", ["damper|chimney", "stuck", "glow"], { span: 8, unless: ACT_NOT_DONE, topic: "stuck-damper" }),
  rule("damper-over-embers", "sure", ["damper|chimney", "shut_done", "glow|redhot|fire_in"], {
    span: 10, across: 1, unless: ACT_NOT_DONE, butNot: ["air", "damper_open"],
  }),
  rule("damper-over-embers", "possible", ["damper|chimney", "shut_done", "wrong_shut"], {
    span: 7, unless: ACT_NOT_DONE, butNot: ["air", "damper_open"],
  }),
  rule("damper-over-embers", "sure", ["damper_shut", "glow|redhot|fire_in"], {
    span: 10, across: 1, unless: ACT_NOT_DONE, butNot: ["air", "damper_open"],
  }),
  rule("damper-over-embers", "possible", ["damper_shut", "wrong_shut"], { span: 6, unless: ACT_NOT_DONE, butNot: ["air", "damper_open"] }),
  rule("damper-over-embers", "sure", ["damper_shut_lit"], { unless: ACT_NOT_DONE }),

  rule("back-puff", "sure", ["bang", "heater|door"], { span: 7, unless: NO_LONGER, butNot: ["calm_cause"] }),
  rule("back-puff", "sure", ["bang", "at_me|flash|air"], { span: 6, unless: NO_LONGER }),
  rule("back-puff", "possible", ["puff", "mess"], { span: 6, unless: NO_LONGER, butNot: ["slight", "on_opening"] }),
  rule("back-puff", "sure", ["bang", "moved"], { span: 8, unless: NO_LONGER }),
  rule("back-puff", "sure", ["bang", "mess"], { span: 6, across: 1, unless: NO_LONGER }),
  rule("back-puff", "sure", ["flew", "door"], { span: 4, unless: NO_LONGER }),
  rule("back-puff", "sure", ["pop", "heater|door|link", "flew|mess"], { span: 8, unless: NO_LONGER }),
  rule("back-puff", "possible", ["flame|fire", "emerging|leapt", "door"], { span: 5, unless: [...NO_LONGER, "asks"] }),
  rule("back-puff", "sure", ["gas", "sounding|alight", "heater"], { span: 6, unless: NO_LONGER, butNot: ["alarm"] }),
  rule("back-puff", "possible", ["flame", "odd_place"], { span: 5, unless: [...NO_LONGER, "asks"] }),
  rule("back-puff", "possible", ["puff", "flame", "door"], { span: 6, unless: NO_LONGER }),
  rule("back-puff", "possible", ["flame|fire", "at_me"], { span: 4, unless: NO_LONGER }),
  rule("back-puff", "possible", ["door", "shattered"], { span: 4, unless: NO_LONGER }),
  rule("back-puff", "sure", ["fireball"], { unless: NO_LONGER }),
  rule("back-puff", "sure", ["flame|fire", "leapt", "door|i|body"], { span: 8, unless: NO_LONGER }),
  rule("back-puff", "possible", ["whump"], { unless: NOT_NOW }),
];
