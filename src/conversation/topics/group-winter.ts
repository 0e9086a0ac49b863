/** The group's winter: taking part and not, the week that is frozen and its digest, and how one stands in it oneself. */
import { ask, say, steps, text, type Block, type Choice, type Draft, type Text } from "../../answer.ts";
import { showsAnything } from "../../group/bands.ts";
import { bandsOf, figuresOf, METRICS, publishWeek, type Metric, type PublishedWeek } from "../../group/winter.ts";
import { pictureOf } from "../../pictures/charts.ts";
import type { Group, GroupList, WinterMember, WinterWeek } from "../../records/group.ts";
import type { Due, DueRowLike } from "../../records/types.ts";
import { nextWeek, weekOf } from "../../records/weeks.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { groupHere, nameOf, plain, toPlaces } from "./group-share.ts";
import type { DueOutcome } from "./reminder-due.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** A group is written to between these hours only. */
const QUIET = { from_h: 21, to_h: 8 };

interface Hour {
  /** 1 is Monday */
  readonly weekday: number;
  readonly time: string;
  readonly timezone?: string;
  readonly off?: boolean;
}
const USUAL: Hour = { weekday: 1, time: "18:00" };

const listOf = (context: Context, group_id: string): GroupList | undefined => context.snapshot.group?.lists.find((one) => one.group_id === group_id && one.kind === "winter");
const hourOf = (context: Context, group_id: string): Hour => ({ ...USUAL, timezone: context.reader.timezone, ...(listOf(context, group_id)?.facts as Partial<Hour> | undefined) });
const memberOf = (context: Context, group_id: string): WinterMember | undefined => context.snapshot.group?.winter.find((one) => one.group_id === group_id);
const takesPart = (member: WinterMember | undefined): boolean => member !== undefined && member.until_week === undefined;

/** The group meant: named by its id, that of the room, the only one, else asked for. */
export function meantGroup(context: Context, id: string | undefined, asked: { choice: string; headline: string; ask: string }): Group | Outcome {
  const { groups = [] } = context.snapshot;
  const found = id ? groups.find((one) => one.id === id) : (groupHere(context) ?? (groups.length === 1 ? groups[0] : undefined));
  if (found) return found;
  if (groups.length === 0) return plain("share.no-group", say(text("share.no-group-how")));
  const choices = groups.slice(0, 10).map((one): Choice => ({ id: `${asked.choice}=${one.id}`, label: nameOf(one) }));
  return { draft: { topic: "share-result", headline: text(asked.headline), blocks: [ask("group", text(asked.ask), choices)] } };
}
export const isGroup = (found: Group | Outcome): found is Group => "places" in found;

const which = (what: string) => ({ choice: `winter:${what}`, headline: "winter.which", ask: "winter.which-ask" });

export function joinWinter(context: Context, id?: string): Outcome {
  const group = meantGroup(context, id, which("join"));
  if (!isGroup(group)) return group;
  const { snapshot, now_ms } = context;
  const member = memberOf(context, group.id);
  const told = { group: nameOf(group) };
  const offer: Block = { kind: "choices", cautions: [], choices: [{ id: `winter:leave=${group.id}`, label: text("winter.leave") }] };
  if (takesPart(member)) return { draft: { topic: "share-result", headline: text("winter.already", told), blocks: [offer] } };
  // whoever left this week and comes back has not been away
  const from_week = member && member.until_week !== undefined && member.until_week > weekOf(now_ms).week ? member.from_week : nextWeek(now_ms).week;
  return {
    draft: {
      topic: "share-result",
      headline: text("winter.joined", told),
      blocks: blocks(say(text("winter.joined-what")), say(text("winter.joined-honest")), !context.heater && say(text("winter.no-heater")), offer),
    },
    writes: [{ write: "winter-member", member: { group_id: group.id, person_id: snapshot.person.id, from_week } }],
    due: [weekRow(context, group, now_ms)],
  };
}

export function leaveWinter(context: Context, id?: string): Outcome {
  const group = meantGroup(context, id, which("leave"));
  if (!isGroup(group)) return group;
  const member = memberOf(context, group.id);
  if (!member || !takesPart(member)) return plain("winter.not-in");
  return {
    draft: { topic: "share-result", headline: text("winter.left", { group: nameOf(group) }), blocks: [say(text("winter.left-what"))] },
    writes: [{ write: "winter-member", member: { ...member, until_week: nextWeek(context.now_ms).week } }],
  };
}

/** One row a group and week: asked for twice, it is the same. */
function weekRow(context: Context, group: Pick<Group, "id" | "places">, after_ms: number): Due {
  const { weekday, time, timezone = context.reader.timezone } = hourOf(context, group.id);
  const week = nextWeek(after_ms);
  // a week is frozen once it is over everywhere in its own count, which is UTC
  const monday = Temporal.Instant.fromEpochMilliseconds(week.from_ms).toZonedDateTimeISO("UTC").toPlainDate();
  const due_at_ms = Math.max(week.from_ms, monday.add({ days: weekday - 1 }).toZonedDateTime({ timeZone: timezone, plainTime: Temporal.PlainTime.from(time) }).epochMilliseconds);
  const place = group.places.find(({ id }) => id === group.id) ?? group.places[0];
  return {
    key: `winter:${group.id}:${week.week}`, kind: "group-week", due_at_ms, useful_until_ms: due_at_ms + 2 * DAY_MS,
    person_id: context.snapshot.person.id, place_id: place?.id ?? context.snapshot.place.id, payload: { group: { winter_of: group.id } },
  };
}

/** Frozen once, whoever comes first; said in every place of the group, outside the quiet hours. */
export function weekDue(context: Context, row: DueRowLike): DueOutcome {
  const { snapshot, now_ms } = context;
  const freezing = snapshot.group?.freezing;
  const group = (snapshot.groups ?? []).find((one) => one.id === freezing?.group_id);
  if (!freezing || !group) return null;
  const hour = hourOf(context, group.id);
  const up_ms = afterQuiet(now_ms, hour.timezone ?? context.reader.timezone);
  if (up_ms > now_ms) return { draft: null, due: [{ ...row, due_at_ms: up_ms, useful_until_ms: up_ms + 2 * DAY_MS }] };
  const { week, heaters, members } = freezing;
  const { from_ms, to_ms } = weekOf(now_ms - 7 * DAY_MS);
  const known = snapshot.group?.weeks.find((one) => one.group_id === group.id && one.week === week);
  const frozen: WinterWeek = known ?? { group_id: group.id, week, facts: { from_ms, ...publishWeek(heaters, from_ms, to_ms) } };
  const next = members > 0 ? [weekRow(context, group, now_ms)] : [];
  const writes = known ? [] : [{ write: "winter-week" as const, week: frozen }];
  if (hour.off || !says(frozen)) return { draft: null, writes, due: next };
  const draft = digest(group, frozen);
  return { draft, writes, due: next, also_tell: toPlaces(context, group, `winter:${group.id}:${week}`, () => draft).filter(({ place_id }) => place_id !== row.place_id) };
}

function afterQuiet(now_ms: number, timezone: string): number {
  const at = Temporal.Instant.fromEpochMilliseconds(now_ms).toZonedDateTimeISO(timezone);
  if (at.hour >= QUIET.to_h && at.hour < QUIET.from_h) return now_ms;
  const day = at.hour < QUIET.to_h ? at.toPlainDate() : at.toPlainDate().add({ days: 1 });
  return day.toZonedDateTime({ timeZone: timezone, plainTime: new Temporal.PlainTime(QUIET.to_h) }).epochMilliseconds;
}

const says = (week: WinterWeek): boolean => METRICS.some((metric) => showsAnything(publishedOf(week)[metric]));
const publishedOf = ({ facts }: WinterWeek): PublishedWeek => facts as unknown as PublishedWeek;
const fromOf = ({ facts }: WinterWeek): number => Number(facts.from_ms);

function digest(group: Group, week: WinterWeek, own: readonly (Block | null | false)[] = []): Draft {
  const published = publishedOf(week);
  const metrics = METRICS.map((metric) => ({ metric, levels: [...published[metric].levels] }));
  const most = Math.max(...METRICS.map((metric) => published[metric].at_least ?? 0));
  return {
    topic: "share-result",
    audience: "place",
    headline: text("winter.headline", { group: nameOf(group), week: { at_ms: fromOf(week), show: "date" } }),
    blocks: blocks(
      steps(METRICS.map((metric) => lineOf(metric, published)), { ordered: false }),
      ...own,
      { kind: "picture", cautions: [], picture: pictureOf("bands", { week_from_ms: fromOf(week), at_least: most > 0 ? most : null, metrics }) },
      say(text("winter.base")),
    ),
  };
}

function lineOf(metric: Metric, published: PublishedWeek): Text {
  const told = published[metric].levels.flatMap((level, band) => (level === "hidden" ? [] : [text("winter.cell", { band: text(`winter.band.${metric}.${band}`), level: text(`winter.level.${level}`) })]));
  const name = text(`winter.metric.${metric}`);
  return told.length > 0 ? text("winter.line", { metric: name, told }) : text("winter.line-none", { metric: name });
}

/** "How does the group do?" The week published last; one's own place only where nobody else reads along. */
export function howTheGroupDoes(context: Context, id?: string): Outcome {
  const group = meantGroup(context, id, which("show"));
  if (!isGroup(group)) return group;
  const { message, snapshot } = context;
  const week = snapshot.group?.weeks.find((one) => one.group_id === group.id && says(one));
  const isIn = takesPart(memberOf(context, group.id));
  const offer: Block = { kind: "choices", cautions: [], choices: [{ id: `winter:${isIn ? "leave" : "join"}=${group.id}`, label: text(isIn ? "winter.leave" : "winter.join") }] };
  if (!week) return plain("winter.nothing", say(text("winter.nothing-why")), offer);
  const alone = message.place.kind === "private" || message.place.whispers === true;
  const draft = digest(group, week, alone && isIn ? ownPlace(context, fromOf(week)) : []);
  return { draft: { ...draft, audience: "person", blocks: [...(draft.blocks ?? []), offer] } };
}

function ownPlace({ snapshot, heater }: Context, from_ms: number): Block[] {
  if (!heater) return [say(text("winter.no-heater"))];
  const to_ms = from_ms + 7 * DAY_MS;
  const fires = snapshot.fires.filter(({ lit_at_ms }) => lit_at_ms >= from_ms && lit_at_ms < to_ms);
  const bands = bandsOf(figuresOf({ heater, weather: snapshot.home.weather, fires }, from_ms, to_ms));
  const line = (metric: Metric): Text => {
    const band = bands[metric];
    const name = text(`winter.metric.${metric}`);
    return band === null ? text("winter.own-unknown", { metric: name }) : text("winter.own", { metric: name, band: text(`winter.band.${metric}.${band}`) });
  };
  return [steps(METRICS.map(line), { ordered: false, title: text("winter.own-title") })];
}

const DAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

/** "Group digest on Sunday at 18:00", "no group digest": a moderator's. */
export function digestHour(context: Context, day: string | undefined, time: string | undefined): Outcome {
  const group = groupHere(context);
  const { message, snapshot, now_ms } = context;
  if (!group || message.place.kind !== "group") return plain("link.in-group");
  if (message.place.moderates !== true) return plain("link.moderators");
  const off = day === undefined;
  const weekday = DAYS.indexOf(day ?? "") + 1;
  const [, hours = "", minutes = "00"] = /^(\d{1,2})(?::(\d{2}))?$/.exec(time ?? "") ?? [];
  const hour = Number(hours);
  if (!off && (weekday === 0 || hours === "" || hour < QUIET.to_h || hour >= QUIET.from_h || Number(minutes) > 59)) return plain("winter.hour-when");
  const before = listOf(context, group.id);
  const facts: Hour = off ? { ...USUAL, off: true } : { weekday, time: `${hours.padStart(2, "0")}:${minutes}`, timezone: context.reader.timezone };
  const list: GroupList = { group_id: group.id, kind: "winter", version: before?.version ?? 0, opened_by: snapshot.person.id, at_ms: now_ms, facts: { ...facts } };
  return {
    draft: { topic: "share-result", headline: off ? text("winter.hour-off") : text("winter.hour-set", { day: text(`day.${weekday}`), time: facts.time }) },
    writes: [{ write: "group-list", list }],
  };
}
