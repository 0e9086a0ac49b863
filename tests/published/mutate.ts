/**
 * Loads the shipped modules with one change of their source each and prints, a line each, the first published value that notices.
 * Run by mutation.test.ts in a plain Node process: module hooks change the source as it is read, nothing is written.
 */
import { readFileSync } from "node:fs";
import { registerHooks } from "node:module";
import { type Mutant, MUTANTS } from "./mutants.ts";
import { differences } from "./row.ts";
import { type Load, ROWS, evaluate } from "./rows.ts";

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
    const mutant = MUTANTS[Number(numberOf(url) ?? Number.NaN)];
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
  for (const row of Object.values(ROWS).flat()) {
    const actual = await evaluate(row, load);
    const [off] = differences(row, actual);
    if (off !== undefined) return `${row.of}: ${off}`;
  }
  return undefined;
}

for (const [index, mutant] of MUTANTS.entries()) {
  console.log(JSON.stringify({ file: mutant.file, mistake: mutant.mistake, to: mutant.to, noticed: (await noticedBy(index)) ?? null }));
}
