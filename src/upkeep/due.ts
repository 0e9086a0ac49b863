/**
 * What is due when: by season, by elapsed time, by use, by law, brought forward by signs; whichever comes first. And when to speak of it,
 * so that it can still be booked. Pure: days in, days out.
 */
import type { Mark, SweepRule, UpkeepKnowledge, UpkeepTask } from "../knowledge/upkeep-schema.ts";
import type { HeaterFacts } from "../records/schemas.ts";
import type { UpkeepKept } from "../records/types.ts";
import { holds } from "../trouble/walk.ts";
import type { Season, Seasons } from "./season.ts";
import type { SignsSeen } from "./signs.ts";

export type Because = "season" | "elapsed" | "use" | "law" | "sign" | "end" | "unknown";
export interface Job {
  readonly id: string;
  readonly task: UpkeepTask;
  /** the last day on which it is in time; null when nothing is known to reckon with */
  readonly due_on: Temporal.PlainDate | null;
  readonly because: Because;
  /** signs that brought it forward */
  readonly signs: readonly string[];
  readonly no_fire: boolean;
  readonly last_on: Temporal.PlainDate | null;
  readonly window: Season | null;
  /** first day to speak of it */
  readonly tell_on: Temporal.PlainDate | null;
  /** that day, and those on which it is spoken of again while nobody did anything; in order */
  readonly tell_days: readonly Temporal.PlainDate[];
}

export interface UpkeepFactsNow {
  readonly today: Temporal.PlainDate;
  readonly seasons: Seasons | null;
  readonly heater: HeaterFacts;
  /** last time by job, as far as it is on record */
  readonly last: Readonly<Record<string, string | undefined>>;
  /** printed ends of alarms by job */
  readonly ends: Readonly<Record<string, string | undefined>>;
  /** fires and kilograms since that time, as far as the log reaches */
  readonly since: (job: string) => { readonly fires: number; readonly load_kg: number };
  readonly signs: SignsSeen;
  readonly law: SweepRule | null;
}

const WEEK = 7;
/** a window that passed unused is let go after so long, except the sweep's */
const LET_GO_DAYS = 45;
/** a job done so shortly before the last fire of a season counts for the next one (common practice, no source) */
const ALMOST_OVER_DAYS = 30;

type Day = Temporal.PlainDate;
const before = (a: Day, b: Day): boolean => Temporal.PlainDate.compare(a, b) < 0;
const earliest = (a: Day, b: Day): Day => (before(b, a) ? b : a);
const at = (season: Season, { mark, days }: Mark): Day => season[mark].add({ days });

/** Every job that applies to this heater, soonest first; those nobody can date come last. */
export function jobs({ tasks }: UpkeepKnowledge, now: UpkeepFactsNow): Job[] {
  return Object.entries(tasks)
    .filter(([, task]) => holds(task.when, now.heater) !== false)
    .map(([id, task]) => job(id, task, now))
    .toSorted((a, b) => (a.due_on && b.due_on ? Temporal.PlainDate.compare(a.due_on, b.due_on) : a.due_on ? -1 : b.due_on ? 1 : 0));
}

interface Reason {
  readonly on: Day;
  readonly because: Because;
  readonly window?: Season;
  readonly signs?: readonly string[];
  readonly no_fire?: boolean;
}

function job(id: string, task: UpkeepTask, now: UpkeepFactsNow): Job {
  const given = now.last[id];
  const last_on = given ? Temporal.PlainDate.from(given) : null;
  const reasons = [
    bySeason(id, task, now, last_on), byTime(task, now, last_on), byUse(id, task, now), byLaw(id, now, last_on), byEnd(id, now), bySigns(task, now, last_on),
  ].filter((one): one is Reason => one !== null);
  const first = reasons.reduce<Reason | null>((soonest, one) => (soonest === null || before(one.on, soonest.on) ? one : soonest), null);
  const seasonal = reasons.find((one) => one.window);
  const window = seasonal?.window ?? null;
  // what is long overdue comes up again with every season
  const spoken = [first, ...(seasonal && seasonal !== first ? [seasonal] : []), ...(id === "sweep" ? comingWindow(task, now, seasonal ?? null) : [])];
  return {
    id, task, last_on, window,
    tell_days: apart(spoken.flatMap((reason) => (reason ? tellDays(id, task, now, reason) : []))),
    due_on: first?.on ?? null,
    because: first?.because ?? "unknown",
    signs: first?.signs ?? [],
    no_fire: reasons.some((one) => one.no_fire),
    tell_on: first ? tellOn(task, now, first) : null,
  };
}

/** The first window of the year that was not used. */
function bySeason(id: string, task: UpkeepTask, { seasons, today }: UpkeepFactsNow, last_on: Day | null): Reason | null {
  const { window } = task;
  if (!window || !seasons) return null;
  for (const [i, season] of seasons.all.entries()) {
    const [from, to] = [at(season, window.from), at(season, window.to)];
    const used = last_on && !before(last_on, usedFrom(task, from, seasons.all[i - 1]));
    if (used) continue;
    const missed = before(to, today);
    const lasting = id === "sweep" && last_on !== null && !before(season.end, today);
    if (missed && !lasting && before(to.add({ days: LET_GO_DAYS }), today)) continue;
    // with no date on record, a window that has passed is nobody's fault yet
    if (missed && last_on === null) continue;
    return { on: to, because: "season", window: { start: from, end: to } };
  }
  return null;
}

/** From when on a job counts for this window: yearly ones from the end of the season before, monthly ones from shortly before it. */
function usedFrom(task: UpkeepTask, from: Day, previous: Season | undefined): Day {
  const monthly = task.every?.months !== undefined && task.every.months <= 2;
  if (monthly) return from.subtract({ days: 20 });
  return previous && task.window?.from.mark === "start" ? earliest(previous.end.subtract({ days: ALMOST_OVER_DAYS }), from) : from.subtract({ days: LET_GO_DAYS });
}

function byTime(task: UpkeepTask, now: UpkeepFactsNow, last_on: Day | null): Reason | null {
  const months = task.every_by_kind[now.heater.kind ?? ""] ?? task.every?.months;
  const { every } = task;
  if (!every || !last_on) return null;
  const on = every.days !== undefined ? last_on.add({ days: every.days }) : addMonths(last_on, months ?? 12);
  if (!every.in_season) return { on, because: "elapsed" };
  return heats(now.seasons, on) ? { on, because: "elapsed" } : null;
}

/** Months may be broken: half a month is 15 days. */
const addMonths = (date: Day, months: number): Day => date.add({ months: Math.floor(months), days: Math.round((months % 1) * 30) });

function byUse(id: string, task: UpkeepTask, now: UpkeepFactsNow): Reason | null {
  if (!task.use) return null;
  const since = now.since(id);
  const fires = now.heater.grate ? (task.use_by?.grate ?? task.use.fires) : task.use.fires;
  const full = (fires !== undefined && since.fires >= fires) || (task.use.load_kg !== undefined && since.load_kg >= task.use.load_kg);
  return full ? { on: now.today, because: "use" } : null;
}

/** Advice is said and not counted; a rule for the time of heating does not ask for a sweep in summer. */
function byLaw(id: string, { law, seasons }: UpkeepFactsNow, last_on: Day | null): Reason | null {
  if (id !== "sweep" || !law || law.kind === "advice" || !last_on) return null;
  const on = addMonths(last_on, law.months);
  return law.in_season && !heats(seasons, on) ? null : { on, because: "law" };
}

const heats = (seasons: Seasons | null, on: Day): boolean => !seasons || seasons.all.some(({ start, end }) => !before(on, start) && !before(end, on));

function byEnd(id: string, { ends }: UpkeepFactsNow): Reason | null {
  const printed = ends[id];
  return printed ? { on: Temporal.PlainDate.from(printed), because: "end" } : null;
}

function bySigns(task: UpkeepTask, { signs, today }: UpkeepFactsNow, last_on: Day | null): Reason | null {
  const found = Object.entries(task.sooner).flatMap(([sign, rule]) => {
    const since = today.subtract({ days: rule.within_days });
    const seen = (signs.get(sign) ?? []).filter((day) => !before(day, since) && (!last_on || before(last_on, day)));
    const counted = seen[rule.times - 1];
    return counted ? [{ sign, on: counted.add({ days: rule.due_in_days }), no_fire: rule.no_fire }] : [];
  });
  const [first, ...more] = found;
  if (!first) return null;
  return { on: more.reduce((on, one) => earliest(on, one.on), first.on), because: "sign", signs: found.map(({ sign }) => sign), no_fire: found.some(({ no_fire }) => no_fire) };
}

/** A booking is spoken of right after the last fire, and in any case its longest lead before it is due. */
function tellOn(task: UpkeepTask, { seasons }: UpkeepFactsNow, { on, because, window }: Reason): Day {
  const lead = on.subtract({ days: Math.round(task.lead_weeks[1] * WEEK) });
  if (because !== "season" || !window) return lead;
  const after = seasons && task.tell_from ? seasons.all.findLast(({ end }) => before(end, on)) : undefined;
  if (after && task.tell_from) return earliest(at(after, task.tell_from), lead);
  return task.lead_weeks[1] > 0 ? lead : window.start;
}

/** Days before it is due on which the sweep is spoken of again while nobody did anything; the last one comes when it is late. */
const AGAIN_DAYS = [42, 7, -21];

const tellDays = (id: string, task: UpkeepTask, now: UpkeepFactsNow, reason: Reason): Day[] => [
  tellOn(task, now, reason), ...(id === "sweep" ? AGAIN_DAYS.map((days) => reason.on.subtract({ days })) : []),
];

/** Three weeks apart at least: two reasons for one job are one nudge. */
const APART_DAYS = 21;
function apart(list: readonly Day[]): Day[] {
  const kept: Day[] = [];
  for (const day of list.toSorted(Temporal.PlainDate.compare)) {
    const last = kept.at(-1);
    if (!last || !before(day, last.add({ days: APART_DAYS }))) kept.push(day);
  }
  return kept;
}

/** The window after one that was missed and still lasts. */
function comingWindow(task: UpkeepTask, { seasons, today }: UpkeepFactsNow, seasonal: Reason | null): Reason[] {
  const { window } = task;
  if (!window || !seasons || (seasonal && !before(seasonal.on, today))) return [];
  const next = seasons.all.map((season) => ({ start: at(season, window.from), end: at(season, window.to) })).find(({ end }) => !before(end, today));
  return next ? [{ on: next.end, because: "season", window: next }] : [];
}

/** The first day on which a job that was last spoken of on `told` is to be spoken of; null when enough was said. */
export function nextTell({ id, task, tell_days }: Job, told: UpkeepKept["told"]): Day | null {
  const said = told?.[id];
  return task.tell ? (tell_days.find((day) => !said || before(Temporal.PlainDate.from(said), day)) ?? null) : null;
}

export interface Telling {
  readonly now: readonly Job[];
  /** when to look again, at the latest in a month */
  readonly next_on: Day;
}
const LOOK_AGAIN_DAYS = 30;

export function telling(list: readonly Job[], told: UpkeepKept["told"], today: Day): Telling {
  const planned = list.flatMap((one) => {
    const on = nextTell(one, told);
    return on ? [{ one, on }] : [];
  });
  const soon = planned.flatMap(({ on }) => (before(today, on) ? [on] : []));
  return {
    now: planned.filter(({ on }) => !before(today, on)).map(({ one }) => one),
    next_on: soon.reduce(earliest, today.add({ days: LOOK_AGAIN_DAYS })),
  };
}
