/**
 * People or animals who are unwell near a heater: carbon monoxide until somebody has measured that it is not.
 * Practice: symptoms count even with the alarm quiet, with a joke in the message, or in a single person.
 */

import type { Circumstance } from "./circumstances.ts";
import { finds, type Scene, type Wanted, wanted } from "./scene.ts";

interface Sign {
  readonly want: Wanted;
  readonly span: number;
  readonly across: number;
  readonly unless: readonly Circumstance[];
  /** Sure by itself; otherwise when the heater is named, and for most signs when several or an animal are unwell. */
  readonly sure: "always" | "linked" | "linked or several" | "linked and several";
  /** Senses that explain it another way: in the first list always, in the second only when the heater is not named. */
  readonly explained: readonly string[];
  readonly explainedUnlinked: readonly string[];
  readonly needsLink?: boolean;
}

const TOLD: readonly Circumstance[] = ["past", "joke"];
const TOLD_OR_SUPPOSED: readonly Circumstance[] = [...TOLD, "unreal"];

const SIGNS: readonly Sign[] = [
  {
    want: wanted("ill|unwell|felled|sleepy", "better_out"), span: 12, across: 1, unless: TOLD, sure: "always",
    explained: ["hairball"], explainedUnlinked: [],
  },
  {
    want: wanted("i|many|one|pet", "ill|felled"), span: 7, across: 0, unless: TOLD, sure: "linked or several",
    explained: ["hairball"], explainedUnlinked: ["excuse_plain"],
  },
  {
    want: wanted("somebody", "ill|felled"), span: 4, across: 0, unless: [...TOLD_OR_SUPPOSED, "general"], sure: "linked",
    explained: [], explainedUnlinked: [],
  },
  {
    want: wanted("pet", "dead"), span: 5, across: 0, unless: TOLD, sure: "linked or several", explained: [], explainedUnlinked: [],
  },
  {
    want: wanted("i|many|one|pet", "unwell"), span: 5, across: 0, unless: TOLD_OR_SUPPOSED, sure: "linked and several",
    explained: ["excuse", "excuse_plain"], explainedUnlinked: [],
  },
  {
    want: wanted("many", "flu"), span: 8, across: 0, unless: TOLD_OR_SUPPOSED, sure: "linked and several",
    explained: [], explainedUnlinked: [], needsLink: true,
  },
  {
    want: wanted("many|pet", "sleepy"), span: 6, across: 0, unless: TOLD_OR_SUPPOSED, sure: "linked and several",
    explained: ["excuse", "excuse_plain"], explainedUnlinked: [], needsLink: true,
  },
  {
    want: wanted("ill"), span: 0, across: 0, unless: [...TOLD_OR_SUPPOSED, "general"], sure: "linked",
    explained: ["hairball"], explainedUnlinked: ["excuse", "excuse_plain"],
  },
  {
    want: wanted("head_part", "feels_bad"), span: 4, across: 0, unless: [...TOLD_OR_SUPPOSED, "general"], sure: "linked",
    explained: ["hairball"], explainedUnlinked: ["excuse", "excuse_plain"],
  },
];

export function symptoms(scene: Scene): "sure" | "possible" | null {
  const has = (sense: string): boolean => scene.inMessage(sense);
  const linked = has("link");
  const several = has("many") || has("pet");
  const ofNobody = has("generic") && !has("somebody") && !["i", "many", "one", "pet"].some(has);
  const sure = { always: true, linked, "linked or several": linked || several, "linked and several": linked && several };
  let found: "sure" | "possible" | null = null;
  for (const sign of SIGNS) {
    if (ofNobody || sign.explained.some(has)) continue;
    if (!linked && (sign.needsLink || sign.explainedUnlinked.some(has))) continue;
    for (const find of finds(scene, sign.want, sign.span, sign.across)) {
      const seen = scene.circumstances(find);
      if (sign.unless.some((circumstance) => seen.has(circumstance))) continue;
      if (sure[sign.sure] && !seen.has("unreal")) return "sure";
      found = "possible";
    }
  }
  return found;
}
