/**
 * One message, decided. Pure and synchronous: snapshot, message and now go in; the answer and everything to be kept come out.
 * Order: danger, then what was pressed or filled in, then what was asked before, then a fire that burns, then the topic.
 */
import { answer, type Answer } from "../answer.ts";
import { recogniseDanger } from "../emergency/index.ts";
import type { Knowledge } from "../knowledge/load.ts";
import type { Message } from "../message.ts";
import { readRecords } from "../records/read.ts";
import type { Decided, Due, Snapshot } from "../records/types.ts";
import { askedAbout } from "./asked-about.ts";
import { CAREFUL, TOPIC_CAUTIONS } from "./cautions.ts";
import { contextOf, type Context, type Outcome, type Settings } from "./context.ts";
import { emergencyAnswer } from "./emergency.ts";
import { recordsFromForm } from "./form-values.ts";
import { isTopic } from "../topics.ts";
import { pressed } from "./pressed.ts";
import { respond } from "./respond.ts";
import { remembered } from "./spoken.ts";
import { pictureOutcome, widthAfter } from "./topics/album.ts";
import { dayDue } from "./topics/group-days.ts";
import { weekDue } from "./topics/group-winter.ts";
import { offerSharing } from "./topics/group-share.ts";
import { checkIn } from "./topics/fire.ts";
import { digestDue, reminderDue, upkeepDue, type DueOutcome } from "./topics/reminder-due.ts";
import { watched } from "./topics/upkeep-watch.ts";
import { recordsOutcome } from "./topics/records.ts";

export interface Deciding {
  readonly knowledge: Knowledge;
  readonly settings: Settings;
}

export function decide({ knowledge, settings }: Deciding, snapshot: Snapshot, message: Message, now_ms: number): Decided<Answer> {
  const context = contextOf(snapshot, message, now_ms, knowledge, settings);
  const danger = message.text === undefined ? null : recogniseDanger(message.text);
  if (danger) {
    const { country } = snapshot.person.facts;
    const answered = emergencyAnswer(danger, { country, fallback_country: settings.country, language: context.reader.locale.slice(0, 2) });
    const { writes = [], state = {} } = remembered(context, { draft: { topic: "help", headline: answered.headline } });
    return {
      answer: answered,
      writes: [...writes, { write: "talk", state: { ...context.state, topic: danger.topic, topic_at_ms: now_ms, ...askedAbout(context, answered), ...state } as never }],
      due: [],
      cancel: [],
    };
  }
  return finish(context, remembered(context, offerSharing(context, watched(context, widthAfter(context, outcome(context))))));
}

function outcome(context: Context): Outcome {
  const { message } = context;
  const pictured = pictureOutcome(context, respond);
  if (pictured) return pictured;
  if (message.records) return recordsOutcome(context, topicOfRecords(message.records), readRecords(message.records));
  if (message.choice !== undefined) return pressed(context, message.choice) ?? respond(context);
  if (message.form) return recordsOutcome(context, isTopic(message.form.id) ? message.form.id : topicOfRecords(message.form.values), recordsFromForm(context, message.form.id, message.form.values));
  return respond(context);
}

const topicOfRecords = (records: Readonly<Record<string, unknown>>) =>
  records.heater || records.upkeep ? "set-heater" : records.house || records.alarms || records.weather ? "set-house" : records.wood ? "woodpile" : records.fires ? "log-fire" : "set-units";

/** What fell due, looked at now. Null when it no longer matters. */
export function decideDue({ knowledge, settings }: Deciding, snapshot: Snapshot, row: Due, now_ms: number): Decided<Answer | null> | null {
  const message: Message = {
    adapter: "due", native_id: row.key, received_at_ms: now_ms,
    identity: { network: snapshot.place.network, id: snapshot.person.id },
    place: { network: snapshot.place.network, id: snapshot.place.network_id, kind: snapshot.place.kind, encrypted: null },
  };
  const context = contextOf(snapshot, message, now_ms, knowledge, settings);
  const result = fallen(context, row);
  if (!result) return null;
  if (result.draft) return finish(context, result);
  const { writes = [], due = [], cancel = [] } = result;
  return { answer: null, writes, due, cancel };
}

function fallen(context: Context, row: Due): DueOutcome {
  switch (row.kind) {
    case "guide-check-in":
      return checkIn(context, row);
    case "reminder":
      return reminderDue(context, row);
    case "digest":
      return digestDue(context, row);
    case "upkeep":
      return upkeepDue(context, row);
    case "group-week":
      return weekDue(context, row);
    case "group-day":
      return dayDue(context, row);
    case "light-by":
      return null;
  }
}

/** Draft to answer: the topic's own cautions are added, whatever the draft named. */
function finish(context: Context, { draft, ready, writes = [], due = [], cancel = [], state = {}, also_tell = [] }: Outcome): Decided<Answer> {
  const make = (one: Outcome["draft"]): Answer => {
    const cautions = [...new Set([...(one.cautions ?? []), ...(TOPIC_CAUTIONS[one.topic] ?? [])])];
    return answer({ ...one, cautions }, context.knowledge.cautions, CAREFUL);
  };
  const kept = Object.fromEntries(Object.entries({ ...context.state, topic: draft.topic, topic_at_ms: context.now_ms, ...askedAbout(context, draft), ...state }).filter(([, value]) => value !== undefined));
  return {
    answer: ready ?? make(draft),
    writes: [...writes, { write: "talk", state: kept }],
    due,
    cancel,
    ...(also_tell.length > 0 ? { also_tell: also_tell.map((tell) => ({ key: tell.key, person_id: tell.person_id, place_id: tell.place_id, answer: make(tell.draft) })) } : {}),
  };
}

