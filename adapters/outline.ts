/**
 * An `Answer` as a list of plain pieces in reading order, so that each network only lays out. Cautions come first and whole. In an
 * emergency what to do this minute comes first (headline and first steps), and the cautions, its reasons, right after.
 * Every string is plain: in the reader's language, cleaned, not yet escaped for any network.
 */
import { type Answer, type Arg, type Block, type Choice, type FormField, type Photo, type Text, text } from "../src/answer.ts";
import { writeDocument, type Written } from "../src/pages/write.ts";
import { format, q } from "../src/quantities.ts";
import { MissingText, type Reader, type Renderer } from "../src/text/render.ts";
import { oneLine, plain } from "./plain.ts";
import type { Table } from "./table.ts";

/** What can be answered by number: one row of numbers runs through the whole answer. */
export interface Numbered {
  readonly number: number;
  readonly opens: "choice" | "form";
  /** id of the choice or of the form */
  readonly id: string;
  readonly label: string;
}
export interface Cause {
  readonly title: string;
  readonly share: string;
  readonly because: readonly string[];
}
export interface Field {
  readonly key: string;
  readonly kind: FormField["kind"];
  readonly label: string;
  readonly unit?: string;
  readonly hint?: string;
  readonly value?: string;
  readonly choices: readonly { readonly id: string; readonly label: string }[];
}
export interface FormPiece {
  readonly kind: "form";
  readonly id: string;
  readonly title: string;
  readonly summary: string;
  readonly fields: readonly Field[];
  readonly choice: Numbered;
}

/** A file to attach. `words` is what it says, for where no file can go; empty when the answer says it already. */
export interface DocumentPiece extends Written {
  readonly kind: "document";
  readonly title: string;
  readonly words: string;
  /** where the adapter keeps it, if it keeps files */
  readonly file?: string;
}

export type Piece =
  | { readonly kind: "caution"; readonly label: string; readonly text: string }
  | { readonly kind: "headline" | "heading" | "paragraph" | "question" | "note"; readonly text: string }
  | { readonly kind: "list"; readonly title?: string; readonly ordered: boolean; readonly items: readonly string[] }
  | { readonly kind: "table"; readonly caption?: string; readonly table: Table }
  | { readonly kind: "numbers"; readonly items: readonly { readonly label: string; readonly value: string }[] }
  | { readonly kind: "causes"; readonly groups: readonly { readonly label: string; readonly causes: readonly Cause[] }[] }
  | { readonly kind: "picture"; readonly alt: string; readonly file?: string; readonly photo?: Photo }
  | DocumentPiece
  | { readonly kind: "choices"; readonly choices: readonly Numbered[] }
  | FormPiece
  | { readonly kind: "quote"; readonly who: string; readonly words: string };

export interface Outline {
  readonly emergency: boolean;
  readonly pieces: readonly Piece[];
  /** how many pieces of an emergency come before its cautions: what to do this minute */
  readonly urgent: number;
  readonly numbered: readonly Numbered[];
  readonly forms: readonly FormPiece[];
}

export interface Options {
  readonly render: Renderer;
  readonly reader: Reader;
  /** an earlier attempt may have arrived: said at the end */
  readonly maybe_repeat?: boolean;
  /** keeps a document where its reader finds it, and says where; null when that failed */
  readonly keepFile?: (document: Written) => string | null;
  /** number of the first choice; above 1 while an earlier question is still open */
  readonly first_number?: number;
}

export type Label = (id: string, args?: Record<string, Arg>) => string;

/** An adapter's own few words, from the catalogue. A missing one is left out: an emergency is shown even without a catalogue. */
export const labels =
  ({ render, reader }: Pick<Options, "render" | "reader">): Label =>
  (id, args) => {
    try {
      return plain(render(text(`adapter.${id}`, args), reader));
    } catch (error) {
      if (error instanceof MissingText) return "";
      throw error;
    }
  };

export function outline(answer: Answer, options: Options): Outline {
  const writer = pieceWriter(options);
  const headline: Piece = { kind: "headline", text: writer.line(answer.headline) };
  const cautions: Piece[] = answer.cautions.map((caution) => ({
    kind: "caution",
    label: writer.label("caution"),
    text: writer.words(caution.text),
  }));
  const urgent = answer.emergency ? answer.blocks.findIndex((block) => block.kind === "steps") : -1;
  const now: Piece[] = answer.emergency
    ? [headline, ...answer.blocks.slice(urgent, urgent < 0 ? 0 : urgent + 1).flatMap(writer.pieces)]
    : [];
  const rest = answer.blocks.filter((_, at) => at !== urgent).flatMap(writer.pieces);
  const pieces: Piece[] = [...now, ...cautions, ...(answer.emergency ? [] : [headline]), ...rest];
  const note = options.maybe_repeat ? writer.label("maybe-repeat") : "";
  if (note) pieces.push({ kind: "note", text: note });
  const forms = pieces.filter((piece) => piece.kind === "form");
  const numbered = pieces.flatMap((piece) => (piece.kind === "choices" ? piece.choices : piece.kind === "form" ? [piece.choice] : []));
  return { emergency: answer.emergency, pieces, urgent: now.length, numbered, forms };
}

function pieceWriter(options: Options) {
  const { render, reader } = options;
  const label = labels(options);
  const words = (one: Text): string => plain(render(one, reader));
  const line = (one: Text): string => oneLine(render(one, reader));
  let number = options.first_number ?? 1;

  const choices = (list: readonly Choice[]): Piece[] =>
    list.length === 0
      ? []
      : [
          {
            kind: "choices",
            choices: list.map((choice) => ({ number: number++, opens: "choice", id: choice.id, label: line(choice.label) })),
          },
        ];

  const field = (one: FormField): Field => ({
    key: one.key,
    kind: one.kind,
    label: line(one.label),
    choices: (one.choices ?? []).map((choice) => ({ id: choice.id, label: line(choice.label) })),
    ...(one.unit ? { unit: oneLine(one.unit) } : {}),
    ...(one.hint ? { hint: line(one.hint) } : {}),
    ...(one.value === undefined ? {} : { value: oneLine(one.value) }),
  });

  function pieces(block: Block): Piece[] {
    switch (block.kind) {
      case "text":
        return filled({ kind: "paragraph", text: words(block.text) });
      case "heading":
        return filled({ kind: "heading", text: line(block.text) });
      case "steps":
        return [
          { kind: "list", ordered: block.ordered, items: block.steps.map(line), ...(block.title ? { title: line(block.title) } : {}) },
        ];
      case "table":
        return [
          {
            kind: "table",
            table: { columns: block.columns.map(line), rows: block.rows.map((row) => row.map(line)) },
            ...(block.caption ? { caption: line(block.caption) } : {}),
          },
        ];
      case "numbers":
        return [{ kind: "numbers", items: block.items.map((item) => ({ label: line(item.label), value: format(item.quantity, reader) })) }];
      case "causes":
        return causes(
          block.items.map((item) => ({
            share: item.share,
            cause: { title: line(item.title), share: share(item.share, label), because: item.because.map(line) },
          })),
          label,
        );
      case "picture": {
        const { alt, file, photo } = block.picture;
        return [{ kind: "picture", alt: words(alt), ...(file ? { file } : {}), ...(photo ? { photo } : {}) }];
      }
      case "document": {
        const { twin, title } = block.document;
        const { words: said, ...written } = writeDocument(block.document, render, reader);
        const file = options.keepFile?.(written);
        return [{ kind: "document", ...written, title: line(title), words: twin ? "" : plain(said), ...(file ? { file } : {}) }];
      }
      case "question":
        return [...filled({ kind: "question", text: words(block.text) }), ...choices(block.choices)];
      case "choices":
        return choices(block.choices);
      case "form": {
        const fields = block.fields.map(field);
        const summary = fields.length > 0 ? label("form-fields", { labels: fields.map((one) => one.label) }) : "";
        return [
          {
            kind: "form",
            id: block.id,
            title: line(block.title),
            summary,
            fields,
            choice: { number: number++, opens: "form", id: block.id, label: label("form-fill") },
          },
        ];
      }
      case "quote":
        return [{ kind: "quote", who: line(block.who), words: words(block.words) }];
    }
  }
  return { label, words, line, pieces };
}

const filled = (piece: Piece & { text: string }): Piece[] => (piece.text === "" ? [] : [piece]);

/** Causes within this of the first are named beside it. */
const AS_LIKELY = 0.05;

function causes(items: readonly { share: number; cause: Cause }[], label: Label): Piece[] {
  const most = items[0]?.share;
  if (most === undefined) return [];
  const likely = items.filter((item) => item.share >= most - AS_LIKELY);
  const possible = items.filter((item) => item.share < most - AS_LIKELY);
  const group = (id: string, list: typeof items) => (list.length > 0 ? [{ label: label(id), causes: list.map((item) => item.cause) }] : []);
  return [{ kind: "causes", groups: [...group("most-likely", likely), ...group("also-possible", possible)] }];
}

/** Words first, then a figure no finer than it deserves: to the nearest 5 %. */
function share(value: number, label: Label): string {
  const words = label(value >= 0.8 ? "very-likely" : value >= 0.5 ? "likely" : value >= 0.2 ? "possible" : "less-likely");
  return value < 0.05
    ? label("share-small", { words, share: q(5, "pct") })
    : label("share", { words, share: q(Math.round(value * 20) * 5, "pct") });
}
