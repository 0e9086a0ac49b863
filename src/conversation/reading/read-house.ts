/** The facts of a house from free words: "house 120m2 1950 no insulation", "heat loss 5 kW at -15". */
import type { HouseFacts } from "../../records/schemas.ts";
import { inUnit, type Figure } from "./figures.ts";
import { Findings, plain, present, state, type Read, type ReadContext, type Said, type Statement } from "./statement.ts";
import { isWord } from "./tokens.ts";

export interface HouseRead extends Read<HouseFacts> {
  readonly built_year?: number;
  /** heat loss from age and floor area, when nobody measured it: never a fact, only a start */
  readonly estimate?: {
    readonly heat_loss_W_per_K: { readonly value: number; readonly low: number; readonly high: number };
    readonly because: string;
  };
}

const CUES = {
  floor: ["floor", "floor area", "house", "home", "cottage", "cabin", "area", "living space", "living area", "heated area", "flat",
    "footprint"],
  loss: ["heat loss", "heatloss", "loss", "loses", "losses", "heat load", "heating load", "design load"],
  wanted: ["want", "wanted", "like", "keep", "keep it", "inside", "indoors", "room", "living room", "aim", "aiming", "target", "set to",
    "comfortable", "prefer", "temperature"],
  outside: ["at", "outside", "out", "outdoors", "design", "when it is", "when its"],
  other: ["other heat", "heat pump", "heatpump", "radiators", "electric", "gains", "appliances", "internal gains", "other heating",
    "heater fan", "backup"],
  built: ["built", "build", "from", "since", "dates from", "year"],
} as const;
const dims = (...allowed: readonly (string | null)[]) => ({ figure }: { figure?: Figure }): boolean => figure !== undefined
  && allowed.includes(figure.dimension);
const isYear = (value: number): boolean => Number.isInteger(value) && value >= 1500 && value <= 2100;
const TAKES = {
  floor: dims("area"), loss: dims("power", "heat_loss"), wanted: dims("temperature"), outside: dims("temperature", null),
    other: dims("power"),
  built: (said: { figure?: Figure }) => said.figure?.dimension === null && isYear(said.figure.value),
};

interface LossOfAge {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  /** first year of building; none where only the words tell */
  readonly from?: number;
  readonly words: readonly string[];
}

/** Heat loss per heated floor area, W/(m²K). Rough values of the trade: common practice, no source. */
export const LOSS_BY_AGE: readonly LossOfAge[] = [
  { name: "a passive house", low: 0.25, high: 0.35, words: ["passive house", "passivhaus", "passive"] },
  { name: "a low-energy house", low: 0.5, high: 0.7, from: 2010,
    words: ["low energy", "very well insulated", "super insulated", "superinsulated", "deep retrofit"] },
  { name: "a house of about 2000", low: 1.0, high: 1.3, from: 1995,
    words: ["well insulated", "good insulation", "insulated well", "new insulation"] },
  { name: "a house of about 1980", low: 1.8, high: 2.2, from: 1975,
    words: ["some insulation", "partly insulated", "average insulation", "poorly insulated", "bit of insulation", "double glazed"] },
  { name: "an old house without insulation", low: 3.0, high: 4.0, from: 0,
    words: ["uninsulated", "no insulation", "not insulated", "without insulation", "draughty", "drafty", "leaky", "solid walls",
    "old and leaky"] },
];
/** Indoor temperature behind a heat loss stated at an outside temperature, when no other is given. */
const USUAL_INSIDE_C = 20;

/** Reads what is said of a house. */
export function readHouse(text: string, context: ReadContext = {}): HouseRead {
  const findings = new Findings();
  const statement = state(text, context, { cues: CUES, takes: TAKES, moments: false }, findings);
  const facts: { -readonly [K in keyof HouseFacts]: HouseFacts[K] } = {};
  let built_year: number | undefined;
  for (const said of statement.said) {
    const figure = said.figure as Figure;
    const decade = figure.dimension === null && figure.value >= 20 && figure.value <= 90 && figure.value % 10 === 0
      && isWord(statement.tokens[said.to], "s") && !statement.tokens[said.to]?.gap;
    if (decade) built_year ??= 1905 + figure.value;
    else if (figure.dimension === null && isYear(figure.value) && figure.decimals === 0) built_year ??= figure.value;
    else readOne(said, figure, facts, findings);
  }
  loss(statement, facts, findings);
  equipment(statement, facts);
  const estimate = facts.heat_loss_W_per_K === undefined ? estimated(statement, facts.floor_m2, built_year) : undefined;
  if (built_year !== undefined && built_year > (statement.now?.year
    ?? 2100)) findings.problems.push(`A house built in ${built_year} is still to come; a year up to now would be right.`);
  return {
    facts, problems: findings.problems, questions: findings.questions, assumed: findings.assumed,
    ...(built_year === undefined ? {} : { built_year }), ...(estimate ? { estimate } : {}),
  };
}

function readOne(said: Said, figure: Figure, facts: { -readonly [K in keyof HouseFacts]: HouseFacts[K] }, findings: Findings): void {
  const area = inUnit(figure, "m2");
  if (area !== null) {
    if (area <= 0 || area > 2000) findings.problems.push(`A floor of ${plain(area)} m² cannot be right: houses have some 30 to 500 m².`);
    else facts.floor_m2 ??= Math.round(area * 10) / 10;
    return;
  }
  const celsius = inUnit(figure, "C");
  if (celsius !== null && (said.cues.has("wanted") || !said.cues.has("outside"))) {
    if (celsius >= 5 && celsius <= 35) facts.wanted_C = Math.round(celsius * 10) / 10;
    else if (said.cues.has("wanted")) findings.problems.push(
      `A wanted temperature of ${plain(celsius)} °C cannot be right: 5 to 35 °C would be.`);
    return;
  }
  const watts = inUnit(figure, "W");
  if (watts !== null && said.cues.has("other") && !said.cues.has("loss")) {
    if (watts < 0 || watts > 50_000) findings.problems.push(
      `Other heat of ${plain(watts)} W cannot be right: it lies between 0 and 50000 W.`);
    else facts.other_heat_W = Math.round(watts);
  }
}

/** "250 W/K", or "5 kW at -15": the loss at a design temperature, divided by the difference to the inside. */
function loss(statement: Statement, facts: { -readonly [K in keyof HouseFacts]: HouseFacts[K] }, findings: Findings): void {
  const keep = (value: number): void => {
    if (value > 0 && value <= 5000) facts.heat_loss_W_per_K = Math.round(value);
    else findings.problems.push(`A heat loss of ${plain(value)} W/K cannot be right: houses lose some 50 to 500 W/K.`);
  };
  for (const { figure } of statement.said) {
    const direct = figure ? inUnit(figure, "W/K") : null;
    if (direct !== null) {
      keep(direct);
      return;
    }
  }
  const at = statement.said.findIndex(({ figure, cues }) => figure?.dimension === "power" && !(cues.has("other") && !cues.has("loss")));
  const power = at < 0 ? null : inUnit(statement.said[at]?.figure as Figure, "W");
  if (power === null) return;
  const outside = statement.said.slice(at + 1).find(({ figure, from }) => figure
    && (figure.dimension === "temperature" || (figure.dimension === null
    && (figure.value < 0 || isWord(statement.tokens[from - 1], "at", "outside")))) && !isYear(figure.value));
  const outside_C = outside?.figure ? (inUnit(outside.figure, "C")
    ?? (statement.system === "us" ? ((outside.figure.value - 32) * 5) / 9 : outside.figure.value)) : null;
  if (outside_C === null) {
    findings.ask("loss-at", `At what outside temperature does the house lose ${plain(power / 1000)} kW?`);
    return;
  }
  if (facts.wanted_C === outside_C) delete facts.wanted_C;
  const inside_C = facts.wanted_C ?? USUAL_INSIDE_C;
  if (inside_C - outside_C < 5) {
    findings.problems.push(
      `A heat loss at ${plain(outside_C)} °C outside says too little; give it for a cold day, such as 5 kW at -15 °C.`);
    return;
  }
  if (facts.wanted_C === undefined) findings.assumed.push(`The loss was taken at ${USUAL_INSIDE_C} °C inside.`);
  keep(power / (inside_C - outside_C));
}

function equipment(statement: Statement, facts: { -readonly [K in keyof HouseFacts]: HouseFacts[K] }): void {
  const recirculating = present(statement, ["recirculating", "recirculating hood", "charcoal filter hood", "recirculation hood"]) === true;
  const hood = present(statement, ["hood", "cooker hood", "range hood", "kitchen hood", "vented hood", "extractor hood",
    "kitchen extractor", "cooker extractor"]);
  if (hood !== undefined) facts.vented_hood = recirculating ? false : hood;
  const interlock = present(statement, ["interlock", "window contact", "window switch", "pressure switch", "pressure sensor",
    "window sensor", "hood interlock"]);
  if (interlock !== undefined) facts.hood_interlock = interlock;
  if (present(statement, ["mvhr", "hrv", "erv", "heat recovery", "balanced ventilation", "balanced",
    "heat recovery ventilation"])) facts.ventilation = "balanced";
  else if (present(statement, ["exhaust only", "extract fan", "extract fans", "extract ventilation", "exhaust fan", "extract only",
    "mechanical extract", "exhaust ventilation", "bathroom fan"])) facts.ventilation = "extract";
  else if (present(statement, ["natural ventilation", "naturally ventilated", "windows only", "trickle vents", "air bricks"])
    || present(statement, ["mechanical ventilation"]) === false) facts.ventilation = "natural";
}

function estimated(statement: Statement, floor_m2: number | undefined, built_year: number | undefined): HouseRead["estimate"] {
  if (floor_m2 === undefined) return undefined;
  const bySaying = LOSS_BY_AGE.find(({ words }) => words.some((phrase) => present(statement, [phrase]) === true
    || (phrase.startsWith("no ") && statement.text.toLowerCase().includes(phrase))));
  const uninsulated = present(statement, ["insulation", "insulated"]) === false ? LOSS_BY_AGE.at(-1) : undefined;
  const byYear = built_year === undefined ? undefined : LOSS_BY_AGE.find(({ from }) => from !== undefined && built_year >= from);
  const class_ = uninsulated ?? bySaying ?? byYear;
  if (!class_) return undefined;
  const middle = (class_.low + class_.high) / 2;
  return {
    heat_loss_W_per_K: { value: Math.round(middle * floor_m2), low: Math.round(class_.low * floor_m2),
      high: Math.round(class_.high * floor_m2) },
    because: `${plain(class_.low, 2)} to ${plain(class_.high, 2)} W per m² and kelvin is usual for ${class_.name}; ` +
      "an estimate, to be replaced by a measured one",
  };
}
