/** Any `Answer` as Discord messages of Components V2: plain JSON within every limit, cautions first and whole. */
import type { Answer } from "../../src/answer.ts";
import { type Cause, type Label, labels, type Numbered, type Options, outline, type Piece } from "../outline.ts";
import { chunks, cut, pack, type Part } from "../pack.ts";
import { shorten } from "../plain.ts";
import { align, records, type Table } from "../table.ts";
import { type ActionRow, type Component, type Container, type DiscordMessage, EPHEMERAL, IS_COMPONENTS_V2, LIMITS, type TextDisplay, type Upload } from "./api.ts";
import { choiceRows, needsWords } from "./choices.ts";
import { codeBlock, escapeMarkdown as escape } from "./escape.ts";
import { formRows } from "./modal.ts";

export interface DiscordOptions extends Options {
  /** 1 to 80 of A-Z a-z 0-9 _ -: names this answer in the adapter's store when a button is pressed */
  readonly ref: string;
  /** only the person who asked sees it; decided before a reply to an interaction is deferred */
  readonly ephemeral?: boolean;
}

/** A bar of this colour stands beside cautions and beside what to do in an emergency; nothing else is coloured. */
const AMBER = 0xc98a1b;
const RED = 0xb3261e;

/** Columns of fixed-width text that a phone shows unbroken. */
const PHONE_COLUMNS = 38;

/** A row of a table that takes more lines than this is easier read as a record. */
const TALLEST_ROW = 3;

/** Room for the "2 of 3" below a message. */
const SLACK = 60;
const TEXT = LIMITS.text - SLACK;
const COMPONENTS = LIMITS.components - 1;
/** Longer pieces come in several parts, so that a cut between messages falls inside them without leaving half a message empty. */
const PART = 1900;

interface Laid extends Part {
  readonly components: readonly Component[];
  readonly upload?: Upload;
}

export function renderDiscord(answer: Answer, options: DiscordOptions): DiscordMessage[] {
  const { pieces, urgent } = outline(answer, options);
  const label = labels(options);
  const now = pieces.slice(0, urgent);
  const cautions = pieces.filter((piece) => piece.kind === "caution");
  const rest = pieces.slice(urgent + cautions.length);
  const parts = [
    ...framed(now.flatMap((piece) => texts(piece, label, true)), RED),
    ...framed(cautions.flatMap((piece) => texts(piece, label)), AMBER),
    ...rest.flatMap((piece, at) => lay(piece, at, label, options.ref)),
  ];
  const messages = pack(parts, [TEXT, COMPONENTS, LIMITS.files]);
  return messages.map((page, at) => message(page, options, messages.length > 1 ? label("part", { part: at + 1, parts: messages.length }) : ""));
}

function message(page: readonly Laid[], options: DiscordOptions, where: string): DiscordMessage {
  const files = page.flatMap((part) => part.upload ?? []);
  const components = page.flatMap((part) => part.components);
  const described = components.flatMap((component) => (component.type === 12 ? component.items : []));
  return {
    payload: {
      flags: IS_COMPONENTS_V2 | (options.ephemeral ? EPHEMERAL : 0),
      components: where ? [...components, { type: 10, content: `-# ${escape(where)}` }] : components,
      allowed_mentions: { parse: [] },
      ...(files.length > 0 ? { attachments: files.map((file, id) => ({ id: String(id), filename: file.name, ...(described[id]?.description ? { description: described[id].description } : {}) })) } : {}),
    },
    files,
  };
}

const display = (content: string): TextDisplay => ({ type: 10, content });
const text = (content: string, keep = false): Laid => ({ components: [display(content)], size: [content.length, 1, 0], keep });

/** A bar beside some texts: all in one if a message holds them, else cut between them. */
function framed(contents: readonly string[], accent_color: number): Laid[] {
  return chunks(contents.map(display), (one) => one.content.length, TEXT)
    .flatMap((group) => chunks(group, () => 1, COMPONENTS - 1))
    .map((components): Laid => {
      const container: Container = { type: 17, accent_color, components };
      return { components: [container], size: [components.reduce((sum, one) => sum + one.content.length, 0), components.length + 1, 0] };
    });
}

/** Escaped words in pieces of at most `most`, none cut inside an escape: escaping at most doubles. */
function fit(words: string, most: number, dress: (escaped: string) => string): string[] {
  if (words === "") return [];
  const whole = dress(escape(words));
  return whole.length <= most ? [whole] : cut(words, Math.floor((most - dress("").length) / 2)).map((piece) => dress(escape(piece)));
}

/** Lines joined into as few texts as `PART` allows. */
const joined = (lines: readonly string[]): string[] => chunks(lines, (line) => line.length + 1, PART).map((group) => group.join("\n"));

const bold = (words: string): string => `**${words}**`;
const small = (words: string): string => `-# ${words.replace(/\n/g, " ")}`;

/** A title stands in one text with the first of what it names. */
function titled(title: string | undefined, contents: readonly string[]): string[] {
  if (!title) return [...contents];
  const heads = fit(title, PART, bold);
  return [...heads.slice(0, -1), [heads.at(-1), ...contents.slice(0, 1)].join("\n"), ...contents.slice(1)];
}

/** The texts of a piece, in order. */
function texts(piece: Piece, label: Label, urgent = false): string[] {
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
      return titled(piece.title, joined(piece.items.flatMap((item, at) => item_(item, piece.ordered ? `${at + 1}. ` : "- "))));
    case "numbers":
      return joined(piece.items.flatMap(figure));
    case "causes":
      return piece.groups.flatMap((group) => joined([...fit(group.label, PART, bold), ...group.causes.flatMap(causeLines)]));
    case "quote":
      return titled(/[:：]$/u.test(piece.who) ? piece.who : `${piece.who}:`, fit(piece.words, PART, (words) => words).flatMap((words) => joined(words.split("\n").map((line) => `> ${line}`))));
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
  return fit(piece.text, TEXT - again.length - name(piece.label).length, (words) => words).map((words, at) => (at === 0 ? name(piece.label) : again) + words);
}

const item_ = (words: string, lead: string): string[] =>
  fit(words || "·", PART - lead.length, (escaped) => escaped).map((escaped, at) => (at === 0 ? lead : " ".repeat(lead.length)) + escaped);

const causeLines = (cause: Cause): string[] => [
  ...item_(`${cause.title} (${cause.share})`, "- "),
  ...cause.because.flatMap((reason) => item_(reason, "  - ")),
];

function figure({ label, value }: { label: string; value: string }): string[] {
  const line = `${escape(label)}: ${bold(escape(value))}`;
  return line.length <= PART ? [line] : fit(`${label}: ${value}`, PART, (words) => words);
}

function table(rows: Table): string[] {
  const aligned = align(rows, PHONE_COLUMNS);
  if (!aligned || aligned.rows.some((lines) => lines.length > TALLEST_ROW)) {
    return joined(records(rows).flatMap((record) => [
      ...fit(record.title || "·", PART, bold),
      ...record.lines.flatMap((line) => fit(line, PART, (words) => words)),
    ]));
  }
  const head = codeBlock(aligned.head).length + 1;
  return chunks(aligned.rows, (lines) => lines.join("\n").length + 1, PART - head).map((group) => codeBlock([...aligned.head, ...group.flat()]));
}

function lay(piece: Piece, at: number, label: Label, ref: string): Laid[] {
  switch (piece.kind) {
    case "picture":
      return picture(piece, at, label);
    case "choices":
      return choices(piece.choices, label, ref);
    case "form":
      return [
        ...fit(piece.title, PART, bold).map((one) => text(one, true)),
        ...fit(piece.summary, PART, small).map((one) => text(one, true)),
        ...rows(formRows(piece, ref, label)),
      ];
    default: {
      const keep = piece.kind === "headline" || piece.kind === "heading" || piece.kind === "question";
      return texts(piece, label).map((content) => text(content, keep));
    }
  }
}

const rows = (list: readonly ActionRow[]): Laid[] => list.map((row) => ({ components: [row], size: [0, 1 + row.components.length, 0] }));

const choices = (list: readonly Numbered[], label: Label, ref: string): Laid[] => [
  ...(needsWords(list) ? joined(list.flatMap((choice) => item_(choice.label, `${choice.number}. `))).map((one) => text(one, true)) : []),
  ...rows(choiceRows(list, ref, label)),
];

function picture(piece: { alt: string; file?: string }, at: number, label: Label): Laid[] {
  const words = (): Laid[] => fit(label("picture", { alt: piece.alt }) || piece.alt || "·", PART, (one) => one).map((one) => text(one));
  if (!piece.file) return words();
  const name = `figure-${at}${/\.\w{1,5}$/.exec(piece.file)?.[0] ?? ""}`;
  const shown: Laid = {
    components: [{ type: 12, items: [{ media: { url: `attachment://${name}` }, ...(piece.alt ? { description: shorten(piece.alt, LIMITS.alt) } : {}) }] }],
    size: [0, 1, 1],
    upload: { name, path: piece.file },
  };
  return piece.alt.length > LIMITS.alt ? [shown, ...words()] : [shown];
}
