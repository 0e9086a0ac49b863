/**
 * Reads `knowledge/` and says in plain words which line of which file is wrong.
 * Every sentence in it becomes a catalogue text under an id made of its place, so that a translation is a file of the same shape.
 */
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { z } from "zod";
import type { Caution } from "../answer.ts";
import { isTopic, type TopicId } from "../topics.ts";
import { checkName, checkTrouble, checkCautions } from "./check.ts";
import { addSaid, readSaid } from "./said.ts";
import { gather } from "./sentences.ts";
import { readTranslations, type Missing, type Original } from "./translation.ts";
import { SweepLawFile, UpkeepFile, checkUpkeep, type SweepRule, type UpkeepKnowledge } from "./upkeep-schema.ts";
import { CallsFile, CautionsFile, Firing, GlossaryFile, HowTo, Trouble, type Call, type CautionEntry, type GlossaryEntry } from "./schemas.ts";
import { readFileOf } from "./yaml-file.ts";

export interface Knowledge {
  readonly troubles: ReadonlyMap<TopicId, Trouble>;
  readonly howtos: ReadonlyMap<TopicId, HowTo>;
  readonly firings: ReadonlyMap<string, Firing>;
  readonly cautions: ReadonlyMap<string, Caution>;
  readonly cautionEntries: Readonly<Record<string, CautionEntry>>;
  readonly calls: ReadonlySet<Call>;
  /** words of the trade, explained */
  readonly glossary: Readonly<Record<string, GlossaryEntry>>;
  readonly upkeep: UpkeepKnowledge;
  /** sweeping rules by country */
  readonly sweepLaw: Readonly<Record<string, SweepRule>>;
  /** language to catalogue */
  readonly texts: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /** the English files, part by part: what a translation is held against */
  readonly originals: readonly Original[];
  /** what a language still says in English, by language */
  readonly missing: ReadonlyMap<string, readonly Missing[]>;
  /** words by which a language's speakers mean an answer or a job, by language, then by the place of the `words` */
  readonly heard: ReadonlyMap<string, ReadonlyMap<string, readonly string[]>>;
  /** replies of knowledge/said/ that belong to no sign or answer: a sentence each, and nothing is learnt from them */
  readonly strays: readonly string[];
}

export class KnowledgeError extends Error {
  readonly problems: readonly string[];
  constructor(problems: readonly string[]) {
    super(`the knowledge has ${problems.length} mistake${problems.length === 1 ? "" : "s"}:\n${problems.join("\n")}`);
    this.problems = problems;
  }
}

const NO_UPKEEP: UpkeepKnowledge = {
  defaults: { north: { start: "10-01", end: "04-30" }, south: { start: "05-01", end: "09-30" }, heating_limit_C: 12, source: "none" },
  southern_countries: [], tasks: {}, signs: {},
};
const FOLDERS = { troubles: Trouble, howtos: HowTo, firings: Firing } as const;

/**
 * @param folder the knowledge folder
 * @param options.languages only these beside English; all that have their cautions otherwise
 * @throws KnowledgeError naming every mistake at once
 */
export async function loadKnowledge(folder: string, { languages }: { readonly languages?: readonly string[] } = {}): Promise<Knowledge> {
  const problems: string[] = [];
  const english = new Map<string, string>();
  const originals: Original[] = [];
  const read = async <S extends z.ZodType>(path: string, schema: S): Promise<z.output<S> | null> => {
    const result = readFileOf(join("knowledge", path), await readFile(join(folder, path), "utf8"), schema);
    problems.push(...result.problems);
    return result.value;
  };
  const all = async <T extends { id: string }>(kind: keyof typeof FOLDERS): Promise<Map<string, T>> => {
    const files = (await readdir(join(folder, kind))).filter((file) => file.endsWith(".yaml")).sort();
    const found = new Map<string, T>();
    for (const file of files) {
      const value = (await read(join(kind, file), FOLDERS[kind])) as T | null;
      if (!value) continue;
      if (`${value.id}.yaml` !== file) problems.push(`knowledge/${kind}/${file}: its id is "${value.id}"; file name and id are the same word.`);
      found.set(value.id, value);
      originals.push({ file: `${kind}/${file}`, parts: [{ at: [], path: `${kind}.${value.id}`, value }] });
    }
    return found;
  };

  const cautionEntries = (await read("cautions.yaml", CautionsFile)) ?? {};
  const calls = (await read("calls.yaml", CallsFile)) ?? {};
  originals.push({ file: "cautions.yaml", parts: Object.entries(cautionEntries).map(([id, { say }]) => ({ at: [id, "say"], path: `caution.${id}`, value: say })), whole: true });
  originals.push({ file: "calls.yaml", parts: Object.entries(calls).map(([id, value]) => ({ at: [id], path: `calls.${id}`, value })) });
  const glossary = (await read("glossary.yaml", GlossaryFile)) ?? {};
  originals.push({ file: "glossary.yaml", parts: Object.entries(glossary).map(([id, { title, say }]) => ({ at: [id], path: `glossary.${id}`, value: { title, say } })) });
  const troubles = await all<Trouble>("troubles");
  const replies = await readSaid(folder);
  problems.push(...replies.problems);
  const strays = addSaid(troubles, replies.said);
  const howtos = await all<HowTo>("howtos");
  const firings = await all<Firing>("firings");

  const upkeep = (await read("upkeep.yaml", UpkeepFile)) ?? NO_UPKEEP;
  const sweepLaw = (await read("sweep-law.yaml", SweepLawFile)) ?? {};
  originals.push({
    file: "upkeep.yaml",
    parts: [
      ...Object.entries(upkeep.tasks).map(([task, { title, what, book, tools }]) => ({ at: ["tasks", task], path: `upkeep.${task}`, value: { title, what, ...(book ? { book } : {}), tools } })),
      ...Object.entries(upkeep.signs).map(([sign, { says }]) => ({ at: ["signs", sign, "says"], path: `upkeep.sign.${sign}`, value: says })),
    ],
  });
  originals.push({ file: "sweep-law.yaml", parts: Object.entries(sweepLaw).map(([country, { says }]) => ({ at: [country, "says"], path: `sweep-law.${country}`, value: says })) });
  for (const { parts } of originals) for (const { path, value } of parts) gather(english, path, value);
  problems.push(...checkUpkeep(upkeep));

  const known = new Set(Object.keys(cautionEntries));
  problems.push(...checkCautions("knowledge/upkeep.yaml", upkeep, known));
  for (const trouble of troubles.values()) problems.push(...checkTrouble(trouble), ...checkName(trouble, new Set(troubles.keys())));
  // a trouble that brings its own id is called by its title wherever topics are offered
  for (const { id, title } of troubles.values()) if (!isTopic(id)) english.set(`topic.${id}`, title);
  for (const [kind, things] of Object.entries({ troubles, howtos, firings })) {
    for (const thing of things.values()) problems.push(...checkCautions(`knowledge/${kind}/${thing.id}.yaml`, thing, known));
  }
  problems.push(...checkCautions("knowledge/glossary.yaml", glossary, known));
  const translations = await readTranslations(folder, originals, languages);
  problems.push(...translations.flatMap((one) => one.problems));
  if (problems.length > 0) throw new KnowledgeError(problems);

  const cautions = new Map(Object.keys(cautionEntries).map((id) => [id, { id, text: { id: `caution.${id}` } }]));
  return {
    troubles: troubles as unknown as Map<TopicId, Trouble>,
    howtos: howtos as unknown as Map<TopicId, HowTo>,
    firings,
    cautions,
    cautionEntries,
    calls: new Set(Object.keys(calls) as Call[]),
    glossary,
    upkeep,
    sweepLaw,
    texts: new Map([["en", english], ...translations.map(({ language, texts }) => [language, texts] as const)]),
    originals,
    missing: new Map(translations.map(({ language, missing }) => [language, missing])),
    heard: new Map(translations.map(({ language, heard }) => [language, heard])),
    strays,
  };
}
