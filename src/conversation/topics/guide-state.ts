/** The guide that runs on the heater meant, as its state machine holds it. */
import type { GuideState } from "../../firing/guide.ts";
import type { Guide } from "../../records/types.ts";
import type { Context } from "../context.ts";

/** A guide nobody touched for so long is over: the bed is long cold, and nothing is said about closing. */
const FORGOTTEN_MS = 14 * 3_600_000;

export const stateOf = (guide: Guide): GuideState => guide.state as unknown as GuideState;

/** Null when none runs, or when it was forgotten. */
export function running(context: Context): Guide | null {
  const { guide } = context.snapshot;
  if (!guide) return null;
  const state = stateOf(guide);
  return context.now_ms - Math.max(state.stage_at_ms, state.lit_at_ms ?? 0) > FORGOTTEN_MS ? null : guide;
}
