/** Two-batch firing: never, but where the builder's sheet has it. Both batches together stay within the same load. */
import { say, text, type Block } from "../../answer.ts";
import { q } from "../../quantities.ts";
import type { HeaterRule } from "../../records/types.ts";
import { blocks, type Context, type Outcome } from "../context.ts";

const SHEET = /\b(?:sheet|builder|manual|instructions?|papers?)\b.{0,60}\b(?:two|2) ?-?batch(?:es)?\b|\b(?:two|2) ?-?batch(?:es)?\b.{0,60}\b(?:sheet|builder|manual|instructions?|papers?)\b/;
const NOT = /\b(?:no|not|never|without|doesn'?t|dont|don'?t|only one)\b/;
/** The second batch is at most half of the first; common practice. */
const FIRST_SHARE = 2 / 3;

const allowed = (context: Context): boolean => context.rules.some((rule) => rule.from === "builder" && rule.two_batches);

/** "The builder's sheet has two batches", and taking it back. A question is no statement. */
export function batchesSaid(context: Context, plain: string): Outcome | null {
  if (!SHEET.test(plain) || context.text.includes("?")) return null;
  const { heater, snapshot } = context;
  const before = heater ?? { id: context.id("heater"), owner_id: snapshot.person.id, member_ids: [snapshot.person.id], facts: {}, upkeep: {}, rules: [] };
  const others = before.rules.filter((rule) => !rule.two_batches);
  const rule: HeaterRule = { from: "builder", said_by: snapshot.person.id, said_at_ms: context.now_ms, two_batches: true };
  const no = NOT.test(plain);
  const after = { ...before, rules: no ? others : [...others, rule] };
  return {
    draft: {
      topic: "set-heater",
      cautions: ["more-wood"],
      headline: text(no ? "batches.no" : "batches.yes"),
      blocks: blocks(...(no ? [] : batchBlocks({ ...context, heater: after, rules: [...context.rules, rule] })), say(text("records.undo"))),
    },
    writes: [{ write: "heater", heater: after }],
    ...(heater ? { state: { undo: { writes: [{ write: "heater", heater }], at_ms: context.now_ms } } } : {}),
  };
}

export function batchBlocks(context: Context): Block[] {
  if (!allowed(context)) return [];
  const { max_load_kg } = context.limits;
  const down = (kg: number): number => Math.floor(kg * 2) / 2;
  if (max_load_kg === null) return [say(text("batches.share"), "more-wood", "opening-door")];
  const first = down(FIRST_SHARE * max_load_kg);
  return [say(text("batches.loads", { first: q(first, "kg", { digits: 1 }), second: q(down(Math.min(first / 2, max_load_kg - first)), "kg", { digits: 1 }), most: q(max_load_kg, "kg", { digits: 1 }) }), "more-wood", "opening-door")];
}
