/**
 * A page as a picture, for whoever is sent one: black on white, as wide as a phone and as long as it needs, every line broken by ourselves
 * since nothing in a drawing wraps by itself.
 */
import type { Document, PageBlock, Picture, Text } from "../answer.ts";
import { escapeHtml } from "../pages/html.ts";
import { wrap } from "../pages/wrap.ts";
import { format } from "../quantities.ts";
import { text } from "../answer.ts";
import type { Reader } from "../text/render.ts";
import { FONT, STRONG_FONT, WIDTH_PX } from "./look.ts";

/** Drawn in the page's own thread like any chart, so that whatever sends pictures sends this one too. */
export const PAGE = "page";
export const pagePicture = ({ title, body }: Document, alt: Text = text("picture.page.alt", { title })): Picture => ({ chart: PAGE, data: { title, body }, alt });

interface Pen {
  readonly reader: Reader;
  write(one: Text): string;
}

const EDGE = 16;
const INNER = WIDTH_PX - 2 * EDGE;
const INK = "#000";
/** The fonts that come along are narrower than the letters counted in pages/wrap.ts. */
const NARROWER = 0.9;
const STRONG_NARROWER = 0.94;

interface Look {
  readonly size: number;
  readonly line: number;
  readonly strong?: boolean;
}
const TITLE: Look = { size: 21, line: 26, strong: true };
const HEADING: Look = { size: 16, line: 21, strong: true };
const BODY: Look = { size: 14, line: 19 };
const STRONG: Look = { ...BODY, strong: true };
const CELL: Look = { size: 12.5, line: 16 };

interface Laid {
  readonly svg: string;
  readonly height: number;
}

/** @returns SVG as wide as a picture on a phone */
export function pageSvg(data: Readonly<Record<string, unknown>>, pen: Pen): string {
  if (!Array.isArray(data.body) || typeof data.title !== "object" || data.title === null) throw new RangeError("a page has a title and a body.");
  const parts: string[] = [];
  let y = EDGE;
  const add = ({ svg, height }: Laid, after: number): void => {
    if (height === 0) return;
    parts.push(`<g transform="translate(0 ${y})">${svg}</g>`);
    y += height + after;
  };
  add(lines(pen.write(data.title as Text), TITLE), 6);
  for (const block of data.body as readonly PageBlock[]) add(laid(block, pen), block.kind === "heading" ? 2 : 9);
  const height = Math.ceil(y + EDGE - 9);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH_PX}" height="${height}" viewBox="0 0 ${WIDTH_PX} ${height}"><rect width="100%" height="100%" fill="#fff"/><g fill="${INK}">${parts.join("\n")}</g></svg>`;
}

const broken = (words: string, width: number, { size, strong }: Look): string[] => wrap(words, width / (size * (strong ? STRONG_NARROWER : NARROWER)));

function lines(words: string, look: Look, x = EDGE, width = INNER): Laid {
  const list = broken(words, width, look);
  const svg = list.map((line, i) => `<text x="${x}" y="${i * look.line + look.size}" font-family="${look.strong ? STRONG_FONT : FONT}" font-size="${look.size}">${escapeHtml(line)}</text>`).join("");
  return { svg, height: list.length * look.line };
}

function laid(block: PageBlock, pen: Pen): Laid {
  switch (block.kind) {
    case "text":
      return block.cautions.length > 0 ? framed(lines(pen.write(block.text), STRONG, EDGE + 10, INNER - 20)) : lines(pen.write(block.text), BODY);
    case "heading":
      return lines(pen.write(block.text), HEADING);
    case "steps":
      return stacked([
        ...(block.title ? [lines(pen.write(block.title), HEADING)] : []),
        ...block.steps.map((step, i) => item(pen.write(step), block.ordered ? `${i + 1}.` : "•")),
      ]);
    case "table":
      return table(block, pen);
    case "numbers":
      return stacked(block.items.map(({ label, quantity }) => item(`${pen.write(label)}: ${format(quantity, pen.reader)}`, "•")));
    case "quote":
      return lines(`${pen.write(block.who)}: “${pen.write(block.words)}”`, BODY);
    case "drawing":
      return drawing(block.svg);
  }
}

function stacked(all: readonly Laid[], between = 3): Laid {
  let y = 0;
  const svg = all.map((one) => {
    const placed = `<g transform="translate(0 ${y})">${one.svg}</g>`;
    y += one.height + between;
    return placed;
  });
  return { svg: svg.join(""), height: Math.max(0, y - between) };
}

const INDENT = 20;
function item(words: string, mark: string): Laid {
  const own = lines(words, BODY, EDGE + INDENT, INNER - INDENT);
  return { svg: `<text x="${EDGE}" y="${BODY.size}" font-family="${FONT}" font-size="${BODY.size}">${mark}</text>${own.svg}`, height: own.height };
}

function framed(inside: Laid): Laid {
  const height = inside.height + 16;
  return { svg: `<rect x="${EDGE + 1.5}" y="1.5" width="${INNER - 3}" height="${height - 3}" fill="none" stroke="${INK}" stroke-width="3"/><g transform="translate(0 7)">${inside.svg}</g>`, height };
}

/** The first column says what it is about and is strong; columns share the width by the longest word in them. */
function table({ caption, columns, rows }: Extract<PageBlock, { kind: "table" }>, pen: Pen): Laid {
  const cells = [columns, ...rows].map((row) => row.map(pen.write));
  const least = columns.map((_, i) => Math.max(3, ...cells.flatMap((row) => (row[i] ?? "").split(/[ -]/).map((word) => word.length))));
  const sum = least.reduce((total, one) => total + one, 0);
  const widths = least.map((one) => (INNER * one) / sum);
  const left = widths.map((_, i) => EDGE + widths.slice(0, i).reduce((total, one) => total + one, 0));
  let y = 0;
  const drawn: string[] = [];
  cells.forEach((row, r) => {
    const laidCells = row.map((words, i) => lines(words, r === 0 || i === 0 ? { ...CELL, strong: true } : CELL, (left[i] ?? 0) + 4, (widths[i] ?? 0) - 7));
    const height = Math.max(...laidCells.map((one) => one.height)) + 7;
    row.forEach((_, i) => drawn.push(`<rect x="${(left[i] ?? 0).toFixed(1)}" y="${y}" width="${(widths[i] ?? 0).toFixed(1)}" height="${height}" fill="${r === 0 ? "#e6e6e6" : "none"}" stroke="${INK}" stroke-width="1"/>`));
    drawn.push(`<g transform="translate(0 ${y + 2})">${laidCells.map(({ svg }) => svg).join("")}</g>`);
    y += height;
  });
  return stacked([...(caption ? [lines(pen.write(caption), HEADING)] : []), { svg: drawn.join(""), height: y }]);
}

const DRAWING = 150;
/** Set in the middle, at its own proportions. */
function drawing(svg: string): Laid {
  const [, width = "120", height = "110"] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg) ?? [];
  const tall = (DRAWING * Number(height)) / Number(width);
  const inside = svg.replace("<svg ", `<svg x="${(WIDTH_PX - DRAWING) / 2}" y="0" width="${DRAWING}" height="${tall.toFixed(0)}" `);
  return { svg: inside, height: tall };
}
