/** What upkeep is due, when the sweep is, and what somebody says was done. What is due when is reckoned in upkeep/; this shapes the answer. */
import { ask, say, steps, text, type Block, type Choice, type Moment, type Text } from "../../answer.ts";
import type { UpkeepTask } from "../../knowledge/upkeep-schema.ts";
import { q } from "../../quantities.ts";
import type { Write } from "../../records/types.ts";
import type { Job } from "../../upkeep/due.ts";
import { upkeepOf, type Upkeep } from "../../upkeep/facts.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { readTimes } from "../reading/times.ts";
import { route } from "../routing/route.ts";
import { ticked } from "./reminder-state.ts";
import { applied, ALARM_TASKS, doneWrites, remindersOf, SOME_ALARM, taskMeant, tasksOf } from "./upkeep-done.ts";

const SOON_DAYS = 60;
const MOST_LINES = 12;

export function upkeepNow(context: Context, writes: readonly Write[] = []): Upkeep {
  const snapshot = applied(context.snapshot, writes);
  return upkeepOf(context.knowledge, snapshot, context.now_ms, snapshot.person.facts.timezone ?? context.reader.timezone);
}

export const dayShown = (context: Context, day: Temporal.PlainDate): Moment =>
  ({ at_ms: day.toZonedDateTime({ timeZone: context.reader.timezone, plainTime: "12:00" }).epochMilliseconds, show: "date" });

const title = (id: string): Text => text(`upkeep.${id}.title`);
const by = ({ task }: { task: UpkeepTask }): Text => text(`care.by.${task.by}`);
const isLate = (day: Temporal.PlainDate | null, today: Temporal.PlainDate): boolean => day !== null && Temporal.PlainDate.compare(day, today) < 0;
const isBy = (day: Temporal.PlainDate | null, last: Temporal.PlainDate): boolean => day !== null && Temporal.PlainDate.compare(day, last) <= 0;

export function sweepOutcome(context: Context): Outcome {
  const said = upkeepSaid(context);
  if (said) return said;
  const upkeep = upkeepNow(context);
  const sweep = upkeep.jobs.find(({ id }) => id === "sweep");
  if (!sweep) return listOutcome(context);
  const { since_sweep_fires: fires, since_sweep_kg } = context.snapshot.totals;
  const cautions = [...sweep.task.cautions, ...(sweep.no_fire ? ["tar", "chimney-fire"] : [])];
  return {
    draft: {
      topic: "sweep-due",
      cautions,
      headline: sweepHeadline(context, upkeep, sweep),
      blocks: blocks(
        sweep.last_on
          ? say(text("care.sweep.last", { date: dayShown(context, sweep.last_on), fires, load: q(since_sweep_kg, "kg", { digits: 0 }) }))
          : say(text("care.sweep.never")),
        sweep.due_on && say(why(context, sweep), ...cautions),
        seasonLine(context, upkeep),
        upkeep.law && say(text("care.law", { says: text(`sweep-law.${upkeep.law_of}`) })),
        say(text("care.sweep.lead")),
        say(text("care.sweep.tell"), ...sweep.task.cautions),
        sweep.last_on && { kind: "numbers", cautions: [], items: [{ key: "since_sweep_kg", label: text("number.since_sweep_kg"), quantity: q(since_sweep_kg, "kg", { digits: 0 }) }] },
        { kind: "choices", cautions: [], choices: [doneChoice("sweep", "care.swept-today"), { id: "reminder:book", label: text("care.remind-book") }] },
      ),
    },
  };
}

function sweepHeadline(context: Context, { today }: Upkeep, { due_on, tell_on, no_fire, last_on }: Job): Text {
  if (no_fire) return text("care.sweep.no-fire");
  if (!due_on) return text("care.sweep.unknown");
  const date = dayShown(context, due_on);
  if (isLate(due_on, today)) return text("care.sweep.overdue", { date });
  if (!last_on) return text("care.sweep.unknown-dated", { date });
  return isBy(tell_on, today) || !tell_on ? text("care.sweep.book", { date }) : text("care.sweep.later", { date, book: dayShown(context, tell_on) });
}

function why(context: Context, { id, because, last_on, signs }: Job): Text {
  const { totals } = context.snapshot;
  switch (because) {
    case "sign":
      return text("care.because.sign", { signs: signs.map((sign) => text(`upkeep.sign.${sign}`)) });
    case "elapsed":
      return text("care.because.elapsed", { date: last_on ? dayShown(context, last_on) : text("dont-know") });
    case "use":
      return text("care.because.use", { fires: id === "sweep" ? totals.since_sweep_fires : totals.fires, load: q(id === "sweep" ? totals.since_sweep_kg : totals.load_kg, "kg", { digits: 0 }) });
    default:
      return text(`care.because.${because === "unknown" ? "season" : because}`);
  }
}

function seasonLine(context: Context, { seasons }: Upkeep): Block {
  if (!seasons) return say(text("care.season.unknown"));
  const season = seasons.now ?? seasons.next;
  return say(text(`care.season.${seasons.from}`, { start: dayShown(context, season.start), end: dayShown(context, season.end) }));
}

const doneChoice = (id: string, label = "care.done-today"): Choice => ({ id: `upkeep:done=${id}`, label: text(label) });

/** The list, or one job when the words name it. */
export function listOutcome(context: Context): Outcome {
  const said = upkeepSaid(context) ?? silenced(context);
  if (said) return said;
  const meant = taskMeant(context, context.text);
  const about = meant === SOME_ALARM ? ALARM_TASKS.join("+") : meant;
  if (about && /\b(how often|how frequently|how many times|when)\b/i.test(context.text)) return jobOutcome(context, about);
  if (/\b(before the first fire|pre-?season|check ?list)\b/i.test(context.text)) return jobOutcome(context, "pre-season");

  const upkeep = upkeepNow(context);
  const { today } = upkeep;
  const shown = upkeep.jobs.filter(({ task, because }) => !task.quiet || because === "sign");
  const due = shown.filter((job) => isBy(job.due_on, today) || job.no_fire);
  const soon = shown.filter((job) => !due.includes(job) && (isBy(job.due_on, today.add({ days: SOON_DAYS })) || isBy(job.tell_on, today)));
  const later = shown.filter((job) => !due.includes(job) && !soon.includes(job));
  const lines = (list: readonly Job[]): Text[] => list.slice(0, MOST_LINES).map((job) => line(context, upkeep, job));
  // what is far off is a date, not yet a thing to do
  const part = (name: "due" | "soon" | "season" | "unknown", list: readonly Job[]): Block | null =>
    list.length > 0 ? steps(lines(list), { ordered: false, title: text(`care.title.${name}`), cautions: name === "due" || name === "soon" ? [...new Set(list.slice(0, MOST_LINES).flatMap(({ task }) => task.cautions))] : [] }) : null;
  const dated = later.filter(({ due_on }) => due_on !== null);
  const undated = later.filter(({ due_on }) => due_on === null);
  const stop = due.find(({ no_fire }) => no_fire);
  const [first] = due;
  return {
    draft: {
      topic: "upkeep-list",
      headline: stop ? text("care.headline.no-fire", { first: title(stop.id) }) : first ? text("care.headline.due", { count: due.length, first: title(first.id) }) : text("care.headline.none"),
      blocks: blocks(
        part("due", due),
        part("soon", soon),
        part("season", dated),
        ...(upkeep.seasons ? [part("unknown", undated)] : withoutSeason(undated)),
        seasonLine(context, upkeep),
        say(text("care.tell")),
        { kind: "choices", cautions: [], choices: [...due.slice(0, 3).map(({ id }) => ({ id: `upkeep:done=${id}`, label: text("plain", { value: title(id) }) })), { id: "topic:sweep-due", label: text("topic.sweep-due") }] },
      ),
    },
  };
}

/** Where nothing tells when somebody heats: days from their own first and last fire. */
function withoutSeason(list: readonly Job[]): (Block | null)[] {
  const of = (mark: "start" | "end", name: string): Block | null => {
    const some = list.filter(({ task }) => task.window?.to.mark === mark);
    return some.length === 0 ? null : steps(
      some.map(({ id, task }) => text(mark === "start" ? "care.line.start" : "care.line.after", { title: title(id), days: Math.abs(task.window?.to.days ?? 0), by: by({ task }) })),
      { ordered: false, title: text(`care.title.${name}`), cautions: [...new Set(some.flatMap(({ task }) => task.cautions))] },
    );
  };
  return [of("start", "season"), of("end", "end")];
}

function line(context: Context, { today }: Upkeep, job: Job): Text {
  const { id, task, due_on, because, signs } = job;
  if (because === "sign" && isBy(due_on, today)) return text("care.line.sign", { title: title(id), signs: signs.map((sign) => text(`upkeep.sign.${sign}`)), by: by(job) });
  if (!due_on) return text("care.line.unknown", { title: title(id), by: by(job) });
  const date = dayShown(context, due_on);
  if (isLate(due_on, today)) return text("care.line.since", { title: title(id), date, by: by(job) });
  const [from, to] = task.lead_weeks;
  return to > 1 ? text("care.line.lead", { title: title(id), date, by: by(job), from, to }) : text("care.line", { title: title(id), date, by: by(job) });
}

/** One job, or several of a kind: how, how often, last and next time. */
function jobOutcome(context: Context, ids: string): Outcome {
  const upkeep = upkeepNow(context);
  const list = tasksOf(context, ids);
  const cautions = list.flatMap(([, task]) => task.cautions);
  const [first] = list;
  if (!first) return listOutcome({ ...context, text: "" });
  return {
    draft: {
      topic: first[0] === "sweep" ? "sweep-due" : "upkeep-list",
      cautions,
      headline: often(context, first[0], first[1]),
      blocks: blocks(
        ...list.slice(1).map(([id, task]) => say(often(context, id, task), ...task.cautions)),
        steps(list.map(([id]) => text("care.how", { title: title(id), what: text(`upkeep.${id}.what`) })), { ordered: false, cautions }),
        ...list.flatMap(([id, task]): (Block | null)[] => {
          const job = upkeep.jobs.find((one) => one.id === id);
          return [
            task.tools.length > 0 ? say(text("care.tools", { tools: task.tools.map((_, i) => text(`upkeep.${id}.tools.${i}`)) })) : null,
            job?.last_on ? say(text("care.last", { date: dayShown(context, job.last_on) })) : null,
            job?.due_on ? say(text(isLate(job.due_on, upkeep.today) ? "care.overdue-since" : "care.next", { date: dayShown(context, job.due_on) })) : null,
          ];
        }),
        { kind: "choices", cautions: [], choices: list.map(([id]) => doneChoice(id)).slice(0, 1) },
      ),
    },
  };
}

function often(context: Context, id: string, task: UpkeepTask): Text {
  const months = task.every_by_kind[context.heater?.facts.kind ?? ""] ?? task.every?.months;
  if (task.ends) return text("care.often.end", { title: title(id) });
  if (task.every?.days !== undefined) return text("care.often.days", { title: title(id), days: task.every.days });
  if (months !== undefined) return text(task.every?.in_season ? "care.often.months-season" : "care.often.months", { title: title(id), months });
  const fires = context.heater?.facts.grate ? (task.use_by?.grate ?? task.use?.fires) : task.use?.fires;
  return fires === undefined ? text("care.often.season", { title: title(id) }) : text("care.often.fires", { title: title(id), fires });
}

const DENIED = /\b(not|never|haven'?t|hasn'?t|didn'?t|isn'?t|wasn'?t|need|needs|should|must|will|when|how|why|if|remind)\b|\?\s*$/i;
const TROUBLED = /\b(but|went off|goes off|sound(?:s|ed|ing)?|ring(?:s|ing)?|rang|beep(?:s|ing)?|chirp(?:s|ing)?|smells?|black|smok(?:y|ed) |fail(?:s|ed)?)\b/i;
/** topics under which such a sentence may well be meant as a report */
const NEAR = new Set(["reminder-done", "sweep-due", "upkeep-list", "out-of-scope", "co-alarm", "set-house", "log-fire", "door-leak", "clean-glass"]);

/** "The sweep was here today", "swept on 3 October", "I tested the CO alarm": written down. Null when it is no such report. */
export function upkeepSaid(context: Context): Outcome | null {
  const said = context.text.trim();
  if (said === "" || said.length > 110 || DENIED.test(said) || TROUBLED.test(said)) return null;
  const found = Object.entries(context.knowledge.upkeep.tasks).flatMap(([id, task]) =>
    task.done.some((words) => new RegExp(`\\b(?:${words})(?![\\w])`, "i").test(said) || (context.language !== "en" && new RegExp(`(?<![\\p{L}])(?:${words})(?![\\p{L}\\d])`, "iu").test(context.said))) ? [id] : []);
  if (found.length === 0 || !NEAR.has(route(context.said, context.language).ranked[0]?.topic ?? "")) return null;
  const alarms = found.filter((id) => id.endsWith("-test"));
  const meant = alarms.length > 0 ? taskMeant(context, said) : null;
  const ids = meant && (meant === SOME_ALARM || meant.split("+").every((id) => id.endsWith("-test"))) ? (both(said) ? ALARM_TASKS.join("+") : meant) : found.join("+");
  const [time] = readTimes(said, context.now_ms, context.reader.timezone, { lean: "past", locale: context.reader.locale });
  const day = (time ? Temporal.Instant.fromEpochMilliseconds(time.at_ms) : Temporal.Instant.fromEpochMilliseconds(context.now_ms)).toZonedDateTimeISO(context.reader.timezone).toPlainDate();
  return doneOutcome(context, ids, day);
}
const both = (said: string): boolean => /\b(both|all)\b|\bsmoke and (?:co|carbon)|\b(?:co|monoxide) and smoke/i.test(said);

/** Choice ids `upkeep:done=<jobs>`, `upkeep:silent`, `upkeep:speak`. */
export function upkeepChoice(context: Context, rest: string): Outcome | null {
  if (rest === "silent" || rest === "speak") return speaking(context, rest === "speak");
  const ids = /^done=([a-z+-]+)$/.exec(rest)?.[1];
  return ids && tasksOf(context, ids).length > 0 ? doneOutcome(context, ids, upkeepNow(context).today) : null;
}

const QUIET_PLEASE = /\b(?:no more|stop|don'?t|quit|enough)\b[^.?!]{0,30}\b(?:upkeep|maintenance|sweep) ?(?:notices|reminders|messages|nagging|nudges)?\b/i;
export const silenced = (context: Context): Outcome | null => (QUIET_PLEASE.test(context.text) && context.text.length < 90 ? speaking(context, false) : null);

function speaking(context: Context, speak: boolean): Outcome {
  const { heater } = context;
  return {
    draft: { topic: "upkeep-list", headline: text(speak ? "care.speaking" : "care.silent"), blocks: speak ? [] : [{ kind: "choices", cautions: [], choices: [{ id: "upkeep:speak", label: text("care.speak") }] }] },
    writes: heater ? [{ write: "heater", heater: { ...heater, upkeep: { ...heater.upkeep, silent: !speak } } }] : [],
  };
}

export function doneOutcome(context: Context, ids: string, day: Temporal.PlainDate): Outcome {
  if (ids === SOME_ALARM) return whichAlarm();
  const before = upkeepNow(context);
  const date = dayShown(context, day);
  const list = tasksOf(context, ids);
  const topic = ids === "sweep" ? "sweep-due" : "reminder-done";
  if (Temporal.PlainDate.compare(day, before.today) > 0) return { draft: { topic, headline: text("care.future", { date }) } };
  const writes = doneWrites(context, ids, day.toString());
  const closed = ticked(context, remindersOf(context.snapshot.reminders, ids));
  const after = upkeepNow(context, writes);
  const undo: Write[] = writes.flatMap((one): Write[] => one.write === "heater" ? (context.heater ? [{ write: "heater", heater: context.heater }] : []) : one.write === "home" ? [{ write: "home", home: context.snapshot.home }] : []);
  return {
    draft: {
      topic,
      headline: text("care.done-many", { titles: list.map(([id]) => title(id)), date }),
      blocks: blocks(
        ...list.map(([id]) => {
          const next = after.jobs.find((job) => job.id === id);
          return next?.due_on ? say(text("care.next", { date: dayShown(context, next.due_on) })) : null;
        }),
        list.some(([id]) => id === "sweep") && say(text("care.sweep.tell"), "roof"),
        say(text("records.undo")),
      ),
    },
    writes: [...writes, ...closed.writes],
    due: closed.due,
    cancel: closed.cancel,
    state: { undo: { writes: undo, at_ms: context.now_ms }, pending: undefined },
  };
}

const whichAlarm = (): Outcome => ({
  draft: {
    topic: "reminder-done",
    cautions: ["carbon-monoxide"],
    headline: text("care.which-alarm"),
    blocks: [
      ask("which-alarm", text("care.which-alarm-why"), [
        { id: "upkeep:done=co-test", label: text("care.alarm.co") }, { id: "upkeep:done=smoke-test", label: text("care.alarm.smoke") }, { id: "upkeep:done=co-test+smoke-test", label: text("care.alarm.both") },
      ], "carbon-monoxide"),
    ],
  },
});
