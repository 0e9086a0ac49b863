/** Any `Answer` as Matrix notices: a good plain body, HTML of the subset that the specification recommends, cautions first and whole. */
import { extname } from "node:path";
import type { Answer } from "../../src/answer.ts";
import { type Label, labels, type Options, outline, type Piece } from "../outline.ts";
import { pack } from "../pack.ts";
import { shorten } from "../plain.ts";
import type { Event, Notice } from "./api.ts";
import { unlinked } from "./escape.ts";
import { caution, causeItem, fit, in_, type Laid, lines, list, numbered, PART, part, ROOM, small, strong, title } from "./parts.ts";
import { table } from "./tables.ts";

export interface MatrixOptions extends Options {
  /** `pre` where the clients in use flatten tables; default `html` */
  readonly tables?: "html" | "pre";
}

/** A longer description of a picture stands as a paragraph of its own below it. */
const ALT = 1_000;

export function renderMatrix(answer: Answer, options: MatrixOptions): Event[] {
  const { pieces } = outline(answer, options);
  const label = labels(options);
  const last = pieces.findLastIndex((piece) => piece.kind === "choices" || piece.kind === "form");
  const parts = pieces.flatMap((piece, at) => [
    ...lay(piece, label, options),
    ...(at === last ? small(label("choose-hint")).map((one) => part(one)) : []),
  ]);
  const pages = pack(parts, [ROOM]);
  const isNotice = (page: readonly Laid[] | undefined): boolean => page !== undefined && !page[0]?.image && !page[0]?.file;
  const notices = pages.filter(isNotice).length;
  const isCut = pages.some((page, at) => isNotice(page) && isNotice(pages[at + 1]));
  let shown = 0;
  return pages.map((page) => {
    const image = page[0]?.image;
    if (image) {
      const { from } = image;
      const filename = typeof from === "string" ? `figure${extname(from)}` : from.name;
      return { kind: "image", from, content: { msgtype: "m.image", body: image.alt, filename, "m.mentions": {} } };
    }
    const file = page[0]?.file;
    if (file) {
      const info = { mimetype: file.media_type, size: Buffer.byteLength(file.content) };
      return { kind: "file", bytes: file.content, content: { msgtype: "m.file", body: file.title, filename: file.name, info, "m.mentions": {} } };
    }
    shown += 1;
    const where = isCut ? small(label("part", { part: shown, parts: notices })).map((one) => part(one)) : [];
    return { kind: "notice", content: notice([...page, ...where]) };
  });
}

const notice = (parts: readonly Laid[]): Notice => ({
  msgtype: "m.notice",
  body: parts.map((one, at) => (at === 0 ? "" : parts[at - 1]?.keep ? "\n" : "\n\n") + one.body).join(""),
  format: "org.matrix.custom.html",
  formatted_body: parts.map((one) => one.html).join("\n"),
  "m.mentions": {},
});

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
      return lines(
        piece.items.flatMap((item) => fit(`${item.label}: ${item.value}`, PART, (body, html) => ({ body, html }))),
        "<p>",
        "<br>",
        "</p>",
      );
    case "causes":
      return piece.groups.flatMap((group) => [...title(group.label), ...lines(group.causes.flatMap(causeItem), "<ul>", "", "</ul>")]);
    case "picture": {
      const words = fit(label("picture", { alt: piece.alt }) || piece.alt, PART, in_("p")).map((one) => part(one));
      const from = piece.photo ?? piece.file;
      if (!from) return words;
      const alt = unlinked(shorten(piece.alt, ALT));
      const image: Laid = { body: "", html: "", size: [0], alone: true, image: { from, alt } };
      return piece.alt.length > ALT ? [image, ...words] : [image];
    }
    case "document": {
      const { name, media_type, content } = piece;
      return [{ body: "", html: "", size: [0], alone: true, file: { name, title: unlinked(shorten(piece.title, ALT)), media_type, content } }];
    }
    case "choices":
      return numbered(piece.choices);
    case "form":
      return [...title(piece.title), ...small(piece.summary).map((one) => part(one, true)), ...numbered([piece.choice])];
    case "quote":
      return [
        ...title(/[:：]$/u.test(piece.who) ? piece.who : `${piece.who}:`),
        ...fit(piece.words, PART, (body, html) => ({ body: body.replace(/^/gm, "> "), html: `<blockquote>${html}</blockquote>` })).map(
          (one) => part(one),
        ),
      ];
  }
}
