/** Help, the log, what is kept about a person, and saying kindly what Gleed does not know. */
import { ask, ours, say, steps, text, verbatim, type Choice } from "../../answer.ts";
import { q } from "../../quantities.ts";
import { TOPICS, topicFacts, type TopicId } from "../../topics.ts";
import { TOPIC_CAUTIONS } from "../cautions.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { extraTroubles } from "../routing/extra.ts";
import { seasonPicture } from "./season-picture.ts";

const choiceOf = (topic: TopicId): Choice => ({ id: `topic:${topic}`, label: text(`topic.${topic}`) });

/** of the troubles that came in as files of their own */
const MOST_EXTRA = 6;

export function helpOutcome(context: Context): Outcome {
  const isNew = context.heater === null;
  return {
    draft: {
      topic: "help",
      headline: text("help.headline"),
      blocks: blocks(
        steps(["tonight", "walk", "log", "wrong", "dry", "close", "records", "pictures", "data"].map((id) => text(`help.${id}`)), { ordered: false }),
        isNew && say(text("help.start")),
        say(text("help.safety")),
        { kind: "choices", cautions: [], choices: [...(["load-size", "light-fire", "black-glass", "wood-dryness"] as const), ...extraTroubles(context.knowledge).map(({ id }) => id).slice(0, MOST_EXTRA)].map(choiceOf) },
      ),
    },
  };
}

/** Nothing sure: say so, and offer the nearest. */
export function unsureOutcome(_context: Context, nearest: readonly TopicId[]): Outcome {
  const cautions = nearest.slice(0, 1).flatMap((topic) => TOPIC_CAUTIONS[topic] ?? []);
  return {
    draft: {
      topic: nearest[0] ?? "help",
      also: nearest.slice(1, 3),
      cautions,
      headline: text("unsure.headline"),
      blocks: [ask("topic", text("unsure.ask"), [...nearest.slice(0, 3).map(choiceOf), { id: "topic:help", label: text("unsure.none") }], ...cautions), say(text("unsure.danger"))],
    },
  };
}

/** Two close: one short question with both. */
export function twoOutcome(_context: Context, first: TopicId, second: TopicId): Outcome {
  const cautions = [...(TOPIC_CAUTIONS[first] ?? []), ...(TOPIC_CAUTIONS[second] ?? [])];
  return {
    draft: {
      topic: first,
      also: [second],
      cautions,
      headline: text("two.headline", { first: text(`topic.${first}`), second: text(`topic.${second}`) }),
      blocks: [ask("topic", text("two.ask"), [choiceOf(first), choiceOf(second)], ...cautions)],
    },
  };
}

export function outOfScopeOutcome(_context: Context, language: string | null): Outcome {
  return {
    draft: {
      topic: "out-of-scope",
      headline: text(language ? "out.language" : "out.headline"),
      blocks: [say(text("out.can")), say(text("unsure.danger")), { kind: "choices", cautions: [], choices: [{ id: "topic:help", label: text("topic.help") }] }],
    },
  };
}

/** Asked to declare something safe: never from a chat. */
export const notSafeOutcome = (topic: TopicId = "out-of-scope"): Outcome => ({
  draft: { topic, cautions: ["not-safe-by-chat"], headline: text("safe.headline"), blocks: [say(text("safe.who"), "not-safe-by-chat")] },
});

/** A topic that has no file yet. Its cautions stand all the same. */
export function notYetOutcome(_context: Context, topic: TopicId): Outcome {
  const cautions = TOPIC_CAUTIONS[topic] ?? [];
  return {
    draft: { topic, cautions, headline: text("not-yet.headline", { about: text(`topic.${topic}`) }), blocks: [say(text("not-yet.who"), ...cautions)] },
  };
}

export function fireLogOutcome(context: Context): Outcome {
  const { fires, totals } = context.snapshot;
  if (fires.length === 0) return { draft: { topic: "show-fires", headline: text("fires.none"), blocks: [say(text("fires.how"))] } };
  const rows = fires.slice(0, 10).map((fire) => {
    const { load_kg, species, moisture_pct_wet, damper_closed_at } = fire.facts;
    const dash = verbatim("–");
    return [
      text("fires.when", { lit: { at_ms: fire.lit_at_ms, show: "day-time" } }),
      load_kg === undefined ? dash : text("plain", { value: q(load_kg, "kg", { digits: 1 }) }),
      species === undefined ? dash : ours(species),
      moisture_pct_wet === undefined ? dash : text("plain", { value: q(moisture_pct_wet, "pct") }),
      damper_closed_at === undefined ? dash : text("fires.time", { at: { at_ms: Date.parse(damper_closed_at), show: "time" } }),
    ];
  });
  const season = seasonPicture(context);
  const week = fires.filter((fire) => fire.lit_at_ms > context.now_ms - 7 * 86_400_000);
  const week_kg = week.reduce((sum, fire) => sum + (fire.facts.load_kg ?? 0), 0);
  return {
    draft: {
      topic: "show-fires",
      headline: text("fires.headline", { fires: totals.fires, load: q(totals.load_kg, "kg", { digits: 0 }) }),
      blocks: blocks(
        say(text("fires.week", { fires: week.length, load: q(week_kg, "kg", { digits: 0 }) })),
        { kind: "table", cautions: [], columns: ["lit", "load", "wood", "moisture", "damper"].map((id) => text(`fires.column.${id}`)), rows },
        season && { kind: "picture", cautions: [], picture: season },
      ),
    },
  };
}

export function myDataOutcome(context: Context): Outcome {
  const { person, heaters, home, totals, reminders } = context.snapshot;
  return {
    draft: {
      topic: "my-data",
      headline: text("data.headline"),
      blocks: blocks(
        steps([
          text("data.person", { name: person.name ?? text("data.no-name") }),
          text("data.heaters", { heaters: heaters.length, fires: totals.fires }),
          text("data.wood", { piles: home.wood.length }),
          text("data.reminders", { reminders: reminders.length }),
          text("data.messages"),
        ], { ordered: false }),
        say(text("data.rights")),
        { kind: "choices", cautions: [], choices: [{ id: "data:export", label: text("data.export") }, { id: "data:delete", label: text("data.delete") }] },
      ),
    },
  };
}

const DELETES = /\b(?:delete|erase|wipe|remove|forget)\b.{0,30}\b(?:everything|all|me|my (?:data|records|account))\b|(?<!\p{L})(?:lösch\p{L}*|entfern\p{L}*|vergiss)(?!\p{L}).{0,30}(?<!\p{L})(?:alles|mich|meine (?:daten|aufzeichnungen))(?!\p{L})/iu;
/** "Delete everything about me": asked once, not shown a list first. A question about it is answered with the list. */
export const asksToDelete = (said: string): boolean => DELETES.test(said) && !/\?\s*$|^\W*(?:how|can|may|do|what|wie|kann|darf|was)\b/i.test(said);

/** Only said right after the question, and only as plainly as this, a yes deletes. */
export function deleteAnswered({ state, said }: Context): "data:delete-yes" | "data:keep" | null {
  if (state.pending?.id !== "delete" || state.topic !== "my-data" || state.pending.at_ms !== state.topic_at_ms) return null;
  if (/^\W*(?:yes|ja)(?:[, ]+(?:please|delete (?:it|it all|all|everything)|bitte|lösch(?:e|en)? alles|alles löschen))*\W*$/i.test(said)) return "data:delete-yes";
  return /^\W*(?:no|nein|keep(?: it)?|behalten)\b/i.test(said) ? "data:keep" : null;
}

export const deleteAsk = ({ now_ms }: Context): Outcome => ({
  state: { pending: { id: "delete", data: {}, at_ms: now_ms } },
  draft: {
    topic: "my-data",
    headline: text("data.delete-ask"),
    blocks: [ask("delete", text("data.delete-what"), [{ id: "data:delete-yes", label: text("data.delete-yes") }, { id: "data:keep", label: text("data.keep") }])],
  },
});
export const deleteDone = (context: Context): Outcome => ({
  draft: { topic: "my-data", headline: text("data.deleted") },
  writes: [{ write: "forget-person", person_id: context.snapshot.person.id }],
});

export const EVERY_TOPIC = TOPICS.map((topic) => [topic, topicFacts(topic).about] as const);
