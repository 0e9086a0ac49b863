/**
 * The labelled messages of `figures-owners.jsonl` and, in German, `figures-owners.de.jsonl`, and whether a reading of one is right, by the definitions of
 * tests/measuring/README.md.
 */
import { readFileSync } from "node:fs";
import { gloss } from "../../../src/conversation/german/gloss.ts";
import { asShare, readFigures, type Figure } from "../../../src/conversation/reading/figures.ts";
import { convert, UNITS, type UnitId } from "../../../src/quantities.ts";

export interface Expected {
  readonly dimension: string;
  readonly value: number;
  readonly unit: string;
  readonly basis: "wet" | "dry" | null;
  readonly low?: number;
  readonly high?: number;
}
export interface Owner {
  /** which sitting it was written in; each after the reader had been mended with the ones before, to see what is still missed */
  readonly hand: number;
  readonly language: "en" | "de";
  readonly text: string;
  readonly expect: readonly Expected[];
}

const written = (file: string, language: Owner["language"]): Owner[] => readFileSync(new URL(file, import.meta.url),
  "utf8").trimEnd().split("\n")
  .map((line) => ({ language, ...(JSON.parse(line) as Omit<Owner, "language">) }));

export const OWNERS: readonly Owner[] = [...written("figures-owners.jsonl", "en"), ...written("figures-owners.de.jsonl", "de")];

const DIMENSIONS = new Set(["mass", "temperature", "share", "length", "volume", "duration", "money"]);
const BASE: Readonly<Record<string, UnitId>> = { mass: "kg", volume: "m3", length: "m", temperature: "C", share: "pct", duration: "h" };
/** hours; as people say them, so within 3 % */
const PERIODS: Readonly<Record<string, number>> = { week: 7 * 24, month: 30.44 * 24, year: 365.25 * 24 };

function inBase(value: number, unit: string): number {
  if (unit in PERIODS) return value * (PERIODS[unit] as number);
  return unit in UNITS ? convert(value, unit as UnitId, BASE[UNITS[unit as UnitId].dimension] as UnitId) : value;
}

function same({ dimension, value, unit, basis, low, high }: Expected, figure: Figure): boolean {
  const read = dimension === "share" ? (asShare(figure) ?? figure) : figure;
  if (dimension === "money" ? read.money === undefined : read.unit === null ? dimension !== "temperature"
    : read.dimension !== dimension) return false;
  if (dimension === "share" && (read.basis ?? null) !== basis) return false;
  const near = (want: number, got: number | undefined): boolean => {
    if (got === undefined) return false;
    const [a, b] = [inBase(want, unit), read.unit === null ? got : inBase(got, read.unit)];
    return Math.abs(a - b) <= Math.max((unit in PERIODS ? 0.03 : 0.005) * Math.abs(a), 1e-9);
  };
  if (!near(value, read.value)) return false;
  if (low !== undefined && high !== undefined) return near(low, read.low) && near(high, read.high);
  // "over 15" opens a range or bounds it
  if (low !== undefined) return read.bound === "min" || near(low, read.low);
  if (high !== undefined) return read.bound === "max" || near(high, read.high);
  return read.bound === undefined;
}

export interface Verdict {
  /** every labelled figure found, in order */
  readonly found: boolean;
  /** and nothing else taken for a figure of the seven dimensions, */
  readonly exact: boolean;
  readonly read: readonly Figure[];
}

export function judge({ text, language, expect }: Owner): Verdict {
  const read = readFigures(language === "de" ? gloss(text).text : text);
  const hits = new Set<number>();
  let from = 0;
  for (const expected of expect) {
    const at = read.findIndex((figure, i) => i >= from && same(expected, figure));
    if (at < 0) continue;
    hits.add(at);
    from = at + 1;
  }
  const found = hits.size === expect.length;
  return { found, exact: found && read.every(({ dimension }, i) => hits.has(i) || !DIMENSIONS.has(dimension ?? "")), read };
}
