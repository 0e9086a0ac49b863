/**
 * `knowledge/<language>/`: the same files in another language, holding only what is read, and the words its speakers use.
 * A string that is missing is said in English and counted. A caution is never missing: a language is spoken once its `cautions.yaml` is
 * there, and then that file is whole or the knowledge does not load.
 */
import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { IntlMessageFormat } from "intl-messageformat";
import { LineCounter, parseDocument } from "yaml";
import { hasId, NAMES_BELOW, NOT_READ } from "./sentences.ts";
import { keepParsed, parsedBefore } from "./parsed.ts";
import { firstLine, lineOf } from "./yaml-file.ts";

/** An English file: for each part, where it stands in the file, under which id its sentences go, and what it holds. */
export interface Original {
  readonly file: string;
  readonly parts: readonly { readonly at: readonly string[]; readonly path: string; readonly value: unknown }[];
  /** nothing of it may be missing in a language that is spoken */
  readonly whole?: true;
}
export interface Missing {
  readonly file: string;
  readonly place: string;
  readonly english: string;
}
export interface Translation {
  readonly language: string;
  readonly texts: ReadonlyMap<string, string>;
  /** word lists by the path of the thing they mean, with `.words` or `.done` behind it */
  readonly heard: ReadonlyMap<string, readonly string[]>;
  readonly missing: readonly Missing[];
  readonly problems: readonly string[];
}

const LANGUAGE = /^[a-z]{2}$/;
/** Lists that are no translation but what speakers of the language say or write. */
const OWN_WORDS: ReadonlySet<string> = new Set(["words", "done"]);
/** Read in other places than `Knowledge`. */
const ELSEWHERE: ReadonlySet<string> = new Set(["words.yaml"]);

/** All languages under the folder that have their cautions, or those of them that are asked for. */
export async function readTranslations(folder: string, originals: readonly Original[], only?: readonly string[]): Promise<Translation[]> {
  const languages = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory() && LANGUAGE.test(entry.name)).map(({ name }) => name);
  const spoken = languages.filter((language) => (only?.includes(language) ?? true) && existsSync(join(folder, language, "cautions.yaml")));
  return Promise.all(spoken.map((language) => readTranslation(folder, language, originals)));
}

/** One language, whether it has its cautions yet or not. */
export async function readTranslation(folder: string, language: string, originals: readonly Original[]): Promise<Translation> {
  const found = { texts: new Map<string, string>(), heard: new Map<string, readonly string[]>(), missing: [] as Missing[], problems: [] as string[] };
  const known = new Set(originals.map(({ file }) => file));
  const files = existsSync(join(folder, language)) ? await readdir(join(folder, language), { recursive: true }) : [];
  for (const file of files) {
    const place = file.replaceAll("\\", "/");
    if (place.endsWith(".yaml") && !known.has(place) && !ELSEWHERE.has(place)) found.problems.push(`knowledge/${language}/${place}: there is no English knowledge/${place} of which this could be a translation.`);
  }
  for (const original of originals) {
    const path = join(folder, language, original.file);
    const words = existsSync(path) ? await readFile(path, "utf8") : null;
    translate(found, `knowledge/${language}/${original.file}`, words, original);
  }
  return { language, ...found };
}

interface Found {
  readonly texts: Map<string, string>;
  readonly heard: Map<string, readonly string[]>;
  readonly missing: Missing[];
  readonly problems: string[];
}

function translate(found: Found, file: string, words: string | null, original: Original): void {
  const lines = new LineCounter();
  const before = parsedBefore(words ?? "");
  let read: ReturnType<typeof parseDocument> | undefined;
  const document = () => (read ??= parseDocument(words ?? "", { lineCounter: lines }));
  if (!before && document().errors.length > 0) {
    found.problems.push(...document().errors.map((error) => `${file}, line ${lines.linePos(error.pos[0]).line}: this is not well-formed YAML: ${firstLine(error.message)}`));
    return;
  }
  const root = (before ? before.value : keepParsed(words ?? "", document().toJS({ maxAliasCount: 20 }) ?? {})) as unknown;
  const problem = (at: readonly string[], says: string): void => void found.problems.push(`${file}, line ${lineOf(document(), lines, at)}: ${at.join(" > ") || "the whole file"}: ${says}`);

  function walk(at: readonly string[], path: string, english: unknown, own: unknown, names = false): void {
    if (typeof english === "string") return sentence(at, path, english, own);
    if (Array.isArray(english)) return list(at, path, english, own);
    if (typeof english !== "object" || english === null) return;
    if (own !== undefined && !isMap(own)) return problem(at, "this takes what the English file has here, entry by entry.");
    const readable = Object.entries(english).filter(([key, value]) => (names || !NOT_READ.has(key)) && holdsText(value));
    for (const [key, value] of Object.entries(own ?? {})) {
      if (!names && OWN_WORDS.has(key)) heardWords([...at, key], `${path}.${key}`, value);
      else if (!names && key === "id") {
        if (!("id" in english) || value !== english.id) problem([...at, key], `the id is "${String((english as { id?: unknown }).id ?? "none")}" in the English file.`);
      } else if (!readable.some(([name]) => name === key)) {
        problem([...at, key], key in english ? `"${key}" stands in the English file only; leave it out.` : `the English file has no "${key}" here; check its spelling.`);
      }
    }
    for (const [key, value] of readable) walk([...at, key], `${path}.${key}`, value, own?.[key], NAMES_BELOW.has(key) && !names);
  }

  function list(at: readonly string[], path: string, english: readonly unknown[], own: unknown): void {
    if (own !== undefined && !Array.isArray(own)) return problem(at, "this takes a list, as in the English file.");
    const byId = english.every(hasId);
    if (own !== undefined && byId) {
      own.forEach((entry, i) => {
        if (!hasId(entry) || !english.some(({ id }) => id === entry.id)) problem([...at, String(i)], `its id is one of: ${english.map(({ id }) => id).join(", ")}.`);
      });
    } else if (own !== undefined && own.length !== english.length) {
      problem(at, `the English list has ${english.length} ${english.length === 1 ? "entry" : "entries"}, this one ${own.length}; both have the same, in the same order.`);
      return;
    }
    english.forEach((entry, i) => {
      const id = hasId(entry) ? entry.id : null;
      const where = own !== undefined && byId ? own.findIndex((one) => hasId(one) && one.id === id) : i;
      walk([...at, String(Math.max(0, where))], `${path}.${id ?? i}`, entry, own?.[where]);
    });
  }

  function sentence(at: readonly string[], path: string, english: string, own: unknown): void {
    if (own === undefined || own === null || own === "") {
      found.missing.push({ file: original.file, place: path, english });
      if (original.whole && words !== null) problem(at.slice(0, -1), `this caution is missing: ${JSON.stringify(english)}`);
      return;
    }
    if (typeof own !== "string") return problem(at, "this takes a sentence; put it in quotation marks if it begins with a figure or holds a colon.");
    const [theirs, ours] = [placeholders(english), placeholders(own)];
    if (ours === null) return problem(at, "its braces { } do not close as those of the English sentence do.");
    if (theirs !== ours) return problem(at, `the English sentence has ${theirs || "no placeholder"}, this one ${ours || "none"}; both have the same.`);
    found.texts.set(path, own);
  }

  function heardWords(at: readonly string[], path: string, own: unknown): void {
    if (own === null) return;
    if (!Array.isArray(own) || own.some((word) => typeof word !== "string" || word.trim() === "")) return problem(at, "this takes a list of words.");
    if (path.endsWith(".done") && own.some((pattern) => !isPattern(pattern))) return problem(at, "one of these is not a pattern.");
    found.heard.set(path, own);
  }

  for (const key of isMap(root) ? Object.keys(root) : []) {
    const first = original.parts.some(({ at }) => at.length === 0 || at[0] === key);
    if (!first) problem([key], "the English file has none of that name; check its spelling.");
  }
  for (const { at, path, value } of original.parts) {
    let own: unknown = root;
    for (const key of at) own = isMap(own) ? own[key] : undefined;
    walk(at, path, value, own ?? undefined);
  }
  const named = new Set(original.parts.map(({ at }) => at.slice(0, 2).join("/")));
  if (original.parts.some(({ at }) => at.length > 1)) {
    for (const [key, below] of isMap(root) ? Object.entries(root) : []) {
      for (const name of isMap(below) ? Object.keys(below) : []) {
        if (!named.has(`${key}/${name}`) && original.parts.some(({ at }) => at[0] === key)) problem([key, name], `the English file has no "${name}" here, or keeps it to itself; leave it out.`);
      }
    }
  }
}

const isMap = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null && !Array.isArray(value);
const holdsText = (value: unknown): boolean => typeof value === "string" || (typeof value === "object" && value !== null);

type Piece = ReturnType<IntlMessageFormat["getAst"]>[number];

/** Names of the values a message takes, in order of the alphabet; null when it is no message. */
export function placeholders(message: string): string | null {
  if (!/[{}]/.test(message)) return "";
  const names = new Set<string>();
  const collect = (pieces: readonly Piece[]): void => {
    for (const piece of pieces) {
      if (piece.type !== LITERAL && piece.type !== COUNT) names.add(`{${piece.value}}`);
      if ("options" in piece) for (const option of Object.values(piece.options)) collect(option.value);
    }
  };
  try {
    collect(new IntlMessageFormat(message, "en", undefined, { ignoreTag: true }).getAst());
  } catch {
    return null;
  }
  return [...names].sort().join(" ");
}
/** kinds of pieces in the parser's own numbers: plain words, and the # of a plural */
const LITERAL = 0;
const COUNT = 7;

function isPattern(words: string): boolean {
  try {
    new RegExp(words, "i");
    return true;
  } catch {
    return false;
  }
}
