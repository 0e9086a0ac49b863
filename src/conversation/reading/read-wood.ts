/** Woodpiles from free words: "stack 2 rows 4x1.5x0.33 beech", "add 2 cords of maple", "birch 17 % wet basis measured yesterday". */
import { MEASURED_SHARES } from "../../reckoning/stack.ts";
import type { WoodFacts } from "../../records/schemas.ts";
import { inUnit, type Figure } from "./figures.ts";
import { dateOf } from "./read-dates.ts";
import { MOISTURE_CUES, readMoisture } from "./read-moisture.ts";
import { sizesIn, type StackSize } from "./sizes.ts";
import { readerFor, type SpeciesFound } from "./species.ts";
import { Findings, nameGiven, plain, state, type Read, type ReadContext, type Said, type Statement } from "./statement.ts";

export interface WoodRead extends Read<readonly WoodFacts[]> {
  /** by pile: moisture stated without a basis, % */
  readonly moisture_pct_unsettled: readonly (number | undefined)[];
}

const CUES = {
  moisture: MOISTURE_CUES,
  basket: ["basket", "baskets", "basket weighs", "basketful", "per basket", "a basket", "my basket", "crate", "bucket", "basket is"],
  split_on: ["split", "cut", "felled", "chopped", "sawn", "split in", "cut down", "bucked", "processed", "stacked"],
  measured_on: ["measured", "tested", "metered", "checked", "read", "measurement", "measured on", "meter says", "weighed"],
} as const;
const isDate = (said: { figure?: Figure; moment?: unknown }): boolean => said.moment !== undefined
  || (said.figure?.dimension === null && said.figure.value >= 1990 && said.figure.value <= 2100 && Number.isInteger(said.figure.value));
const TAKES = {
  moisture: ({ figure }: { figure?: Figure }) => figure?.dimension === "share" || (figure?.dimension === null && figure.value < 400),
  basket: ({ figure }: { figure?: Figure }) => figure?.dimension === "mass", split_on: isDate, measured_on: isDate,
};

/** Reads what is said of wood, a record for each pile: several trees with a volume each are several piles. */
export function readWood(text: string, context: ReadContext = {}): WoodRead {
  const findings = new Findings();
  const statement = state(text, context, { cues: CUES, takes: TAKES }, findings);
  const trees = readerFor(statement.species).read(statement.tokens);
  const piles = partsOf(statement, trees);
  const sizes = sizesIn(statement.tokens, statement.system);
  const unsettled: (number | undefined)[] = [];
  const facts = piles.map((pile) => {
    const record: { -readonly [K in keyof WoodFacts]: WoodFacts[K] } = {};
    if (pile.species) record.species = pile.species;
    const moisture = readMoisture(statement, findings, pile.said);
    if (moisture.moisture_pct_wet !== undefined) record.moisture_pct_wet = moisture.moisture_pct_wet;
    unsettled.push(moisture.moisture_pct_unsettled);
    volume(statement, pile, sizes, record, findings);
    for (const said of pile.said) {
      if (said.cues.has("measured_on") && record.measured_on === undefined) {
        const date = dateOf(statement, said, findings, { what: "The moisture measurement", past: true });
        if (date) record.measured_on = date;
      } else if (said.cues.has("split_on")) {
        const date = dateOf(statement, said, findings, { what: "The splitting", past: true });
        if (date) record.split_on ??= date;
      }
    }
    basket(pile.said, record, findings);
    return record;
  });
  const name = nameGiven(statement);
  if (name && facts[0]) facts[0].name = name;
  const kept = facts.map((record, n) => ({ record, moisture: unsettled[n] })).filter(({ record, moisture }) =>
    Object.keys(record).length > 0 || moisture !== undefined);
  return { facts: kept.map(({ record }) => record), moisture_pct_unsettled: kept.map(({ moisture }) => moisture),
    problems: findings.problems, questions: findings.questions, assumed: findings.assumed };
}

interface Pile {
  readonly species?: string;
  readonly said: readonly Said[];
  readonly from: number;
  readonly to: number;
}

/** Cuts the statement between piles: as many as there are trees with a volume of their own. */
function partsOf(statement: Statement, trees: readonly (SpeciesFound & { from: number; to: number })[]): Pile[] {
  const { said, tokens } = statement;
  const sure = trees.filter((tree) => !tree.weak || trees.length === 1);
  const volumes = said.filter(({ figure }) => figure?.dimension === "volume");
  const first = sure[0];
  if (sure.length < 2 || volumes.length < sure.length) {
    const mixed = sure.length > 1 ? [...new Set(sure.map(({ id }) => id))].join(" and ") : first?.id;
    return [{ ...(mixed ? { species: mixed } : {}), said, from: 0, to: tokens.length }];
  }
  // "3 m3 birch and 2 cords of oak": a pile begins at its volume when that stands before its tree
  const volumeFirst = (volumes[0] as Said).from < (first as { from: number }).from;
  const starts = sure.map((tree) => (volumeFirst ? (volumes.findLast((volume) => volume.from < tree.from)?.from ?? tree.from) : tree.from));
  return sure.map((tree, n) => {
    const from = n === 0 ? 0 : (starts[n] as number);
    const to = starts[n + 1] ?? tokens.length;
    return { species: tree.id, said: said.filter((one) => one.from >= from && one.from < to), from, to };
  });
}

function volume(statement: Statement, pile: Pile, all: readonly StackSize[], record: { -readonly [K in keyof WoodFacts]: WoodFacts[K] },
  findings: Findings): void {
  const keep = (stacked: number): void => {
    if (stacked > 0 && stacked <= 1000) record.volume_m3_stacked = Number(stacked.toFixed(2));
    else findings.problems.push(`A pile of ${plain(stacked)} m³ cannot be right: a winter takes some 5 to 20 m³ stacked.`);
  };
  const sizes = all.filter(({ at }) => {
    const start = statement.tokens[pile.from]?.at[0] ?? 0;
    return at[0] >= start && at[0] < (statement.tokens[pile.to]?.at[0] ?? Infinity);
  });
  if (sizes.length > 0) {
    if (sizes.some(({ unit_guessed }) => unit_guessed)) {
      const { length_m, height_m, log_length_m } = sizes[0] as (typeof sizes)[number];
      findings.assumed.push(
        `The stack was taken as ${plain(length_m)} m long, ${plain(height_m)} m high, with logs of ${plain(log_length_m * 100, 0)} cm.`);
    }
    keep(sizes.reduce((sum, size) => sum + size.rows * size.length_m * size.height_m * size.log_length_m, 0));
    return;
  }
  for (const { figure } of pile.said) {
    if (figure?.dimension !== "volume" || figure.unit === "l") continue;
    const cubic = inUnit(figure, "m3") as number;
    if (figure.uncertain && figure.low !== undefined && figure.high !== undefined) {
      findings.ask("cord-length", `A ${figure.uncertain} has no fixed size. How long are the logs, and how long and high is the stack?`);
      findings.assumed.push(`Logs of 16 in were taken: a ${figure.uncertain} is a third of a cord then.`);
    }
    if (figure.filling === "loose") {
      // loose per stacked, measured on 33 cm splits (the mean of hard and soft wood)
      findings.assumed.push(
        `${plain(cubic)} m³ loose was taken as ${plain(cubic / MEASURED_SHARES.unknown.loose_per_stacked)} m³ stacked.`);
      keep(cubic / MEASURED_SHARES.unknown.loose_per_stacked);
    } else if (figure.filling === "solid") {
      findings.assumed.push(`${plain(cubic)} m³ solid was taken as ${plain(cubic / MEASURED_SHARES.unknown.solid_short)} m³ stacked.`);
      keep(cubic / MEASURED_SHARES.unknown.solid_short);
    } else {
      if (!figure.filling) findings.ask("volume-filling", `Is ${plain(cubic)} m³ stacked, loose or solid? It was taken as stacked.`,
        { stacked: "Stacked", loose: "Loose (tipped)", solid: "Solid" });
      keep(cubic);
    }
    return;
  }
}

function basket(said: readonly Said[], record: { -readonly [K in keyof WoodFacts]: WoodFacts[K] }, findings: Findings): void {
  // "8 kg, 9 kg and 10 kg": weights in a row after the first are baskets too
  const weighed: Said[] = [];
  for (const one of said) {
    const before = weighed.at(-1);
    if (one.figure?.dimension === "mass" && (one.cues.has("basket") || (before && one.from - before.to <= 2))) weighed.push(one);
  }
  const weights = weighed.map(({ figure }) => inUnit(figure as Figure, "kg") as number);
  if (weights.length === 0) return;
  const kg = weights.reduce((sum, weight) => sum + weight, 0) / weights.length;
  if (kg > 0 && kg <= 100) record.basket_kg = Number(kg.toFixed(2));
  else findings.problems.push(`A basket of ${plain(kg)} kg cannot be right: one carries some 5 to 20 kg.`);
}
