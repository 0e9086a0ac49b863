/** Closing down outside a guide: the two gates, from what the person says of the bed now. */
import { ask, say, steps, text, type Block, type Choice } from "../../answer.ts";
import { airGate, damperGate, noted, type Bed, type Gate } from "../../firing/gates.ts";
import { saysNothing, type Report } from "../../firing/report.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { running, stateOf } from "./guide-state.ts";
import { builderWords } from "./parts.ts";

const CAUTIONS = ["close-flue", "carbon-monoxide"] as const;
const AIR_CAUTIONS = ["close-air", "carbon-monoxide"] as const;

export const bedChoices: readonly Choice[] = ["yellow", "blue", "glow", "black-dark-raked", "not-sure"].map((id) => ({ id: `bed:${id}`, label: text(`bed.${id}`) }));

/** @param report what was said with this message, or null for a bare question */
export function closeDownOutcome(context: Context, report: Report | null, followUp = false): Outcome {
  const guided = running(context);
  const before = guided ? stateOf(guided).bed : (context.state.bed ?? {});
  const bed = report ? noted(before, report, context.now_ms) : before;
  const noDamper = context.heater?.facts.shut_off_damper === false;
  const air = airGate(bed, context.now_ms);
  const damper = damperGate(bed, context.snapshot.home.alarms, context.now_ms);
  const known = (report !== null && (followUp || !saysNothing(report))) || (guided !== null && bed.lit_at_ms !== undefined);
  const body = known ? gatesNow(bed, air, damper, noDamper) : rule(noDamper);
  return {
    draft: {
      topic: "close-down",
      cautions: noDamper ? AIR_CAUTIONS : [...CAUTIONS, "close-air"],
      headline: headline(known, bed, air, damper, noDamper),
      blocks: blocks(...body, ...builderWords(context, "closing"), question(known, damper, noDamper)),
    },
    state: guided ? {} : { bed, bed_at_ms: context.now_ms },
  };
}

function headline(known: boolean, bed: Bed, air: Gate, damper: Gate, noDamper: boolean) {
  if (!noDamper && damper.open) return text("close.damper-may");
  if (noDamper && known && air.open) return text("close.air-may");
  if (!known) return text(noDamper ? "close.rule-air" : "close.rule");
  if (bed.flame_at_ms !== undefined && bed.no_flame_since_ms === undefined) return text("close.leave-all-open");
  return text(noDamper ? "close.leave-air-open" : "close.leave-damper-open");
}

export function gatesNow(bed: Bed, air: Gate, damper: Gate, noDamper: boolean): Block[] {
  const airBlock = air.open
    ? say(text("gate.air.open"), ...AIR_CAUTIONS)
    : steps(air.missing.map((missing) => text(`gate.missing.${missing}`)), { title: text("gate.air.not-yet"), ordered: false, cautions: AIR_CAUTIONS });
  if (noDamper) return [airBlock];
  if (damper.open) return [say(text("gate.damper.open"), ...CAUTIONS)];
  const damperBlock = steps(damper.missing.slice(0, 5).map((missing) => text(`gate.missing.${missing}`)), { title: text("gate.damper.not-yet"), ordered: false, cautions: CAUTIONS });
  const blackAlready = bed.black_at_ms !== undefined;
  return blocks(damperBlock, say(text("gate.damper.till-morning"), ...CAUTIONS), !blackAlready && airBlock, air.open && say(text("gate.air.longer"), ...AIR_CAUTIONS));
}

const rule = (noDamper: boolean): Block[] =>
  blocks(
    steps([text("close.air.1"), text("close.air.2"), text("close.air.3")], { title: text("close.air.title"), ordered: false, cautions: AIR_CAUTIONS }),
    !noDamper && steps([text("close.damper.1"), text("close.damper.2"), text("close.damper.3"), text("close.damper.4")], { title: text("close.damper.title"), ordered: false, cautions: CAUTIONS }),
    noDamper ? say(text("close.no-damper"), ...AIR_CAUTIONS) : say(text("close.cost"), ...CAUTIONS),
  );

function question(known: boolean, damper: Gate, noDamper: boolean): Block | null {
  if (known && damper.open) return null;
  if (known && !noDamper && damper.missing.length === 1 && (damper.missing[0] === "alarm" || damper.missing[0] === "alarm-doubt")) {
    return ask("bed", text("close.ask-alarm"), [
      { id: "bed:alarm-works", label: text("bed.alarm-works") },
      { id: "bed:alarm-none", label: text("bed.alarm-none") },
    ], ...CAUTIONS);
  }
  return ask("bed", text("close.ask"), bedChoices, ...CAUTIONS);
}
