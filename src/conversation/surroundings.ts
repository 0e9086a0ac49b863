/** What surrounds the fire, asked for in plain words: alarms, first fires, batches, words of the trade. */
import type { Context, Outcome } from "./context.ts";
import { alarmsAsked } from "./topics/alarms.ts";
import { batchesSaid } from "./topics/batches.ts";
import { firstFiresOutcome } from "./topics/first-fires.ts";
import { glossaryAsked } from "./topics/glossary.ts";

const FIRST_FIRES = /\b(?:show|list|see|print) (?:me )?(?:my |our |the )?first fires\b|\bhow far (?:am i|are we|along)\b.{0,30}\bfirst fires\b|^(?:my )?first fires$/;

export function surroundings(context: Context): Outcome | null {
  const plain = context.text.toLowerCase().replace(/[?.!\s]+$/, "").trim();
  if (plain.length > 200) return null;
  if (FIRST_FIRES.test(plain)) return firstFiresOutcome(context);
  return glossaryAsked(context, plain) ?? batchesSaid(context, plain) ?? alarmsAsked(context);
}
