/** The knowledge as it ships, and what a builder who mistyped is told. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, it } from "vitest";
import { loadKnowledge, KnowledgeError } from "../../src/knowledge/load.ts";
import { CAREFUL, TOPIC_CAUTIONS } from "../../src/conversation/cautions.ts";

const SHIPPED = fileURLToPath(new URL("../../knowledge", import.meta.url));
const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** The shipped knowledge with one change made to one file. */
async function told(file: string, from: string, to: string): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "gleed-knowledge-"));
  folders.push(folder);
  cpSync(SHIPPED, folder, { recursive: true });
  const words = readFileSync(join(folder, file), "utf8");
  expect(words, `${file} holds "${from}"`).toContain(from);
  writeFileSync(join(folder, file), words.replace(from, to));
  try {
    await loadKnowledge(folder);
    return "";
  } catch (error) {
    if (!(error instanceof KnowledgeError)) throw error;
    return error.problems.join("\n");
  }
}
const TREE = "troubles/black-glass.yaml";

describe("the shipped knowledge", () => {
  it("loads without a mistake", async () => {
    const knowledge = await loadKnowledge(SHIPPED);
    expect(knowledge.troubles.size).toBeGreaterThan(0);
    expect(knowledge.firings.has("everyday")).toBe(true);
  });

  it("has every caution that the topics carry", async () => {
    const { cautions } = await loadKnowledge(SHIPPED);
    const named = Object.values(TOPIC_CAUTIONS).flat();
    expect(named.filter((id) => !cautions.has(id))).toEqual([]);
    expect(CAREFUL.has("close-down")).toBe(true);
  });

  it("gives every claim a source or says common practice", async () => {
    const { troubles, howtos, firings, cautionEntries } = await loadKnowledge(SHIPPED);
    for (const trouble of troubles.values()) {
      expect(trouble.sources.length, trouble.id).toBeGreaterThan(0);
      for (const [id, cause] of Object.entries(trouble.causes)) expect(cause.source.length, `${trouble.id}/${id}`).toBeGreaterThan(3);
    }
    for (const howto of howtos.values()) for (const part of howto.parts) expect(part.source.length, howto.id).toBeGreaterThan(3);
    for (const firing of firings.values()) for (const stage of Object.values(firing.stages)) expect(stage.source.length).toBeGreaterThan(3);
    for (const [id, caution] of Object.entries(cautionEntries)) expect(caution.source.length, id).toBeGreaterThan(3);
  });
});

describe("a mistake in a file", () => {
  it.each([
    ["a misspelt key", TREE, "prior: 33", "priro: 33", /black-glass\.yaml, line \d+: .*(prior|priro)/],
    ["a weight that is no number", TREE, "hissing: { yes: 5, no: 0.4 }", "hissing: { yes: lots, no: 0.4 }", /line \d+: causes > wet-wood > weighs > hissing > yes/],
    ["a weight for a sign that is not there", TREE, "hissing: { yes: 5, no: 0.4 }", "smell: { yes: 5, no: 0.4 }", /wet-wood: it weighs "smell", which is not among the signs/],
    ["an answer that is not there", TREE, "stack: { criss-cross: 0.1,", "stack: { crosswise: 0.1,", /weighs > stack > crosswise is not one of its answers/],
    ["a caution that is not there", TREE, "cautions: [close-air, opening-door]", "cautions: [close-aire, opening-door]", /"close-aire" is not in knowledge\/cautions\.yaml/],
    ["a cause that tells nobody what to do", TREE, "    now: []\n    before_next_fire:\n      - Expect it at the season's first fires; more kindling and thinner top pieces make the start hotter.\n", "    now: []\n", /cold-box: it says neither what to do/],
    ["a missing source", TREE, "    source: common practice; limits of 20 % wet basis by 1. BImSchV § 3 (25 % dry basis) and US EPA advice\n", "", /line \d+: causes > wet-wood > source: this is missing/],
    ["broken YAML", TREE, "title: Black glass", "title: [Black glass", /line \d+: this is not well-formed YAML/],
    ["a file named after another topic", TREE, "id: black-glass", "id: hazy-glass", /file name and id are the same word/],
  ])("%s is named with file and place", async (_, file, from, to, says) => {
    expect(await told(file, from, to)).toMatch(says);
  });
});
