/** An `Answer` as the outside interface writes it. `text` is everything a reader would read, in reading order. */
import type { Answer, Block, Choice } from "../../src/answer.ts";
import { convert, UNITS } from "../../src/quantities.ts";
import type { Reader, Renderer } from "../../src/text/render.ts";
import { outline, type Piece } from "../outline.ts";
import { plain } from "../plain.ts";

export interface Written {
  readonly topic: string;
  readonly also: readonly string[];
  readonly hazard: boolean;
  readonly emergency: boolean;
  readonly cautions: readonly { readonly id: string; readonly text: string }[];
  readonly headline: string;
  readonly text: string;
  readonly causes: readonly { readonly id: string; readonly share: number; readonly because: readonly string[] }[];
  readonly question: { readonly id: string; readonly text: string } | null;
  readonly choices: readonly { readonly id: string; readonly label: string }[];
  readonly numbers: Readonly<Record<string, number>>;
  readonly pictures: readonly { readonly alt: string; readonly file: string }[];
  readonly audience: "person" | "room";
}

export function write(answer: Answer, render: Renderer, reader: Reader): Written {
  const words = (text: Parameters<Renderer>[0]): string => plain(render(text, reader));
  const kind = <K extends Block["kind"]>(wanted: K) => answer.blocks.filter((block): block is Extract<Block, { kind: K }> => block.kind === wanted);
  const question = kind("question")[0];
  const choices: readonly Choice[] = answer.blocks.flatMap((block) => (block.kind === "question" || block.kind === "choices" ? block.choices : []));
  return {
    topic: answer.topic,
    also: answer.also,
    hazard: answer.hazard,
    emergency: answer.emergency,
    cautions: answer.cautions.map((caution) => ({ id: caution.id, text: words(caution.text) })),
    headline: words(answer.headline),
    text: outline(answer, { render, reader }).pieces.map(paragraph).filter(Boolean).join("\n"),
    causes: kind("causes").flatMap((block) => block.items.map((item) => ({ id: item.id, share: Math.round(item.share * 1e4) / 1e4, because: item.because.map(words) }))),
    question: question ? { id: question.id, text: words(question.text) } : null,
    choices: choices.map((choice) => ({ id: choice.id, label: words(choice.label) })),
    numbers: Object.fromEntries(kind("numbers").flatMap((block) => block.items.map((item) => [item.key, rounded(inKey(item.key, item.quantity.value, item.quantity.unit), item.quantity.digits)]))),
    pictures: kind("picture").map((block) => ({ alt: words(block.picture.alt), file: block.picture.file ?? "" })),
    audience: answer.audience === "place" ? "room" : "person",
  };
}

/** The figure in the unit that its key names; quantities are metric already, so this only guards. */
function inKey(key: string, value: number, unit: keyof typeof UNITS): number {
  const named = (["kWh_per_kg", "kWh", "kg", "Pa", "C", "kW"] as const).find((end) => key.endsWith(`_${end}`));
  const wanted = named === "kWh_per_kg" ? "kWh/kg" : named;
  return wanted && wanted !== unit && UNITS[wanted].dimension === UNITS[unit].dimension ? convert(value, unit, wanted) : value;
}

/** As many digits as the reader sees, and one to spare. */
const rounded = (value: number, digits = 2): number => Number(value.toFixed(digits + 1));

function paragraph(piece: Piece): string {
  switch (piece.kind) {
    case "caution":
      return `${piece.label ? `${piece.label}: ` : ""}${piece.text}`;
    case "headline":
    case "heading":
    case "paragraph":
    case "question":
    case "note":
      return piece.text;
    case "list":
      return [...(piece.title ? [`${piece.title}:`] : []), ...piece.items.map((item, i) => (piece.ordered ? `${i + 1}. ${item}` : `- ${item}`))].join("\n");
    case "table":
      return [...(piece.caption ? [piece.caption] : []), piece.table.columns.join(" | "), ...piece.table.rows.map((row) => row.join(" | "))].join("\n");
    case "numbers":
      return piece.items.map((item) => `${item.label}: ${item.value}`).join("\n");
    case "causes":
      return piece.groups.flatMap((group) => [`${group.label}:`, ...group.causes.flatMap((cause) => [`- ${cause.title} (${cause.share})`, ...cause.because.map((why) => `  ${why}`)])]).join("\n");
    case "picture":
      return piece.alt;
    case "document":
      return [`${piece.title} (${piece.name})`, piece.words].filter(Boolean).join("\n");
    case "choices":
      return piece.choices.map((choice) => `${choice.number}) ${choice.label}`).join("\n");
    case "form":
      return [piece.title, piece.summary].filter(Boolean).join("\n");
    case "quote":
      return `${piece.who}: ${piece.words}`;
  }
}
