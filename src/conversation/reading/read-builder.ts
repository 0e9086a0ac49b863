/** What a message says as a builder's rule: "my builder says never more than 12 kg", "builder's rule: 14 h between fires", "rule for Kitchen: ...". */
import type { RuleGiven } from "../../builder/rules.ts";
import { convert } from "../../quantities.ts";
import { inUnit, readFigures, type Figure } from "./figures.ts";

const WHO = `(?:(?:my|our|the) )?(?:(?:stove|heater|oven) )?(?:builder|mason|stove fitter)`;
const SAYS = new RegExp(String.raw`^${WHO}(?: (?:says?|said|tells? me|told (?:me|us)|wants?|insists|writes?|wrote|asks? (?:me|us))(?: that)?|(?:'?s)? rules?(?: is| says)?)\s*[:,-]?\s+(.+)$`, "is");
const SAYS_GERMAN = /^(?:(?:mein|unser|der) )?(?:ofenbauer|ofensetzer|hafner|hafnermeister)(?: (?:sagt|meint|will|schreibt|hat (?:mir |uns )?gesagt|hat gemeint)| ?-?regeln?)\s*[:,]?\s*(?:dass )?(.+)$|^regeln? (?:vom|des|meines|unseres) (?:ofenbauers?|hafners?)\s*:\s*(.+)$/is;
const FOR = /^(?:my )?rules? for (.{1,80}?)\s*:\s*(.+)$|^(?:meine )?regeln? für (.{1,80}?)\s*:\s*(.+)$/is;

export interface BuilderSaid {
  /** whose heater, when the message names one: a builder speaks */
  readonly for: string | null;
  readonly rule: RuleGiven;
  /** nothing but words, and said in passing rather than as a rule: another topic may be meant */
  readonly in_passing: boolean;
}
export interface BuilderReading {
  /** a German message's words as the English readers understand them */
  readonly english?: (words: string) => string;
  /** what a bare number is taken for */
  readonly system?: "metric" | "us";
}

const MAX = /\b(?:never more than|not more than|no more than|at most|max(?:imum)?|up to|limit|largest|biggest|never over|never above|not over|under|below|less than)\b/;
const MIN = /\b(?:at least|min(?:imum)?|never less than|not less than|no less than|smallest|never under|never below|not under|not below)\b/;
const DAY = /\b(?:a|per|each|every|in one|one) day\b|\bdaily\b|\b(?:in|per|every) 24 ?(?:h|hours?)\b|\bper 24\b/;
const SPACING = /\b(?:between|apart|spacing|gap|wait|interval|from one fire to the next|from fire to fire|until the next fire|before the next fire)\b/;
const TOP = /\b(?:light|lit|lighting|kindle|start)\b.{0,30}\b(?:from|at|on) (?:the )?top\b|\btop[- ](?:down|lit|lighting)\b/;
const BELOW = /\b(?:light|lit|lighting|kindle|start)\b.{0,30}\b(?:from below|(?:from|at) the bottom|from underneath)\b|\bbottom[- ](?:up|lit|lighting)\b/;
const CALL = /^(?:call|ring|phone|contact)\s+(?:him|her|them|me)?\s*(?:on|at)?\s*(.{3,})$/is;
const CLOSING = /\b(?:damper|slide|flue plate|close(?:s|d)? down|closing down|shut(?:ting)? down)\b/;

/** @returns null when the message is no builder's rule */
export function readBuilder(message: string, { english, system = "metric" }: BuilderReading = {}): BuilderSaid | null {
  const said = message.trim();
  if (said.length > 400 || /\?\s*$/.test(said)) return null;
  const named = FOR.exec(said);
  const spoken = named ? null : SAYS.exec(said);
  const german = named || spoken ? null : SAYS_GERMAN.exec(said);
  const words = (named?.[2] ?? named?.[4] ?? spoken?.[1] ?? german?.[1] ?? german?.[2] ?? "").trim();
  if (words === "") return null;
  const rule = english ? inOwnWords(readRule(english(words), system), words) : readRule(words, system);
  const onlyWords = Object.keys(rule).every((key) => key === "words" || key === "close_down");
  if (Object.keys(rule).length === 0 || (onlyWords && ASKS.test(words))) return null;
  const asRule = /^[^:]{0,60}:/.test(said) || /\brules?\b|\bregeln?\b/i.test(said.slice(0, 40));
  return { for: (named?.[1] ?? named?.[3])?.trim() ?? null, rule, in_passing: onlyWords && !asRule };
}
const ASKS = /\b(?:how|what|why|which|should i|can i|may i|wie|was|warum|darf ich|soll ich|kann ich)\b/i;

/** What was read from a translation is kept as it was said. */
function inOwnWords(rule: RuleGiven, words: string): RuleGiven {
  const key = (["close_down", "words", "call"] as const).find((one) => rule[one] !== undefined);
  return key ? { ...rule, [key]: words } : rule;
}

function readRule(words: string, system: "metric" | "us"): RuleGiven {
  const rule: { -readonly [K in keyof RuleGiven]: RuleGiven[K] } = {};
  let rest = words;
  for (const clause of words.split(/[;,]|\band\b/i)) {
    const plain = clause.toLowerCase();
    const figures = readFigures(clause);
    const mass = figures.find(({ dimension }) => dimension === "mass") ?? bareMass(clause, figures);
    const hours = figures.find(({ dimension }) => dimension === "duration");
    const key = mass ? massKey(plain, mass) : null;
    if (mass && key) rule[key] = round(inUnit(mass, "kg") ?? convert(mass.value, system === "us" ? "lb" : "kg", "kg"));
    if (hours && SPACING.test(plain) && !DAY.test(plain)) rule.spacing_h = round(inUnit(hours, "h") ?? hours.value);
    if ((mass && key) || (hours && rule.spacing_h !== undefined)) rest = rest.replace(clause, "");
  }
  const plain = words.toLowerCase();
  if (TOP.test(plain) !== BELOW.test(plain)) rule.lighting = TOP.test(plain) ? "top" : "bottom";
  const call = CALL.exec(words);
  if (call?.[1]) rule.call = call[1];
  // what is no figure is kept in the builder's own words
  const left = rest.replace(/[\s;,.]+/g, " ").replace(/^ ?(?:and )?| ?$/g, "").trim();
  if (!call && left.split(" ").length >= 3 && /[a-z]{3}/i.test(left)) {
    const own = Object.keys(rule).length === 0 || rest !== words ? rest.replace(/^[\s;,.]+|[\s;,]+$/g, "") : words;
    if (!(rule.lighting && rest === words && words.length < 60)) rule[CLOSING.test(own.toLowerCase()) ? "close_down" : "words"] = own;
  }
  return rule;
}

/** "never above 12 a time": a bare number that counts nothing else. */
const bareMass = (clause: string, figures: readonly Figure[]): Figure | undefined =>
  figures.find(({ dimension, unit, value, at }) => dimension === null && unit === null && value >= 1 && value <= 150 && !/^\s*(?:fires?|times|h\b|hours?|batch\w*|loads?|pieces?|logs?|sticks?|years?|days?|weeks?|degrees?|percent|[%°]|cm|mm|to\b)/i.test(clause.slice(at[1])));

function massKey(plain: string, { bound }: Figure): "max_load_kg" | "min_load_kg" | "max_day_kg" | null {
  const least = MIN.test(plain);
  const most = !least && (MAX.test(plain) || bound === "max");
  if (most) return DAY.test(plain) ? "max_day_kg" : "max_load_kg";
  return least || bound === "min" ? "min_load_kg" : null;
}

const round = (value: number): number => Number(value.toFixed(2));
