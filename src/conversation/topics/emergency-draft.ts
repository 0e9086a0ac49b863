/** The emergency card from inside the conversation: a tree's answer may turn out to be one. */
import { ask, say, steps, text, verbatim } from "../../answer.ts";
import { emergencyCard, type EmergencyKind } from "../../emergency/index.ts";
import type { TopicId } from "../../topics.ts";
import { blocks, type Context, type Outcome } from "../context.ts";

const TOPIC_OF: Readonly<Record<string, TopicId>> = {
  "co-alarm": "co-alarm", "chimney-fire": "chimney-fire", "room-smoke": "smoke-mid-burn", "hot-ash": "ash-removal",
  "burn": "children-and-clearance", "damper-over-embers": "close-down", "back-puff": "back-puff", "house-fire": "children-and-clearance",
};
const CAUTION_OF: Readonly<Record<string, string>> = {
  "co-alarm": "carbon-monoxide", "chimney-fire": "chimney-fire", "room-smoke": "smoke-in-room", "hot-ash": "hot-ash",
  "burn": "burns", "damper-over-embers": "close-flue", "back-puff": "close-air", "house-fire": "hot-surroundings",
};

export function emergencyAnswerDraft(context: Context, kind: string): Outcome {
  const topic = TOPIC_OF[kind] ?? "co-alarm";
  const card = emergencyCard(
    { kind: kind as EmergencyKind, certainty: "sure", topic, also: [] },
    { country: context.snapshot.person.facts.country, fallback_country: context.settings.country, language: context.reader.locale.slice(0, 2) },
  );
  const caution = CAUTION_OF[kind] ?? "carbon-monoxide";
  return {
    draft: {
      topic, emergency: true, cautions: [caution],
      headline: verbatim(card.headline),
      blocks: blocks(
        steps(card.now.map(verbatim), { cautions: [caution] }),
        say(verbatim(card.numbers), caution),
        card.never.length > 0 && steps(card.never.map(verbatim), { ordered: false, cautions: [caution], title: text("never") }),
        card.afterwards.length > 0 && steps(card.afterwards.map(verbatim), { ordered: false, cautions: [caution], title: text("afterwards") }),
        card.question ? ask("danger", verbatim(card.question), [], caution) : null,
      ),
    },
  };
}
