/**
 * Alarms from free words: "the CO alarm in the bedroom was tested yesterday, good till 2031". An alarm nobody named is asked about, never
 * taken for a CO alarm.
 */
import type { AlarmFacts, AlarmsFacts } from "../../records/schemas.ts";
import { dateOf } from "./read-dates.ts";
import { Findings, findCues, negatedBefore, state, type Read, type ReadContext, type Said, type Statement } from "./statement.ts";
import { isSign, isWord, wordAt, type Token } from "./tokens.ts";

export interface AlarmsRead extends Read<AlarmsFacts> {
  /** said of an alarm without saying which */
  readonly unplaced?: AlarmFacts;
}

const KIND_WORDS = {
  co: ["co alarm", "co alarms", "co detector", "co detectors", "carbon monoxide alarm", "carbon monoxide detector", "carbon monoxide",
    "monoxide alarm", "monoxide", "co monitor", "co meter", "kohlenmonoxid", "co melder", "co sensor", "co", "co one"],
  smoke: ["smoke alarm", "smoke alarms", "smoke detector", "smoke detectors", "smoke one", "fire alarm", "fire alarms", "rauchmelder",
    "smokealarm", "brandvarnare", "palovaroitin"],
  both: ["smoke and co", "co and smoke", "smoke and co alarms", "co and smoke alarms", "smoke and carbon monoxide",
    "carbon monoxide and smoke", "smoke and carbon monoxide alarms", "combined alarm", "combination alarm", "combi alarm",
    "smoke and co alarm", "co and smoke alarm", "smoke and carbon monoxide alarm", "combined smoke and co alarm"],
  some: ["alarm", "alarms", "detector", "detectors"],
} as const;
const CUES = {
  ends_on: ["good till", "good until", "valid till", "valid until", "expires", "expiry", "end of life", "replace by", "replace in",
    "runs out", "lasts till", "lasts until", "till", "until", "ends", "good to", "end date", "expire", "best before", "use by", "expired",
    "ran out", "ended"],
  tested_on: ["tested", "test", "checked", "pressed", "pressed the button", "tried", "last tested", "tested it", "tested on"],
} as const;
const isDate = (said: { figure?: { dimension: unknown; value: number }; moment?: unknown }): boolean =>
  said.moment !== undefined || (said.figure?.dimension === null && Number.isInteger(said.figure.value) && said.figure.value >= 2000
    && said.figure.value <= 2100);
const TAKES = { ends_on: isDate, tested_on: isDate };
const ROOMS = new Set([
  "bedroom", "bedrooms", "kitchen", "hall", "hallway", "landing", "lounge", "attic", "loft", "basement", "cellar", "nursery", "upstairs",
    "downstairs", "study", "office", "stairwell", "corridor", "room", "heater", "stove", "diner", "parlour", "porch",
]);

type Kind = "co" | "smoke" | "both" | "some";
interface Mention {
  readonly kind: Kind;
  readonly from: number;
  readonly to: number;
}

/** Reads what is said of alarms. `now_ms` is needed for dates. */
export function readAlarms(text: string, context: ReadContext = {}): AlarmsRead {
  const findings = new Findings();
  const statement = state(text, context, { cues: CUES, takes: TAKES }, findings);
  const mentions = mentionsIn(statement);
  const facts: { co?: AlarmFacts; smoke?: AlarmFacts } = {};
  let unplaced: AlarmFacts | undefined;
  const parts = mentions.length > 0 ? mentions : statement.said.some(({ cues }) => cues.size > 0)
    ? [{ kind: "some" as const, from: 0, to: 0 }] : [];
  parts.forEach((mention, n) => {
    const from = n === 0 ? 0 : mention.from;
    const to = parts[n + 1]?.from ?? statement.tokens.length;
    const alarm = oneAlarm(statement, mention, statement.said.filter((said) => said.from >= from && said.from < to), from, to, findings);
    if (mention.kind === "some") {
      if (alarm.room !== undefined || alarm.tested_on !== undefined || alarm.ends_on !== undefined
        || alarm.present !== undefined) unplaced = { ...unplaced, ...alarm };
    } else {
      if (mention.kind !== "smoke") facts.co = { ...facts.co, ...alarm };
      if (mention.kind !== "co") facts.smoke = { ...facts.smoke, ...alarm };
    }
  });
  if (unplaced) {
    const known = facts.co ? "co" : facts.smoke ? "smoke" : null;
    if (known && parts.filter(({ kind }) => kind !== "some").length === 1) {
      // "we have a CO alarm. The alarm was tested yesterday": the one already named
      facts[known] = { ...unplaced, ...facts[known] };
      unplaced = undefined;
    } else findings.ask("which-alarm", "Is that the carbon monoxide alarm or the smoke alarm?",
      { co: "Carbon monoxide (CO)", smoke: "Smoke", both: "One that does both" });
  }
  return { facts, problems: findings.problems, questions: findings.questions, assumed: findings.assumed,
    ...(unplaced ? { unplaced } : {}) };
}

function mentionsIn({ tokens, clauses }: Statement): Mention[] {
  // a CO2 meter is no CO alarm, though many write it so: asked about
  const hits = findCues(tokens, clauses, KIND_WORDS).map(({ cue, from, to }) =>
    ({ kind: (isDioxide(tokens, from) ? "some" : cue) as Kind, from, to }));
  const out: Mention[] = [];
  for (const hit of hits) {
    const last = out.at(-1);
    // "CO and smoke alarms", "alarm for carbon monoxide": the bare word repeats the named one
    if (last && hit.from - last.to <= 2 && (hit.kind === "some" || last.kind === "some")) {
      out[out.length - 1] = { kind: hit.kind === "some" ? last.kind : hit.kind, from: last.from, to: hit.to };
    } else if (last && hit.kind === "some") continue;
    else if (last && last.kind !== hit.kind && hit.from - last.to === 1
      && isWord(tokens[last.to], "and", "or")) out[out.length - 1] = { kind: "both", from: last.from, to: hit.to };
    else out.push(hit);
  }
  return out;
}

const isDioxide = (tokens: readonly Token[], i: number): boolean => isWord(tokens[i], "co") && tokens[i + 1]?.kind === "number"
  && tokens[i + 1]?.gap === false;

/** "battery is dead", "does not work", "is broken", "unplugged". */
function outOfOrder(tokens: readonly Token[], from: number, to: number): boolean {
  for (let i = from; i < Math.min(to, from + 12); i += 1) {
    if (isWord(tokens[i], "dead", "broken", "unplugged", "faulty", "disconnected", "kaput", "defunct", "knackered",
      "bust")) return !isWord(tokens[i - 1], "not", "isnt");
    if (isWord(tokens[i], "works", "work", "working") && (isWord(tokens[i - 1], "not", "doesnt", "isnt", "never", "stopped", "dont")
      || isWord(tokens[i - 2], "not", "doesnt"))) return true;
    if (isWord(tokens[i], "batteries", "battery") && isWord(tokens[i - 1], "no", "without", "flat", "empty")) return true;
    if (isWord(tokens[i], "flat", "empty") && isWord(tokens[i - 2], "battery", "batteries")) return true;
  }
  return false;
}

function oneAlarm(statement: Statement, mention: Mention, said: readonly Said[], from: number, to: number, findings: Findings): AlarmFacts {
  const { tokens } = statement;
  const alarm: { -readonly [K in keyof AlarmFacts]: AlarmFacts[K] } = {};
  const none = mention.to > 0 && (negatedBefore(statement, mention.from) || isWord(tokens[mention.to], "no", "none", "missing")
    || (isSign(tokens[mention.to], ":") && isWord(tokens[mention.to + 1], "no", "none")));
  // "I have not tested the CO alarm" denies the test, not the alarm
  const testDenied = tokens.slice(Math.max(from, mention.from - 4), mention.from).some((token) =>
    isWord(token, "tested", "test", "tried", "checked"));
  if (none && !testDenied) return { present: false };
  if (mention.to > 0 && mention.kind !== "some") {
    alarm.present = true;
    if (outOfOrder(tokens, mention.to, to)) {
      findings.problems.push(
        "An alarm that does not work counts as none until it does: new battery or a new alarm, " +
          "then press its test button, before the next fire.");
      return { present: false };
    }
  }
  const room = roomIn(statement.text, tokens, from, to);
  if (room) alarm.room = room;
  for (const one of said) {
    if (one.cues.has("ends_on")) {
      const date = dateOf(statement, one, findings, { what: "The end of the alarm's life", year_start: true });
      if (date) alarm.ends_on ??= date;
    } else if (one.cues.has("tested_on") && !negatedBefore(statement, one.from)) {
      const date = dateOf(statement, one, findings, { what: "The alarm test", past: true });
      if (date) alarm.tested_on ??= date;
    }
  }
  if (alarm.ends_on && statement.now && Temporal.PlainDate.compare(Temporal.PlainDate.from(alarm.ends_on),
    statement.now.toPlainDate()) < 0) {
    findings.problems.push(
      `That alarm's life ended on ${alarm.ends_on}: it may stay silent in carbon monoxide or smoke. Replace it before the next fire.`);
  }
  return alarm;
}

/** "in the bedroom", "living room", "next to the heater": the words of the room. */
function roomIn(text: string, tokens: readonly Token[], from: number, to: number): string | undefined {
  for (let i = from; i < to; i += 1) {
    if (!ROOMS.has(wordAt(tokens[i]))) continue;
    let start = i;
    if (isWord(tokens[i], "room") && tokens[i - 1]?.kind === "word") start = i - 1;
    else if (isWord(tokens[i], "heater", "stove") && isWord(tokens[i + 1], "room")) return "heater room";
    else if (isWord(tokens[i], "room", "heater", "stove")) {
      if (isWord(tokens[i - 2], "by", "near", "beside", "above", "over", "to")) return "by the heater";
      continue;
    }
    if (start > from && isWord(tokens[start - 1], "kids", "childrens", "main", "guest", "master", "upstairs", "our", "back",
      "front")) start -= isWord(tokens[start - 1], "our") ? 0 : 1;
    const room = text.slice((tokens[start] as Token).at[0], (tokens[i] as Token).at[1]).trim().toLowerCase().slice(0, 80);
    return room || undefined;
  }
  return undefined;
}
