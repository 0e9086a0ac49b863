/** Tables on Matrix: HTML or `pre`, aligned in the plain body; what is too wide for either, one record after the other. */
import { chunks } from "../pack.ts";
import { align, records, type Table } from "../table.ts";
import { escapeHtml, unlinked } from "./escape.ts";
import { bytes, fit, type Laid, lines, PART, part } from "./parts.ts";

/** Columns of a table in the plain body and in `pre`. */
const COLUMNS = 64;

export function table(rows: Table, how: "html" | "pre"): Laid[] {
  const aligned = align(rows, COLUMNS);
  const cells = (row: readonly string[], tag: string): string =>
    `<tr>${rows.columns.map((_, at) => `<${tag}>${escapeHtml(row[at] ?? "")}</${tag}>`).join("")}</tr>`;
  const head = `<thead>${cells(rows.columns, "th")}</thead>`;
  const made = rows.rows.map((row, at) => ({ body: (aligned?.rows[at] ?? []).map(unlinked).join("\n"), html: cells(row, "td") }));
  const top = aligned?.head.map(unlinked).join("\n") ?? "";
  if (!aligned || made.some((row) => bytes(row) > PART / 2) || top.length + head.length > PART / 2) return recordParts(rows);
  return chunks(made, (row) => bytes(row) + 1, PART - Buffer.byteLength(top) - Buffer.byteLength(head)).map((group) => {
    const body = [top, ...group.map((row) => row.body)].join("\n");
    return part({
      body,
      html:
        how === "html"
          ? `<table>${head}<tbody>${group.map((row) => row.html).join("")}</tbody></table>`
          : `<pre><code>${escapeHtml(body)}</code></pre>`,
    });
  });
}

const recordParts = (rows: Table): Laid[] =>
  lines(
    records(rows).flatMap((record) => [
      ...fit(record.title || "·", PART, (body, html) => ({ body, html: `<strong>${html}</strong>` })),
      ...record.lines.flatMap((line) => fit(line, PART, (body, html) => ({ body: `  ${body}`, html }))),
    ]),
    "<p>",
    "<br>",
    "</p>",
  );
