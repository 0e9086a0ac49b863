/** The tables of a document as comma-separated values: RFC 4180 quoting, one header line, CR LF. */
import type { Document, Text } from "../answer.ts";

/** A spreadsheet runs what begins like this as a formula. */
const FORMULA = /^[=+\-@\t\r]/;
const NUMBER = /^-?\d+(\.\d+)?$/;

export function toCsv(document: Document, say: (one: Text) => string): string {
  const rows = document.body.flatMap((block) => (block.kind === "table" ? [block.columns, ...block.rows] : []));
  return rows.map((row) => `${row.map((one) => cell(say(one))).join(",")}\r\n`).join("");
}

function cell(words: string): string {
  const harmless = FORMULA.test(words) && !NUMBER.test(words) ? `'${words}` : words;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
