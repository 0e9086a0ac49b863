/** A reminder's life: made, said, put off, done; each with the rows that fall due for it. */
import { createHash } from "node:crypto";
import { text, type Text } from "../../answer.ts";
import { messageKey } from "../../message.ts";
import type { Due, Reminder, Write } from "../../records/types.ts";
import { nextTime, readRule } from "../../upkeep/recurrence.ts";
import type { Context } from "../context.ts";

/** later than this it is said as a late one, together with others */
export const USEFUL_MS = 2 * 3_600_000;

export interface Changes {
  readonly writes: readonly Write[];
  readonly due: readonly Due[];
  readonly cancel: readonly string[];
}

/** Short, so that a button can hold it; made of the message, so that a second delivery makes the same. */
export const reminderId = (context: Context): string => createHash("sha256").update(`reminder ${messageKey(context.message)}`).digest("base64url").slice(0, 12).replace(/[-_]/g, "x");

/** One row an occurrence: an earlier one that could not be sent may come back beside the next. */
export const dueOf = (reminder: Reminder, due_at_ms: number = reminder.due_at_ms): Due => ({
  key: `reminder:${reminder.id}:${due_at_ms}`, kind: "reminder", due_at_ms, useful_until_ms: due_at_ms + USEFUL_MS,
  person_id: reminder.person_id, place_id: reminder.place_id, payload: { reminder_id: reminder.id },
});
const everyRow = ({ id }: Reminder): string => `reminder:${id}:*`;

export const nextOf = (reminder: Reminder, timezone: string, after_ms: number): number | null => (reminder.rule ? nextTime(readRule(reminder.rule), timezone, after_ms) : null);

/** Said, or gathered into a digest: what comes round moves on. */
export function said(reminder: Reminder, timezone: string, now_ms: number): { readonly reminder: Reminder; readonly due: readonly Due[] } {
  const { missed_at_ms: _, ...rest } = reminder;
  const next = nextOf(reminder, timezone, Math.max(now_ms, reminder.due_at_ms));
  const moved: Reminder = { ...rest, told_at_ms: now_ms, ...(next === null ? {} : { due_at_ms: next }) };
  return { reminder: moved, due: next === null ? [] : [dueOf(moved)] };
}

/** Done: one that comes round waits for its next time, another is closed. */
export function ticked(context: Context, reminders: readonly Reminder[]): Changes {
  const changed = reminders.map((reminder) => {
    const { missed_at_ms: _, told_at_ms: __, ...rest } = reminder;
    const next = reminder.due_at_ms > context.now_ms && reminder.rule ? reminder.due_at_ms : nextOf(reminder, context.reader.timezone, context.now_ms);
    return next === null ? { ...rest, done_at_ms: context.now_ms } : { ...rest, due_at_ms: next };
  });
  return changes(reminders, changed);
}

export function removed(context: Context, reminder: Reminder): Changes {
  return changes([reminder], [{ ...reminder, done_at_ms: context.now_ms }]);
}

/** Put off once; a rhythm goes on as before after it. */
export function putOff(reminder: Reminder, until_ms: number): Changes {
  const { missed_at_ms: _, told_at_ms: __, ...rest } = reminder;
  return changes([reminder], [{ ...rest, due_at_ms: until_ms }]);
}

const changes = (before: readonly Reminder[], after: readonly Reminder[]): Changes => ({
  writes: after.map((reminder) => ({ write: "reminder", reminder })),
  due: after.flatMap((reminder) => (reminder.done_at_ms === undefined ? [dueOf(reminder)] : [])),
  cancel: before.map(everyRow),
});

/** "every 2 weeks on Friday", as words; null for one that comes once or whose rule says more than words of ours. */
export function ruleWords({ rule }: Pick<Reminder, "rule">): Text | null {
  if (!rule) return null;
  const { rrule } = readRule(rule);
  const part = (name: string): string | undefined => new RegExp(`(?:^|;)${name}=([^;]+)`).exec(rrule)?.[1];
  const [freq = "DAILY", interval = "1", days] = [part("FREQ"), part("INTERVAL"), part("BYDAY")];
  const nth = /^(-?\d)([A-Z]{2})$/.exec(days ?? "");
  if (nth) return text("remind.every.nth", { nth: text(`remind.nth.${nth[1]}`), day: text(`remind.day.${nth[2]}`) });
  const every = text(`remind.every.${freq}`, { n: Number(interval) });
  return days ? text("remind.every.days", { every, days: days.split(",").map((one) => text(`remind.day.${one}`)) }) : every;
}
