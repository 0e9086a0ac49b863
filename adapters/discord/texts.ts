/** The pieces of an answer as Discord's Markdown, each text short enough to stand in a message. */
import type { Cause, Label, Piece } from "../outline.ts";
import { chunks, cut } from "../pack.ts";
import { align, records, type Table } from "../table.ts";
import { LIMITS } from "./api.ts";
import { codeBlock, escapeMarkdown as escape } from "./escape.ts";

/** Characters of one message, less room for the "2 of 3" below it. */
export const TEXT = LIMITS.text - 60;
/** Longer pieces come in several texts, so that a cut between messages falls inside them without leaving half a message empty. */
export const PART = 1900;

/** Columns of fixed-width text that a phone shows unbroken. */
const PHONE_COLUMNS = 38;

/** Escaped words in pieces of at most `most`, none cut inside an escape: escaping at most doubles. */
export function fit(words: string, most: number, dress: (escaped: string) => string): string[] {
  if (words === "") return [];
  const whole = dress(escape(words));
  return whole.length <= most ? [whole] : cut(words, Math.floor((most - dress("").length) / 2)).map((piece) => dress(escape(piece)));
}

/** Lines joined into as few texts as `PART` allows. */
export const joined = (lines: readonly string[]): string[] =>
  chunks(lines, (line) => line.length + 1, PART).map((group) => group.join("\n"));

export const bold = (words: string): string => `**${words}**`;
export const small = (words: string): string => `-# ${words.replace(/\n/g, " ")}`;

/** A title stands in one text with the first of what it names. */
function titled(title: string | undefined, contents: readonly string[]): string[] {
  if (!title) return [...contents];
  const heads = fit(title, PART, bold);
  return [...heads.slice(0, -1), [heads.at(-1), ...contents.slice(0, 1)].join("\n"), ...contents.slice(1)];
}

/** The texts of a piece, in order. */
export function texts(piece: Piece, label: Label, urgent = false): string[] {
  switch (piece.kind) {
    case "caution":
      return caution(piece, label);
    case "headline":
      return fit(piece.text, PART, (words) => `${urgent ? "##" : "###"} ${words}`);
    case "heading":
    case "question":
      return fit(piece.text, PART, bold);
    case "paragraph":
      return fit(piece.text, PART, (words) => words);
    case "note":
      return fit(piece.text, PART, small);
    case "list":
      return titled(piece.title, joined(piece.items.flatMap((item, at) => bullet(item, piece.ordered ? `${at + 1}. ` : "- "))));
    case "numbers":
      return joined(piece.items.flatMap(figure));
    case "causes":
      return piece.groups.flatMap((group) => joined([...fit(group.label, PART, bold), ...group.causes.flatMap(causeLines)]));
    case "quote":
      return titled(
        /[:：]$/u.test(piece.who) ? piece.who : `${piece.who}:`,
        fit(piece.words, PART, (words) => words).flatMap((words) => joined(words.split("\n").map((line) => `> ${line}`))),
      );
    case "table":
      return titled(piece.caption, table(piece.table));
    default:
      return [];
  }
}

/** Whole in one text; only a caution longer than any message is cut, between sentences, and says that it goes on. */
function caution(piece: { label: string; text: string }, label: Label): string[] {
  const name = (words: string): string => (words ? `**${escape(words)}:** ` : "");
  const whole = name(piece.label) + escape(piece.text);
  if (whole.length <= TEXT) return [whole];
  const again = name(label("caution-continued"));
  return fit(piece.text, TEXT - again.length - name(piece.label).length, (words) => words).map(
    (words, at) => (at === 0 ? name(piece.label) : again) + words,
  );
}

export const bullet = (words: string, lead: string): string[] =>
  fit(words || "·", PART - lead.length, (escaped) => escaped).map((escaped, at) => (at === 0 ? lead : " ".repeat(lead.length)) + escaped);

const causeLines = (cause: Cause): string[] => [
  ...bullet(`${cause.title} (${cause.share})`, "- "),
  ...cause.because.flatMap((reason) => bullet(reason, "  - ")),
];

function figure({ label, value }: { label: string; value: string }): string[] {
  const line = `${escape(label)}: ${bold(escape(value))}`;
  return line.length <= PART ? [line] : fit(`${label}: ${value}`, PART, (words) => words);
}

function table(rows: Table): string[] {
  const aligned = align(rows, PHONE_COLUMNS);
  if (!aligned) {
    return joined(
      records(rows).flatMap((record) => [
        ...fit(record.title || "·", PART, bold),
        ...record.lines.flatMap((line) => fit(line, PART, (words) => words)),
      ]),
    );
  }
  const head = codeBlock(aligned.head).length + 1;
  return chunks(aligned.rows, (lines) => lines.join("\n").length + 1, PART - head).map((group) =>
    codeBlock([...aligned.head, ...group.flat()]),
  );
}
