/** What is special about tonight's fire, beside the everyday guide: first fires, deep cold, mild weather, the house's own fans. */
import { say, steps, text, type Block } from "../../answer.ts";
import { tooWarmToDraw, weatherKind } from "../../firing/weather.ts";
import { q } from "../../quantities.ts";
import { holds } from "../../trouble/walk.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { airAsk, airAsked, airQuestion, airReminder } from "./air.ts";
import { ladderBlocks, ladderNow } from "./first-fires.ts";

export interface Tonight {
  /** before and after the everyday steps of getting ready */
  readonly before: readonly Block[];
  readonly after: readonly Block[];
  readonly state: NonNullable<Outcome["state"]>;
}

export function tonight(context: Context): Tonight {
  const ladder = ladderNow(context);
  const low_C = lowTonight_C(context);
  const kind = low_C === null ? null : weatherKind(low_C);
  const question = airQuestion(context);
  return {
    before: blocks(
      ...(ladder?.rung || ladder?.stopped ? [...begin(context, "first-fires"), ...ladderBlocks(context)] : []),
      ...(kind ? begin(context, kind) : []),
      ...airReminder(context),
    ),
    after: blocks(
      ladder?.occasion === "rest" && ladder.rung && { kind: "choices", cautions: [], choices: [{ id: "first:in-use", label: text("first.was-in-use") }] },
      question && airAsk(question),
    ),
    state: question ? airAsked(context, question) : {},
  };
}

function begin(context: Context, kind: string): Block[] {
  const firing = context.knowledge.firings.get(kind);
  if (!firing) return [];
  const facts = context.heater?.facts ?? {};
  const list = firing.before_lighting.filter((one) => holds(one.when, facts) ?? one.unknown === "show");
  const cautions = [...new Set([...firing.cautions, ...list.flatMap((one) => one.cautions)])];
  return blocks(
    firing.says && say(text(`firings.${kind}.says`), ...firing.cautions),
    list.length > 0 && steps(list.map((one) => text(`firings.${kind}.before_lighting.${one.id}.text`)), { ordered: false, cautions }),
  );
}

/** The low of the forecast that somebody gave for today; an old forecast says nothing of tonight. */
function lowTonight_C(context: Context): number | null {
  const today = Temporal.Instant.fromEpochMilliseconds(context.now_ms).toZonedDateTimeISO(context.reader.timezone).toPlainDate().toString();
  return context.snapshot.home.weather.find((day) => day.date === today)?.low_C ?? null;
}

/** When not to light at all: no hour of this night is cold enough for the chimney to draw. */
export function notTonight(context: Context): Outcome | null {
  const low_C = lowTonight_C(context);
  const inside_C = context.snapshot.home.house.wanted_C ?? 20;
  if (low_C === null || !tooWarmToDraw(low_C, inside_C)) return null;
  return {
    draft: {
      topic: "light-fire",
      cautions: ["weak-draught", "carbon-monoxide"],
      headline: text("mild.no-fire"),
      blocks: [
        say(text("mild.why", { low: q(low_C, "C"), inside: q(inside_C, "C") }), "weak-draught", "carbon-monoxide"),
        say(text("mild.colder"), "weak-draught"),
        { kind: "choices", cautions: [], choices: [{ id: "topic:mild-weather", label: text("topic.mild-weather") }, { id: "topic:draught", label: text("topic.draught") }] },
      ],
    },
  };
}
