/** Setting reminders by talking, seeing them, and being done with them, putting them off or removing them. */
import { ask, say, steps, text, verbatim, type Audience, type Block, type Choice, type Moment, type Text } from "../../answer.ts";
import type { Reminder } from "../../records/types.ts";
import { calendar } from "../../upkeep/calendar.ts";
import { afterSleep_ms } from "../../upkeep/quiet.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { inEnglish } from "../german/beside.ts";
import { readReminder, type ReminderSaid } from "../reading/read-reminder.ts";
import { readTimes } from "../reading/times.ts";
import { topicFacts } from "../../topics.ts";
import { route } from "../routing/route.ts";
import { alongside } from "./reminder-hazards.ts";
import { dueOf, nextOf, putOff, reminderId, removed, ruleWords, ticked } from "./reminder-state.ts";
import { doneOutcome, silenced, upkeepNow, upkeepSaid } from "./upkeep.ts";
import { SOME_ALARM, taskMeant } from "./upkeep-done.ts";

const MOST_OPEN = 100;
const MOST_SHOWN = 20;
const MOST_BUTTONS = 5;
const DAY_MS = 86_400_000;

export const moment = (at_ms: number): Moment => ({ at_ms, show: "day-time" });
const dateTime = (context: Context, at_ms: number): Text | Moment =>
  Math.abs(at_ms - context.now_ms) > 300 * DAY_MS ? text("plain", { value: { at_ms, show: "date" } }) : moment(at_ms);

const audience = (context: Context): { audience?: Audience } => (context.snapshot.place.kind === "group" ? { audience: "place" } : {});

/** What may be shown here: a group's room sees what was set in it, never what somebody set for themselves. */
const shown = (context: Context): readonly Reminder[] => {
  const { reminders, place } = context.snapshot;
  return place.kind === "group" ? reminders.filter(({ place_id }) => place_id === place.id) : reminders;
};

export function reminderSet(context: Context): Outcome {
  return upkeepSaid(context) ?? again(context) ?? withSaid(context, reminderSaid(context));
}
/** What is to be reminded of stays in the person's own words. */
function reminderSaid(context: Context): ReminderSaid {
  const heard = readReminder(context.text, around(context));
  return heard.what === "" ? heard : { ...heard, what: ownWhat(context, heard.what) };
}
const ownWhat = (context: Context, what: string): string => (context.language === "en" ? what : context.own(what).replace(/^(?:bitte |daran |dass ich |dass wir |ans? )+/i, ""));
const around = (context: Context) => ({ now_ms: context.now_ms, timezone: context.reader.timezone, locale: context.reader.locale });

const AGAIN_MS = DAY_MS;

/** "Remind me later", "remind me again tomorrow" after one was said puts that one off. */
function again(context: Context): Outcome | null {
  const heard = readReminder(context.text, around(context));
  if (heard.what !== "" || heard.rule || !/\b(again|later|in|tomorrow|on|at)\b/i.test(context.text)) return null;
  const last = shown(context).filter(({ told_at_ms = 0 }) => told_at_ms > context.now_ms - AGAIN_MS).toSorted((a, b) => (b.told_at_ms ?? 0) - (a.told_at_ms ?? 0))[0];
  return last ? acted(context, last, "later", heard.due_at_ms ?? context.now_ms + DAY_MS) : null;
}

function withSaid(context: Context, heard: ReminderSaid): Outcome {
  if (heard.phase && heard.what) return atPhase(context, heard.what, heard.phase, heard.phase_days);
  if (heard.due_at_ms === undefined) return heard.what ? askWhen(context, heard.what, heard.past) : askWhat(context, {});
  if (!heard.what) return askWhat(context, { due_at_ms: heard.due_at_ms, ...(heard.rule ? { rule: heard.rule } : {}) });
  return make(context, heard.what, heard.due_at_ms, heard.rule);
}

/** A part of the heating year in place of a date: far enough before it to be booked. */
function atPhase(context: Context, what: string, phase: "before" | "after", days: number | undefined): Outcome {
  const upkeep = upkeepNow(context);
  const { seasons, today } = upkeep;
  if (!seasons) return { ...askWhen(context, what), draft: { ...askWhen(context, what).draft, headline: text("remind.no-season") } };
  const task = /\b(sweep|swept|chimney|flue)\b/i.test(inEnglish(context, what)) ? "sweep" : taskMeant(context, what);
  const lead_weeks = context.knowledge.upkeep.tasks[task ?? ""]?.lead_weeks[1] ?? 0;
  const candidates = seasons.all.map(({ start, end }) => (phase === "before" ? start.subtract({ days: days ?? Math.max(14, Math.round(lead_weeks * 7)) }) : end.add({ days: days ?? 7 })));
  const day = candidates.find((one) => Temporal.PlainDate.compare(one, today) > 0) ?? today.add({ days: 1 });
  const due_at_ms = day.toZonedDateTime({ timeZone: context.reader.timezone, plainTime: "09:00" }).epochMilliseconds;
  const start = (seasons.now ?? seasons.next).start;
  return make(context, what, due_at_ms, undefined, say(text("remind.phase", { start: { at_ms: start.toZonedDateTime({ timeZone: context.reader.timezone, plainTime: "12:00" }).epochMilliseconds, show: "date" } })));
}

/** Rung up is not done yet: such a reminder writes no record. */
const BOOKING = /\b(book|ring|call|phone|arrange|appointment|e-?mail|ask)\b/i;

function make(context: Context, what: string, due_at_ms: number, rule?: string, more?: Block): Outcome {
  const { person, place, reminders } = context.snapshot;
  if (reminders.filter(({ person_id }) => person_id === person.id).length >= MOST_OPEN) return { draft: { topic: "reminder-set", headline: text("remind.full") } };
  const meant = BOOKING.test(inEnglish(context, what)) ? null : taskMeant(context, what);
  const task = meant && !alongside(context, { what, task: meant }).burning ? meant : null;
  const reminder: Reminder = { id: reminderId(context), person_id: person.id, place_id: place.id, what, due_at_ms, ...(rule ? { rule } : {}), ...(task ? { task } : {}) };
  const every = ruleWords(reminder);
  const at = dateTime(context, due_at_ms);
  const hazard = alongside(context, reminder);
  const said_at = hazard.burning ? due_at_ms : afterSleep_ms(person.facts.asleep, context.reader.timezone, due_at_ms);
  return {
    draft: {
      topic: "reminder-set",
      ...audience(context),
      cautions: hazard.cautions,
      headline: text(place.kind === "group" ? "remind.set-room" : "remind.set", { what: verbatim(what), when: every ? text("remind.when-every", { every, at }) : text("remind.when", { at }) }),
      blocks: blocks(
        hazard.burning && say(text("remind.look-first"), ...hazard.cautions),
        said_at !== due_at_ms && say(text("remind.sleep", { at: moment(said_at) })),
        more,
        { kind: "choices", cautions: [], choices: [{ id: `reminder:remove=${reminder.id}`, label: text("remind.remove") }, { id: "reminder:calendar", label: text("remind.calendar") }] },
      ),
    },
    writes: [{ write: "reminder", reminder }],
    due: [dueOf(reminder)],
    state: { pending: undefined },
  };
}

const askWhat = (context: Context, data: Readonly<Record<string, unknown>>): Outcome => ({
  draft: { topic: "reminder-set", headline: text("remind.ask-what"), blocks: [ask("reminder-what", text("remind.ask-what-hint")), say(text("remind.example"))] },
  state: { pending: { id: "reminder-what", data, at_ms: context.now_ms } },
});

function askWhen(context: Context, what: string, past = false): Outcome {
  const hazard = alongside(context, { what });
  return {
    draft: {
      topic: "reminder-set",
      cautions: hazard.cautions,
      headline: text("remind.ask-when", { what: verbatim(what) }),
      blocks: blocks(
        past && say(text("remind.past")),
        ask("reminder-when", text("remind.ask-when-hint"), (["hour", "tomorrow", "week", "month"] as const).map((id) => ({ id: `reminder:in=${id}`, label: text(`remind.in.${id}`) }))),
      ),
    },
    state: { pending: { id: "reminder-when", data: { what }, at_ms: context.now_ms } },
  };
}

/** The answer to what was left open. Null when it answers nothing. */
export function reminderAnswered(context: Context): Outcome | null {
  const { pending } = context.state;
  if (pending?.id === "reminder-when") {
    const heard = readReminder(context.text, around(context));
    const what = String(pending.data.what ?? "");
    if (heard.what !== "" && elsewhere(context)) return null;
    return heard.due_at_ms === undefined && !heard.phase ? null : withSaid(context, { ...heard, what });
  }
  if (pending?.id !== "reminder-what" || /\?\s*$/.test(context.text) || (!TO_DO.test(context.text) && elsewhere(context))) return null;
  const heard = reminderSaid(context);
  return heard.what ? withSaid(context, { ...(pending.data as Partial<ReminderSaid>), ...heard }) : null;
}

const TO_DO = /^\s*(?:to |the |that )?(?:test|check|clean|weigh|order|book|call|ring|phone|look|take|empty|sweep|bring|buy|change|replace|measure|write|ask|put|tighten|oil|inspect|split|stack|cover|move|pay|visit)\b/i;

/** A message with a topic of its own is no answer to a question about a reminder. */
function elsewhere({ text: words, said, language }: Context): boolean {
  const { verdict, ranked } = route(said, language);
  const topic = ranked[0]?.topic;
  return /^\s*(?:log|note|my|help|show|set)\b/i.test(words) || (verdict === "sure" && topic !== undefined && topic !== "out-of-scope" && topicFacts(topic).group !== "upkeep");
}

export function reminderList(context: Context): Outcome {
  if (/\b(calendar|ical|ics)\b/i.test(context.text)) return asCalendar(context);
  const list = shown(context);
  return {
    draft: {
      topic: "reminder-list",
      ...audience(context),
      headline: text("remind.list", { count: list.length }),
      blocks: blocks(
        list.length > 0 && steps(list.slice(0, MOST_SHOWN).map((one) => line(context, one)), { ordered: true, cautions: [...new Set(list.slice(0, MOST_SHOWN).flatMap((one) => alongside(context, one).cautions))] }),
        list.length > MOST_SHOWN && say(text("remind.more", { count: list.length - MOST_SHOWN })),
        context.snapshot.place.kind === "group" && say(text("remind.private-here")),
        list.length === 0 ? say(text("remind.example")) : { kind: "choices", cautions: [], choices: [{ id: "reminder:calendar", label: text("remind.calendar") }, { id: "topic:upkeep-list", label: text("topic.upkeep-list") }] },
      ),
    },
  };
}

function line(context: Context, reminder: Reminder): Text {
  const { what, due_at_ms, told_at_ms } = reminder;
  const at = dateTime(context, due_at_ms);
  const every = ruleWords(reminder);
  if (every) return text("remind.line-every", { what: verbatim(what), every, at });
  return text(told_at_ms === undefined ? "remind.line" : "remind.line-waiting", { what: verbatim(what), at });
}

export function asCalendar(context: Context): Outcome {
  const list = shown(context).filter(({ due_at_ms, rule }) => rule !== undefined || due_at_ms > context.now_ms - DAY_MS);
  if (list.length === 0) return reminderList({ ...context, text: "" });
  const words = calendar(list.map((reminder) => ({ reminder, title: reminder.what })), context.reader.timezone, context.now_ms);
  return {
    draft: {
      topic: "reminder-list",
      ...audience(context),
      headline: text("remind.calendar-here"),
      blocks: [
        steps(list.slice(0, MOST_SHOWN).map((one) => line(context, one)), { ordered: false }),
        { kind: "document", cautions: [], document: { name: "reminders.ics", media_type: "text/calendar", title: text("remind.calendar-title"), body: [{ kind: "text", text: verbatim(words), cautions: [] }], twin: true } },
      ],
    },
  };
}

/** Done, put off or removed: which one, and until when. */
export function reminderDone(context: Context): Outcome {
  const said = upkeepSaid(context) ?? silenced(context);
  if (said) return said;
  const plain = inEnglish(context, context.text).toLowerCase();
  const act = /\b(snooze|later|postpone|put (?:it |that |this )?off|delay|push|move (?:it|that)|not now|another time)\b/.test(plain) ? "later"
    : /\b(remove|delete|cancel|stop|forget|drop|take (?:it|that) off the list|no longer)\b/.test(plain) ? "remove" : "done";
  const list = shown(context);
  const found = meant(context, list, plain);
  if (found.length === 0) return nothingOpen(context, list);
  if (found.length > 1) return whichOne(found, act);
  return acted(context, found[0] as Reminder, act, until(context));
}
type Act = "done" | "later" | "remove";

function meant(context: Context, list: readonly Reminder[], plain: string): readonly Reminder[] {
  const number = Number(/\b(?:reminder |number |no\.? ?|#)(\d{1,2})\b|^(?:done|snooze|remove|delete|cancel)(?: with)? (\d{1,2})\b(?! ?(?:h|hours?|d|days?|weeks?|min|minutes?|months?)\b)/.exec(plain)?.slice(1).find(Boolean));
  const counted = number ? list[number - 1] : undefined;
  if (counted) return [counted];
  const words = new Set(plain.split(/[^\p{L}\p{N}]+/u).filter((word) => word.length > 3 && !COMMON.has(word)));
  const named = list.filter(({ what }) => what.toLowerCase().split(/[^\p{L}\p{N}]+/u).some((word) => words.has(word)));
  const told = list.filter(({ told_at_ms, missed_at_ms }) => told_at_ms !== undefined || missed_at_ms !== undefined).toSorted((a, b) => (b.told_at_ms ?? 0) - (a.told_at_ms ?? 0));
  const named_told = told.filter((one) => named.includes(one));
  if (named_told.length > 0) return named_told.slice(0, 1);
  if (named.length > 0) return named;
  const task = taskMeant(context, plain);
  const same = task ? list.filter((one) => one.task === task) : [];
  if (same.length > 0) return same;
  return told.length > 0 ? told.slice(0, 1) : list;
}
const COMMON = new Set(["reminder", "reminders", "remind", "done", "tick", "ticked", "snooze", "later", "about", "with", "that", "this", "please", "have", "been", "remove", "delete", "cancel", "hours", "days", "week", "weeks", "month", "tomorrow", "minutes", "stop", "forget", "the", "every", "test"]);

/** "For 3 days", "2 hours", "until Friday at 8"; else tomorrow at the same hour. */
function until(context: Context): number {
  const { now_ms, reader } = context;
  const words = context.text.replace(/\b(?:for|by) (?=(?:an?|\d+|one|two|three|half)\b)/i, "in ").replace(/\bsnooze (?:it )?(\d+)/i, "in $1");
  const [time] = readTimes(words, now_ms, reader.timezone, { lean: "future", locale: reader.locale });
  if (!time || time.at_ms <= now_ms) return now_ms + DAY_MS;
  if (time.kind === "instant") return time.at_ms;
  const at = Temporal.Instant.fromEpochMilliseconds(time.at_ms).toZonedDateTimeISO(reader.timezone);
  return at.withPlainTime("09:00").epochMilliseconds;
}

function acted(context: Context, reminder: Reminder, act: Act, until_ms: number): Outcome {
  const what = verbatim(reminder.what);
  if (act === "done") return reminder.task ? taskDone(context, reminder) : { draft: { topic: "reminder-done", ...audience(context), headline: text("remind.ticked", { what }), blocks: nextBlock(context, reminder) }, ...ticked(context, [reminder]), state: { pending: undefined } };
  const changes = act === "later" ? putOff(reminder, until_ms) : removed(context, reminder);
  const hazard = act === "later" ? alongside(context, reminder).cautions : [];
  return {
    draft: { topic: "reminder-done", ...audience(context), cautions: hazard, headline: act === "later" ? text("remind.snoozed", { what, at: moment(until_ms) }) : text("remind.removed", { what }) },
    ...changes,
    state: { pending: undefined },
  };
}

/** The record it was about is written too, and says when it is due next. */
function taskDone(context: Context, reminder: Reminder): Outcome {
  const own = ticked(context, [reminder]);
  const outcome = doneOutcome(context, reminder.task ?? "", upkeepNow(context).today);
  if (reminder.task === SOME_ALARM) return { ...outcome, ...own };
  const others = (outcome.writes ?? []).filter((one) => !(one.write === "reminder" && one.reminder.id === reminder.id));
  const rows = (outcome.due ?? []).filter((row) => row.payload.reminder_id !== reminder.id);
  return {
    ...outcome,
    draft: { ...outcome.draft, topic: "reminder-done", blocks: [...nextBlock(context, reminder), ...(outcome.draft.blocks ?? [])] },
    writes: [...others, ...own.writes], due: [...rows, ...own.due], cancel: [...(outcome.cancel ?? []), ...own.cancel],
  };
}

function nextBlock(context: Context, reminder: Reminder): Block[] {
  const next = reminder.due_at_ms > context.now_ms && reminder.rule ? reminder.due_at_ms : nextOf(reminder, context.reader.timezone, context.now_ms);
  return next === null ? [] : [say(text("remind.now-next", { at: dateTime(context, next) }))];
}

const nothingOpen = (context: Context, list: readonly Reminder[]): Outcome => ({
  draft: { topic: "reminder-done", headline: text(list.length === 0 ? "remind.none-open" : "remind.none-like"), blocks: context.heater ? [say(text("care.tell"))] : [] },
});

const whichOne = (list: readonly Reminder[], act: Act): Outcome => ({
  draft: {
    topic: "reminder-done",
    headline: text("remind.which"),
    blocks: [ask("reminder-which", text("remind.which"), list.slice(0, MOST_BUTTONS).map((one): Choice => ({ id: `reminder:${act}=${one.id}`, label: text("plain", { value: verbatim(one.what) }) })))],
  },
});

/** Choice ids `reminder:<what>` and `reminder:<act>=<id>`. */
export function reminderChoice(context: Context, rest: string): Outcome | null {
  if (rest === "calendar") return asCalendar(context);
  if (rest === "book") return atSweep(context);
  const [act = "", id = ""] = rest.split("=");
  if (act === "in") return inPending(context, id);
  if (act !== "done" && act !== "later" && act !== "remove") return null;
  const reminder = shown(context).find((one) => one.id === id);
  if (!reminder) return nothingOpen(context, []);
  return acted(context, reminder, act, context.now_ms + DAY_MS);
}

function inPending(context: Context, id: string): Outcome | null {
  const { pending } = context.state;
  if (pending?.id !== "reminder-when") return askWhat(context, {});
  const now = Temporal.Instant.fromEpochMilliseconds(context.now_ms).toZonedDateTimeISO(context.reader.timezone);
  const morning = (span: Temporal.DurationLike): number => now.add(span).withPlainTime("09:00").epochMilliseconds;
  const due = new Map([["hour", context.now_ms + 3_600_000], ["tomorrow", morning({ days: 1 })], ["week", morning({ days: 7 })], ["month", morning({ months: 1 })]]).get(id);
  return due === undefined ? null : make(context, String(pending.data.what ?? ""), due);
}

/** When the sweep should be booked, or tomorrow when that has passed. */
function atSweep(context: Context): Outcome {
  const { jobs, today } = upkeepNow(context);
  const tell_on = jobs.find(({ id }) => id === "sweep")?.tell_on;
  const day = tell_on && Temporal.PlainDate.compare(tell_on, today) > 0 ? tell_on : today.add({ days: 1 });
  return make(context, "book the sweep", day.toZonedDateTime({ timeZone: context.reader.timezone, plainTime: "09:00" }).epochMilliseconds);
}
