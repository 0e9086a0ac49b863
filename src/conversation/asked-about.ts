/** Which troubles somebody talked about: one entry each evening, with the likeliest cause as it stood last. */
import type { Draft } from "../answer.ts";
import { topicFacts } from "../topics.ts";
import type { Context, TalkState } from "./context.ts";

const SAME_TALK_MS = 12 * 3_600_000;
const MOST = 40;

export function askedAbout(context: Context, draft: Pick<Draft, "topic" | "blocks" | "emergency">): Pick<TalkState, "troubles"> {
  const before = context.state.troubles ?? [];
  if (topicFacts(draft.topic).group !== "trouble" || draft.blocks === undefined) return {};
  const cause = draft.blocks.find((block) => block.kind === "causes")?.items[0]?.id;
  const last = before.at(-1);
  const goesOn = last?.topic === draft.topic && context.now_ms - last.at_ms < SAME_TALK_MS;
  if (!goesOn && cause === undefined && !draft.emergency) return {};
  const likeliest = cause ?? (goesOn ? last?.cause : undefined);
  const entry = { topic: draft.topic, at_ms: context.now_ms, ...(likeliest ? { cause: likeliest } : {}) };
  return { troubles: [...(goesOn ? before.slice(0, -1) : before), entry].slice(-MOST) };
}
