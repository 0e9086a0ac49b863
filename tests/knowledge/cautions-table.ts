/**
 * `node tests/knowledge/cautions-table.ts <language> [file]`: every caution in English and in that language side by side, for somebody who
 * knows both to read; as markdown, to the file or to the screen.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { loadKnowledge, type Knowledge } from "../../src/knowledge/load.ts";
import { figuresOf } from "./figures-of.ts";

const cell = (words: string): string => words.replaceAll("|", "\\|").replaceAll("\n", " ");

export function cautionsTable({ cautionEntries, texts }: Knowledge, language: string): string {
  const rows = Object.entries(cautionEntries).map(([id, { level, say }]) => {
    const own = texts.get(language)?.get(`caution.${id}`) ?? "(missing)";
    return `| ${id} | ${level} | ${cell(say)} | ${cell(own)} | ${figuresOf(say).join(", ") || "none"} |`;
  });
  return [`# Cautions, English and ${language}`, "", `Written by \`node tests/knowledge/cautions-table.ts ${language}\`. The figures of both were compared by machine; the sense is for a reader.`, "", `| id | level | English | ${language} | figures |`, "|---|---|---|---|---|", ...rows, ""].join("\n");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [language = "de", file] = process.argv.slice(2);
  const table = cautionsTable(await loadKnowledge(fileURLToPath(new URL("../../knowledge", import.meta.url))), language);
  if (file) writeFileSync(file, table);
  else console.log(table);
}
