/** A job that was done: which one is meant, and the records that are written for it. */
import type { UpkeepTask } from "../../knowledge/upkeep-schema.ts";
import type { Heater, Reminder, Snapshot, Write } from "../../records/types.ts";
import type { Context } from "../context.ts";
import { inEnglish } from "../german/beside.ts";

/** Stands for an alarm of which nobody said whether it is the one for smoke or for carbon monoxide. */
export const SOME_ALARM = "alarm";
export const ALARM_TASKS = ["co-test", "smoke-test"] as const;

const NAMED_ALARM = /\b(co|carbon|monoxide|smoke|fire)\b[^.,;]{0,20}\b(alarms?|detectors?)\b/i;
/** a new battery is no test */
const TESTING = /\b(test\w*|check\w*|press\w*|try|tried|button|how often|how frequently)\b/i;
const ANY_ALARM = /\b(alarms?|detectors?)\b/i;

/** The job that somebody's words mean: the longest of its words that stands there. Null when none does. */
export function taskMeant(context: Context, words: string): string | null {
  const plain = ` ${inEnglish(context, words).toLowerCase().replace(/[^\p{L}\p{N}-]+/gu, " ")} `;
  if (ANY_ALARM.test(plain) && !TESTING.test(plain)) return null;
  if (ANY_ALARM.test(plain) && !NAMED_ALARM.test(plain)) return alarmMeant(context.snapshot, plain);
  let best: { id: string; length: number } | null = null;
  for (const [id, task] of Object.entries(context.knowledge.upkeep.tasks)) {
    for (const word of task.words) if (plain.includes(` ${word} `) && word.length > (best?.length ?? 0)) best = { id, length: word.length };
  }
  return best?.id ?? null;
}

/** Of the alarms on record, if only one kind is; else asked about when it is done. */
function alarmMeant({ home }: Snapshot, plain: string): string {
  const [co, smoke] = [home.alarms.co, home.alarms.smoke].map((alarm) => alarm !== undefined && alarm.present !== false);
  if (/\b(both|all|alarms|detectors)\b/.test(plain) && co === smoke) return ALARM_TASKS.join("+");
  return co === smoke ? SOME_ALARM : co ? "co-test" : "smoke-test";
}

export const tasksOf = (context: Context, ids: string): [string, UpkeepTask][] =>
  ids.split("+").flatMap((id) => {
    const task = context.knowledge.upkeep.tasks[id];
    return task ? [[id, task] as [string, UpkeepTask]] : [];
  });

/** Records for jobs done on a day, written into what the snapshot holds. */
export function doneWrites(context: Context, ids: string, day: string): Write[] {
  let { home } = context.snapshot;
  let heater: Heater = context.heater ?? { id: context.id("heater"), owner_id: context.snapshot.person.id, member_ids: [context.snapshot.person.id], facts: {}, upkeep: {}, rules: [] };
  for (const [id, { record }] of tasksOf(context, ids)) {
    heater = { ...heater, upkeep: { ...heater.upkeep, done: { ...heater.upkeep.done, [id]: day } } };
    if (record === "upkeep.swept_on" || record === "upkeep.channels_cleaned_on" || record === "upkeep.gasket_changed_on") {
      heater = { ...heater, upkeep: { ...heater.upkeep, [record.slice("upkeep.".length)]: day } };
    } else if (record === "alarms.co.tested_on" || record === "alarms.smoke.tested_on") {
      const kind = record.includes(".co.") ? "co" : "smoke";
      home = { ...home, alarms: { ...home.alarms, [kind]: { present: true, ...home.alarms[kind], tested_on: day } } };
    }
  }
  return [{ write: "heater", heater }, ...(home === context.snapshot.home ? [] : [{ write: "home", home } satisfies Write])];
}

/** The snapshot as it stands after these writes, for reckoning on. */
export function applied(snapshot: Snapshot, writes: readonly Write[]): Snapshot {
  let now = snapshot;
  for (const write of writes) now = after(now, write);
  return now;
}

function after(now: Snapshot, write: Write): Snapshot {
  switch (write.write) {
    case "person":
      return write.person.id === now.person.id ? { ...now, person: write.person } : now;
    case "home":
      return write.home.owner_id === now.home.owner_id ? { ...now, home: write.home } : now;
    case "heater":
      return { ...now, heaters: [write.heater, ...now.heaters.filter(({ id }) => id !== write.heater.id)] };
    case "fire":
      return { ...now, fires: [write.fire, ...now.fires.filter(({ id }) => id !== write.fire.id)].toSorted((a, b) => b.lit_at_ms - a.lit_at_ms) };
    case "reminder":
      return { ...now, reminders: [...now.reminders.filter(({ id }) => id !== write.reminder.id), ...(write.reminder.done_at_ms === undefined ? [write.reminder] : [])] };
    default:
      return now;
  }
}

/** Reminders that were about these jobs and have been said: they are done with them. */
export const remindersOf = (reminders: readonly Reminder[], ids: string): readonly Reminder[] => {
  const set = new Set(ids.split("+"));
  return reminders.filter(({ task, told_at_ms, missed_at_ms }) => task !== undefined && (told_at_ms !== undefined || missed_at_ms !== undefined) && task.split("+").some((id) => set.has(id) || id === SOME_ALARM && [...set].some((one) => one.endsWith("-test"))));
};
