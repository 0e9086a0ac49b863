/** Burn bans and no-burn days: kept as a rule that `limits.ts` obeys, for one's own heater or, set by a moderator, for a whole group. */
import { ask, say, text, type Arg, type Block, type Choice } from "../../answer.ts";
import type { HeaterRule } from "../../records/types.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { readBan, type BanSaid } from "../reading/read-ban.ts";
import { zoned } from "../reading/times.ts";
import { isBurning } from "../../firing/guide.ts";
import { running, stateOf } from "./guide-state.ts";

const DAY_MS = 86_400_000;
/** A ban without an end is asked about again after so long. */
const OPEN_DAYS = 30;
/** A group cannot take its members' fires away for longer than this without saying so again. */
const LONGEST_GROUP_DAYS = 31;
const LONGEST_DAYS = 366;

export function banSaid(context: Context): Outcome | null {
  const said = readBan(context.text, context.now_ms, context.reader.timezone, context.reader.locale);
  return said ? banOutcome(context, said) : null;
}

export function banOutcome(context: Context, said: BanSaid): Outcome {
  if (said.say === "lift") return lifted(context);
  if (said.say === "ask") return standing(context);
  if (said.say === "until-when") return untilWhen();
  return set(context, said.from_ms, said.to_ms, said.whole_last_day);
}

/** `ban:today`, `ban:tomorrow`, `ban:week`, `ban:open`, `ban:lift` */
export function banChoice(context: Context, id: string): Outcome | null {
  if (id === "lift") return lifted(context);
  const days = new Map([["today", 1], ["tomorrow", 2], ["week", 7], ["open", OPEN_DAYS]]).get(id);
  if (days === undefined) return null;
  const end = zoned(context.now_ms, context.reader.timezone).startOfDay().add({ days });
  return set(context, context.now_ms, end.epochMilliseconds, false);
}

const untilWhen = (): Outcome => ({
  draft: {
    topic: "set-heater",
    headline: text("ban.until-when"),
    blocks: [ask("ban", text("ban.until-when-ask"), ["today", "tomorrow", "week", "open"].map((id) => ({ id: `ban:${id}`, label: text(`ban.choice.${id}`) })))],
  },
});

export const standingBans = (context: Context): readonly HeaterRule[] => context.rules.filter((rule) => rule.no_fire && Date.parse(rule.no_fire.to) > context.now_ms);

function set(context: Context, from_ms: number, to_ms: number, whole_last_day: boolean): Outcome {
  const { message, snapshot, now_ms } = context;
  const inGroup = message.place.kind === "group";
  const forGroup = inGroup && message.place.moderates === true;
  const ends_ms = Math.min(to_ms, now_ms + (forGroup ? LONGEST_GROUP_DAYS : LONGEST_DAYS) * DAY_MS);
  const rule: HeaterRule = {
    from: forGroup ? "group" : "law", said_by: snapshot.person.id, said_at_ms: now_ms,
    no_fire: { from: new Date(from_ms).toISOString(), to: new Date(ends_ms).toISOString() },
  };
  const guide = running(context);
  const shown: Block[] = blocks(
    say(text(whole_last_day ? "ban.whole-day" : "ban.obeyed")),
    forGroup && say(text("ban.for-group")),
    inGroup && !forGroup && say(text("ban.not-moderator")),
    ends_ms < to_ms && say(text("ban.shortened")),
    guide && isBurning(stateOf(guide)) && say(text("ban.burning-now"), "close-flue"),
    say(text("ban.only-heat")),
    { kind: "choices", cautions: [], choices: [LIFT] },
  );
  const draft = {
    topic: "set-heater" as const,
    headline: headline(context, from_ms, ends_ms),
    blocks: shown,
    ...(forGroup ? { audience: "place" as const } : {}),
  };
  if (forGroup) return { draft, writes: [{ write: "group-rule", place_id: snapshot.place.id, rule }] };
  const before = context.heater ?? { id: context.id("heater"), owner_id: snapshot.person.id, member_ids: [snapshot.person.id], facts: {}, upkeep: {}, rules: [] };
  const heater = { ...before, rules: [...before.rules.filter((one) => !ownBan(one)), rule] };
  return { draft, writes: [{ write: "heater", heater }], ...(context.heater ? { state: { undo: { writes: [{ write: "heater", heater: context.heater }], at_ms: now_ms } } } : {}) };
}

function headline(context: Context, from_ms: number, to_ms: number) {
  if (from_ms <= context.now_ms) return text("ban.set", span(context, from_ms, to_ms));
  return to_ms - from_ms <= DAY_MS ? text("ban.set-day", { day: { at_ms: from_ms, show: "day" } }) : text("ban.set-later", span(context, from_ms, to_ms));
}

/** A ban of whole days is read as days: "until Thu 26 Nov, 24:00" helps nobody. */
function span(context: Context, from_ms: number, to_ms: number): Record<string, Arg> {
  const wholeDay = (at_ms: number): boolean => zoned(at_ms, context.reader.timezone).startOfDay().epochMilliseconds === at_ms;
  return {
    from: { at_ms: from_ms, show: wholeDay(from_ms) ? "day" : "day-time" },
    until: wholeDay(to_ms) ? text("ban.day-included", { day: { at_ms: to_ms - 1, show: "day" } }) : { at_ms: to_ms, show: "day-time" },
  };
}

const LIFT: Choice = { id: "ban:lift", label: text("ban.lift") };
/** A ban somebody of this heater noted down; what a builder says is no ban. */
const ownBan = (rule: HeaterRule): boolean => rule.from === "law" && rule.no_fire !== undefined;

function lifted(context: Context): Outcome {
  const { message, snapshot } = context;
  const mine = context.heater?.rules.some(ownBan) ? context.heater : null;
  const moderator = message.place.kind === "group" && message.place.moderates === true;
  const groups = standingBans(context).filter((rule) => rule.from === "group");
  const left = groups.length > 0 && !moderator;
  const done = mine !== null || moderator;
  return {
    draft: {
      topic: "set-heater",
      headline: text(done ? "ban.lifted" : left ? "ban.group-stands" : "ban.none"),
      blocks: blocks(left && say(text(done ? "ban.group-stands" : "ban.ask-moderator"))),
      ...(moderator ? { audience: "place" as const } : {}),
    },
    writes: [
      ...(mine ? [{ write: "heater" as const, heater: { ...mine, rules: mine.rules.filter((rule) => !ownBan(rule)) } }] : []),
      ...(moderator ? [{ write: "group-rule" as const, place_id: snapshot.place.id, rule: null }] : []),
    ],
  };
}

function standing(context: Context): Outcome {
  const bans = standingBans(context);
  return {
    draft: {
      topic: "set-heater",
      headline: text(bans.length > 0 ? "ban.stands" : "ban.none"),
      blocks: blocks(
        ...bans.map((rule) => say(text(`ban.line.${rule.from}`, span(context, Date.parse(rule.no_fire?.from ?? ""), Date.parse(rule.no_fire?.to ?? ""))))),
        say(text("ban.not-looked-up")),
        bans.length > 0 && { kind: "choices", cautions: [], choices: [LIFT] },
      ),
    },
  };
}
