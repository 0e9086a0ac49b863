/** "Beech or spruce, which is better?" Kilo for kilo nearly the same heat; what differs is how much room a kilogram takes. */
import { ours, say, text } from "../../answer.ts";
import { q } from "../../quantities.ts";
import type { Context, Outcome } from "../context.ts";
import { readSpecies } from "../reading/species.ts";
import { USUAL_MOISTURE_PCT } from "./around.ts";
import { reckonAs } from "./calculate.ts";

const BETTER = /\b(?:better|best|versus|vs|or|difference|besser|bessere[srn]?|oder|lieber|unterschied)\b/i;
const ASKED = /\?\s*$|^\W*(?:(?:and|so|und) )?(?:what|which|is|are|would|should|was|welche[srn]?|ist|sind|soll|lieber)\b/i;
/** A figure, a price or the drying of it asks for more than which one. */
const OTHERWISE = /\d|\b(?:dry|dries|drying|season\w*|price|cost\w*|cheap\w*|weigh\w*|moist\w*|trocken\w*|trocknet|preis|kostet|billiger|wiegt|lager\w*|is (?:this|it)|ist (?:das|es))\b/i;

/** Two woods held against each other, and nothing else asked. */
export function woodsCompared({ text: words, said }: Context): readonly [string, string] | null {
  if (!BETTER.test(said) || !ASKED.test(said) || OTHERWISE.test(said)) return null;
  const [one, other] = [...new Set(readSpecies(words).map(({ id }) => id))];
  return one && other ? [one, other] : null;
}

export function betterWoodOutcome(_context: Context, [one, other]: readonly [string, string]): Outcome {
  const stacked_kg = (species: string): number | null => {
    const done = reckonAs(species, "stack", { volume_m3_stacked: 1, moisture_pct_wet: USUAL_MOISTURE_PCT });
    return done.ok ? Number(done.result.mass_kg) : null;
  };
  const [one_kg, other_kg] = [stacked_kg(one), stacked_kg(other)];
  return {
    draft: {
      topic: "what-to-burn",
      headline: text("better.headline"),
      blocks: [
        ...(one_kg && other_kg ? [say(text("better.weight", { one: ours(one), other: ours(other), one_kg: q(one_kg, "kg", { digits: 0 }), other_kg: q(other_kg, "kg", { digits: 0 }) }))] : []),
        say(text("better.weigh"), "over-firing"),
      ],
    },
  };
}
