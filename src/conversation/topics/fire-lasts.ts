/** "How long should the fire burn?" and "may I go to bed while it burns?": how long flames and embers take, and that somebody stays. */
import { say, text, type Block } from "../../answer.ts";
import { usualToBlack_h } from "../../firing/times.ts";
import { q } from "../../quantities.ts";
import { burnOf } from "../../reckoning/burn.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { toTenMinutes, USUAL_MOISTURE_PCT } from "./around.ts";
import { running, stateOf } from "./guide-state.ts";
import { adviseLoad } from "./load-size.ts";

const HOUR_MS = 3_600_000;
/** From thin, loose wood to thick, tight wood. Judgement. */
const FLAMES_SPREAD = { low: 0.7, high: 1.3 };
/** As the heat curve has it. */
const BLACK_SPREAD = { low: 0.8, high: 1.6 };

export function fireLastsOutcome(context: Context, heard: Hearing): Outcome {
  const noDamper = context.heater?.facts.shut_off_damper === false;
  return {
    draft: {
      topic: "light-fire",
      cautions: noDamper ? ["unattended", "close-air"] : ["unattended", "close-flue"],
      headline: text("lasts.headline"),
      blocks: blocks(reckoned(context, heard), say(text(noDamper ? "lasts.close-air" : "lasts.close"), "close-air"), say(text("lasts.off"))),
    },
  };
}

function reckoned(context: Context, heard: Hearing): Block | null {
  const guide = running(context);
  const most_kg = context.limits.max_load_kg;
  const wanted_kg = heard.load_kg ?? (guide ? stateOf(guide).load_kg : undefined) ?? (adviseLoad(context, heard.load).load_kg || most_kg);
  if (!wanted_kg) return null;
  const load_kg = Math.min(wanted_kg, most_kg ?? wanted_kg);
  const { flame_out_h, bed_black_h } = burnOf({
    load_kg, moisture_pct_wet: USUAL_MOISTURE_PCT, max_load_kg: most_kg ?? load_kg, lit: context.heater?.facts.lighting === "bottom" ? "bottom" : "top",
  });
  const hours = (value: number, { low, high }: { low: number; high: number }) => q(value, "h", { low: low * value, high: high * value, digits: 1 });
  return say(text("lasts.reckoned", { load: q(load_kg, "kg", { digits: 1 }), flames: hours(flame_out_h, FLAMES_SPREAD), black: hours(bed_black_h, BLACK_SPREAD) }));
}

/** Nobody sleeps, or leaves, while it flames; when a fire lit now, or the one that burns, is likely to be black. */
export function stayOutcome(context: Context): Outcome {
  const guide = running(context);
  const { lit_at_ms, load_kg } = guide ? stateOf(guide) : { lit_at_ms: undefined, load_kg: undefined };
  const hours = usualToBlack_h(load_kg ?? context.limits.max_load_kg ?? 12);
  const black_ms = toTenMinutes((lit_at_ms ?? context.now_ms) + hours * HOUR_MS);
  return {
    draft: {
      topic: "light-fire",
      cautions: ["unattended", "close-flue", "carbon-monoxide"],
      headline: text("stay.headline"),
      blocks: [
        say(text(lit_at_ms === undefined ? "stay.lit-now" : "stay.burns", { black: { at_ms: black_ms, show: "time" } })),
        say(text("stay.embers"), "close-flue", "carbon-monoxide"),
      ],
    },
  };
}
