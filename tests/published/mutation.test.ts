import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { MODEL_CHECKS } from "./model-checks.ts";
import { MODEL_MUTANTS } from "./model-mutants.ts";
import { MUTANTS } from "./mutants.ts";
import type { Load } from "./rows.ts";

const runner = fileURLToPath(new URL("mutate.ts", import.meta.url));
const outcomes = execFileSync(process.execPath, ["--disable-warning=ExperimentalWarning", runner], { encoding: "utf8" })
  .trim()
  .split("\n")
  .map((line) => JSON.parse(line) as { file: string; mistake: string; to: string; noticed: string | null });

const shipped: Load = (path) => import(/* @vite-ignore */ new URL(`../../src/${path}`, import.meta.url).href);

it.each(Object.entries(MODEL_CHECKS))("the heater model as it ships passes the check of its %s", async (_, check) => {
  expect(await check(shipped)).toBeUndefined();
});

describe("a wrong formula is noticed by a published value, or by a check of the heater model", () => {
  it("runs every mutant", () => expect(outcomes).toHaveLength(MUTANTS.length + MODEL_MUTANTS.length));

  it.each(outcomes.map((one) => [`${one.file}: ${one.mistake} (${one.to || "left out"})`, one] as const))("%s", (_name, { noticed }) => {
    expect(noticed).not.toBeNull();
  });
});
