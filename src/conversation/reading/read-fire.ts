/**
 * A fire from free words: "log: 12kg birch 17% 18:10 damper 22:00", "lit at six, 26 pounds of oak, air shut at 8".
 * Whether the bed was black when the damper was closed is never guessed: not said means asked.
 */
import { UNITS, convert } from "../../quantities.ts";
import { BED_STATES, type FireFacts } from "../../records/schemas.ts";
import { amountsIn, type Amount } from "./amounts.ts";
import { inUnit, readFigures, type Figure } from "./figures.ts";
import { bedSaid } from "./read-bed.ts";
import { MOISTURE_CUES, readMoisture } from "./read-moisture.ts";
import { placeEvents, type EventName } from "./read-events.ts";
import { readerFor } from "./species.ts";
import { Findings, plain, present, state, type Read, type ReadContext, type Said, type Statement } from "./statement.ts";
import { isSign, isWord, wordAt } from "./tokens.ts";

export interface FireRead extends Read<Partial<FireFacts>> {
  readonly moisture_pct_unsettled?: number;
  /** baskets, splits, armfuls that stand for the load */
  readonly amount?: Amount;
  /** "closed at 22:00": air or damper was not said */
  readonly closed_at?: string;
  /** what needs its caution, whatever else is answered */
  readonly careful: readonly ("damper-over-embers" | "damper-bed-unknown")[];
}

const CUES = {
  moisture: MOISTURE_CUES,
  lit_at: ["lit", "light", "lighted", "lighting", "started", "start", "began", "ignited", "fired", "fire at", "on at", "going at",
    "fire from", "kindled", "loaded"],
  flame_out_at: ["flames out", "flame out", "flames gone", "last flame", "no flames", "no flame", "burnt out", "burned out", "burnt down",
    "burned down", "flames died", "went out", "out at", "died down", "finished", "last flames", "flames over", "embers only",
    "only embers", "flameout", "just embers", "flames ended", "no more flames", "no more flame", "last yellow flame"],
  air_closed_at: ["air", "air shut", "air closed", "air off", "shut the air", "closed the air", "close air", "closed air", "shut air",
    "vents", "air slide", "spinner", "intake", "air slider", "door air", "vent", "air inlet", "air down"],
  damper_closed_at: ["damper", "slide", "plate", "flue", "gate", "shutter", "spjall", "pelti", "schieber", "damper shut", "damper closed",
    "flue damper", "damper plate", "shut damper", "closed damper", "closed the damper", "shut the damper", "chimney"],
  closed_at: ["closed", "shut", "shut down", "closed up", "closed down", "closed it", "shut it", "close", "shut up"],
  outside: ["outside", "out", "outdoors", "outdoor", "ext", "external", "weather"],
  inside: ["inside", "room", "indoors", "living room", "face", "surface", "flue gas", "heater", "wall", "oven", "glass"],
  sum: ["plus", "added", "then", "another", "more", "reload", "reloaded", "extra"],
} as const;
const isMoment = (said: { moment?: unknown }): boolean => said.moment !== undefined;
const isTemperature = ({ figure }: { figure?: Figure }): boolean => figure?.dimension === "temperature"
  || (figure?.dimension === null && figure.value <= 60);
const TAKES = {
  moisture: ({ figure }: { figure?: Figure }) => figure?.dimension === "share" || (figure?.dimension === null && figure.value < 400),
  lit_at: isMoment, flame_out_at: isMoment, air_closed_at: isMoment, damper_closed_at: isMoment, closed_at: isMoment,
    outside: isTemperature, inside: isTemperature,
  sum: ({ figure }: { figure?: Figure }) => figure?.dimension === "mass",
};
const HOUR_AFTER = new Set(["lit", "damper", "shut", "closed", "air", "started", "slide", "plate", "flue", "gate", "out", "lighted"]);
const LARGEST_LOAD_KG = 120;
/** Fires longer ago than this are a slip of the pen. */
const OLDEST_DAYS = 400;

/** @param now_ms epoch milliseconds @param timezone of the person, such as Europe/Helsinki */
export function readFire(text: string, now_ms: number, timezone: string, context: Omit<ReadContext, "now_ms" | "timezone"> = {}): FireRead {
  const findings = new Findings();
  const [body, note] = noteOf(text);
  const statement = state(body, { ...context, now_ms, timezone },
    { cues: CUES, takes: TAKES, hour_after: HOUR_AFTER, lean: "past", points: pointsAreTimes(body) }, findings);
  const facts: { -readonly [K in keyof FireFacts]?: FireFacts[K] } = {};
  const moisture = readMoisture(statement, findings);
  if (moisture.moisture_pct_wet !== undefined) facts.moisture_pct_wet = moisture.moisture_pct_wet;
  const amount = load(statement, facts, findings);
  const species = trees(statement);
  if (species) facts.species = species;
  const closed_at = times(statement, facts, findings);
  howItBurnt(statement, facts);
  outside(statement, facts);
  const bed = bedSaid(statement.tokens);
  if (bed) facts.bed_at_close = bed;
  const careful = closing(facts, findings);
  if (note) facts.note = note;
  return {
    facts, problems: findings.problems, questions: findings.questions, assumed: findings.assumed, careful,
    ...(moisture.moisture_pct_unsettled === undefined ? {} : { moisture_pct_unsettled: moisture.moisture_pct_unsettled }),
    ...(amount && facts.load_kg === undefined ? { amount } : {}), ...(closed_at ? { closed_at } : {}),
  };
}

/** "12 kg 18.10": beside a weight with its unit, and with no time written otherwise, a bare 18.10 is one. */
const pointsAreTimes = (text: string): boolean => !/\d:\d/.test(text) && readFigures(text).some(({ dimension }) => dimension === "mass");

function noteOf(text: string): [string, string | undefined] {
  const low = text.toLowerCase();
  const at = low.indexOf("note:");
  if (at < 0) return [text, undefined];
  const note = text.slice(at + 5).trim().slice(0, 1000);
  return [text.slice(0, at), note || undefined];
}

function load(statement: Statement, facts: { -readonly [K in keyof FireFacts]?: FireFacts[K] }, findings: Findings): Amount | undefined {
  const { tokens, said } = statement;
  const amounts = amountsIn(tokens);
  const amount = amounts[0];
  let masses = said.filter(({ figure, to }) => figure?.dimension === "mass" && !isWord(tokens[to], "heater", "max", "limit")
    && !perDay(statement, to));
  if (masses.length === 0) masses = said.filter((one) => bareLoad(statement, one));
  const first = masses[0];
  if (!first?.figure) return amount;
  const kg_of = (figure: Figure): number => inUnit(figure, "kg")
    ?? (statement.system === "us" ? convert(figure.value, "lb", "kg") : figure.value);
  if (first.figure.unit === null) findings.assumed.push(
    `${plain(first.figure.value)} was taken as ${statement.system === "us" ? "pounds" : "kilograms"} of wood.`);
  let kg = kg_of(first.figure);
  const each = amount && amount.measure !== "mark" && amount.at[1] <= first.figure.at[0] && eachBetween(statement, first);
  if (each) {
    kg *= amount.count;
    findings.assumed.push(`${plain(amount.count)} × ${plain(kg / amount.count)} kg is ${plain(kg)} kg.`);
  } else if (masses.length > 1) {
    if (twoFires(statement, first, masses[1] as Said)) {
      findings.problems.push("This reads like two fires; the first was written down. Send the other as a message of its own.");
    }
    const more = twoFires(statement, first, masses[1] as Said) ? []
      : masses.slice(1).filter((one) => one.cues.has("sum") || isSign(tokens[one.from - 1], "+")
      || (isWord(tokens[one.from - 1], "and", "plus", "then") && kg_of(one.figure as Figure) > 0));
    if (more.length > 0) {
      kg = more.reduce((sum, one) => sum + kg_of(one.figure as Figure), kg);
      findings.assumed.push(`All the wood of this fire together: ${plain(kg)} kg.`);
    } else if (masses.length === 2 && !twoFires(statement, first, masses[1] as Said)) findings.ask("load-which",
      `Was the load ${plain(kg)} kg or ${plain(kg_of((masses[1] as Said).figure as Figure))} kg? ${plain(kg)} kg was written down.`);
  }
  if (kg <= 0) findings.problems.push(`A load of ${plain(kg)} kg cannot be: a load weighs more than nothing, such as 12 kg.`);
  else if (kg > LARGEST_LOAD_KG) findings.problems.push(
    `A load of ${plain(kg, 0)} kg cannot be right: one load of a masonry heater is some 5 to 40 kg.`);
  else facts.load_kg = Number(kg.toFixed(2));
  return amount;
}

/** "8 kg at 7am and 9 kg at 6pm": each weight has a time of its own that is no other event. */
function twoFires({ said }: Statement, first: Said, second: Said): boolean {
  const open = said.filter(({ moment, cues }) => moment?.clock && ![...cues].some((cue) => cue !== "lit_at"));
  return open.some(({ from }) => from > first.to && from < second.from) && open.some(({ from }) => from > second.to);
}

/** "12 birch 18:10": a bare number before a tree or after "load" or "fire of", no year, no temperature. */
function bareLoad({ tokens, species }: Statement, { figure, from, to, cues }: Said): boolean {
  if (!figure || figure.dimension !== null || figure.value <= 0 || figure.value > 100 || cues.has("moisture") || cues.has("outside")
    || cues.has("inside")) return false;
  const before = wordAt(tokens[from - 1]);
  const tree = readerFor(species).read(tokens.slice(to, to + 3)).some(({ from: start }) => start === 0);
  return tree || before === "load" || before === "burned" || before === "burnt"
    || (before === "of" && isWord(tokens[from - 2], "load", "fire"));
}

const perDay = ({ tokens }: Statement, to: number): boolean => isWord(tokens[to], "a", "per", "each")
  && isWord(tokens[to + 1], "day", "week", "winter", "year", "100");

/** "3 baskets of 9 kg", "2 baskets at 9 kg each". */
function eachBetween({ tokens }: Statement, { from, to }: Said): boolean {
  return isWord(tokens[from - 1], "of", "at", "à") || isSign(tokens[from - 1], "x") || isSign(tokens[from - 1], "@")
    || isWord(tokens[from - 1], "x") || isWord(tokens[to], "each", "apiece");
}

function trees({ tokens, species }: Statement): string | undefined {
  const found = readerFor(species).read(tokens).filter(({ words, to }) => !(words === "cherry" && isWord(tokens[to], "red")));
  const sure = found.filter(({ weak }) => !weak);
  const ids = [...new Set((sure.length > 0 ? sure : found).map(({ id }) => id))];
  return ids.length === 0 ? undefined : ids.slice(0, 3).join(" and ").slice(0, 80);
}

const EVENTS: readonly EventName[] = ["lit_at", "flame_out_at", "air_closed_at", "damper_closed_at"];

function times(statement: Statement, facts: { -readonly [K in keyof FireFacts]?: FireFacts[K] }, findings: Findings): string | undefined {
  const now = statement.now as Temporal.ZonedDateTime;
  const opened = present(statement, ["damper open", "damper opened", "opened the damper", "open damper", "opened damper",
    "damper stays open", "left the damper open", "damper left open"]) === true;
  const events = statement.said.filter(({ moment }) => moment).map((said) => {
    const cues = EVENTS.filter((event) => said.cues.has(event));
    const closing = said.cues.has("closed_at") && cues.length === 0;
    return { moment: said.moment as NonNullable<Said["moment"]>, events: closing ? ["closed" as const] : opened
      ? cues.filter((cue) => cue !== "damper_closed_at") : cues };
  });
  const placed = placeEvents(events, now, justNow(statement));
  for (const event of EVENTS) {
    const at = placed[event];
    if (!at) continue;
    if (Temporal.ZonedDateTime.compare(at, now.add({ minutes: 15 })) > 0) {
      findings.problems.push(`${SENTENCE[event]} ${said(at)} is still to come; a time up to now would be right.`);
    } else if (Temporal.ZonedDateTime.compare(at, now.subtract({ hours: OLDEST_DAYS * 24 })) < 0) {
      findings.problems.push(
        `${SENTENCE[event]} on ${at.toPlainDate().toString()} is too long ago to write down; a fire of the last year would be right.`);
    } else facts[event] = at.toString({ timeZoneName: "never", smallestUnit: "second" });
  }
  if (placed.day_only && facts.lit_at) findings.assumed.push(
    `No time of day was given; ${said(placed.lit_at as Temporal.ZonedDateTime)} was taken.`);
  if (placed.open_half && facts.lit_at) findings.assumed.push(
    `The fire was taken as lit ${said(placed.lit_at as Temporal.ZonedDateTime)}.`);
  if (!placed.lit_at && !facts.lit_at) findings.ask("lit-at", "When was it lit?");
  if (placed.closed && facts.air_closed_at === undefined && facts.damper_closed_at === undefined) {
    findings.ask("closed-what",
      `What was closed at ${placed.closed.toPlainTime().toString({ smallestUnit: "minute" })}: ` +
        `the air at the door, or the damper in the flue?`, { air: "The air at the door", damper: "The damper in the flue" });
    return placed.closed.toString({ timeZoneName: "never", smallestUnit: "second" });
  }
  return undefined;
}

const SENTENCE: Readonly<Record<EventName, string>> = { lit_at: "A fire lit", flame_out_at: "A last flame", air_closed_at: "Air closed",
  damper_closed_at: "A damper closed" };
const said = (at: Temporal.ZonedDateTime): string =>
  `on ${at.toPlainDate().toString()} at ${at.toPlainTime().toString({ smallestUnit: "minute" })}`;
const justNow = (statement: Statement): boolean => present(statement,
  ["just lit", "lit now", "just now", "lighting now", "just started", "just lighted", "lit just now", "is lit",
  "lighting it now"]) === true;

function howItBurnt(statement: Statement, facts: { -readonly [K in keyof FireFacts]?: FireFacts[K] }): void {
  const is = (list: readonly string[]): boolean => present(statement, list) === true;
  if (is(["criss cross", "crisscross", "criss crossed", "crosswise", "crossed", "cross stacked", "log cabin"])) facts.stack = "criss-cross";
  else if (is(["tight", "tightly", "packed", "packed tight", "close packed", "stacked tight"])) facts.stack = "tight";
  else if (is(["loose", "loosely", "stacked loose"])) facts.stack = "loose";
  const top = is(["top lit", "top down", "lit from the top", "lit from top", "lit on top", "from the top", "topdown", "top lighting"]);
  const bottom = is(["bottom lit", "bottom up", "lit from below", "lit from the bottom", "from the bottom", "lit from bottom",
    "from below"]);
  if (top !== bottom) facts.lit = top ? "top" : "bottom";
  if (is(["air half", "half air", "air at half", "air half open", "air half closed", "half open", "air halfway"])) facts.air = "half";
  else if (is(["air open", "air full", "full air", "air fully open", "air wide open", "air full open", "open air", "air was open",
    "air on full"])) facts.air = "open";
}

function outside(statement: Statement, facts: { -readonly [K in keyof FireFacts]?: FireFacts[K] }): void {
  const found = statement.said.find(({ figure, cues }) => figure && !cues.has("inside")
    && ((figure.dimension === "temperature" && (cues.has("outside") || figure.value <= 45))
    || (figure.dimension === null && cues.has("outside") && !cues.has("moisture"))
    || (figure.dimension === null && figure.value < 0 && figure.decimals === 0)));
  if (!found?.figure) return;
  const unit = found.figure.unit ?? (statement.system === "us" ? "F" : "C");
  if (UNITS[unit].dimension !== "temperature") return;
  const celsius = convert(found.figure.value, unit, "C");
  if (celsius >= -70 && celsius <= 60) facts.outside_C = Math.round(celsius * 10) / 10;
}

/** The damper in the flue and the bed: what the log must never leave unasked. */
function closing(facts: Partial<FireFacts>, findings: Findings): FireRead["careful"] {
  if (facts.damper_closed_at === undefined) return [];
  if (facts.bed_at_close === "black") return [];
  if (facts.bed_at_close && facts.bed_at_close !== "unknown") return ["damper-over-embers"];
  findings.ask("bed-at-close", "What did the bed look like when the damper was closed?",
    Object.fromEntries(BED_STATES.map((bed) => [bed, BED_LABELS[bed]])));
  return ["damper-bed-unknown"];
}

const BED_LABELS: Readonly<Record<(typeof BED_STATES)[number], string>> = {
  flame: "Still flames", blue: "Small blue flames", red: "Glowing", black: "Raked, and black in the dark", unknown: "I did not look",
};
