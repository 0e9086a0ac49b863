/** What fell due: reminders, digests of those that could not be said, and upkeep nobody asked about. */
import { ask, say, steps, text, verbatim, type Draft } from "../../answer.ts";
import type { Due, DueRowLike, Reminder, Write } from "../../records/types.ts";
import { telling, type Job } from "../../upkeep/due.ts";
import { afterSleep_ms } from "../../upkeep/quiet.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { alongside } from "./reminder-hazards.ts";
import { said } from "./reminder-state.ts";
import { moment } from "./reminders.ts";
import { dayShown, upkeepNow } from "./upkeep.ts";
import { applied } from "./upkeep-done.ts";

/** An outcome that says nothing: only its writes and rows are kept. */
export type Silent = Omit<Outcome, "draft"> & { readonly draft: null };
export type DueOutcome = Outcome | Silent | null;

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
/** what was missed longer ago stands in the list, not in a digest */
const MISSED_MS = 60 * DAY_MS;

const silent = (rest: Omit<Silent, "draft">): Silent => ({ ...rest, draft: null });
const wakes_ms = (context: Context): number => afterSleep_ms(context.snapshot.person.facts.asleep, context.reader.timezone, context.now_ms);
const digestKey = ({ snapshot }: Context): string => `digest:${snapshot.person.id}:${snapshot.place.id}`;
const here = (context: Context): readonly Reminder[] => context.snapshot.reminders.filter(({ place_id, person_id }) => place_id === context.snapshot.place.id && person_id === context.snapshot.person.id);

export function reminderDue(context: Context, row: DueRowLike): DueOutcome {
  if (row.payload.digest === true) return digestDue(context, row);
  const reminder = context.snapshot.reminders.find(({ id }) => id === row.payload.reminder_id);
  if (!reminder) return null;
  const { now_ms, reader } = context;
  const is_next = row.due_at_ms === reminder.due_at_ms;
  // an earlier occurrence that came back unsent counts; one that was moved or said meanwhile does not
  if (!is_next && !(reminder.rule && row.due_at_ms < reminder.due_at_ms)) return null;
  if (now_ms > row.useful_until_ms) return missed(context, reminder, row, is_next);
  const { burning } = alongside(context, reminder);
  const up_ms = burning ? now_ms : wakes_ms(context);
  if (up_ms > now_ms) return silent({ due: [{ ...row, key: row.key, due_at_ms: up_ms, useful_until_ms: up_ms + (row.useful_until_ms - row.due_at_ms), payload: { ...row.payload, at_ms: row.payload.at_ms ?? row.due_at_ms } }], writes: moved(reminder, up_ms, is_next) });
  const others = here(context).filter(({ id, due_at_ms, told_at_ms }) => id !== reminder.id && due_at_ms <= now_ms && (told_at_ms === undefined || told_at_ms < due_at_ms));
  if (others.length >= 2 && !burning) return missed(context, reminder, row, is_next);
  const next = is_next ? said(reminder, reader.timezone, now_ms) : { reminder: { ...reminder, told_at_ms: now_ms }, due: [] };
  return { draft: reminderDraft(context, reminder, Number(row.payload.at_ms ?? row.due_at_ms), next.reminder), writes: [{ write: "reminder", reminder: next.reminder }], due: next.due };
}

/** A row that waits for the morning stays the reminder's own. */
const moved = (reminder: Reminder, due_at_ms: number, is_next: boolean): Write[] => (is_next ? [{ write: "reminder", reminder: { ...reminder, due_at_ms } }] : []);

/** Too late to be said by itself: gathered with what else was missed, a minute from now. */
function missed(context: Context, reminder: Reminder, row: DueRowLike, is_next: boolean): Silent {
  const next = is_next ? said(reminder, context.reader.timezone, context.now_ms) : { reminder, due: [] };
  const due_at_ms = context.now_ms + MINUTE_MS;
  const at_ms = Number(row.payload.at_ms ?? row.due_at_ms);
  // of the kind `reminder`: what somebody relies on is not dropped where nobody can tell whether it arrived
  const digest: Due = { key: digestKey(context), kind: "reminder", due_at_ms, useful_until_ms: due_at_ms + 30 * DAY_MS, person_id: row.person_id, place_id: row.place_id, payload: { digest: true } };
  return silent({ writes: [{ write: "reminder", reminder: { ...next.reminder, missed_at_ms: Math.max(at_ms, reminder.missed_at_ms ?? 0) } }], due: [...next.due, digest] });
}

export function digestDue(context: Context, row: DueRowLike): DueOutcome {
  const up_ms = wakes_ms(context);
  if (up_ms > context.now_ms) return silent({ due: [{ ...row, due_at_ms: up_ms, useful_until_ms: up_ms + 30 * DAY_MS }] });
  const list = here(context).filter(({ missed_at_ms }) => missed_at_ms !== undefined && missed_at_ms > context.now_ms - MISSED_MS);
  const [first] = list;
  if (!first) return null;
  // an earlier digest that is still on its way says no more than this one
  const cancel = [digestKey(context)];
  const writes: Write[] = list.map((reminder) => ({ write: "reminder", reminder: { ...reminder, told_at_ms: context.now_ms } }));
  if (list.length === 1) return { draft: reminderDraft(context, first, first.missed_at_ms ?? context.now_ms, first), writes, cancel };
  const cautions = [...new Set(list.flatMap((one) => alongside(context, one).cautions))];
  return {
    draft: {
      topic: "reminder-list",
      ...room(context),
      cautions,
      headline: text("remind.digest", { count: list.length }),
      blocks: blocks(
        steps(list.map((one) => text("remind.digest-line", { what: verbatim(one.what), at: moment(one.missed_at_ms ?? one.due_at_ms) })), { ordered: false, cautions }),
        list.some((one) => alongside(context, one).burning) && say(text("remind.look-first"), ...cautions),
        { kind: "choices", cautions: [], choices: list.slice(0, 5).map((one) => ({ id: `reminder:done=${one.id}`, label: text("plain", { value: verbatim(one.what) }) })) },
      ),
    },
    writes,
    cancel,
  };
}

const room = (context: Context): Pick<Draft, "audience"> => (context.snapshot.place.kind === "group" ? { audience: "place" } : {});

function reminderDraft(context: Context, reminder: Reminder, at_ms: number, after: Reminder): Draft {
  const { cautions, burning } = alongside(context, reminder);
  const late = context.now_ms > at_ms + 30 * MINUTE_MS;
  const task = reminder.task && context.knowledge.upkeep.tasks[reminder.task] ? reminder.task : null;
  const choices = [
    { id: `reminder:done=${reminder.id}`, label: text("remind.done") }, { id: `reminder:later=${reminder.id}`, label: text("remind.later") }, { id: `reminder:remove=${reminder.id}`, label: text("remind.remove") },
  ];
  return {
    topic: "reminder-list",
    ...room(context),
    cautions,
    headline: text("remind.now", { what: verbatim(reminder.what) }),
    blocks: blocks(
      say(text("remind.now-lead")),
      late && say(text("remind.now-late", { at: moment(at_ms) })),
      burning ? ask("bed", text("remind.look-first"), [{ id: "topic:close-down", label: text("topic.close-down") }], ...cautions) : null,
      task && say(text(`upkeep.${task}.what`), ...cautions),
      reminder.rule && after.due_at_ms > context.now_ms && say(text("remind.now-next", { at: moment(after.due_at_ms) })),
      { kind: "choices", cautions: [], choices },
    ),
  };
}

const NOTICE_HOUR = 10;

/** When to look at this heater's upkeep again; nothing for somebody who wants no notices, or who does not own it. */
export function upkeepWatch(context: Context, writes: readonly Write[]): Due[] {
  const snapshot = applied(context.snapshot, writes);
  const [heater] = snapshot.heaters;
  const { person, place } = snapshot;
  if (!heater || heater.owner_id !== person.id || place.kind !== "private" || heater.upkeep.silent) return [];
  const upkeep = upkeepNow(context, writes);
  const told = telling(unasked(context, upkeep.jobs), heater.upkeep.told, upkeep.today);
  // something is due as it is: said tomorrow, when the talk that brought it up is over
  const day = told.now.length > 0 ? upkeep.today.add({ days: 1 }) : told.next_on;
  return [watchRow({ ...context, snapshot, reader: { ...context.reader, timezone: person.facts.timezone ?? context.reader.timezone } }, heater.id, day)];
}

/** Somebody who has a reminder of their own for a job is not told twice; the sweep is spoken of all the same. */
function unasked({ snapshot }: Context, list: readonly Job[]): readonly Job[] {
  const own = new Set(snapshot.reminders.flatMap(({ task }) => task?.split("+") ?? []));
  return list.filter(({ id }) => id === "sweep" || !own.has(id));
}

function watchRow(context: Context, heater_id: string, day: Temporal.PlainDate): Due {
  const { person, place } = context.snapshot;
  const at = day.toZonedDateTime({ timeZone: context.reader.timezone, plainTime: new Temporal.PlainTime(NOTICE_HOUR) }).epochMilliseconds;
  const due_at_ms = afterSleep_ms(person.facts.asleep, context.reader.timezone, at);
  return { key: `upkeep:${heater_id}`, kind: "upkeep", due_at_ms, useful_until_ms: due_at_ms + DAY_MS, person_id: person.id, place_id: place.id, payload: { heater_id } };
}

export function upkeepDue(context: Context, row: DueRowLike): DueOutcome {
  const { heater } = context;
  if (!heater || heater.id !== row.payload.heater_id || heater.owner_id !== context.snapshot.person.id || heater.upkeep.silent) return null;
  const up_ms = wakes_ms(context);
  if (up_ms > context.now_ms) return silent({ due: [{ ...row, due_at_ms: up_ms, useful_until_ms: up_ms + DAY_MS }] });
  const upkeep = upkeepNow(context);
  const { today } = upkeep;
  const jobs = unasked(context, upkeep.jobs);
  const { now: list, next_on } = telling(jobs, heater.upkeep.told, today);
  if (list.length === 0) return silent({ due: [watchRow(context, heater.id, next_on)] });
  const told = { ...heater.upkeep.told, ...Object.fromEntries(list.map(({ id }) => [id, today.toString()])) };
  const next = telling(jobs, told, today);
  const sweep = list.find(({ id }) => id === "sweep");
  const others = list.filter(({ id }) => id !== "sweep");
  const cautions = [...new Set([...list.flatMap(({ task }) => task.cautions), ...(sweep?.no_fire ? ["tar", "chimney-fire"] : [])])];
  const [first] = list;
  const date = sweep?.due_on ? dayShown(context, sweep.due_on) : null;
  const late = sweep?.due_on && Temporal.PlainDate.compare(sweep.due_on, today) < 0;
  const again = heater.upkeep.told?.sweep !== undefined && sweep?.tell_on && heater.upkeep.told.sweep >= sweep.tell_on.toString();
  return {
    draft: {
      topic: sweep ? "sweep-due" : "upkeep-list",
      cautions,
      headline: sweep?.no_fire ? text("care.sweep.no-fire") : sweep && date ? text(late ? "care.notice.sweep-late" : again ? "care.notice.sweep-again" : "care.notice.sweep", { date }) : text("care.notice.other", { count: list.length, first: text(`upkeep.${first?.id ?? "sweep"}.title`) }),
      blocks: blocks(
        sweep && say(text("upkeep.sweep.book"), ...cautions),
        others.length > 0 && steps(others.map(({ id }) => text("care.how", { title: text(`upkeep.${id}.title`), what: text(`upkeep.${id}.what`) })), { ordered: false, cautions }),
        sweep && upkeep.law && say(text("care.law", { says: text(`sweep-law.${upkeep.law_of}`) })),
        {
          kind: "choices", cautions: [], choices: [
            ...list.slice(0, 3).map(({ id }) => ({ id: `upkeep:done=${id}`, label: id === "sweep" ? text("care.swept-today") : text("plain", { value: text(`upkeep.${id}.title`) }) })),
            ...(sweep ? [{ id: "reminder:book", label: text("care.remind-book") }] : []), { id: "upkeep:silent", label: text("care.notice.stop") },
          ],
        },
      ),
    },
    writes: [{ write: "heater", heater: { ...heater, upkeep: { ...heater.upkeep, told } } }],
    due: [watchRow(context, heater.id, next.now.length > 0 ? today.add({ days: 1 }) : next.next_on)],
  };
}
