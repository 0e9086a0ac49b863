/** "Can I touch it?" The model knows the mean face, the hand meets the hottest spot: so that is asked for, and nothing is ever called safe. */
import { ask, numbers, say, text } from "../../answer.ts";
import { q } from "../../quantities.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { inUnit } from "../reading/figures.ts";
import { howtoOutcome } from "./howto.ts";

export const touchSaid = (words: string): boolean => /\b(touch|touching|lean (on|against)|sit on|lie on|sleep on|hand on|too hot to|burn (myself|my|our|his|her|a child|the))\b/i.test(words);

/**
 * From where skin burns, by time of contact, °C. ISO 13732-1:2006, from memory: 10 s on ceramic or stone 66; 1 min 51 (bare metal, the
 * lowest of all surfaces); 10 min 48 and 8 h 43 for every surface.
 */
export const BURNS_C: readonly { readonly contact: "seconds" | "minute" | "ten-minutes" | "long"; readonly from_C: number }[] = [
  { contact: "seconds", from_C: 66 },
  { contact: "minute", from_C: 51 },
  { contact: "ten-minutes", from_C: 48 },
  { contact: "long", from_C: 43 },
];
/** Asked for leave to touch: the one thing the model cannot answer. Children, and a burn that has happened, get their own advice. */
export const mayTouch = (words: string): boolean => /^(?!.*\b(child\w*|kids?|baby|toddler\w*|cat|dog|pets?|burnt|burned|burn)\b).*\b(can|could|may|should|is it|safe|ok|okay|too hot)\b.*\b(touch\w*|lean|sit|lie|sleep|hand)\b/is.test(words);
/** An infrared or dial thermometer may be this far off. Common practice, no source. */
const METER_K = 3;

export function touchOutcome(context: Context, heard: Hearing): Outcome {
  const spot_C = heard.figures.map((figure) => (figure.dimension === "temperature" ? inUnit(figure, "C") : figure.dimension === null && figure.value >= 25 && figure.value <= 400 ? (context.reader.system === "us" ? ((figure.value - 32) * 5) / 9 : figure.value) : null)).find((value) => value !== null);
  const figuresAsked = /\b(how hot|degrees|temperature|°|how warm|what temp)\b/i.test(context.text);
  const howto = context.knowledge.howtos.get("children-and-clearance");
  if (spot_C === undefined || spot_C === null) {
    if (!figuresAsked && !mayTouch(context.text) && howto) return howtoOutcome(context, howto);
    return { draft: { topic: "children-and-clearance", cautions: ["burns", "sleeping-warm"], headline: text("touch.ask"), blocks: [say(text("touch.mean"), "burns"), ask("hottest-spot", text("touch.which"), [], "burns")] } };
  }
  const reached = BURNS_C.find(({ from_C }) => spot_C + METER_K >= from_C);
  return {
    draft: {
      topic: "children-and-clearance",
      cautions: ["burns", "sleeping-warm", "not-safe-by-chat"],
      headline: text(`touch.${reached?.contact ?? "below"}`, { spot: q(spot_C, "C") }),
      blocks: blocks(
        say(text("touch.thresholds", { seconds: q(66, "C"), minute: q(51, "C"), ten: q(48, "C"), long: q(43, "C") }), "burns", "sleeping-warm"),
        say(text("touch.hottest"), "burns"),
        numbers({ key: "hottest_spot_C", label: text("number.hottest_spot_C"), quantity: q(spot_C, "C", { low: spot_C - METER_K, high: spot_C + METER_K }) }),
      ),
    },
  };
}
