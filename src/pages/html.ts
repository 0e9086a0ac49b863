/** A document as one HTML file that needs nothing else: no script, no picture from elsewhere, made to be printed on one side of paper. */
import type { Document, PageBlock, Text } from "../answer.ts";
import { format } from "../quantities.ts";
import type { Reader } from "../text/render.ts";

const ESCAPES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };
export const escapeHtml = (words: string): string => words.toWellFormed().replace(/[&<>"']/g, (one) => ESCAPES[one] ?? one);

/** Black on white, so that any printer does it justice; a frame, not a colour, marks what can hurt. */
const STYLE = `
:root { color-scheme: light; }
body { font: 16px/1.4 system-ui, sans-serif; color: #111; background: #fff; max-width: 46rem; margin: 1.5rem auto; padding: 0 1rem; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 .6rem; }
h2 { font-size: 1.1rem; margin: 1rem 0 .3rem; }
p, ul, ol, table, figure { margin: .3rem 0; }
li { margin: .1rem 0; }
table { border-collapse: collapse; width: 100%; }
caption { text-align: start; font-weight: 600; padding: .3rem 0; }
th, td { border: 1px solid #777; padding: .2rem .45rem; text-align: start; vertical-align: top; }
th { background: #eee; }
thead { display: table-header-group; }
tr, li, .danger, figure { break-inside: avoid; }
.danger { border: 3px solid #111; padding: .4rem .7rem; margin: .6rem 0; font-weight: 600; }
figure { float: inline-end; margin-inline-start: 1rem; }
figure svg { width: 9rem; height: auto; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: .1rem .8rem; margin: .3rem 0; }
dd { margin: 0; font-weight: 600; }
@media print { @page { margin: 12mm; } body { font-size: 10.5pt; max-width: none; margin: 0; padding: 0; } h2 { break-after: avoid; } }
`;

/**
 * How every page begins: it fetches nothing, and runs no script but the one named.
 * @param lang,title escaped; @param script_sha256 of the script the page carries, in base64
 */
export function pageHead(lang: string, title: string, style: string, script_sha256?: string): string {
  return `<!doctype html>
<html lang="${lang}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'${script_sha256 === undefined ? "" : `; script-src 'sha256-${script_sha256}'`}">
<title>${title}</title>
<style>${style}</style>
</head>`;
}

export function toHtml(document: Document, say: (one: Text) => string, reader: Reader): string {
  const title = escapeHtml(say(document.title));
  const lang = escapeHtml(reader.locale);
  const body = document.body.map((block) => element(block, (one) => escapeHtml(say(one)), reader)).join("\n");
  return `${pageHead(lang, title, STYLE)}
<body>
<h1>${title}</h1>
${body}
</body>
</html>
`;
}

/** @param say gives escaped words */
function element(block: PageBlock, say: (one: Text) => string, reader: Reader): string {
  switch (block.kind) {
    case "text":
      return `<p${block.cautions.length > 0 ? ' class="danger"' : ""}>${say(block.text)}</p>`;
    case "heading":
      return `<h2>${say(block.text)}</h2>`;
    case "steps": {
      const tag = block.ordered ? "ol" : "ul";
      const items = block.steps.map((step) => `<li>${say(step)}</li>`).join("");
      return `${block.title ? `<h2>${say(block.title)}</h2>` : ""}<${tag}>${items}</${tag}>`;
    }
    case "table": {
      const head = block.columns.map((column) => `<th scope="col">${say(column)}</th>`).join("");
      const rows = block.rows.map((row) => `<tr>${row.map((cell, i) => (i === 0 ? `<th scope="row">${say(cell)}</th>` : `<td>${say(cell)}</td>`)).join("")}</tr>`).join("\n");
      return `<table>${block.caption ? `<caption>${say(block.caption)}</caption>` : ""}<thead><tr>${head}</tr></thead><tbody>\n${rows}\n</tbody></table>`;
    }
    case "numbers":
      return `<dl>${block.items.map((item) => `<dt>${say(item.label)}</dt><dd>${escapeHtml(format(item.quantity, reader))}</dd>`).join("")}</dl>`;
    case "quote":
      return `<p>${say(block.who)}: <q>${say(block.words)}</q></p>`;
    case "drawing":
      return `<figure role="img" aria-label="${say(block.alt)}">${block.svg}</figure>`;
  }
}
