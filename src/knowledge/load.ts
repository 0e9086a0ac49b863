/**
 * Reads `knowledge/` and says in plain words which line of which file is wrong.
 * Every sentence in it becomes a catalogue text under an id made of its place, so that a translation is a file of the same shape.
 */
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { isMap, isPair, isScalar, isSeq, LineCounter, parseDocument, type Document } from "yaml";
import type { z } from "zod";
import type { Caution } from "../answer.ts";
import type { TopicId } from "../topics.ts";
import { checkTrouble, checkCautions } from "./check.ts";
import { SweepLawFile, UpkeepFile, checkUpkeep, type SweepRule, type UpkeepKnowledge } from "./upkeep-schema.ts";
import { CallsFile, CautionsFile, Firing, HowTo, Trouble, type Call, type CautionEntry } from "./schemas.ts";

export interface Knowledge {
  readonly troubles: ReadonlyMap<TopicId, Trouble>;
  readonly howtos: ReadonlyMap<TopicId, HowTo>;
  readonly firings: ReadonlyMap<string, Firing>;
  readonly cautions: ReadonlyMap<string, Caution>;
  readonly cautionEntries: Readonly<Record<string, CautionEntry>>;
  readonly calls: ReadonlySet<Call>;
  readonly upkeep: UpkeepKnowledge;
  /** sweeping rules by country */
  readonly sweepLaw: Readonly<Record<string, SweepRule>>;
  /** language to catalogue */
  readonly texts: ReadonlyMap<string, ReadonlyMap<string, string>>;
}

export class KnowledgeError extends Error {
  readonly problems: readonly string[];
  constructor(problems: readonly string[]) {
    super(`the knowledge has ${problems.length} mistake${problems.length === 1 ? "" : "s"}:\n${problems.join("\n")}`);
    this.problems = problems;
  }
}

/** One file, read and checked against its schema. @returns the value, or sentences naming file, line, place and what would be right */
export function readFileOf<S extends z.ZodType>(file: string, words: string, schema: S): { value: z.output<S>; problems: [] } | { value: null; problems: string[] } {
  const lines = new LineCounter();
  const document = parseDocument(words, { lineCounter: lines, prettyErrors: true });
  if (document.errors.length > 0) {
    return { value: null, problems: document.errors.map((error) => `${file}, line ${error.linePos?.[0].line ?? "?"}: this is not well-formed YAML: ${firstLine(error.message)}`) };
  }
  const read = schema.safeParse(document.toJS({ maxAliasCount: 20 }));
  if (read.success) return { value: read.data, problems: [] };
  const problems = read.error.issues.map((issue) => {
    const line = lineOf(document, lines, issue.path);
    return `${file}, line ${line}: ${issue.path.join(" > ") || "the whole file"}: ${plain(issue)}`;
  });
  return { value: null, problems };
}

const firstLine = (message: string): string => message.split("\n")[0] ?? message;

function plain(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "unrecognized_keys":
      return `"${issue.keys.join('", "')}" is not a word this place knows; check its spelling.`;
    case "invalid_type":
      return issue.input === undefined ? "this is missing." : `this takes a ${issue.expected}.`;
    case "invalid_value":
      return `this takes one of: ${issue.values.join(", ")}.`;
    case "too_small":
      return `this is too small or empty; at least ${issue.minimum}.`;
    case "too_big":
      return `this is too large or long; at most ${issue.maximum}.`;
    default:
      return `${issue.message}.`;
  }
}

function lineOf(document: Document, lines: LineCounter, path: readonly PropertyKey[]): number {
  for (let length = path.length; length >= 0; length--) {
    const node = document.getIn(path.slice(0, length).map(String), true) as { range?: [number, number, number] } | undefined;
    const range = node?.range ?? keyRange(document, path.slice(0, length));
    if (range) return lines.linePos(range[0]).line;
  }
  return 1;
}

function keyRange(document: Document, path: readonly PropertyKey[]): [number, number, number] | undefined {
  const parent = path.length > 1 ? document.getIn(path.slice(0, -1), true) : document.contents;
  if (isMap(parent)) {
    const pair = parent.items.find((item) => isPair(item) && isScalar(item.key) && item.key.value === path.at(-1));
    return isScalar(pair?.key) ? (pair.key.range as [number, number, number]) : undefined;
  }
  return isSeq(parent) ? (parent.range as [number, number, number]) : undefined;
}

const NO_UPKEEP: UpkeepKnowledge = {
  defaults: { north: { start: "10-01", end: "04-30" }, south: { start: "05-01", end: "09-30" }, heating_limit_C: 12, source: "none" },
  southern_countries: [], tasks: {}, signs: {},
};
const FOLDERS = { troubles: Trouble, howtos: HowTo, firings: Firing } as const;

/** @param folder the knowledge folder; @throws KnowledgeError naming every mistake at once */
export async function loadKnowledge(folder: string): Promise<Knowledge> {
  const problems: string[] = [];
  const english = new Map<string, string>();
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
      gather(english, `${kind}.${value.id}`, value);
    }
    return found;
  };

  const cautionEntries = (await read("cautions.yaml", CautionsFile)) ?? {};
  const calls = (await read("calls.yaml", CallsFile)) ?? {};
  for (const [id, entry] of Object.entries(cautionEntries)) english.set(`caution.${id}`, entry.say);
  gather(english, "calls", calls);
  const troubles = await all<Trouble>("troubles");
  const howtos = await all<HowTo>("howtos");
  const firings = await all<Firing>("firings");

  const upkeep = (await read("upkeep.yaml", UpkeepFile)) ?? NO_UPKEEP;
  const sweepLaw = (await read("sweep-law.yaml", SweepLawFile)) ?? {};
  for (const [task, { title, what, book, tools }] of Object.entries(upkeep.tasks)) gather(english, `upkeep.${task}`, { title, what, ...(book ? { book } : {}), tools });
  for (const [sign, { says }] of Object.entries(upkeep.signs)) english.set(`upkeep.sign.${sign}`, says);
  for (const [country, { says }] of Object.entries(sweepLaw)) english.set(`sweep-law.${country}`, says);
  problems.push(...checkUpkeep(upkeep));

  const known = new Set(Object.keys(cautionEntries));
  problems.push(...checkCautions("knowledge/upkeep.yaml", upkeep, known));
  for (const trouble of troubles.values()) problems.push(...checkTrouble(trouble));
  for (const [kind, things] of Object.entries({ troubles, howtos, firings })) {
    for (const thing of things.values()) problems.push(...checkCautions(`knowledge/${kind}/${thing.id}.yaml`, thing, known));
  }
  if (problems.length > 0) throw new KnowledgeError(problems);

  const cautions = new Map(Object.keys(cautionEntries).map((id) => [id, { id, text: { id: `caution.${id}` } }]));
  return {
    troubles: troubles as unknown as Map<TopicId, Trouble>,
    howtos: howtos as unknown as Map<TopicId, HowTo>,
    firings,
    cautions,
    cautionEntries,
    calls: new Set(Object.keys(calls) as Call[]),
    upkeep,
    sweepLaw,
    texts: new Map([["en", english]]),
  };
}

/** Keys whose strings are ids, sources or words to find a topic by, not sentences to be read. */
const NOT_READ = new Set(["id", "kind", "record", "source", "sources", "hazard", "cautions", "call", "near", "words", "when", "unknown", "stop", "weighs", "level"]);

/** Keys under which the file's own names stand: a sign may be called "when" and still be read. */
const NAMES_BELOW = new Set(["signs", "causes", "stages", "remarks", "because"]);

function gather(into: Map<string, string>, path: string, value: unknown, names = false): void {
  if (typeof value === "string") into.set(path, value);
  else if (Array.isArray(value)) value.forEach((entry, i) => gather(into, `${path}.${hasId(entry) ? entry.id : i}`, entry));
  else if (typeof value === "object" && value !== null) {
    for (const [key, entry] of Object.entries(value)) if (names || !NOT_READ.has(key)) gather(into, `${path}.${key}`, entry, NAMES_BELOW.has(key) && !names);
  }
}

const hasId = (entry: unknown): entry is { id: string } => typeof entry === "object" && entry !== null && "id" in entry;
