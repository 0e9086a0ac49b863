/** The documents made from the data are the ones that lie there. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import { ASKED } from "./answers.ts";
import { documents, KNOWLEDGE } from "./write.ts";

const made = await documents();

test.each([...made.keys()])("knowledge/%s is in step; `npm run docs` writes it anew", (name) => {
  expect(readFileSync(KNOWLEDGE + name, "utf8")).toBe(made.get(name));
});

test("every cause of every tree stands in the table, with its hazard and its source", async () => {
  const { troubles } = await loadKnowledge(KNOWLEDGE);
  const words = made.get("TREES.md") ?? "";
  expect(troubles.size).toBe(28);
  for (const { causes } of troubles.values()) for (const { title, source } of Object.values(causes)) expect(words).toMatch(new RegExp(`\\| ${RegExp.escape(title)} \\| \\d+ % \\| .*${RegExp.escape(source)}`));
});

test("twenty answers, no two alike, each saying in its first thirty lines what to do", () => {
  const answers = (made.get("ANSWERS.md") ?? "").split(/^## \d+\. /m).slice(1);
  expect(answers).toHaveLength(ASKED.length);
  expect(new Set(answers.map((one) => one.split("```text")[1])).size).toBe(ASKED.length);
  for (const one of answers) expect(one.split("\n").slice(0, 33).filter((line) => line !== "" && !/^(CAUTION| {9}|```)/.test(line)).length, one.slice(0, 60)).toBeGreaterThan(2);
});
