/** The facts of a heater from free words: "my heater: bell, 1800kg, 15kg max", "max 30 lb", "no grate, damper in the flue". */
import type { HeaterFacts } from "../../records/schemas.ts";
import { convert } from "../../quantities.ts";
import { inUnit, type Figure } from "./figures.ts";
import { momentDate } from "./read-dates.ts";
import { Findings, findCues, nameGiven, negatedBefore, plain, present, state, type Read, type ReadContext, type Said,
  type Statement } from "./statement.ts";
import { isSign, isWord } from "./tokens.ts";

const CUES = {
  max: ["max", "maximum", "at most", "biggest", "largest", "limit", "no more than", "up to", "full load", "full charge", "max load",
    "maximum load", "most", "maxload", "highest", "capacity", "rated", "takes", "can take", "may take", "will take"],
  min: ["min", "minimum", "at least", "smallest", "least", "min load", "minimum load", "lowest"],
  load: ["load", "loads", "charge", "batch", "fire", "firing", "wood", "fill", "burn"],
  weight: ["weighs", "weight", "weigh", "weigth", "weigt", "mass", "masonry", "heavy", "total weight", "core", "thermal mass", "bricks",
    "heater is", "stove is"],
  output: ["output", "nominal", "rated output", "power", "heat output", "nominal output"],
  heating_time: ["heating time", "storage time", "heats for", "nominal heating time", "holds for", "lasts", "stores for"],
  wall: ["wall", "walls", "shell", "skin", "thick", "thickness", "facing thickness", "mantle"],
  facing: ["surface", "facing", "face", "outside area", "heating surface", "outer surface", "faces"],
  flue: ["flue", "chimney", "stack", "lum", "flue height", "chimney height", "vent"],
  since: ["built", "commissioned", "installed", "from", "since", "new in", "made", "finished", "completed", "first fired", "put in", "rebuilt", "build"],
} as const;
const isMass = ({ figure }: { figure?: Figure }): boolean => figure !== undefined
  && (figure.dimension === "mass" || figure.dimension === null);
const dimension = (...allowed: readonly (string | null)[]) => ({ figure }: { figure?: Figure }): boolean => figure !== undefined
  && allowed.includes(figure.dimension);
const TAKES = {
  max: isMass, min: isMass, load: isMass, weight: isMass, output: dimension("power"), heating_time: dimension("duration"),
    wall: dimension("length"), facing: dimension("area"),
  flue: dimension("length"), since: (said: { figure?: Figure; moment?: unknown }) => said.moment !== undefined
    || (said.figure?.dimension === null && isYear(said.figure.value)),
};
const isYear = (value: number): boolean => Number.isInteger(value) && value >= 1700 && value <= 2100;

const KINDS: readonly (readonly [NonNullable<HeaterFacts["kind"]>, readonly string[]])[] = [
  ["mixed", ["mixed", "hybrid", "combination", "channels and bell", "bell and channel", "bell and channels"]],
  ["contraflow", ["contraflow", "contra flow", "counterflow", "counter flow", "contraflo", "vastavirta", "gegenzug"]],
  ["bell", ["bell", "bells", "double bell", "free gas", "dome", "single bell", "bell type"]],
  ["channel", ["channel", "channels", "flues inside", "serpentine", "channel type", "grundofen"]],
];
const FACINGS: readonly (readonly [NonNullable<HeaterFacts["facing_material"]>, readonly string[]])[] = [
  ["soapstone", ["soapstone", "soap stone", "speckstein", "vuolukivi"]],
    ["tile", ["tile", "tiles", "tiled", "ceramic", "kachelofen", "kakelugn", "kacheln"]],
  ["render", ["render", "rendered", "plaster", "plastered", "stucco", "putz"]], ["brick", ["brick", "bricks", "red brick", "brickwork"]],
    ["stone", ["stone", "granite", "limestone", "sandstone", "natural stone"]],
];
const THINGS: readonly (readonly ["shut_off_damper" | "bypass_damper" | "grate" | "outside_air", readonly string[]])[] = [
  ["bypass_damper", ["bypass", "bypass damper", "by pass", "startup damper", "start up damper", "summer damper", "direct draught",
    "direct draft"]],
  ["shut_off_damper", ["damper", "dampers", "flue damper", "shut off damper", "shutoff damper", "shut off", "shutoff", "slide",
    "damper plate", "flue plate", "spjall", "pelti", "schieber", "gate", "chimney damper", "top damper", "guillotine"]],
  ["grate", ["grate", "grating", "ash grate", "fire grate", "rost"]],
  ["outside_air", ["outside air", "external air", "outdoor air", "combustion air from outside", "fresh air duct", "air from outside",
    "ducted air", "air kit"]],
];
const LIT_TOP = ["top lit", "lit from the top", "lit from top", "light from the top", "light from top", "top lighting", "top down",
  "lights from the top", "lit on top", "light it on top", "from above"];
const LIT_BOTTOM = ["bottom lit", "lit from the bottom", "lit from below", "bottom up", "light from below", "light from the bottom",
  "lit from bottom", "bottom lighting", "from underneath", "lights from the bottom"];
const EXIT_LOW = ["smoke leaves low", "smoke leaves at the bottom", "leaves low down", "exit low", "lower exit", "low exit", "gas exit is low", "gases leave low", "exits low", "gases leave at the bottom",
  "exit at the bottom", "downdraft", "downdraught", "down draft", "underfire", "low gas exit", "exit is low", "exit below"];
const EXIT_TOP = ["smoke leaves at the top", "smoke goes out at the top", "gas leaves at the top", "leaves at the top", "exit at the top", "top exit", "gas exit at the top", "exit is at the top", "gases leave at the top",
  "exits at the top", "gas exit top", "exit top", "throat at the top", "gas exit on top"];
const FLUE_OUTSIDE = ["chimney on the outside", "chimney outside", "flue outside", "outside chimney", "external chimney",
  "exterior chimney", "flue on the outside wall", "flue on outside wall", "chimney on outside wall", "chimney on the outside wall",
  "outside wall chimney", "external flue", "chimney is outside", "flue is outside"];
const FLUE_INSIDE = ["internal chimney", "inside chimney", "chimney inside", "flue inside the house", "chimney in the middle",
  "interior chimney", "chimney through the house", "indoor flue", "central chimney", "internal flue"];
const SOURCES: readonly (readonly [NonNullable<HeaterFacts["max_load_source"]>, readonly string[]])[] = [
  ["plate", ["plate", "data plate", "nameplate", "name plate", "rating plate", "label", "type plate", "sticker"]],
  ["sheet", ["sheet", "manual", "builder says", "builders sheet", "papers", "paperwork", "instructions", "handbook", "firing sheet",
    "according to the builder", "mason says", "builder told", "datasheet", "data sheet", "builder said", "mason said"]],
  ["guess", ["guess", "guessing", "i think", "i reckon", "not sure", "no idea", "no papers", "estimate", "estimated"]],
];

/** Reads what is said of a heater. Bare numbers take the reader's own unit and are named in `assumed`. */
export function readHeater(text: string, context: ReadContext = {}): Read<HeaterFacts> {
  const findings = new Findings();
  const statement = state(text, context, { cues: CUES, takes: TAKES }, findings);
  const facts: { -readonly [K in keyof HeaterFacts]: HeaterFacts[K] } = {};
  const name = nameGiven(statement);
  if (name) facts.name = name;
  masses(statement, facts, findings);
  for (const said of statement.said) if (said.figure && said.figure.dimension !== "mass") measure(said, said.figure, facts, findings);
  words(statement, facts, findings);
  const since = momentDate(statement, "since", findings, { what: "The heater", past: true });
  if (since) facts.commissioned_on = since;
  return { facts, problems: findings.problems, questions: findings.questions, assumed: findings.assumed };
}

/** A bare number takes the unit of the other masses beside it, else the reader's own. */
function kilograms(figure: Figure, { said, system }: Statement, findings: Findings): number {
  if (figure.unit === null) {
    const beside = said.find((other) => other.figure?.dimension === "mass" && other.figure.unit !== "t")?.figure?.unit;
    if (beside) return convert(figure.value, beside, "kg");
    findings.assumed.push(`${plain(figure.value)} was taken as ${system === "us" ? "pounds" : "kilograms"}.`);
    return system === "us" ? convert(figure.value, "lb", "kg") : figure.value;
  }
  return inUnit(figure, "kg") ?? figure.value;
}

const round = (value: number, digits = 2): number => Number(value.toFixed(digits));

function masses(statement: Statement, facts: Partial<HeaterFacts>, findings: Findings): void {
  const keep = facts as { -readonly [K in keyof HeaterFacts]: HeaterFacts[K] };
  const printed = SOURCES.some(([source, list]) => source !== "guess" && present(statement, list) === true);
  for (const said of statement.said) {
    const figure = said.figure;
    if (!figure || !(figure.dimension === "mass" || (figure.dimension === null
      && (said.cues.has("max") || said.cues.has("min") || said.cues.has("weight")
      || (said.cues.has("load") && said.cues.size > 0))))) continue;
    if (figure.dimension === null && (isYear(figure.value) || said.cues.has("since") || countsThings(statement, said))) continue;
    const given = kilograms(figure, statement, findings);
    const said_kg = `${plain(given)} kg`;
    if (given <= 0) {
      findings.problems.push(
        `${said_kg} cannot be right: a load and a heater both weigh more than nothing, for example 15 kg and 1800 kg.`);
      continue;
    }
    const daily = perDay(statement, said);
    const loadish = said.cues.has("max") || said.cues.has("min") || said.cues.has("load") || figure.bound === "max" || daily;
    // "1.800 kg" is 1800 kg in the country of whoever writes a heater's mass so
    const kg = figure.alt !== undefined && (said.cues.has("weight") || (!loadish && given < 20))
      ? Math.max(given, inUnit({ ...figure, value: figure.alt }, "kg") ?? figure.alt) : given;
    if (daily) {
      if (kg > 300) findings.problems.push(`${said_kg} of wood a day cannot be right: the largest heaters take some 100 kg in a day.`);
      else keep.max_day_kg = round(safeEnd(figure, kg));
    } else if (said.cues.has("min")) {
      if (kg > 120) findings.problems.push(
        `A smallest load of ${said_kg} cannot be right: it is usually half of the largest, some 5 to 10 kg.`);
      else keep.min_load_kg = round(kg);
    } else if (said.cues.has("max") || figure.bound === "max" || (said.cues.has("load") && kg <= 150)
      || (printed && kg <= 120 && keep.max_load_kg === undefined)) {
      if (kg > 120) findings.problems.push(
        `A largest load of ${said_kg} cannot be right: heaters take 8 to 40 kg in one load. Is ${said_kg} what the heater itself weighs?`);
      else {
        keep.max_load_kg = round(safeEnd(figure, kg));
        const times = timesADay(statement, said);
        if (times) keep.max_day_kg ??= round(keep.max_load_kg * times);
      }
    } else if (kg >= 150) {
      if (kg > 30000) findings.problems.push(`A heater of ${said_kg} cannot be right: most weigh 800 to 5000 kg.`);
      else keep.masonry_kg = Math.round(kg);
    } else if (said.cues.has("weight")) {
      findings.problems.push(
        `A heater of ${said_kg} cannot be right: masonry heaters weigh 800 kg and more. A load is written "max 15 kg".`);
    } else {
      findings.ask("which-load", `Is ${said_kg} the largest load your heater may have?`,
        { max: "The largest load", min: "The smallest load", other: "Something else" });
    }
  }
  if (keep.max_load_kg !== undefined && keep.min_load_kg !== undefined && keep.min_load_kg > keep.max_load_kg) {
    findings.problems.push(
      `The smallest load (${plain(keep.min_load_kg)} kg) is above the largest (${plain(keep.max_load_kg)} kg); the smallest was not kept.`);
    delete keep.min_load_kg;
  }
}

/** Of a range for a limit the lower end counts. */
const safeEnd = (figure: Figure, kg: number): number => (figure.low !== undefined && figure.high !== undefined && figure.value !== 0
  ? (kg * figure.low) / figure.value : kg);

/** "30 kg a day", "30 kg per 24 h", "daily max 30 kg"; "8 kg twice a day" is a load. */
function perDay({ tokens, clauses }: Statement, { from, to }: Said): boolean {
  const at = isWord(tokens[to], "max", "maximum", "of", "tops") ? (isWord(tokens[to + 1], "wood") ? to + 2 : to + 1) : to;
  if (isWord(tokens[at], "a", "per", "each", "every", "pr") && isWord(tokens[at + 1], "day", "24")) return true;
  if (isSign(tokens[at], "/") && isWord(tokens[at + 1], "day", "d")) return true;
  if (isWord(tokens[at], "daily") || (isWord(tokens[at], "in") && tokens[at + 1]?.kind === "number"
    && (tokens[at + 1] as { value: number }).value === 24)) return true;
  for (let i = from - 1; i >= Math.max(0, from - 5) && clauses[i] === clauses[from]; i -= 1) if (isWord(tokens[i], "daily",
    "day")) return !isWord(tokens[i - 1], "times", "a") || isWord(tokens[i], "daily");
  return false;
}

/** How many fires a day are said right after a load: "8 kg twice a day". */
function timesADay({ tokens }: Statement, { to }: Said): number | null {
  if (isWord(tokens[to], "twice") && isWord(tokens[to + 1], "a", "per", "daily")) return 2;
  const count = tokens[to];
  return count?.kind === "number" && count.value >= 1 && count.value <= 4 && isWord(tokens[to + 1], "times", "x")
    && isWord(tokens[to + 2], "a", "per") ? count.value : null;
}

const countsThings = ({ tokens }: Statement, { to }: Said): boolean =>
  isWord(tokens[to], "fires", "fire", "loads", "years", "year", "times", "logs", "dampers", "bells", "channels", "people");

function measure({ cues }: Said, figure: Figure, facts: HeaterFacts, findings: Findings): void {
  const keep = facts as { -readonly [K in keyof HeaterFacts]: HeaterFacts[K] };
  const within = (what: string, value: number, unit: string, low: number, high: number): boolean => {
    if (value > low && value <= high) return true;
    findings.problems.push(`${what} of ${plain(value)} ${unit} cannot be right: it lies between ${low} and ${high} ${unit}.`);
    return false;
  };
  const power = inUnit(figure, "kW");
  if (power !== null && within("A nominal output", power, "kW", 0, 40)) keep.nominal_output_kW = round(power);
  const hours = inUnit(figure, "h");
  if (hours !== null && (cues.has("heating_time") || keep.nominal_output_kW !== undefined) && figure.unit === "h"
    && within("A heating time", hours, "h", 0, 72)) keep.nominal_heating_time_h = round(hours);
  const area = inUnit(figure, "m2");
  if (area !== null && cues.has("facing") && within("A facing", area, "m²", 0, 80)) keep.facing_m2 = round(area);
  const length = inUnit(figure, "m");
  if (length !== null && cues.has("flue") && within("A flue", length, "m", 0, 40)) keep.flue_height_m = round(length);
  else if (length !== null && cues.has("wall") && within("A heater wall", length * 1000, "mm", 0,
    600)) keep.wall_mm = Math.round(length * 1000);
}

function words(statement: Statement, facts: HeaterFacts, findings: Findings): void {
  const keep = facts as { -readonly [K in keyof HeaterFacts]: HeaterFacts[K] };
  const said = (list: readonly string[]): boolean => present(statement, list) === true;
  const kind = KINDS.find(([, list]) => said(list));
  if (kind) keep.kind = kind[0];
  const facing = FACINGS.find(([, list]) => said(list));
  if (facing) keep.facing_material = facing[0];
  for (const [key, list] of THINGS) {
    const there = key === "shut_off_damper" ? damperSaid(statement, list) : present(statement, list);
    if (there !== undefined) keep[key] = there;
  }
  const top = said(LIT_TOP);
  if (top !== said(LIT_BOTTOM)) keep.lighting = top ? "top" : "bottom";
  const exitTop = said(EXIT_TOP);
  if (exitTop !== said(EXIT_LOW)) keep.gas_exit = exitTop ? "top" : "low";
  const outside = said(FLUE_OUTSIDE);
  if (outside !== said(FLUE_INSIDE)) keep.flue_on_outside_wall = outside;
  oven(statement, keep, findings);
  const source = SOURCES.find(([, list]) => said(list));
  if (source && keep.max_load_kg !== undefined) keep.max_load_source = source[0];
}

/** "bypass damper" speaks of the bypass, not of the shut-off damper. */
function damperSaid(statement: Statement, list: readonly string[]): boolean | undefined {
  const { tokens, clauses } = statement;
  let answer: boolean | undefined;
  for (const hit of findCues(tokens, clauses, { bypass: THINGS[0]?.[1] ?? [], damper: list })) {
    if (hit.cue !== "damper") continue;
    const no = negatedBefore(statement, hit.from) || isWord(tokens[hit.to], "no", "none")
      || (isWord(tokens[hit.to + 1], "no", "none") && (isSign(tokens[hit.to], ":") || isSign(tokens[hit.to], "=")));
    answer = !no;
  }
  return answer;
}

function oven(statement: Statement, facts: { -readonly [K in keyof HeaterFacts]: HeaterFacts[K] }, findings: Findings): void {
  if (present(statement, ["black oven", "black bake oven"]) === true) facts.oven = "black";
  else if (present(statement, ["white oven", "white bake oven"]) === true) facts.oven = "white";
  else {
    const there = present(statement, ["oven", "bake oven", "baking oven", "bread oven"]);
    if (there === false) facts.oven = "none";
    else if (there && statement.tokens.some((token, i) => isWord(token, "with", "has", "have", "bake", "baking", "bread", "an")
      && statement.tokens.slice(i, i + 4).some((next) => isWord(next, "oven")))) {
      findings.ask("oven-kind", "Does the fire or its gas pass through the oven (black oven), or is it heated from outside (white oven)?",
        { black: "Through it", white: "From outside", unknown: "I do not know" });
    }
  }
}
