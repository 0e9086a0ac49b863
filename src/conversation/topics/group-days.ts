/** Days the group agrees on: the sweep's, with who joins; and the day of testing alarms, with a reminder to all who want one. */
import { say, steps, text, verbatim, type Block } from "../../answer.ts";
import type { GroupEntry, GroupList } from "../../records/group.ts";
import type { Due, DueRowLike } from "../../records/types.ts";
import { afterSleep_ms } from "../../upkeep/quiet.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { readTimes, zoned } from "../reading/times.ts";
import { closed, entriesOf, here, listOf, moderator, opened } from "./group-lists.ts";
import { plain } from "./group-share.ts";
import type { DueOutcome } from "./reminder-due.ts";

export type DayKind = "sweep" | "alarms";
const DAY_MS = 86_400_000;
const FARTHEST_DAYS = 400;
/** How long before the day somebody is reminded, and at which hour of theirs. */
const REMIND: Readonly<Record<DayKind, { readonly days_before: number; readonly hour: number }>> = { sweep: { days_before: 1, hour: 18 }, alarms: { days_before: 0, hour: 10 } };
const NOUN: Readonly<Record<DayKind, RegExp>> = { sweep: /\bsweep'?s? day\b/i, alarms: /\balarms?(?:[ -]test(?:ing)?)? day\b/i };

const dateOf = (list: Pick<GroupList, "facts">): Temporal.PlainDate => Temporal.PlainDate.from(String(list.facts.date));
const shown = (context: Context, day: Temporal.PlainDate) => ({ at_ms: day.toZonedDateTime({ timeZone: context.reader.timezone, plainTime: new Temporal.PlainTime(12) }).epochMilliseconds, show: "date" }) as const;

export function setDay(context: Context, kind: DayKind): Outcome {
  const found = moderator(context);
  if ("draft" in found) return found;
  const { now_ms, reader } = context;
  const said = context.text.replace(NOUN[kind], " ");
  const time = readTimes(said, now_ms, reader.timezone, { lean: "future", locale: reader.locale })[0];
  const day = time && zoned(time.at_ms, reader.timezone).toPlainDate();
  const today = zoned(now_ms, reader.timezone).toPlainDate();
  if (!day || Temporal.PlainDate.compare(day, today) < 0 || today.until(day, { largestUnit: "days" }).days > FARTHEST_DAYS) return plain(`${kind}-day.when`);
  const entries = entriesOf(context, found.group.id, kind);
  const due = entries.map((entry) => reminder(entry, day, now_ms)).filter((row) => row !== null);
  return opened(context, found.group, kind, { date: day.toString() }, text(`${kind}-day.set`, { date: shown(context, day) }), [say(text(`${kind}-day.what`)), choices(kind, found.group.id)], { due });
}

export function cancelDay(context: Context, kind: DayKind): Outcome {
  const found = moderator(context);
  if ("draft" in found) return found;
  const list = listOf(context, found.group.id, kind);
  if (!list) return plain(`${kind}-day.none`);
  return { ...closed(context, found.group, list, text(`${kind}-day.cancelled`, { date: shown(context, dateOf(list)) }), []), cancel: [`day:${found.group.id}:${kind}:*`] };
}

export function joinDay(context: Context, kind: DayKind): Outcome {
  const found = here(context, kind);
  if ("draft" in found) return found;
  const list = listOf(context, found.group.id, kind);
  if (!list) return plain(`${kind}-day.none`, say(text("list.moderator-sets")));
  const { snapshot, now_ms, reader } = context;
  const place_id = snapshot.group?.private_place ?? snapshot.place.id;
  const entry: GroupEntry = { group_id: found.group.id, kind, person_id: snapshot.person.id, at_ms: now_ms, facts: { place_id, timezone: reader.timezone } };
  const row = reminder(entry, dateOf(list), now_ms);
  return {
    draft: { topic: "share-result", headline: text(`${kind}-day.joined`, { date: shown(context, dateOf(list)) }), blocks: blocks(say(text(`${kind}-day.joined-what`)), choices(kind, found.group.id, true)) },
    writes: [{ write: "group-entry", entry }],
    due: row ? [row] : [],
  };
}

export function leaveDay(context: Context, kind: DayKind): Outcome {
  const found = here(context, kind);
  if ("draft" in found) return found;
  const { id } = context.snapshot.person;
  return { draft: { topic: "share-result", headline: text(`${kind}-day.left`) }, writes: [{ write: "drop-entry", group_id: found.group.id, kind, person_id: id }], cancel: [keyOf(found.group.id, kind, id)] };
}

export function showDay(context: Context, kind: DayKind): Outcome {
  const found = here(context, kind);
  if ("draft" in found) return found;
  const list = listOf(context, found.group.id, kind);
  if (!list) return plain(`${kind}-day.none`, say(text("list.moderator-sets")));
  const entries = entriesOf(context, found.group.id, kind);
  const names = entries.map(({ name }) => (name ? verbatim(name) : text("group.member")));
  const isIn = entries.some(({ person_id }) => person_id === context.snapshot.person.id);
  return {
    draft: {
      topic: "share-result",
      headline: text(`${kind}-day.headline`, { date: shown(context, dateOf(list)), count: entries.length }),
      blocks: blocks(kind === "sweep" && names.length > 0 && steps(names, { ordered: false }), say(text(`${kind}-day.what`)), choices(kind, found.group.id, isIn)),
    },
  };
}

const choices = (kind: DayKind, group_id: string, isIn = false): Block => ({
  kind: "choices", cautions: [],
  choices: [{ id: `list:${isIn ? "leave" : "join"}=${kind}=${group_id}`, label: text(`${kind}-day.${isIn ? "leave" : "join"}`) }, { id: `list:show=${kind}=${group_id}`, label: text(`${kind}-day.show`) }],
});

const keyOf = (group_id: string, kind: DayKind, person_id: string): string => `day:${group_id}:${kind}:${person_id}`;

function reminder({ group_id, kind, person_id, facts }: GroupEntry, day: Temporal.PlainDate, now_ms: number): Due | null {
  const { days_before, hour } = REMIND[kind as DayKind];
  const due_at_ms = day.subtract({ days: days_before }).toZonedDateTime({ timeZone: String(facts.timezone ?? "UTC"), plainTime: new Temporal.PlainTime(hour) }).epochMilliseconds;
  if (due_at_ms <= now_ms) return null;
  return {
    key: keyOf(group_id, kind as DayKind, person_id), kind: "group-day", due_at_ms, useful_until_ms: due_at_ms + 10 * 3_600_000,
    person_id, place_id: String(facts.place_id), payload: { kind, group_id, group: {} },
  };
}

export function dayDue(context: Context, row: DueRowLike): DueOutcome {
  const { snapshot, now_ms, reader } = context;
  const kind = row.payload.kind as DayKind;
  const group_id = String(row.payload.group_id);
  const list = listOf(context, group_id, kind);
  const isIn = entriesOf(context, group_id, kind).some(({ person_id }) => person_id === snapshot.person.id);
  if (!list || !isIn || now_ms > row.useful_until_ms) return null;
  const up_ms = afterSleep_ms(snapshot.person.facts.asleep, reader.timezone, now_ms);
  if (up_ms > now_ms) return up_ms > row.useful_until_ms + DAY_MS ? null : { draft: null, due: [{ ...row, due_at_ms: up_ms, useful_until_ms: up_ms + (row.useful_until_ms - row.due_at_ms) }] };
  return {
    draft: {
      topic: kind === "sweep" ? "sweep-due" : "reminder-list",
      headline: text(`${kind}-day.remind`, { date: shown(context, dateOf(list)) }),
      blocks: [say(text(`${kind}-day.remind-what`))],
    },
  };
}
