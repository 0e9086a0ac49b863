/** What makes each emergency, in senses: which must stand together, how near, and which circumstances make it no danger now. */

import type { EmergencyKind } from "./index.ts";
import type { Circumstance, Wanted } from "./scene.ts";
import { wanted } from "./scene.ts";

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

const NOT_AN_ALARM = ["setting_alarm", "other_device"];
const NO_CHIMNEY_FIRE = [...NOT_NOW, "yesterday"] as const;
const ACT_NOT_DONE = [...NOT_NOW, "asking"] as const;

export const RULES: readonly Rule[] = [
  rule("co-alarm", "sure", ["alarm", "sounding|beeps"], { unless: ["unreal", "past", "joke", "testing"], butNot: NOT_AN_ALARM, across: 1 }),
  rule("co-alarm", "sure", ["detector_word|co", "sounding|beeps"], { unless: ["unreal", "past", "joke", "testing"], butNot: NOT_AN_ALARM }),
  rule("co-alarm", "possible", ["alarm", "chirp"], { unless: ["unreal", "past", "joke", "testing"] }),
  rule("co-alarm", "possible", ["beeps"], { unless: ["unreal", "past", "joke", "testing"], butNot: NOT_AN_ALARM }),
  rule("co-alarm", "sure", ["co", "leak|fill"], { unless: ["unreal", "past", "joke", "asking"] }),

  rule("chimney-fire", "sure", ["chimney_fire"], { unless: [...NO_CHIMNEY_FIRE, "asking"] }),
  rule("chimney-fire", "sure", ["chimney|roof|pipe", "flame|spark|alight"], { span: 6, unless: NO_CHIMNEY_FIRE }),
  rule("chimney-fire", "sure", ["chimney|pipe", "roar"], { span: 6, unless: NO_CHIMNEY_FIRE }),
  rule("chimney-fire", "sure", ["chimney|pipe|roar", "engine"], { span: 9, unless: NO_CHIMNEY_FIRE }),
  rule("chimney-fire", "sure", ["heater", "roar", "engine"], { span: 10, unless: NO_CHIMNEY_FIRE }),
  rule("chimney-fire", "sure", ["chimney|pipe", "redhot"], { span: 6, unless: NO_CHIMNEY_FIRE }),
  rule("chimney-fire", "sure", ["burning_roof"], { unless: NO_CHIMNEY_FIRE }),

  rule("house-fire", "sure", ["thing", "alight"], { span: 4, unless: NO_CHIMNEY_FIRE }),

  rule("room-smoke", "sure", ["smoke", "fill", "room"], { span: 8, across: 1 }),
  rule("room-smoke", "sure", ["smoke", "fill"], { span: 5 }),
  rule("room-smoke", "sure", ["smoke", "cough"], { span: 8, across: 1 }),
  rule("room-smoke", "possible", ["smoke", "leak", "room"], { span: 8, unless: [...NOT_NOW, "asking"] }),

  rule("hot-ash", "sure", ["ash", "put", "soft_container|wood_place", "hot"], { span: 12, across: 1, unless: ACT_NOT_DONE, doubt: ["maybe"] }),
  rule("hot-ash", "possible", ["ash", "put", "soft_container|wood_place"], { span: 9, across: 1, unless: ACT_NOT_DONE, doubt: ["maybe"] }),
  rule("hot-ash", "sure", ["ash_smoking"], { unless: ACT_NOT_DONE }),

  rule("burn", "sure", ["burnt", "body"], { span: 5, unless: [...NOT_NOW, "yesterday", "asking"] }),
  rule("burn", "sure", ["touched", "hot_part", "cry|blister|body"], { span: 8, across: 1, unless: [...NOT_NOW, "yesterday", "asking"] }),
  rule("burn", "sure", ["blister", "body"], { span: 5, unless: [...NOT_NOW, "yesterday"] }),
  rule("burn", "sure", ["garment", "alight"], { span: 4, unless: [...NOT_NOW, "yesterday"] }),

  rule("damper-over-embers", "sure", ["damper|chimney", "shut_done", "glow"], { span: 9, across: 1, unless: ACT_NOT_DONE, butNot: ["air"] }),
  rule("damper-over-embers", "possible", ["damper|chimney", "shut_done", "wrong_shut"], { span: 7, unless: ACT_NOT_DONE, butNot: ["air"] }),
  rule("damper-over-embers", "sure", ["damper_shut_lit"], { unless: ACT_NOT_DONE }),
  rule("damper-over-embers", "sure", ["damper|chimney", "stuck", "glow|heater"], { span: 8, unless: ACT_NOT_DONE, topic: "stuck-damper" }),

  rule("back-puff", "sure", ["bang", "heater|door"], { span: 7, unless: [...NOT_NOW, "yesterday"] }),
  rule("back-puff", "sure", ["flew", "door"], { span: 4, unless: [...NOT_NOW, "yesterday"] }),
  rule("back-puff", "possible", ["whump"], { unless: NOT_NOW }),
];
