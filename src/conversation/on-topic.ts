/** From a topic, and what was heard with it, to its answer. */
import type { TopicId } from "../topics.ts";
import type { Context, Outcome } from "./context.ts";
import { hear, type Hearing } from "./hear.ts";
import { wanted } from "./stated.ts";
import { absenceOutcome, absenceSaid } from "./topics/absence.ts";
import { closeDownOutcome } from "./topics/close-down.ts";
import { buyingOutcome } from "./topics/buying.ts";
import { drynessOutcome, energyOutcome, volumeOutcome } from "./topics/calculate.ts";
import { asksForCopy, copyOutcome } from "./topics/copy.ts";
import { draughtOutcome } from "./topics/draught.ts";
import { firePlanOutcome } from "./topics/fire-plan.ts";
import { fitOutcome, readingsSaid } from "./topics/fit.ts";
import { guideEvent, startGuide } from "./topics/fire.ts";
import { running } from "./topics/guide-state.ts";
import { groupOutcome } from "./topics/group.ts";
import { heatCurveOutcome } from "./topics/heat-curve.ts";
import { howtoOutcome } from "./topics/howto.ts";
import { loadOutcome } from "./topics/load-size.ts";
import { newHeaterOutcome } from "./topics/new-heater.ts";
import { asksToDelete, deleteAsk, fireLogOutcome, helpOutcome, myDataOutcome, notYetOutcome, outOfScopeOutcome } from "./topics/other.ts";
import { seasoningOutcome } from "./topics/seasoning.ts";
import { reminderDone, reminderList, reminderSet } from "./topics/reminders.ts";
import { listOutcome, sweepOutcome } from "./topics/upkeep.ts";
import { talkRecords } from "./topics/talk-records.ts";
import { mayTouch, touchOutcome } from "./topics/touch.ts";
import { troubleOutcome } from "./topics/trouble.ts";
import { woodStockOutcome } from "./topics/wood-stock.ts";

export function onTopic(context: Context, topic: TopicId, heard: Hearing = hear(context)): Outcome {
  switch (topic) {
    case "light-fire": {
      const guide = running(context);
      return guide && guide.watch_id === context.snapshot.person.id ? guideEvent(context, guide, { event: "look" }) : startGuide(context, heard.load_kg);
    }
    case "close-down":
      return closeDownOutcome(context, heard.report);
    case "load-size":
      return loadOutcome(context, heard.load);
    case "wood-dryness":
    case "meter-reading":
      return drynessOutcome(context, heard, topic);
    case "fuel-energy":
      return energyOutcome(context, heard);
    case "wood-volume":
      return buyingOutcome(context, heard) ?? volumeOutcome(context, heard);
    case "wood-stock":
      return meansWarmth(context, heard) ? heatCurveOutcome(context, heard) : woodStockOutcome(context, heard);
    case "seasoning":
      return seasoningOutcome(context, heard);
    case "heat-curve":
      return heatCurveOutcome(context, heard);
    case "fire-plan":
      return firePlanOutcome(context, heard);
    case "first-fires": {
      const absence = absenceSaid(context, heard);
      if (absence) return absenceOutcome(context, absence);
      const howto = context.knowledge.howtos.get(topic);
      if (howto) return newHeaterOutcome(context, howto);
      break;
    }
    case "children-and-clearance":
      if (mayTouch(context.text)) return touchOutcome(context, heard);
      break;
    case "draught":
      return draughtOutcome(context, heard);
    case "log-fire": {
      const readings = heard.load_kg === undefined ? readingsSaid(context) : [];
      return readings.length > 3 ? fitOutcome(context, readings) : talkRecords(context, topic);
    }
    case "set-heater":
    case "set-house":
    case "set-units":
      return talkRecords(context, topic);
    case "woodpile":
      return wanted(context.text) ? volumeOutcome(context, heard) : talkRecords(context, topic);
    case "upkeep-list":
      return listOutcome(context);
    case "sweep-due":
      return sweepOutcome(context);
    case "reminder-set":
      return reminderSet(context);
    case "reminder-list":
      return reminderList(context);
    case "reminder-done":
      return reminderDone(context);
    case "share-result":
      return groupOutcome(context);
    case "show-fires":
      return fireLogOutcome(context);
    case "my-data":
      return asksToDelete(context.said) ? deleteAsk(context) : asksForCopy(context.text) ? copyOutcome(context) : myDataOutcome(context);
    case "help":
      return helpOutcome(context);
    case "out-of-scope":
      return outOfScopeOutcome(context, null);
  }
  const trouble = context.knowledge.troubles.get(topic);
  if (trouble) return troubleOutcome(context, trouble, heard.signs(trouble));
  const howto = context.knowledge.howtos.get(topic);
  return howto ? howtoOutcome(context, howto) : notYetOutcome(context, topic);
}

/** "How long will it last?" after talk of warmth, or with no pile to ask about, is about the heat of a fire. */
function meansWarmth({ text, state, snapshot }: Context, { figures }: Hearing): boolean {
  if (figures.length > 0 || !/^\W*(and )?how long (will|does|would) (it|this|that|the (heat|warmth)) (last|hold|stay warm)\W*$/i.test(text)) return false;
  const about = state.reckoned?.topic;
  if (about === "wood-stock" || about === "wood-volume") return false;
  return about === "heat-curve" || about === "load-size" || !snapshot.home.wood.some((pile) => pile.volume_m3_stacked !== undefined);
}
