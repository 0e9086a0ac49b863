/** Small blocks that many answers share. */
import { say, text, type Block } from "../../answer.ts";
import type { Call } from "../../knowledge/schemas.ts";
import type { Context } from "../context.ts";

/** "Call your chimney sweep or ..., and tell them ..." */
export function callLine(context: Context, calls: readonly Call[], cautions: readonly string[] = []): Block | null {
  const known = calls.filter((call) => context.knowledge.calls.has(call));
  const [first] = known;
  if (!first) return null;
  const builder = context.heater?.rules.find((rule) => rule.call && known.includes("builder"))?.call;
  const who = known.map((call) => text(`calls.${call}.title`));
  return say(
    builder ? text("call.builder-named", { who, name: builder, tell: text(`calls.${first}.tell`) }) : text("call.who", { who, tell: text(`calls.${first}.tell`) }),
    ...cautions,
  );
}

/** What a builder or local rule says, beside the caution, never in its place. */
export function builderWords(context: Context): Block[] {
  return context.rules.flatMap((rule) =>
    rule.words ? [{ kind: "quote", who: text(`rule.from.${rule.from}`), words: { id: "verbatim", args: { words: rule.words } }, cautions: [] } satisfies Block] : [],
  );
}
