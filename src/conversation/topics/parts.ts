/** Small blocks that many answers share. */
import { say, text, verbatim, type Block, type Text } from "../../answer.ts";
import type { Call } from "../../knowledge/schemas.ts";
import type { Context } from "../context.ts";

/** "Call your chimney sweep or ..., and tell them ..." */
export function callLine(context: Context, calls: readonly Call[], cautions: readonly string[] = []): Block | null {
  const known = calls.filter((call) => context.knowledge.calls.has(call));
  const [first] = known;
  if (!first) return null;
  const builder = context.rules.find((rule) => rule.call && known.includes("builder"))?.call;
  const who = known.map((call) => text(`calls.${call}.title`));
  return say(
    builder ? text("call.builder-named", { who, name: builder, tell: text(`calls.${first}.tell`) }) : text("call.who", { who, tell: text(`calls.${first}.tell`) }),
    ...cautions,
  );
}

/** The trouble can go to a builder whom the owner accepted; what would be sent is shown before anything is. */
export function handOverChoice(context: Context): Block | null {
  const link = context.snapshot.builders?.find(({ accepted }) => accepted);
  return link ? { kind: "choices", cautions: [], choices: [{ id: "builder:hand-over", label: text("builder.choice.hand-over", { name: link.name ?? text("builder.somebody") }) }] } : null;
}

/** What a builder or local rule says, beside the caution, never in its place; of lighting and closing down only what the moment needs. */
export function builderWords(context: Context, moment?: "lighting" | "closing"): Block[] {
  return context.rules.flatMap((rule) => {
    const said: Text[] = [
      ...(rule.lighting && moment !== "closing" ? [text(`builder.lighting.${rule.lighting}`)] : []),
      ...(rule.words ? [verbatim(rule.words)] : []),
      ...(rule.close_down && moment !== "lighting" ? [verbatim(rule.close_down)] : []),
    ];
    return said.map((words): Block => ({ kind: "quote", who: text(`rule.from.${rule.from}`), words, cautions: [] }));
  });
}
