/** Words in a reminder that touch a hazard bring their caution, when it is set and when it is said. A clock never says that a bed is black. */
import type { Reminder } from "../../records/types.ts";
import type { Context } from "../context.ts";
import { inEnglish } from "../german/beside.ts";
import { SOME_ALARM, tasksOf } from "./upkeep-done.ts";

const BURNING = /\b(damper|slide|embers?|glow(?:ing)?|coals|bed|flames?|burning|air (?:slide|inlet|lever|shut|closed)|(?:close|shut|check|look at|watch|see to|tend)(?: on)? (?:down |off )?(?:the |my )?(?:air|flue|heater|stove|fire))\b/i;
const WORDS: readonly (readonly [RegExp, readonly string[]])[] = [
  [BURNING, ["close-flue", "carbon-monoxide"]],
  [/\b(?:add|put|more|reload|another|second)\b[^.]{0,20}\b(?:wood|log|logs|load|basket)\b|\breload\b/i, ["more-wood", "opening-door"]],
  [/\bash(?:es)?\b/i, ["hot-ash"]],
  [/\b(?:roof|chimney top|cap|flashing|climb)\b/i, ["roof"]],
  [/\b(?:gasket|rope|cord|door seal)\b/i, ["asbestos"]],
  [/\bglass\b/i, ["glass-cold"]],
  [/\b(?:sweep|chimney|flue)\b/i, ["roof"]],
];

export interface Alongside {
  readonly cautions: readonly string[];
  /** it is about a fire that burns then: it is said on time, and asks what is seen */
  readonly burning: boolean;
}

export function alongside(context: Context, { what, task }: Pick<Reminder, "what" | "task">): Alongside {
  const words = inEnglish(context, what);
  const upkeep = task && task !== SOME_ALARM ? tasksOf(context, task) : [];
  const burning = BURNING.test(words) && !upkeep.some(([, { every, window }]) => every && window && !/\b(close|shut|embers?|glow|coals|flames?|bed)\b/i.test(words));
  const by_words = WORDS.flatMap(([pattern, cautions]) => (pattern.test(words) ? cautions : []));
  return { cautions: [...new Set([...by_words, ...upkeep.flatMap(([, one]) => one.cautions)])], burning };
}
