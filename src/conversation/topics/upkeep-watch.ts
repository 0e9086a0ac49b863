/** After every message: signs of trouble are noted with their day, and a change in the records moves the day on which upkeep is looked at again. */
import type { Write } from "../../records/types.ts";
import { noteSign, signOfTrouble } from "../../upkeep/signs.ts";
import type { Context, Outcome } from "../context.ts";
import { upkeepWatch } from "./reminder-due.ts";

const MOVES: ReadonlySet<Write["write"]> = new Set(["person", "heater", "home", "fire", "delete-fire"]);

export function watched(context: Context, outcome: Outcome): Outcome {
  const writes = noted(context, outcome);
  if (!writes.some(({ write }) => MOVES.has(write)) || writes.some(({ write }) => write === "forget-person")) return outcome;
  return { ...outcome, writes, due: [...(outcome.due ?? []), ...upkeepWatch(context, writes)] };
}

/** "How do I know whether ...?", "what is ...?": a question about the thing, not a report of it. */
const GENERAL = /^\s*(?:how|what|when|which|who|where|can|could|should|would|may|do|does|is it|is there|are there|tell me|explain)\b/i;

/** A trouble asked about anew is a sign of its day; the same talk about it counts once. */
function noted(context: Context, { draft, writes = [] }: Outcome): readonly Write[] {
  const sign = signOfTrouble(context.knowledge.upkeep.signs, draft.topic);
  const { heater, state } = context;
  if (!sign || !heater || state.topic === draft.topic || context.text === "" || GENERAL.test(context.text)) return writes;
  const day = Temporal.Instant.fromEpochMilliseconds(context.now_ms).toZonedDateTimeISO(context.reader.timezone).toPlainDate().toString();
  const written = writes.findLast((one) => one.write === "heater");
  const before = written?.heater ?? heater;
  const signs = noteSign(before.upkeep.signs, sign, day);
  if (!signs || before.id !== heater.id) return writes;
  const noted: Write = { write: "heater", heater: { ...before, upkeep: { ...before.upkeep, signs } } };
  return written ? writes.map((one) => (one === written ? noted : one)) : [...writes, noted];
}
