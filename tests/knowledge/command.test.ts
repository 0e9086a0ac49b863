/** `npm run -s knowledge`: what somebody who never programmed is told of a file, right or wrong. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { main } from "../../src/knowledge.ts";
import { Trouble } from "../../src/knowledge/schemas.ts";
import { distance, keysAt, nearest } from "../../src/knowledge/spelling.ts";
import { describeTrouble } from "../../src/trouble/describe.ts";

const SHIPPED = fileURLToPath(new URL("../../knowledge", import.meta.url));
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "gleed-knowledge-"));
  cpSync(SHIPPED, folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function asked(...args: string[]): Promise<{ code: number; told: string }> {
  const lines: string[] = [];
  const code = await main({ args, folder, say: (line) => lines.push(line) });
  return { code, told: lines.join("\n") };
}
const TREE = "black-glass.yaml";
async function changed(from: string, to: string, file = TREE): Promise<{ code: number; told: string }> {
  const words = readFileSync(join(SHIPPED, "troubles", file), "utf8");
  expect(words).toContain(from);
  const path = join(folder, file);
  writeFileSync(path, words.replace(from, to));
  return asked("check", path);
}

describe("check", () => {
  it("everything that ships is right, and says what is worth another look", async () => {
    const { code, told } = await asked("check");
    expect(told).toMatch(/^No mistakes: \d+ troubles, \d+ how-tos, 4 kinds of fire, \d+ cautions\./);
    expect(told).not.toMatch(/can never come first/);
    expect(code).toBe(0);
  }, 90_000);
  it("a right tree is walked: questions, ways, and how often each cause leads", async () => {
    const { code, told } = await asked("check", join(folder, "troubles", TREE));
    expect(code).toBe(0);
    expect(told).toMatch(/black-glass\.yaml: no mistakes\.\nIt has \d+ questions \(\d+ can be answered from the records\) and \d+ causes\.\nWalked in [1-9]\d+ ways: \d\.\d questions on average, \d at most\./);
    expect(told).toMatch(/\d+ % {2}wet-wood: Damp wood \(up to \d+ % sure\)/);
  });
  it.each([
    ["a misspelt key", "prior: 33", "priro: 33", /black-glass\.yaml, line \d+: causes > wet-wood: "priro" is not a word this place knows; was "prior" meant\?/],
    ["a word for a figure", "prior: 33", "prior: often", /line \d+: causes > wet-wood > prior: this takes a number; it says "often"/],
    ["a figure for words", "title: Black glass", "title: 12", /line 4: title: this takes a text/],
    ["a choice that is none", "kind: percent", "kind: per-cent", /signs > moisture > kind: this takes one of: yes-no, .*; it says "per-cent"/],
    ["a sentence with a colon", "    why: Water in the wood cools", "    why: Water: it cools", /line \d+: this is not well-formed YAML: .*a sentence with a colon in it needs quotes/],
    ["a tab", "    ask: Did the ends", "\task: Did the ends", /line \d+: this is not well-formed YAML/],
    ["a cause that nobody weighs the sign of", "hissing: { yes: 5, no: 0.4 }", "hisssing: { yes: 5, no: 0.4 }", /black-glass\.yaml: causes > wet-wood: it weighs "hisssing", which is not among the signs/],
    ["a caution that is not there", "cautions: [glass-cold]", "cautions: [glass-colt]", /"glass-colt" is not in knowledge\/cautions\.yaml/],
    ["a neighbour that is not there", "near: [hazy-glass", "near: [haze-glass", /near: there is no topic "haze-glass"/],
    ["a name that means something else", "id: black-glass", "id: load-size", /"load-size" already names something else/],
  ])("%s is named with its place and what would be right", async (_, from, to, told) => {
    const answer = await changed(from, to);
    expect(answer.told).toMatch(told);
    expect(answer.told).not.toMatch(/undefined|ZodError|\[object|at .*\.ts/);
    expect(answer.code).toBe(2);
  });
  it("a cause that can never come first, a question nobody is asked, an answer that changes nothing, a hazard without its caution", async () => {
    const path = join(folder, "odd.yaml");
    writeFileSync(path, `id: odd
title: Odd
symptom: Something odd.
hazard: low
words: [odd noise here, odd thing there, odd smell everywhere]
signs:
  told: { ask: Is it so?, kind: yes-no }
  idle: { ask: Is it idle?, kind: choice, answers: [{ id: a, label: One }, { id: b, label: Two }] }
causes:
  often: { title: Often, prior: 90, why: It is often so., weighs: { told: { yes: 3, no: 1 }, idle: { a: 1.01 } }, now: [Climb on the roof and look.], source: common practice }
  never: { title: Never, prior: 5, why: It is hardly so., weighs: { told: { yes: 3, no: 1 } }, now: [Wait.], source: common practice }
sources: [common practice]
`);
    const { told } = await asked("check", path);
    expect(told).toMatch(/The cause "never" can never come first/);
    expect(told).toMatch(/The question "idle" is never asked/);
    expect(told).toMatch(/The answer "b" to "idle" changes nothing/);
    expect(told).toMatch(/The cause "often" speaks of work on the roof .* has none of the cautions roof/);
  });
  it("a file of another language is held against the English one", async () => {
    const path = join(folder, "de", "troubles", "noise.yaml");
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, "id: noise\ntitel: Geräusche\n");
    expect(await asked("check", path)).toMatchObject({ code: 2, told: expect.stringMatching(/knowledge\/de\/troubles\/noise\.yaml, line 2: titel: the English file has no "titel" here/) });
    writeFileSync(path, "id: noise\ntitle: Geräusche\n");
    expect(await asked("check", path)).toMatchObject({ code: 0, told: expect.stringMatching(/de\/troubles\/noise\.yaml: no mistakes\. \d+ sentences are still said in English:/) });
  });
  it("a builder's rules, something that is no knowledge, a file that is not there", async () => {
    const rules = join(folder, "rules.yaml");
    writeFileSync(rules, "rules:\n  - kind: bell\n    max_load_kg: 12\n");
    expect(await asked("check", rules)).toMatchObject({ code: 0, told: expect.stringMatching(/no mistakes, 1 rule/) });
    writeFileSync(rules, "rules:\n  - kind: bel\n    max_load_kg: 12\n");
    expect((await asked("check", rules)).told).toMatch(/rules\.yaml, line 2: rule 1 > kind: this takes one of: channel, bell, contraflow, mixed; it says "bel"/);
    const other = join(tmpdir(), "gleed-no-knowledge.yaml");
    writeFileSync(other, "shopping: [milk]\n");
    expect(await asked("check", other)).toMatchObject({ code: 2, told: expect.stringMatching(/is no file of knowledge/) });
    rmSync(other);
    expect(await asked("check", "nowhere.yaml")).toMatchObject({ code: 2, told: expect.stringMatching(/There is no file nowhere\.yaml/) });
    expect(await asked("chekc")).toMatchObject({ code: 2, told: expect.stringMatching(/Usage/) });
  });
});

describe("new", () => {
  it("writes a draft that is well-formed, passes its own check, and says what is still to be written", async () => {
    expect((await asked("new", "rattling-lid")).code).toBe(0);
    const { code, told } = await asked("check", join(folder, "troubles", "rattling-lid.yaml"));
    expect(told).toMatch(/rattling-lid\.yaml: no mistakes[\s\S]*It still says "WRITE HERE" in \d+ places/);
    expect(code).toBe(0);
    expect((await asked("new", "rattling-lid")).told).toMatch(/is there already/);
    expect((await asked("new", "Rattling Lid")).told).toMatch(/no name for a trouble/);
    rmSync(join(folder, "troubles", "rattling-lid.yaml"));
  });
});

describe("what was meant", () => {
  it.each([["priro", "prior"], ["titel", "title"], ["max_load", null], ["xyzzy", null]] as const)("%s: %s", (word, meant) => expect(nearest(word, ["prior", "title", "why", "weighs"])).toBe(meant));
  it.each([["abc", "abc", 0], ["abc", "acb", 1], ["kitten", "sitting", 3], ["", "ab", 2]] as const)("%s and %s are %i apart", (a, b, far) => expect(distance(a, b)).toBe(far));
  it("finds the words of a place through lists, maps and defaults", () => {
    expect(keysAt(Trouble, ["causes", "x"])).toContain("before_next_fire");
    expect(keysAt(Trouble, ["signs", "x", "answers", 0])).toEqual(["id", "label", "value", "says", "words"]);
    expect(keysAt(Trouble, ["title"])).toEqual([]);
  });
});

it("the best case of a cause is found by search: one that must be told two things comes first with both", () => {
  const cause = (prior: number, weighs: Record<string, Record<string, number>>) => ({ title: "A cause", prior, why: "So it is.", weighs, because: {}, now: ["Wait."], before_next_fire: [], call: [], no_fire: false, hazard: "low" as const, cautions: [], source: "common practice" });
  const described = describeTrouble({
    id: "cracks", title: "T", symptom: "S.", hazard: "low", cautions: [], first_of_all: [], words: [], near: [], sources: ["common practice"],
    signs: { a: { ask: "A one?", kind: "yes-no" }, b: { ask: "B one?", kind: "yes-no" } },
    causes: { usual: cause(80, {}), rare: cause(10, { a: { yes: 4, no: 0.2 }, b: { yes: 4, no: 0.2 } }) },
  });
  expect(described.causes.find(({ id }) => id === "rare")).toMatchObject({ can_lead: true });
  expect(described.causes.find(({ id }) => id === "rare")?.best_share).toBeCloseTo((10 * 16) / (80 + 10 * 16));
});
