/** One YAML file, read against a schema; what is wrong is said with file, line and place, in words for whoever wrote it. */
import { isMap, isPair, isScalar, isSeq, LineCounter, parseDocument, type Document } from "yaml";
import type { z } from "zod";
import { keepParsed, parsedBefore } from "./parsed.ts";
import { keysAt, nearest } from "./spelling.ts";

/** One file, read and checked against its schema. @returns the value, or sentences naming file, line, place and what would be right */
export function readFileOf<S extends z.ZodType>(file: string, words: string, schema: S): { value: z.output<S>; problems: [] } | { value: null; problems: string[] } {
  const before = parsedBefore(words);
  const known = before && schema.safeParse(before.value);
  if (known?.success) return { value: known.data, problems: [] };
  const lines = new LineCounter();
  const document = parseDocument(words, { lineCounter: lines, prettyErrors: true });
  if (document.errors.length > 0) {
    return { value: null, problems: document.errors.map((error) => `${file}, line ${error.linePos?.[0].line ?? "?"}: this is not well-formed YAML: ${hint(error.code, firstLine(error.message))}`) };
  }
  const read = schema.safeParse(keepParsed(words, document.toJS({ maxAliasCount: 20 })), { reportInput: true });
  if (read.success) return { value: read.data, problems: [] };
  const problems = read.error.issues.flatMap((issue) => {
    const at = (path: readonly PropertyKey[]): string => `${file}, line ${lineOf(document, lines, path)}: ${issue.path.join(" > ") || "the whole file"}`;
    if (issue.code === "unrecognized_keys") return issue.keys.map((key) => `${at([...issue.path, key])}: ${unknownKey(key, keysAt(schema, issue.path))}`);
    return [`${at(issue.path)}: ${plain(issue)}`];
  });
  return { value: null, problems };
}

export const firstLine = (message: string): string => message.split("\n")[0] ?? message;

/** What most often lies behind a complaint of the YAML reader. */
function hint(code: string, message: string): string {
  if (code === "TAB_AS_INDENT") return "a tab stands where only spaces may; use two spaces for each step to the right.";
  if (code === "DUPLICATE_KEY") return "the same word stands twice on one level; each may stand once.";
  if (code === "BAD_INDENT" || code === "BLOCK_AS_IMPLICIT_KEY" || code === "MULTILINE_IMPLICIT_KEY") return `${message} Most often: a sentence with a colon in it needs quotes ("..."), or a line stands too far left or right.`;
  if (code === "MISSING_CHAR" || code === "UNEXPECTED_TOKEN") return `${message} Most often: a quote or a bracket was opened and not closed.`;
  return message;
}

function unknownKey(key: string, known: readonly string[]): string {
  const meant = nearest(key, known);
  return `"${key}" is not a word this place knows; ${meant ? `was "${meant}" meant?` : known.length > 0 && known.length < 25 ? `it knows: ${known.join(", ")}.` : "check its spelling."}`;
}

const KINDS: Readonly<Record<string, string>> = {
  string: "text (in quotes when it has a colon in it)", number: "number", boolean: "true or false, without quotes", array: "list: [one, two], or lines that begin with -", object: "block of lines that stand two spaces further to the right", record: "block of lines that stand two spaces further to the right",
};

function plain(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return issue.input === undefined ? "this is missing." : `this takes a ${KINDS[issue.expected] ?? issue.expected}${short(issue.input)}.`;
    case "invalid_value":
      return issue.input === undefined ? "this is missing." : `this takes one of: ${issue.values.join(", ")}${short(issue.input)}.`;
    case "invalid_format":
      return `this takes ${issue.message}${short(issue.input)}.`;
    case "invalid_key":
      return `this name takes ${issue.issues[0]?.message ?? "small letters, digits and hyphens"}.`;
    case "too_small":
      return `this is too small or empty; at least ${issue.minimum}${issue.origin === "string" ? " characters" : ""}.`;
    case "too_big":
      return `this is too large or long; at most ${issue.maximum}${issue.origin === "string" ? " characters" : ""}.`;
    default:
      return `${issue.message}.`;
  }
}

const short = (input: unknown): string => (typeof input === "string" || typeof input === "number" || typeof input === "boolean" ? `; it says ${JSON.stringify(String(input).slice(0, 60))}` : "");

export function lineOf(document: Document, lines: LineCounter, path: readonly PropertyKey[]): number {
  for (let length = path.length; length >= 0; length--) {
    const node = document.getIn(path.slice(0, length).map(String), true) as { range?: [number, number, number] } | undefined;
    const range = keyRange(document, path.slice(0, length)) ?? node?.range;
    if (range) return lines.linePos(range[0]).line;
  }
  return 1;
}

function keyRange(document: Document, path: readonly PropertyKey[]): [number, number, number] | undefined {
  const parent = path.length > 1 ? document.getIn(path.slice(0, -1).map(String), true) : document.contents;
  if (isMap(parent)) {
    const pair = parent.items.find((item) => isPair(item) && isScalar(item.key) && String(item.key.value) === String(path.at(-1)));
    return isScalar(pair?.key) ? (pair.key.range as [number, number, number]) : undefined;
  }
  const entry = isSeq(parent) ? (parent.items[Number(path.at(-1))] as { range?: [number, number, number] } | undefined) : undefined;
  return entry?.range ?? undefined;
}
