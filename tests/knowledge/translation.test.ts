/** A language is a folder of files of the same shape: what it gives, what is missing, and what a translator who slipped is told. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { KnowledgeError, loadKnowledge } from "../../src/knowledge/load.ts";
import { spokenIn } from "../../src/knowledge/spoken.ts";
import { placeholders } from "../../src/knowledge/translation.ts";

const SHIPPED = fileURLToPath(new URL("../../knowledge", import.meta.url));
const english = await loadKnowledge(SHIPPED, { languages: [] });
const cautions = stringify(Object.fromEntries(Object.keys(english.cautionEntries).map((id) => [id, { say: `Achtung: ${id}.` }])));
const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** The English knowledge with a language "xx" of these files. */
function folderWith(files: Record<string, string>): string {
  const folder = mkdtempSync(join(tmpdir(), "gleed-language-"));
  folders.push(folder);
  cpSync(SHIPPED, folder, { recursive: true });
  for (const [file, words] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, "xx", file)), { recursive: true });
    writeFileSync(join(folder, "xx", file), words);
  }
  return folder;
}
const load = (files: Record<string, string>) => loadKnowledge(folderWith(files), { languages: ["xx"] });
const told = (files: Record<string, string>): Promise<string> =>
  load(files).then(() => "", (error: unknown) => (error instanceof KnowledgeError ? error.problems.join("\n") : Promise.reject(error)));

const TREE = "troubles/black-glass.yaml";
const tree = (more: string): Record<string, string> => ({ "cautions.yaml": cautions, [TREE]: `id: black-glass\n${more}` });

describe("a language", () => {
  it("is spoken once its cautions are there, and says the rest in English", async () => {
    const { texts, missing } = await load(tree("title: Schwarzes Glas\nsigns:\n  stack:\n    answers:\n      - { id: tight, label: Dicht gepackt, words: [wie eine Wand] }\n"));
    expect(texts.get("xx")?.get("troubles.black-glass.title")).toBe("Schwarzes Glas");
    expect(texts.get("xx")?.get("troubles.black-glass.signs.stack.answers.tight.label")).toBe("Dicht gepackt");
    expect(texts.get("xx")?.get("caution.carbon-monoxide")).toBe("Achtung: carbon-monoxide.");
    const left = new Set(missing.get("xx")?.map(({ place }) => place));
    expect(left.has("troubles.black-glass.symptom")).toBe(true);
    expect(left.has("troubles.black-glass.title")).toBe(false);
    const all = [...(english.texts.get("en")?.keys() ?? [])];
    expect(all.filter((id) => !left.has(id) && !texts.get("xx")?.has(id))).toEqual([]);
  });

  it("without cautions is not spoken at all", async () => {
    const { texts } = await load({ [TREE]: "id: black-glass\ntitle: Schwarzes Glas\n" });
    expect([...texts.keys()]).toEqual(["en"]);
  });

  it("is listened for beside English", async () => {
    const knowledge = await load({
      ...tree("signs:\n  stack:\n    answers:\n      - { id: tight, label: Dicht gepackt, words: [wie eine Wand] }\n"),
      "upkeep.yaml": "tasks:\n  sweep:\n    words: [Kamin kehren]\n    done: [\"gekehrt\"]\n",
    });
    const answer = spokenIn(knowledge, "xx").troubles.get("black-glass")?.signs.stack?.answers?.find(({ id }) => id === "tight");
    expect(answer?.label).toBe("Dicht gepackt");
    expect(answer?.words).toEqual(expect.arrayContaining(["like a wall", "wie eine Wand"]));
    expect(spokenIn(knowledge, "xx").upkeep.tasks.sweep?.done).toEqual(expect.arrayContaining(["swept", "gekehrt"]));
    expect(spokenIn(knowledge, "en")).toBe(knowledge);
  });

  it.each([
    ["a missing caution", { "cautions.yaml": cautions.replace(/carbon-monoxide:\n.*\n/, "") }, /xx\/cautions\.yaml, line \d+: .*this caution is missing/],
    ["a misspelt key", tree("titel: Schwarzes Glas\n"), /black-glass\.yaml, line 2: titel: the English file has no "titel" here/],
    ["a key that stands in English only", tree("title: Schwarz\nhazard: low\n"), /line 3: hazard: "hazard" stands in the English file only/],
    ["a sign that is not there", tree("signs:\n  rauch:\n    ask: Raucht es?\n"), /line \d: signs > rauch: the English file has no "rauch" here/],
    ["an answer that is not there", tree("signs:\n  stack:\n    answers:\n      - { id: dicht, label: Dicht }\n"), /line 5: .*its id is one of: criss-cross, loose, tight/],
    ["a list of another length", tree("causes:\n  wet-wood:\n    before_next_fire: [Eins.]\n"), /line 4: .*the English list has 3 entries, this one 1/],
    ["a lost placeholder", tree("signs:\n  moisture:\n    says: Das Holz war feucht.\n"), /line 4: .*the English sentence has \{value\}, this one none/],
    ["an open brace", tree('signs:\n  moisture:\n    says: "Das Holz hatte {value"\n'), /line 4: .*braces/],
    ["a file of another name", { ...tree("title: Schwarz\n"), "troubles/schwarz.yaml": "id: schwarz\n" }, /no English knowledge\/troubles\/schwarz\.yaml/],
    ["a job that is not there", { ...tree(""), "upkeep.yaml": "tasks:\n  kehren:\n    title: Kehren\n" }, /line \d: tasks > kehren: the English file has no "kehren"/],
    ["another id", { ...tree(""), [TREE]: "id: hazy-glass\n" }, /the id is "black-glass"/],
  ] as const)("says with line and place: %s", async (_, files, says) => {
    expect(await told(files)).toMatch(says);
  });
});

it("German words belong to senses that the English words file has", () => {
  const [theirs, ours] = ["words.yaml", "de/words.yaml"].map((file) => parse(readFileSync(join(SHIPPED, file), "utf8")) as Record<string, Record<string, unknown[]>>) as [Record<string, Record<string, unknown[]>>, Record<string, Record<string, unknown[]>>];
  for (const [section, senses] of Object.entries(ours)) for (const [sense, words] of Object.entries(senses)) {
    expect(theirs[section]?.[sense], `${section} > ${sense}`).toBeDefined();
    expect(words.length, `${section} > ${sense}`).toBeGreaterThan(0);
  }
  expect(Object.values(ours).flatMap((senses) => Object.keys(senses)).length).toBeGreaterThan(90);
});

it("what ships is complete in German", async () => {
  const { missing } = await loadKnowledge(SHIPPED);
  const left = missing.get("de") ?? [];
  // a sentence just written in English may wait a little for its German
  expect(left.length, left.map(({ place }) => place).join(", ")).toBeLessThan(60);
});

it("knows the values that a message takes", () => {
  expect(placeholders("{value, plural, one {The seal is # year old} other {{max} years}}, {a}")).toBe("{a} {max} {value}");
  expect(placeholders("open {brace")).toBeNull();
});
