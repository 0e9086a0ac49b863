/** The emergency card from inside the conversation: a tree's answer, or a fire being walked through, may turn out to be one. */
import { dangerOf, type EmergencyKind } from "../../emergency/index.ts";
import type { Context, Outcome } from "../context.ts";
import { emergencyAnswer } from "../emergency.ts";

export function emergencyOutcome(context: Context, kind: EmergencyKind): Outcome {
  const { country } = context.snapshot.person.facts;
  const ready = emergencyAnswer(dangerOf(kind), { country, fallback_country: context.settings.country, language: context.reader.locale.slice(0, 2) });
  return { draft: { topic: ready.topic, headline: ready.headline }, ready };
}
