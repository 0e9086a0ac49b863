/** A file of rules, as a builder writes it: strict, and every mistake named with its line. */
import { z } from "zod";
import { readFileOf } from "../knowledge/yaml-file.ts";
import { HEATER_KINDS, HeaterRecord } from "../records/schemas.ts";
import type { RuleGiven } from "./rules.ts";
import { MOST_WORDS } from "./words.ts";

const name = z.string().min(1).max(80);
const words = z.string().min(2).max(MOST_WORDS);
const kilograms = z.number().positive().max(300);
const Rule = z
  .strictObject({
    /** heaters of this kind; with neither kind nor heater: all of them */
    kind: z.enum(HEATER_KINDS).exclude(["unknown"]).optional(),
    /** one heater, by its own name or its owner's */
    heater: name.optional(),
    max_load_kg: kilograms.optional(),
    min_load_kg: kilograms.optional(),
    max_day_kg: kilograms.optional(),
    spacing_h: z.number().min(1).max(72).optional(),
    lighting: z.enum(["top", "bottom"]).optional(),
    close_down: words.optional(),
    words: words.optional(),
    call: words.optional(),
  })
  .refine(({ kind, heater, ...says }) => Object.keys(says).length > 0, "a rule says something: a load, a spacing, lighting, words or whom to call");
export const RulesFile = z.strictObject({ builder: name.optional(), rules: z.array(Rule).min(1).max(50) });

export interface FileRule {
  /** null: whichever heater */
  readonly heater: string | null;
  readonly given: RuleGiven;
}
export type ReadFile = { readonly builder?: string; readonly rules: readonly FileRule[]; readonly problems: readonly [] } | { readonly rules: readonly []; readonly problems: readonly string[] };

const MOST_CHARACTERS = 20_000;

/** @param file how the file is called in the sentences about its mistakes */
export function readRulesFile(source: string, file = "rules"): ReadFile {
  if (source.length > MOST_CHARACTERS) return { rules: [], problems: [`${file}: a file of rules has at most ${MOST_CHARACTERS} characters; this one has ${source.length}.`] };
  const read = readFileOf(file, source, RulesFile);
  if (read.value === null) return { rules: [], problems: read.problems.map(plainer) };
  return {
    ...(read.value.builder ? { builder: read.value.builder } : {}),
    rules: read.value.rules.map(({ heater, ...given }) => ({ heater: heater ?? null, given: given as RuleGiven })),
    problems: [],
  };
}

/** "rules > 0 > spacing_h" is "rule 1 > spacing_h" to whoever wrote it. */
function plainer(problem: string): string {
  const counted = problem.replace(/: rules > (\d+)/, (_, index: string) => `: rule ${Number(index) + 1}`);
  const facts = [...counted.matchAll(/"(\w+)"/g)].map(([, key]) => key ?? "").filter((key) => key in HeaterRecord.shape);
  return facts.length > 0 ? `${counted} ${facts.join(", ")}: what a heater has or is belongs to its owner's records; a rule cannot change it.` : counted;
}

/** A pasted file: fenced or not, it begins with its own first words. */
export function pastedRules(message: string): string | null {
  const unfenced = message.trim().replace(/^```[a-z]*\s*\n/i, "").replace(/\n?```$/, "");
  return /^(?:#[^\n]*\n\s*)*(?:builder:[^\n]*\n\s*)?rules:\s*(?:#[^\n]*)?(?:\n|\[)/.test(unfenced) ? unfenced : null;
}
