/**
 * YAML that was read before, kept where GLEED_TEST_PARSED names a folder: the checks start hundreds of processes on the same files. Not for a
 * host, since whoever may write into that folder may change what Gleed says.
 */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const folder = process.env.GLEED_TEST_PARSED;
const fileOf = (folder: string, words: string): string => join(folder, createHash("sha256").update(words).digest("hex"));

export function parsedBefore(words: string): { readonly value: unknown } | null {
  if (!folder) return null;
  try {
    return { value: JSON.parse(readFileSync(fileOf(folder, words), "utf8")) };
  } catch {
    return null;
  }
}

/** @returns the value */
export function keepParsed<T>(words: string, value: T): T {
  if (!folder || value === undefined) return value;
  mkdirSync(folder, { recursive: true });
  const file = fileOf(folder, words);
  writeFileSync(`${file}.${process.pid}`, JSON.stringify(value));
  renameSync(`${file}.${process.pid}`, file);
  return value;
}
