/** Any `Answer` as lines for a terminal of some width, with or without colour. */
import { styleText } from "node:util";
import type { Answer } from "../../src/answer.ts";
import type { FormQuestion } from "../forms.ts";
import { type DocumentPiece, type Label, labels, type Options, type Outline, outline, type Piece } from "../outline.ts";
import { align, records, type Table } from "../table.ts";
import { pad, width, wrap } from "../width.ts";

export interface Screen {
  readonly columns: number;
  readonly colour: boolean;
}

type Style = Parameters<typeof styleText>[0];
type Paint = (style: Style, words: string) => string;

/** Lines longer than this are hard to follow back; tables may be wider. */
const MEASURE = 84;
const BELOW_THIS_NARROW = 56;

interface Look {
  readonly paint: Paint;
  readonly label: Label;
  readonly prose: number;
  readonly columns: number;
  readonly emergency: boolean;
}

const look = (screen: Screen, label: Label = () => "", emergency = false): Look => ({
  paint: (style, words) => (screen.colour && words !== "" ? styleText(style, words, { validateStream: false }) : words),
  label,
  columns: Math.max(16, screen.columns),
  prose: Math.max(16, Math.min(MEASURE, screen.columns)),
  emergency,
});

export interface Shown {
  readonly lines: readonly string[];
  readonly outline: Outline;
}

export function renderTerminal(answer: Answer, options: Options, screen: Screen): Shown {
  const made = outline(answer, options);
  const how = look(screen, labels(options), made.emergency);
  const lastNumbered = made.pieces.findLastIndex((piece) => piece.kind === "choices" || piece.kind === "form");
  const groups = made.pieces.map((piece, at) => {
    const hint = at === lastNumbered ? wrap(how.label("choose-hint"), how.prose).map((line) => how.paint("dim", line)) : [];
    return { kind: piece.kind, lines: [...pieceLines(piece, how), ...hint] };
  });
  return { lines: apart(groups.filter(({ lines }) => lines.length > 0)), outline: made };
}

/** A blank line between pieces, but for what belongs under the one before. */
function apart(groups: readonly { lines: readonly string[]; kind: Piece["kind"] }[]): string[] {
  return groups.flatMap(({ lines, kind }, at) => {
    const above = groups[at - 1]?.kind;
    return above === undefined || above === "heading" || (above === "question" && kind === "choices") ? lines : ["", ...lines];
  });
}

/** One question of a form. */
export function renderFormQuestion(question: FormQuestion, label: Label, screen: Screen): string[] {
  const how = look(screen, label);
  return [
    ...hang(`${question.where}  `, question.text, how, "bold"),
    ...numbered(question.choices, how),
    ...(question.hint ? renderNote(question.hint, screen) : []),
  ];
}

/** A remark by the way. */
export function renderNote(words: string, screen: Screen): string[] {
  const { paint, prose } = look(screen);
  return wrap(words, prose).map((line) => paint("dim", line));
}

export const renderWords = (words: string, screen: Screen): string[] => wrap(words, look(screen).prose);

function pieceLines(piece: Piece, how: Look): string[] {
  const { paint, prose } = how;
  switch (piece.kind) {
    case "caution":
      return caution(piece, how);
    case "headline":
      return wrap(piece.text, prose).map((line) => paint(how.emergency ? ["bold", "red"] : "bold", line));
    case "heading":
      return wrap(piece.text, prose).map((line) => paint("underline", line));
    case "paragraph":
      return wrap(piece.text, prose);
    case "question":
      return wrap(piece.text, prose).map((line) => paint("bold", line));
    case "note":
      return wrap(piece.text, prose).map((line) => paint("dim", line));
    case "list":
      return [...title(piece.title, how), ...list(piece.items, piece.ordered, how)];
    case "table":
      return [...title(piece.caption, how), ...table(piece.table, how)];
    case "numbers":
      return figures(piece.items, how);
    case "causes":
      return piece.groups.flatMap((group) => [
        ...wrap(group.label, prose).map((line) => paint("bold", line)),
        ...group.causes.flatMap((cause) => [
          ...hang("  ", `${cause.title} (${cause.share})`, how),
          ...cause.because.flatMap((reason) => hang("    - ", reason, how)),
        ]),
      ]);
    case "picture":
      return [
        ...wrap(how.label("picture", { alt: piece.alt }), prose),
        ...(piece.file ? wrap(how.label("picture-file", { file: piece.file }), prose).map((line) => paint("dim", line)) : []),
      ];
    case "document":
      return document(piece, how);
    case "choices":
      return numbered(piece.choices, how);
    case "form":
      return [
        ...wrap(piece.title, prose).map((line) => paint("bold", line)),
        ...wrap(piece.summary, prose),
        ...numbered([piece.choice], how),
      ];
    case "quote":
      return [...wrap(colon(piece.who), prose), ...wrap(piece.words, prose - 4).map((line) => `  | ${line}`)];
  }
}

/** Kept as a file, its place is enough; else it is read here. */
function document(piece: DocumentPiece, how: Look): string[] {
  const { paint, prose } = how;
  const kept = piece.file ? how.label("document-file", { title: piece.title, file: piece.file }) : "";
  if (kept) return wrap(kept, prose);
  return [...wrap(piece.title, prose).map((line) => paint("bold", line)), ...piece.words.split("\n").flatMap((line) => wrap(line, prose))];
}

const colon = (words: string): string => (/[:：]$/u.test(words) ? words : `${words}:`);
const title = (words: string | undefined, how: Look): string[] =>
  words ? wrap(words, how.prose).map((line) => how.paint("bold", line)) : [];

function caution(piece: { label: string; text: string }, how: Look): string[] {
  const mark = how.paint(["bold", "yellow"], piece.label.toUpperCase());
  if (how.columns < BELOW_THIS_NARROW) return [mark, ...wrap(piece.text, how.prose - 2).map((line) => `  ${line}`)];
  const indent = width(piece.label) + 2;
  return wrap(piece.text, how.prose - indent).map((line, at) => (at === 0 ? `${mark}  ${line}` : " ".repeat(indent) + line));
}

/** `lead` before the first line, as many spaces before the others. */
function hang(lead: string, words: string, how: Look, style?: Style): string[] {
  const indent = width(lead);
  return wrap(words, how.prose - indent).map(
    (line, at) => (at === 0 ? lead : " ".repeat(indent)) + (style ? how.paint(style, line) : line),
  );
}

function list(items: readonly string[], ordered: boolean, how: Look): string[] {
  const digits = String(items.length).length;
  return items.flatMap((item, at) => hang(ordered ? `${String(at + 1).padStart(digits + 1)}. ` : "  - ", item, how));
}

function numbered(choices: readonly { number: number; label: string }[], how: Look): string[] {
  const digits = Math.max(...choices.map((choice) => String(choice.number).length));
  return choices.flatMap((choice) => hang(`  ${String(choice.number).padStart(digits)}  `, choice.label, how));
}

function figures(items: readonly { label: string; value: string }[], how: Look): string[] {
  const names = Math.max(...items.map((item) => width(item.label)));
  const values = Math.max(...items.map((item) => width(item.value)));
  if (names + values + 4 > how.prose) {
    return items.flatMap((item) => [
      ...wrap(item.label, how.prose),
      ...wrap(item.value, how.prose - 2).map((line) => `  ${how.paint("bold", line)}`),
    ]);
  }
  return items.map((item) => `  ${pad(item.label, names)}  ${how.paint("bold", item.value)}`);
}

function table(rows: Table, how: Look): string[] {
  const aligned = align(rows, how.columns);
  if (aligned) return [...aligned.head.map((line, at) => how.paint(at === 0 ? "bold" : "dim", line)), ...aligned.rows.flat()];
  return records(rows).flatMap((record) => [
    ...wrap(record.title, how.prose).map((line) => how.paint("bold", line)),
    ...record.lines.flatMap((line) => hang("  ", line, how)),
  ]);
}
