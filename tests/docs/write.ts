/** Writes the documents that are made from the data: `npm run docs`. */
import { writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import { answersMarkdown } from "./answers.ts";
import { treesMarkdown } from "./trees.ts";

export const KNOWLEDGE = fileURLToPath(new URL("../../knowledge/", import.meta.url));

export async function documents(): Promise<ReadonlyMap<string, string>> {
  return new Map([
    ["TREES.md", treesMarkdown(await loadKnowledge(KNOWLEDGE))],
    ["ANSWERS.md", await answersMarkdown()],
  ]);
}

if (import.meta.main) for (const [name, words] of await documents()) await writeFile(KNOWLEDGE + name, words);
