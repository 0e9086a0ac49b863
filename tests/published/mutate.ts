/**
 * Loads the shipped modules with one change of their source each and prints, a line each, the first published value that notices, or the
 * first check of the heater model.
 * Run by mutation.test.ts in a plain Node process: module hooks change the source as it is read, nothing is written.
 */
import { readFileSync } from "node:fs";
import { registerHooks } from "node:module";
import { MODEL_CHECKS } from "./model-checks.ts";
import { MODEL_MUTANTS } from "./model-mutants.ts";
import { type Mutant, MUTANTS } from "./mutants.ts";
import { differences, type Row } from "./row.ts";
import { type Load, ROWS, evaluate } from "./rows.ts";

const ALL: readonly Mutant[] = [...MUTANTS, ...MODEL_MUTANTS];
const isOfModel = (index: number): boolean => index >= MUTANTS.length;
const { "heat-curve": heatCurve = [], "fire-plan": firePlan = [], ...formulas } = ROWS;
const FORMULA_ROWS = Object.values(formulas).flat();

const SRC = new URL("../../src/", import.meta.url).href;
const numberOf = (url: string | undefined): string | null => (url?.startsWith(SRC) ? new URL(url).searchParams.get("mutant") : null);

/** Modules that may differ between mutants; the rest (zod, tables, units) is loaded once. */
const DIFFERS = [`${SRC}reckoning/`, `${SRC}calculators/`];
const SHARED = /calculators\/(calculator|sentences|keys|one-of|reference-data)\.ts/;

registerHooks({
  resolve(specifier, context, next) {
    const resolved = next(specifier, context);
    const mutant = numberOf(context.parentURL);
    const differs = mutant !== null && DIFFERS.some((folder) => resolved.url.startsWith(folder)) && !SHARED.test(resolved.url);
    return differs ? { ...resolved, url: `${resolved.url}?mutant=${mutant}` } : resolved;
  },
  load(url, context, next) {
    const mutant = ALL[Number(numberOf(url) ?? Number.NaN)];
    if (!mutant || !url.startsWith(`${SRC}${mutant.file}?`)) return next(url, context);
    return { format: "module-typescript", source: changed(mutant), shortCircuit: true };
  },
});

function changed({ file, from, to }: Mutant): string {
  const source = readFileSync(new URL(file, SRC), "utf8");
  if (source.split(from).length !== 2) throw new Error(`${file}: "${from}" should occur once`);
  return source.replace(from, () => to);
}

async function noticedBy(index: number): Promise<string | undefined> {
  const load: Load = (path) => import(`${SRC}${path}?mutant=${index}`);
  if (!isOfModel(index)) return amongRows(FORMULA_ROWS, load);
  return (await amongRows(heatCurve, load)) ?? (await amongChecks(load)) ?? amongRows(firePlan, load);
}

async function amongRows(rows: readonly Row[], load: Load): Promise<string | undefined> {
  for (const row of rows) {
    const [off] = differences(row, await evaluate(row, load));
    if (off !== undefined) return `${row.of}: ${off}`;
  }
  return undefined;
}

async function amongChecks(load: Load): Promise<string | undefined> {
  for (const [name, check] of Object.entries(MODEL_CHECKS)) {
    const off = await check(load);
    if (off !== undefined) return `${name}: ${off}`;
  }
  return undefined;
}

for (const [index, mutant] of ALL.entries()) {
  const noticed = await noticedBy(index).catch((error: unknown) => `it throws: ${String(error)}`);
  console.log(JSON.stringify({ file: mutant.file, mistake: mutant.mistake, to: mutant.to, noticed: noticed ?? null }));
}
