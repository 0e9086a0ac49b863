/** Any `Answer` as Matrix notices: a good plain body, HTML of the subset that the specification recommends, cautions first and whole. */
import { extname } from "node:path";
import type { Answer } from "../../src/answer.ts";
import { type Cause, type Label, labels, type Numbered, type Options, outline, type Piece } from "../outline.ts";
import { chunks, cut, pack, type Part } from "../pack.ts";
import { shorten } from "../plain.ts";
import { align, records, type Table } from "../table.ts";
import { BYTES, type Event, type Notice } from "./api.ts";
import { escapeHtml, unlinked } from "./escape.ts";

export interface MatrixOptions extends Options {
  /** `pre` where the clients in use flatten tables; default `html` */
  readonly tables?: "html" | "pre";
}

/** Columns of a table in the plain body and in `pre`. */
const COLUMNS = 64;
/** Room for the "2 of 3" below a notice. */
const SLACK = 200;
const ROOM = BYTES - SLACK;
/** Longer pieces come in several parts, so that a cut between notices falls inside them. */
const PART = 4_500;

/** Room for what a caution is called, in body and HTML. */
const NAME = 200;
/** A longer description of a picture stands as a paragraph of its own below it. */
const ALT = 1_000;

interface Both {
  readonly body: string;
  readonly html: string;
}
interface Laid extends Part, Both {
  readonly image?: { readonly path: string; readonly alt: string };
}

const bytes = ({ body, html }: Both): number => Buffer.byteLength(body) + Buffer.byteLength(html);

export function renderMatrix(answer: Answer, options: MatrixOptions): Event[] {
  const { pieces } = outline(answer, options);
  const label = labels(options);
  const last = pieces.findLastIndex((piece) => piece.kind === "choices" || piece.kind === "form");
  const parts = pieces.flatMap((piece, at) => [...lay(piece, label, options), ...(at === last ? small(label("choose-hint")).map((one) => part(one)) : [])]);
  const pages = pack(parts, [ROOM]);
  const notices = pages.filter((page) => !page[0]?.image).length;
  const isCut = pages.some((page, at) => !page[0]?.image && pages[at + 1] && !pages[at + 1]?.[0]?.image);
  let shown = 0;
  return pages.map((page) => {
    const image = page[0]?.image;
    if (image) return { kind: "image", path: image.path, content: { msgtype: "m.image", body: image.alt, filename: `figure${extname(image.path)}`, "m.mentions": {} } };
    shown += 1;
    return { kind: "notice", content: notice([...page, ...(isCut ? small(label("part", { part: shown, parts: notices })).map((one) => part(one)) : [])]) };
  });
}

const notice = (parts: readonly Laid[]): Notice => ({
  msgtype: "m.notice",
  body: parts.map((one, at) => (at === 0 ? "" : parts[at - 1]?.keep ? "\n" : "\n\n") + one.body).join(""),
  format: "org.matrix.custom.html",
  formatted_body: parts.map((one) => one.html).join("\n"),
  "m.mentions": {},
});

const part = (both: Both, keep = false): Laid => ({ ...both, size: [bytes(both) + 3], keep });

/** Words in pieces of at most `most` bytes of body and HTML together. Escaped, no UTF-16 unit takes more than nine bytes in both. */
function fit(words: string, most: number, dress: (body: string, html: string) => Both): Both[] {
  const one = (piece: string): Both => dress(unlinked(piece), escapeHtml(piece).replace(/\n/g, "<br>"));
  const whole = one(words);
  return bytes(whole) <= most ? [whole] : cut(words, Math.floor((most - bytes(dress("", ""))) / 9)).map(one);
}

const in_ = (tag: string) => (body: string, html: string): Both => ({ body, html: `<${tag}>${html}</${tag}>` });
const strong = (body: string, html: string): Both => ({ body, html: `<p><strong>${html}</strong></p>` });
const small = (words: string): Both[] => (words === "" ? [] : fit(words, PART, (body, html) => ({ body, html: `<p><em>${html}</em></p>` })));

function lay(piece: Piece, label: Label, options: MatrixOptions): Laid[] {
  switch (piece.kind) {
    case "caution":
      return caution(piece, label);
    case "headline":
      return piece.text === "" ? [] : fit(piece.text, PART, in_("h3")).map((one) => part(one, true));
    case "heading":
      return fit(piece.text, PART, in_("h4")).map((one) => part(one, true));
    case "paragraph":
      return fit(piece.text, PART, in_("p")).map((one) => part(one));
    case "question":
      return fit(piece.text, PART, strong).map((one) => part(one, true));
    case "note":
      return small(piece.text).map((one) => part(one));
    case "list":
      return [...title(piece.title), ...list(piece.items, piece.ordered ? 1 : null)];
    case "table":
      return [...title(piece.caption), ...table(piece.table, options.tables ?? "html")];
    case "numbers":
      return lines(piece.items.flatMap((item) => fit(`${item.label}: ${item.value}`, PART, (body, html) => ({ body, html }))), "<p>", "<br>", "</p>");
    case "causes":
      return piece.groups.flatMap((group) => [...title(group.label), ...lines(group.causes.flatMap(causeItem), "<ul>", "", "</ul>")]);
    case "picture": {
      const words = fit(label("picture", { alt: piece.alt }) || piece.alt, PART, in_("p")).map((one) => part(one));
      if (!piece.file) return words;
      const image: Laid = { body: "", html: "", size: [0], alone: true, image: { path: piece.file, alt: unlinked(shorten(piece.alt, ALT)) } };
      return piece.alt.length > ALT ? [image, ...words] : [image];
    }
    case "choices":
      return numbered(piece.choices);
    case "form":
      return [...title(piece.title), ...small(piece.summary).map((one) => part(one, true)), ...numbered([piece.choice])];
    case "quote":
      return [
        ...title(/[:：]$/u.test(piece.who) ? piece.who : `${piece.who}:`),
        ...fit(piece.words, PART, (body, html) => ({ body: body.replace(/^/gm, "> "), html: `<blockquote>${html}</blockquote>` })).map((one) => part(one)),
      ];
  }
}

const title = (words: string | undefined): Laid[] => (words ? fit(words, PART, strong).map((one) => part(one, true)) : []);

/** Whole in one notice; only one longer than any notice is cut, between sentences, and says that it goes on. */
function caution(piece: { label: string; text: string }, label: Label): Laid[] {
  const named = (name: string, { body, html }: Both): Both =>
    name ? { body: `${name}: ${body}`, html: `<p><strong>${escapeHtml(name)}:</strong> ${html}</p>` } : { body, html: `<p>${html}</p>` };
  const again = label("caution-continued");
  return fit(piece.text, ROOM - NAME, (body, html) => ({ body, html })).map((both, at) => part(named(at === 0 ? piece.label : again, both)));
}

/** Lines gathered into parts, each in its own element. */
const lines = (list: readonly Both[], open: string, between: string, close: string): Laid[] =>
  chunks(list, (one) => bytes(one) + between.length + 1, PART).map((group) =>
    part({ body: group.map((one) => one.body).join("\n"), html: open + group.map((one) => one.html).join(between) + close }));

/** An item in its pieces: in the plain body `lead` stands before the first, as many spaces before the others. */
const hung = (words: string, lead: string): Both[] =>
  fit(words, PART - 40, (body, html) => ({ body, html })).map((one, at) => ({ body: (at === 0 ? lead : " ".repeat(lead.length)) + one.body, html: one.html }));

/** A long list comes in several, numbered on; the pieces of an item that is itself too long share its number. */
function list(items: readonly string[], first: number | null): Laid[] {
  const pieces = items.flatMap((item, at) => {
    const lead = first === null ? "- " : `${first + at}. `;
    return hung(item, lead).map((one) => ({ at, ...one }));
  });
  return chunks(pieces, (one) => bytes(one) + 12, PART).map((group) => {
    const inner = group.map((one, place) => (place === 0 ? "<li>" : one.at === group[place - 1]?.at ? " " : "</li><li>") + one.html).join("");
    const from = (first ?? 0) + (group[0]?.at ?? 0);
    const [open, close] = first === null ? ["<ul>", "</ul>"] : [from === 1 ? "<ol>" : `<ol start="${from}">`, "</ol>"];
    return part({ body: group.map((one) => one.body).join("\n"), html: `${open}${inner}</li>${close}` });
  });
}

const numbered = (choices: readonly Numbered[]): Laid[] => list(choices.map((choice) => choice.label), choices[0]?.number ?? 1);

function causeItem(cause: Cause): Both[] {
  const name = hung(`${cause.title} (${cause.share})`, "- ");
  const because = cause.because.flatMap((reason) => hung(reason, "  - "));
  const item = (html: string): string => `<li>${html}</li>`;
  const whole: Both = {
    body: [...name, ...because].map((one) => one.body).join("\n"),
    html: item(name.map((one) => one.html).join("<br>") + (because.length > 0 ? `<ul>${because.map((one) => item(one.html)).join("")}</ul>` : "")),
  };
  return bytes(whole) <= PART ? [whole] : [...name, ...because].map((one) => ({ body: one.body, html: item(one.html) }));
}

function table(rows: Table, how: "html" | "pre"): Laid[] {
  const aligned = align(rows, COLUMNS);
  const cells = (row: readonly string[], tag: string): string => `<tr>${rows.columns.map((_, at) => `<${tag}>${escapeHtml(row[at] ?? "")}</${tag}>`).join("")}</tr>`;
  const head = `<thead>${cells(rows.columns, "th")}</thead>`;
  const made = rows.rows.map((row, at) => ({ body: (aligned?.rows[at] ?? []).map(unlinked).join("\n"), html: cells(row, "td") }));
  const top = aligned?.head.map(unlinked).join("\n") ?? "";
  if (!aligned || made.some((row) => bytes(row) > PART / 2) || top.length + head.length > PART / 2) return recordParts(rows);
  return chunks(made, (row) => bytes(row) + 1, PART - Buffer.byteLength(top) - Buffer.byteLength(head)).map((group) => {
    const body = [top, ...group.map((row) => row.body)].join("\n");
    return part({ body, html: how === "html" ? `<table>${head}<tbody>${group.map((row) => row.html).join("")}</tbody></table>` : `<pre><code>${escapeHtml(body)}</code></pre>` });
  });
}

const recordParts = (rows: Table): Laid[] => lines(
  records(rows).flatMap((record) => [
    ...fit(record.title || "·", PART, (body, html) => ({ body, html: `<strong>${html}</strong>` })),
    ...record.lines.flatMap((line) => fit(line, PART, (body, html) => ({ body: `  ${body}`, html }))),
  ]), "<p>", "<br>", "</p>");
