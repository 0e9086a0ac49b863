/** The kept table of sensitivities is the one that is reckoned now, every check value in it lies in its band, and it says something. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { SENSITIVITY_FILE, sensitivities, sensitivityMarkdown } from "./sensitivity.ts";

const words = sensitivityMarkdown();

it("is in step; `npm run sensitivity` writes it anew", () => {
  expect(readFileSync(SENSITIVITY_FILE, "utf8")).toBe(words);
});

it("holds every check value within its band", () => {
  const rows = [...words.matchAll(/^\| [A-Z] \| (.+?) \| ([-\d.]+) \| ([-\d.]+) to ([-\d.]+) \|$/gm)];
  expect(rows.length).toBeGreaterThanOrEqual(16);
  for (const [, name, value, low, high] of rows) {
    expect(Number(value), name).toBeGreaterThanOrEqual(Number(low));
    expect(Number(value), name).toBeLessThanOrEqual(Number(high));
  }
});

it("no single parameter 10 % off moves efficiency or the day's heat by more than 5 %", () => {
  const heat = 16;
  for (const { parameter, changes } of sensitivities().filter((one) => !one.parameter.startsWith("burn."))) {
    expect(changes[9], parameter).toBeLessThan(0.05);
    expect(changes[heat - 2], parameter).toBeLessThan(0.05);
  }
});
