/** A choice that was shown earlier and pressed or typed now. Choice ids say all there is to know, so old buttons keep working. */
import { text } from "../answer.ts";
import { CHOICES } from "../firing/guide.ts";
import { readRecords } from "../records/read.ts";
import { isTopic, type TopicId } from "../topics.ts";
import type { Context, Outcome } from "./context.ts";
import { onTopic } from "./on-topic.ts";
import { houseChoice } from "./topics/air.ts";
import { albumChoice } from "./topics/album-shown.ts";
import { banChoice } from "./topics/ban.ts";
import { builderChoice } from "./topics/builder.ts";
import { copyOutcome } from "./topics/copy.ts";
import { closeDownOutcome } from "./topics/close-down.ts";
import { drynessOutcome } from "./topics/calculate.ts";
import { firstChoice } from "./topics/first-fires.ts";
import { guideChoice, startGuide } from "./topics/fire.ts";
import { running } from "./topics/guide-state.ts";
import { groupChoice } from "./topics/group.ts";
import { goneWithPerson } from "./topics/group-share.ts";
import { newHeaterChoice } from "./topics/new-heater.ts";
import { deleteAsk, deleteDone, myDataOutcome } from "./topics/other.ts";
import { pageChoice } from "./topics/pages.ts";
import { reminderChoice } from "./topics/reminders.ts";
import { upkeepChoice } from "./topics/upkeep.ts";
import { recordsOutcome } from "./topics/records.ts";
import { heaterChoice } from "./topics/shared-heater.ts";
import { unitsChosen } from "./topics/talk-records.ts";
import { troubleOutcome } from "./topics/trouble.ts";

export function pressed(context: Context, choice: string): Outcome | null {
  const [kind = "", rest = ""] = split(choice, ":");
  switch (kind) {
    case "topic":
      return isTopic(rest) || context.knowledge.troubles.has(rest as TopicId) ? onTopic(context, rest as TopicId) : null;
    case "sign":
      return sign(context, rest);
    case "guide":
      return guideChoice(context, rest) ?? afterGuide(context, rest);
    case "bed": {
      const report = Object.hasOwn(CHOICES, rest) ? CHOICES[rest] : undefined;
      return report?.event === "report" ? closeDownOutcome(context, report.report, true) : null;
    }
    case "fact":
      return fact(context, rest);
    case "basis":
      return drynessOutcome(context, { figures: [] }, context.state.pending?.data.topic === "meter-reading" ? "meter-reading" : "wood-dryness", rest as "wet" | "dry" | "unknown");
    case "first":
      return newHeaterChoice(context, rest) ?? firstChoice(context, rest);
    case "house":
      return houseChoice(context, rest);
    case "page":
      return pageChoice(context, rest);
    case "album":
      return albumChoice(context, rest);
    case "builder":
      return builderChoice(context, rest);
    case "ban":
      return banChoice(context, rest);
    case "reminder":
      return reminderChoice(context, rest);
    case "upkeep":
      return upkeepChoice(context, rest);
    case "heater":
      return heaterChoice(context, rest);
    case "share":
    case "card":
    case "winter":
    case "list":
      return groupChoice(context, kind, rest, onTopic);
    case "units":
      return unitsChosen(context, rest);
    case "data":
      return rest === "delete" ? deleteAsk(context) : rest === "delete-yes" ? { ...deleteDone(context), ...goneWithPerson(context) } : rest === "export" ? copyOutcome(context) : rest === "keep" ? { draft: { topic: "my-data", headline: text("data.kept") }, state: { pending: undefined } } : myDataOutcome(context);
    default:
      return null;
  }
}

const split = (words: string, at: string): [string, string] => {
  const i = words.indexOf(at);
  return i < 0 ? [words, ""] : [words.slice(0, i), words.slice(i + 1)];
};

/** `sign:<trouble>:<sign>=<answer>`; `?` is "I don't know" */
function sign(context: Context, rest: string): Outcome | null {
  const [troubleId, more] = split(rest, ":");
  const [signId, answer] = split(more, "=");
  const trouble = context.knowledge.troubles.get(troubleId as TopicId);
  if (!trouble || !Object.hasOwn(trouble.signs, signId)) return null;
  return troubleOutcome(context, trouble, { [signId]: answer === "?" ? null : answer });
}

/** A button of a guide that is over, or of another's fire: never silence. */
function afterGuide(context: Context, id: string): Outcome | null {
  if (!Object.hasOwn(CHOICES, id) && id !== "take-over") return null;
  const report = CHOICES[id];
  if (report?.event === "report") return closeDownOutcome(context, report.report, true);
  return { draft: { topic: "light-fire", headline: text("guide.none"), blocks: [] } };
}

/** `fact:<heater fact>=<value>` writes it down and goes on with what was asked for. */
function fact(context: Context, rest: string): Outcome | null {
  const [key, raw] = split(rest, "=");
  const value = raw === "true" ? true : raw === "false" ? false : raw;
  const read = readRecords({ heater: { [key]: value } });
  if (read.problems.length > 0) return null;
  const kept = recordsOutcome(context, "set-heater", read);
  const write = kept.writes?.find((one) => one.write === "heater");
  if (write?.write !== "heater") return kept;
  const changed: Context = { ...context, heater: write.heater, snapshot: { ...context.snapshot, heaters: [write.heater, ...context.snapshot.heaters.filter((one) => one.id !== write.heater.id)] } };
  const next = context.state.topic && context.state.topic !== "set-heater"
    ? context.state.topic === "light-fire" && !running(context) ? startGuide(changed) : onTopic(changed, context.state.topic)
    : kept;
  if (next === kept) return kept;
  const writes = [...(kept.writes ?? []), ...(next.writes ?? []).filter((one) => one.write !== "heater")];
  return { ...next, writes, state: { ...kept.state, ...next.state } };
}
