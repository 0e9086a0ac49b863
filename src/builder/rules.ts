/**
 * Rules of a heater builder. They only tighten what `limits()` allows: every figure is held against the limits as they stand, and one that
 * would loosen them is refused with a sentence. What was said before is kept, with its version, who and when.
 */
import { text, type Text } from "../answer.ts";
import { limits } from "../limits.ts";
import { q } from "../quantities.ts";
import type { HeaterFacts } from "../records/schemas.ts";
import type { Heater, HeaterRule } from "../records/types.ts";
import { plainWords, wordsRefused } from "./words.ts";

/** What a rule can say; figures in kilograms and hours. */
export interface RuleGiven {
  readonly kind?: HeaterFacts["kind"];
  readonly max_load_kg?: number;
  readonly min_load_kg?: number;
  readonly max_day_kg?: number;
  /** lighting to lighting, 1 to 72 h */
  readonly spacing_h?: number;
  readonly lighting?: "top" | "bottom";
  readonly close_down?: string;
  readonly words?: string;
  readonly call?: string;
}
export interface SaidBy {
  readonly person_id: string;
  readonly at_ms: number;
  /** name in the file */
  readonly builder?: string;
}
export interface Tightened {
  /** as it is after the rule; the same object when nothing was taken */
  readonly heater: Heater;
  readonly taken: RuleGiven;
  readonly refused: readonly Text[];
}

type Figure = "max_load_kg" | "min_load_kg" | "max_day_kg" | "spacing_h";
const WORDS = ["close_down", "words", "call"] as const;
const KEPT_BEFORE = 20;
const LONGEST_SPACING_H = 72;
/** figures that differ by less are the same */
const SAME = 1e-9;

const kg = (value: number) => q(value, "kg", { digits: 1 });

/** One rule held against a heater as it stands. */
export function tighten(heater: Heater, given: RuleGiven, by: SaidBy): Tightened {
  const refused: Text[] = [];
  const taken: { -readonly [K in keyof RuleGiven]: RuleGiven[K] } = {};
  // a rule for another kind of heater is held against what it would meet there
  const facts = given.kind === undefined ? heater.facts : { ...heater.facts, kind: given.kind };
  let rules = heater.rules;
  for (const key of ["max_load_kg", "min_load_kg", "max_day_kg", "spacing_h"] as const satisfies readonly Figure[]) {
    const value = given[key];
    if (value === undefined) continue;
    const why = loosens(facts, rules, key, value);
    if (why) refused.push(why);
    else {
      taken[key] = value;
      rules = [...rules, { from: "builder", said_by: by.person_id, said_at_ms: by.at_ms, [key]: value }];
    }
  }
  if (given.lighting) taken.lighting = given.lighting;
  for (const key of WORDS) {
    const words = given[key] === undefined ? "" : plainWords(given[key]);
    if (words === "") continue;
    // a telephone number is no emergency number
    const why = wordsRefused(key === "call" ? words.replace(/[\d\s()+/-]{4,}/g, " ") : words);
    if (why) refused.push(text(`builder.refused.words-${why}`));
    else taken[key] = words;
  }
  if (Object.keys(taken).length === 0) return { heater, taken, refused };
  return { heater: withRule(heater, given.kind === undefined ? taken : { ...taken, kind: given.kind }, by), taken, refused };
}

/** The sentence that says why a figure cannot be a rule here; null when it tightens, or changes nothing. */
function loosens(facts: HeaterFacts, rules: readonly HeaterRule[], key: Figure, value: number): Text | null {
  const now = limits(facts, rules);
  const refuse = (what: string, stands: number, unit: "kg" | "h" = "kg"): Text =>
    text(`builder.refused.${what}`, { given: unit === "kg" ? kg(value) : q(value, "h"), stands: unit === "kg" ? kg(stands) : q(stands, "h") });
  if (!Number.isFinite(value) || value <= 0) return text("builder.refused.not-a-figure");
  switch (key) {
    case "max_load_kg":
      return now.max_load_kg !== null && value > now.max_load_kg + SAME ? refuse("max", now.max_load_kg) : null;
    case "min_load_kg":
      if (now.max_load_kg !== null && value > now.max_load_kg + SAME) return refuse("min-over-max", now.max_load_kg);
      return now.min_load_kg !== null && value < now.min_load_kg - SAME ? refuse("min", now.min_load_kg) : null;
    case "max_day_kg":
      if (now.max_day_kg !== null && value > now.max_day_kg + SAME) return refuse("day", now.max_day_kg);
      return value < (now.min_load_kg ?? 0) - SAME ? refuse("day-under-min", now.min_load_kg ?? 0) : null;
    case "spacing_h":
      if (value > LONGEST_SPACING_H) return refuse("spacing-too-long", LONGEST_SPACING_H, "h");
      return value < now.spacing_h - SAME ? refuse("spacing", now.spacing_h, "h") : null;
  }
}

/** One rule for each who speaks and each kind: the next version takes the place of the last, and is nowhere looser. */
function withRule(heater: Heater, taken: RuleGiven, by: SaidBy): Heater {
  const same = (rule: HeaterRule): boolean => isBuilders(rule) && rule.said_by === by.person_id && rule.kind === taken.kind;
  const before = heater.rules.find(same);
  const tighter = (key: Figure, pick: (...values: number[]) => number): object => {
    const values = [before?.[key], taken[key]].filter((value) => value !== undefined);
    return values.length > 0 ? { [key]: pick(...values) } : {};
  };
  const rule: HeaterRule = {
    ...before, ...taken,
    ...tighter("max_load_kg", Math.min), ...tighter("min_load_kg", Math.max), ...tighter("max_day_kg", Math.min), ...tighter("spacing_h", Math.max),
    from: "builder", said_by: by.person_id, said_at_ms: by.at_ms, version: (before?.version ?? 0) + 1,
    ...(by.builder ? { builder: plainWords(by.builder).slice(0, 80) } : {}),
  };
  return {
    ...heater,
    rules: [...heater.rules.filter((one) => one !== before), rule],
    ...(before ? { rules_before: [before, ...(heater.rules_before ?? [])].slice(0, KEPT_BEFORE) } : {}),
  };
}

/** A rule set at the builder's desk: neither a ban nor the permission of two batches. */
export const isBuilders = (rule: HeaterRule): boolean => rule.from === "builder" && !rule.two_batches && !rule.no_fire;

/** What one person said as or for the builder is taken back; null: everybody's. What the heater itself allows stands again, and no more. */
export function withdrawn(heater: Heater, person_id: string | null): Heater {
  const gone = heater.rules.filter((rule) => isBuilders(rule) && (person_id === null || rule.said_by === person_id));
  if (gone.length === 0) return heater;
  return { ...heater, rules: heater.rules.filter((rule) => !gone.includes(rule)), rules_before: [...gone, ...(heater.rules_before ?? [])].slice(0, KEPT_BEFORE) };
}
