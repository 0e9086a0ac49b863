/** "When did I test my alarm?": what is on record of the alarms, and what is due. */
import { say, steps, text, verbatim, type Block, type Text } from "../../answer.ts";
import type { AlarmFacts } from "../../records/schemas.ts";
import { blocks, type Context, type Outcome } from "../context.ts";

/** Tested with the button every month; common practice, and what makers and fire services ask. */
const TEST_DAYS = 31;
const SOON_DAYS = 90;
const DAY_MS = 86_400_000;

const ASKED = [
  /\bwhen (?:did|have|was|were|do|does|is|are) [^?.!]{0,60}\b(?:alarms?|detectors?)\b/,
  /\b(?:alarms?|detectors?)\b[^?.!]{0,40}\b(?:last tested|tested last|run out|runs out|expires?|end dates?|need (?:a )?test|due|good until)\b/,
  /\b(?:show|list|see|what about|where are) (?:me )?(?:my |our |the )?(?:co |carbon monoxide |smoke |fire )?(?:alarms?|detectors?)\b/,
  /^(?:my )?(?:alarms|detectors)$/,
  /\bwhere (?:do|does|should|shall|can|to) [^?.!]{0,40}\b(?:alarms?|detectors?)\b/,
];

/** "Do I need a CO alarm?" */
const NEEDED = /\b(?:do|should|must|does) (?:i|we|you|one|it|they) (?:really |still )?(?:need|have|get|buy|own)\b[^?.!]{0,50}\b(?:alarms?|detectors?)\b|\b(?:alarms?|detectors?)\b[^?.!]{0,25}\b(?:needed|required|necessary|mandatory|compulsory|a must)\b|\bis an? [^?.!]{0,30}\b(?:alarm|detector) (?:needed|required|necessary|mandatory)\b/;

/** "CO alarm tested today, good until 2031": told, not asked. */
const TOLD = /\b(?:until|till|expires?(?: on| in)?) (?:[a-z]+ )?\d|\btested (?:today|yesterday)\b|\b(?:today|yesterday) tested\b/;

export function alarmsAsked(context: Context): Outcome | null {
  if (!context.text.includes("?") && TOLD.test(context.text.toLowerCase())) return null;
  const plain = context.text.toLowerCase().replace(/[^\p{L}\p{N}?.! ]+/gu, " ").replace(/\s+/g, " ").replace(/\?$/, "").trim();
  return plain.length > 160 ? null : NEEDED.test(plain) ? alarmsOutcome(context, text("alarms.needed")) : ASKED.some((one) => one.test(plain)) ? alarmsOutcome(context) : null;
}

export function alarmsOutcome(context: Context, answered?: Text): Outcome {
  const { co, smoke } = context.snapshot.home.alarms;
  const lines = [...linesOf(context, "co", co), ...linesOf(context, "smoke", smoke)];
  return {
    draft: {
      topic: "co-alarm",
      also: ["set-house"],
      cautions: ["carbon-monoxide"],
      headline: answered ?? headline(context, co),
      blocks: blocks(steps(lines, { ordered: false, cautions: ["carbon-monoxide"] }), say(text("alarms.how"), "carbon-monoxide"), say(text("alarms.where"), "carbon-monoxide"), say(text("alarms.slow"), "carbon-monoxide"), tell(co, smoke)),
    },
  };
}

function headline(context: Context, co: AlarmFacts | undefined): Text {
  if (!co || co.present === false) return text(co ? "alarms.none" : "alarms.unknown");
  if (co.ends_on && Date.parse(co.ends_on) <= context.now_ms) return text("alarm.ended");
  return co.tested_on ? text("alarms.tested", { date: dateOf(co.tested_on), days: age(context, co.tested_on) }) : text("alarms.untested");
}

const dateOf = (date: string) => ({ at_ms: Date.parse(`${date}T12:00:00Z`), show: "date" }) as const;
const age = (context: Context, date: string): number => Math.max(0, Math.floor((context.now_ms - Date.parse(date)) / DAY_MS));

function linesOf(context: Context, kind: "co" | "smoke", alarm: AlarmFacts | undefined): Text[] {
  const name = text(`alarms.${kind}`);
  if (!alarm || Object.keys(alarm).length === 0) return [text("alarms.line.unknown", { name })];
  if (alarm.present === false) return [text("alarms.line.none", { name })];
  const parts: Text[] = [];
  if (alarm.room) parts.push(text("alarms.in", { room: verbatim(alarm.room) }));
  if (alarm.tested_on) parts.push(text(age(context, alarm.tested_on) > TEST_DAYS ? "alarms.test-due" : "alarms.test-done", { date: dateOf(alarm.tested_on) }));
  else parts.push(text("alarms.no-test"));
  if (alarm.ends_on) {
    const left = (Date.parse(alarm.ends_on) - context.now_ms) / DAY_MS;
    parts.push(text(left <= 0 ? "alarms.over" : left < SOON_DAYS ? "alarms.ends-soon" : "alarms.ends", { date: dateOf(alarm.ends_on) }));
  } else parts.push(text("alarms.no-end"));
  return [text("alarms.line", { name, what: parts })];
}

const tell = (co: AlarmFacts | undefined, smoke: AlarmFacts | undefined): Block | null =>
  co?.tested_on && co.ends_on && co.room && smoke?.tested_on ? null : say(text("alarms.tell"));
