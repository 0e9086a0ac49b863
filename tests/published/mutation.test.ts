import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { MUTANTS } from "./mutants.ts";

const runner = fileURLToPath(new URL("mutate.ts", import.meta.url));
const outcomes = execFileSync(process.execPath, ["--disable-warning=ExperimentalWarning", runner], { encoding: "utf8" })
  .trim()
  .split("\n")
  .map((line) => JSON.parse(line) as { file: string; mistake: string; to: string; noticed: string | null });

describe("a wrong formula is noticed by a published value", () => {
  it("runs every mutant", () => expect(outcomes).toHaveLength(MUTANTS.length));

  it.each(outcomes.map((one) => [`${one.file}: ${one.mistake} (${one.to || "left out"})`, one] as const))("%s", (_name, { noticed }) => {
    expect(noticed).not.toBeNull();
  });
});
